/** The steps behind a result: the same check run again with a recorder. */
import { makeRecorder, type TraceLine } from '../base/trace.js';
import type { CheckContext } from '../checks/contract.js';
import { rerun } from '../checks/run.js';
import { contextOf, type Derived } from './derived.js';

/** Steps of one result, `beam-bending:B1`; empty when there is no such result or it has no numbers. */
export function explain(d: Derived, resultId: string): readonly TraceLine[] {
  const ctx = contextOf(d);
  return ctx ? explainIn(ctx, resultId) : [];
}

export function explainIn(ctx: CheckContext, resultId: string): readonly TraceLine[] {
  const rec = makeRecorder();
  rerun(resultId, ctx, rec);
  return rec.lines;
}
