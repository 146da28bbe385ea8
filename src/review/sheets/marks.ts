/** Marks: whatever is placed is on a plan and in a schedule, and a plan names nothing else. */
import type { Sheet } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';
import { boxesOf } from './flat.js';

/** Structural plans and schedules by the type digits of their ids. */
const PLAN = /^S-1\d\d$/;
const SCHEDULE = /^S-6\d\d$/;

const MARK = /^[A-Z]{1,3}\d+$/;

const wordsOf = (sheets: readonly Sheet[]): ReadonlySet<string> =>
  new Set(sheets.flatMap((s) => boxesOf(s)).flatMap((b) => rangesOf(b.content)));

/** Marks in a text, closed-up runs opened again: `P1–P4` names P2 too. */
function rangesOf(text: string): string[] {
  const out: string[] = [...(text.match(/[A-Z]+\d+/g) ?? [])];
  for (const [, letters, from, , to] of text.matchAll(/([A-Z]+)(\d+)–([A-Z]+)(\d+)/g))
    for (let n = Number(from); n <= Number(to); n++) out.push(`${letters}${n}`);
  return out;
}

export const marksOnPlans: SheetCheck = {
  title: 'Every placed mark is on a plan',
  run({ sheets, marks }) {
    const plans = sheets.filter((s) => PLAN.test(s.id));
    const words = wordsOf(plans);
    return [...marks].filter((m) => !words.has(m)).map((m) => ({ sheet: plans[0]?.id ?? '', what: m }));
  },
};

export const marksInSchedules: SheetCheck = {
  title: 'Every placed mark and every tag of a plan is in a schedule',
  run({ sheets, marks }) {
    const schedules = sheets.filter((s) => SCHEDULE.test(s.id));
    const words = wordsOf(schedules);
    const tags = sheets
      .filter((s) => PLAN.test(s.id))
      .flatMap((s) =>
        boxesOf(s)
          .filter((b) => b.layer === 'S-ANNO-SYMB' && MARK.test(b.content))
          .map((b) => ({ sheet: s.id, what: b.content, at: { x: b.x, y: b.y } })),
      );
    const missing = [...marks].map((what) => ({ sheet: schedules[0]?.id ?? '', what }));
    return [...tags, ...missing].filter((f) => !words.has(f.what));
  },
};
