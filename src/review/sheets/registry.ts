import type { DrawnSet, SheetCheck, SheetCheckId, SheetFault, SheetFinding } from './contract.js';
import { dimensionsClose, dimensionsTrue } from './dimensions.js';
import { leadersApart } from './leaders.js';
import { marksInSchedules, marksOnPlans } from './marks.js';
import { legible, oneSize, scaleBars, stampClear, used } from './paper.js';
import { callouts, index, viewMarks } from './references.js';
import { insideFrame, textHeight, textsApart } from './text.js';

export const SHEET_CHECKS: Readonly<Record<SheetCheckId, SheetCheck>> = {
  'inside-frame': insideFrame,
  'texts-apart': textsApart,
  'text-height': textHeight,
  'leaders-apart': leadersApart,
  'marks-on-plans': marksOnPlans,
  'marks-in-schedules': marksInSchedules,
  index,
  callouts,
  'view-marks': viewMarks,
  'scale-bars': scaleBars,
  used,
  legible,
  'dimensions-true': dimensionsTrue,
  'dimensions-close': dimensionsClose,
  'one-size': oneSize,
  'stamp-clear': stampClear,
};

/** Every fault of a drawn set, by check. */
export const judgeSheets = (set: DrawnSet): Readonly<Record<SheetCheckId, readonly SheetFault[]>> =>
  Object.fromEntries(Object.entries(SHEET_CHECKS).map(([id, c]) => [id, c.run(set)])) as unknown as Record<
    SheetCheckId,
    readonly SheetFault[]
  >;

/** The same as one list in the order of the sheets, each fault with the rule it breaks. */
export function sheetFindings(set: DrawnSet): SheetFinding[] {
  const order = new Map(set.sheets.map((s, i) => [s.id, i]));
  return (Object.entries(judgeSheets(set)) as [SheetCheckId, readonly SheetFault[]][])
    .flatMap(([check, faults]) => {
      const { title: rule, advice } = SHEET_CHECKS[check];
      return faults.map((f) => ({ ...f, check, rule, ...(advice && { advice }) }));
    })
    .sort((a, b) => (order.get(a.sheet) ?? -1) - (order.get(b.sheet) ?? -1));
}
