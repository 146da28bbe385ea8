/**
 * Drawing and judging the drawing: the sheet checks run on every set that is drawn. A set with a fault on a sheet is no set to
 * hand in, so it is drawn again with its own faults among the reasons and PRELIMINARY on every sheet.
 */
import type { Sheet, SheetSize } from './drawings/ir/index.js';
import type { DrawingInput } from './drawings/sheets/contract.js';
import { drawSet } from './drawings/sheets/set.js';
import type { Verdict } from './review/model.js';
import type { SheetFinding } from './review/sheets/contract.js';
import { sheetFindings } from './review/sheets/registry.js';
import { drawnSet } from './review/sheets/set.js';

export interface Drawn {
  readonly sheets: readonly Sheet[];
  /** Faults of the sheets themselves, in the order of the set. */
  readonly findings: readonly SheetFinding[];
  /** Of the project and its sheets together. */
  readonly verdict: Verdict;
}

/** One reason for each rule broken, with the sheets concerned. */
function reasonsOf(findings: readonly SheetFinding[]): string[] {
  const rules = [...new Set(findings.map((f) => f.rule))];
  return rules.map((rule) => {
    const sheets = new Set(findings.filter((f) => f.rule === rule).map((f) => f.sheet));
    return `Sheet ${[...sheets].join(', ')} breaks the rule “${rule}”.`;
  });
}

/** The set at the project's sheet size or another one, with the faults found on it. */
export function drawJudged(input: DrawingInput, size: SheetSize = input.project.job.sheetSize): Drawn {
  const sheets = drawSet(input, size);
  const findings = sheetFindings(drawnSet(sheets, input.structure));
  const faults = findings.filter((f) => !f.advice);
  if (faults.length === 0) return { sheets, findings, verdict: input.verdict };
  const verdict = { issuable: false, reasons: [...input.verdict.reasons, ...reasonsOf(faults)] };
  return { sheets: drawSet({ ...input, verdict }, size), findings, verdict };
}
