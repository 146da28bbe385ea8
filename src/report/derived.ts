/** Everything worked out from one project. Later parts are absent when an earlier stage left nothing to go on with. */
import type { Effects } from '../analysis/model.js';
import type { Issue } from '../base/issue.js';
import type { CheckContext, CheckResult } from '../checks/contract.js';
import type { Loads } from '../loads/model.js';
import type { LotResult } from '../lot/model.js';
import type { Project } from '../project/model.js';
import type { Verdict } from '../review/model.js';
import type { Structure } from '../structure/model.js';

export interface Derived {
  readonly project?: Project;
  readonly structure?: Structure;
  readonly lot?: LotResult;
  readonly loads?: Loads;
  readonly effects?: Effects;
  /** Empty when the checks could not run. */
  readonly results: readonly CheckResult[];
  readonly issues: readonly Issue[];
  readonly verdict: Verdict;
}

/** What the checks look at; undefined when a part is missing. */
export function contextOf(d: Derived): CheckContext | undefined {
  const { project, lot, structure, loads, effects } = d;
  return project && lot && structure && loads && effects ? { project, lot, structure, loads, effects } : undefined;
}
