import type { DrawnSet, SheetCheck, SheetCheckId, SheetFault } from './contract.js';
import { marksInSchedules, marksOnPlans } from './marks.js';
import { scaleBars, used } from './paper.js';
import { bubbles, callouts, index } from './references.js';
import { insideFrame, textHeight, textsApart } from './text.js';

export const SHEET_CHECKS: Readonly<Record<SheetCheckId, SheetCheck>> = {
  'inside-frame': insideFrame,
  'texts-apart': textsApart,
  'text-height': textHeight,
  'marks-on-plans': marksOnPlans,
  'marks-in-schedules': marksInSchedules,
  index,
  callouts,
  bubbles,
  'scale-bars': scaleBars,
  used,
};

/** Every fault of a drawn set, by check. */
export const judgeSheets = (set: DrawnSet): Readonly<Record<SheetCheckId, readonly SheetFault[]>> =>
  Object.fromEntries(Object.entries(SHEET_CHECKS).map(([id, c]) => [id, c.run(set)])) as unknown as Record<
    SheetCheckId,
    readonly SheetFault[]
  >;
