/**
 * A check asks one question of one subject and answers with one value that report, sheet and app all print. The trace
 * is not stored: `explain` runs the same function again with a recorder.
 */

import type { Effects } from '../analysis/model.js';
import type { Recorder } from '../base/trace.js';
import type { Loads } from '../loads/model.js';
import type { LotResult } from '../lot/model.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';

export type Status = 'pass' | 'fail' | 'not-applicable' | 'not-evaluated' | 'outside-scope';

export interface CheckContext {
  readonly project: Project;
  readonly lot: LotResult;
  readonly structure: Structure;
  readonly loads: Loads;
  readonly effects: Effects;
}

/** What `run` returns; the runner adds ids. `ratio` is demand over capacity; both are in `unit`. */
export interface Finding {
  readonly status: Status;
  readonly demand: number;
  readonly capacity: number;
  readonly ratio: number;
  readonly unit: string;
  /** Governing combination's id, or `` when none. */
  readonly combination: string;
  readonly clause: string;
  /** A least size that is kept or not: its ratio says nothing of how near a part is to its limit. */
  readonly prescriptive?: true;
  /** One sentence, always present unless a plain pass: why it failed, what is missing, what to do. */
  readonly note: string;
}

export interface CheckResult extends Finding {
  /** `beam-bending:B1`. */
  readonly id: string;
  readonly check: string;
  readonly title: string;
  readonly subject: string;
  /** JSON pointer of the subject in the project file. */
  readonly path: string;
  /** True when this check must be evaluated and pass before the set can be issued. */
  readonly mandatory: boolean;
}

export interface Subject {
  /** Mark or id of the part, `roof R1`, `lot`, `cover`. */
  readonly id: string;
  readonly path: string;
}

export interface Check {
  /** Stable kebab-case id: `beam-bending`. */
  readonly id: string;
  readonly title: string;
  subjects(ctx: CheckContext): readonly Subject[];
  run(subject: Subject, ctx: CheckContext, rec?: Recorder): Finding;
}
