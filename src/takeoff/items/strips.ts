/** Plywood strips between the plies of built-up members, ripped from sheets and butted end to end. */
import { SHEET_LENGTH, SHEET_WIDTH } from '../../catalog/index.js';
import type { Member } from '../../structure/model.js';
import { inches } from '../../structure/text.js';
import { isCut } from '../cuts/members.js';
import { planCutting } from '../cutting/index.js';
import { marks, wholeUp } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';

interface Strips {
  readonly member: Member;
  readonly count: number;
  readonly thickness: number;
}

function stripsOf(ctx: TakeoffContext): Strips[] {
  return ctx.structure.members.filter(isCut).flatMap((member) => {
    const c = ctx.project.choices.sections[member.section.choice];
    return c && 'spacers' in c && c.spacers > 0 ? [{ member, count: c.spacers, thickness: c.spacerThickness }] : [];
  });
}

function linesOf(list: readonly Strips[], kerf: number): Line {
  const { thickness, member } = list[0]!;
  const { depth } = member.section;
  // A run is full strips and a rest; rests share strips, so they are planned like boards.
  const cuts = list.flatMap(({ member: m, count }) =>
    Array.from({ length: count }, (_, k) => {
      const full = Math.floor(m.length / SHEET_LENGTH);
      const rest = m.length - full * SHEET_LENGTH;
      const lengths = [...Array<number>(full).fill(SHEET_LENGTH), ...(rest > 1 / 16 ? [rest] : [])];
      return lengths.map((length, i) => ({ id: `${m.id}.${k}.${i}`, mark: m.mark, what: '', length }));
    }).flat(),
  );
  const plan = planCutting({ stock: [{ length: SHEET_LENGTH, cost: 1 }], cuts, kerf, trim: 0 });
  const perSheet = Math.floor((SHEET_WIDTH + kerf) / (depth + kerf) + 1e-9);
  const net = (cuts.reduce((sum, c) => sum + c.length, 0) * depth) / 144;
  const sheets = wholeUp(plan.boards.length / perSheet);
  return {
    id: `strips:posts-and-beams:${thickness}:${depth}`,
    group: 'strips',
    phase: 'posts-and-beams',
    item: `${inches(thickness)} plywood sheet 4x8, for strips`,
    net,
    unit: 'sq ft',
    waste: {
      fraction: net > 0 ? (32 * sheets) / net - 1 : 0,
      rule: 'what the strips leave of whole sheets',
      source: 'strips laid out',
    },
    gross: 32 * sheets,
    buy: {
      quantity: sheets,
      unit: 'sheet',
      holds: 32,
      step: 1,
      rule: `${plan.boards.length} strips of ${inches(depth)} x 8 ft, ${perSheet} from a sheet`,
    },
    serves: marks(list.map((s) => s.member.mark)),
    note: `Ripped to ${inches(depth)} and butted end to end; they fill, they carry nothing.`,
  };
}

export const strips: ItemKind = {
  count: (ctx) => {
    const groups = new Map<string, Strips[]>();
    for (const s of stripsOf(ctx)) {
      const key = `${s.thickness}|${s.member.section.depth}`;
      groups.set(key, [...(groups.get(key) ?? []), s]);
    }
    return [...groups.values()].map((list) => linesOf(list, ctx.buying.kerf));
  },
};
