/** Two versions of a project side by side: values, placed parts, results, sheets and approvals that a change touches. */

import { derive, drawingInput } from '../derive.js';
import type { Sheet, SheetSize } from '../drawings/ir/index.js';
import { drawJudged } from '../drawn.js';
import type { Derived } from '../report/derived.js';
import { type ApprovalTouched, touchedApprovals } from './approvals.js';
import { changedParts, type PartChange } from './parts.js';
import { changedResults, type ResultChange } from './results.js';
import { revisedSheets } from './revised.js';
import { changedSheets, type SheetChange } from './sheets.js';
import { changedValues, type ValueChange } from './values.js';

export type { ApprovalTouched, PartChange, ResultChange, SheetChange, ValueChange };

export interface Comparison {
  readonly values: readonly ValueChange[];
  readonly parts: readonly PartChange[];
  readonly results: readonly ResultChange[];
  readonly sheets: readonly SheetChange[];
  readonly approvals: readonly ApprovalTouched[];
  /** Number in the triangles, and whether the new file's log has it. */
  readonly revision: { readonly number: string; readonly entered: boolean };
  /** Touched sheets with clouds; empty when either version cannot be drawn. */
  readonly revised: readonly Sheet[];
}

/** The newest revision of the new file that the old one has not; else the number that comes next, which its log should name. */
function revisionOf(before: Derived, after: Derived): Comparison['revision'] {
  const old = before.project?.log.revisions ?? [];
  const fresh = (after.project?.log.revisions ?? []).filter((r) => !old.some((o) => o.number === r.number));
  const last = fresh.at(-1);
  return last ? { number: last.number, entered: true } : { number: String(old.length + 1), entered: false };
}

/** Compares the texts of two project files, drawn at one size. */
export function compare(before: string, after: string, size?: SheetSize): Comparison {
  const [a, b] = [derive(before), derive(after)];
  const [was, is] = [drawingInput(a), drawingInput(b)];
  const at = size ?? is?.project.job.sheetSize;
  const drawn = was && is ? ([drawJudged(was, at).sheets, drawJudged(is, at).sheets] as const) : undefined;
  const sheets = drawn ? changedSheets(...drawn) : [];
  const revision = revisionOf(a, b);
  return {
    values: changedValues(before, after),
    parts: changedParts(a, b),
    results: changedResults(a.results, b.results),
    sheets,
    approvals: b.project ? touchedApprovals(b.project.log, sheets) : [],
    revision,
    revised: drawn ? revisedSheets(drawn[1], sheets, revision.number) : [],
  };
}
