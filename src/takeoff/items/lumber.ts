/** Boards by length, as the cutting plans buy them; what is left over is their waste, not an allowance. */
import type { CutGroup, StockKind } from '../cuts/model.js';
import { boardItem } from '../cuts/stock.js';
import { marks } from '../line.js';
import type { GroupId, ItemKind, Line } from '../model.js';

const GROUP: Readonly<Record<StockKind, GroupId>> = {
  lumber: 'lumber',
  engineered: 'engineered',
  bar: 'concrete',
  tube: 'concrete',
};
const UNIT_WORD: Readonly<Record<StockKind, string>> = {
  lumber: 'board',
  engineered: 'piece',
  bar: 'bar',
  tube: 'tube',
};

function linesOf(g: CutGroup): Line[] {
  const byLength = new Map<number, { count: number; cut: number; serves: string[] }>();
  const add = (length: number, cut: number, serves: readonly string[]): void => {
    const row = byLength.get(length) ?? { count: 0, cut: 0, serves: [] };
    byLength.set(length, { count: row.count + 1, cut: row.cut + cut, serves: [...row.serves, ...serves] });
  };
  for (const b of g.plan.boards)
    add(
      b.stock.length,
      b.cuts.reduce((s, c) => s + c.length, 0),
      b.cuts.map((c) => c.mark),
    );
  return [...byLength]
    .sort(([a], [b]) => a - b)
    .map(([length, { count, cut, serves }]): Line => {
      const bought = (count * length) / 12;
      const net = cut / 12;
      const sold = g.lengths.some((l) => Math.abs(l - length) < 1e-6);
      return {
        id: `${GROUP[g.kind]}:${g.phase}:${boardItem(g, length)}`,
        group: GROUP[g.kind],
        phase: g.phase,
        item: boardItem(g, length),
        net,
        unit: 'ft',
        waste: {
          fraction: net > 0 ? bought / net - 1 : 0,
          rule: g.single
            ? 'what each piece leaves of the length ordered'
            : 'what the cutting plan leaves over, kerf and end trim',
          source: `cutting plan, ${g.plan.gap === 0 ? 'proved least' : `within ${(100 * g.plan.gap).toFixed(2)} % of the least`}`,
        },
        gross: bought,
        buy: {
          quantity: count,
          unit: 'each',
          holds: length / 12,
          step: 1,
          rule: `${UNIT_WORD[g.kind]}s of ${length / 12} ft in the cut list`,
        },
        serves: marks(serves),
        note: sold ? '' : 'longer than the yard’s lengths: special order',
      };
    });
}

export const lumber: ItemKind = { count: (ctx) => ctx.cuts.flatMap(linesOf) };
