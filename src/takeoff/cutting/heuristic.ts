/** Plans found by rule of thumb: the baseline every better plan must match, and the start of the search for one. */
import { bestFills, cheapestFor, type Pattern, usedBy } from './patterns.js';
import { holds, type Ticked } from './ticks.js';

export const costOf = (plan: readonly Pattern[], t: Ticked): number =>
  plan.reduce((sum, p) => sum + t.stock[p.stock]!.stock.cost, 0);

const shrunk = (counts: readonly number[], t: Ticked): Pattern => ({ stock: cheapestFor(counts, t)!, counts });

/**
 * Best-fit decreasing: longest piece first, into the open board it leaves least room in, else into a new board of one
 * length; at the end each board becomes the cheapest that holds its pieces. Done for each length, the cheapest kept.
 */
export function bestFitDecreasing(t: Ticked): Pattern[] {
  let best: Pattern[] | undefined;
  t.stock.forEach((_, opened) => {
    const boards: { room: number; counts: number[] }[] = [];
    for (const [kind, k] of t.kinds.entries()) {
      for (let n = 0; n < k.cuts.length; n++) {
        let into: (typeof boards)[number] | undefined;
        for (const b of boards) if (b.room >= k.size && (into === undefined || b.room < into.room)) into = b;
        if (into === undefined) {
          const long = holds(t.stock[opened]!, k.size, 1) ? opened : t.stock.findIndex((s) => holds(s, k.size, 1));
          into = { room: Math.max(k.size, t.stock[long]!.capacity), counts: t.kinds.map(() => 0) };
          boards.push(into);
        }
        into.room -= k.size;
        into.counts[kind]!++;
      }
    }
    const plan = boards.map((b) => shrunk(b.counts, t));
    if (best === undefined || costOf(plan, t) < costOf(best, t) - 1e-9) best = plan;
  });
  return best ?? [];
}

/** Fills one board after the other with what makes its cost per inch of pieces least. */
export function greedyFill(t: Ticked): Pattern[] {
  const left = t.kinds.map((k) => k.cuts.length);
  const sizes = t.kinds.map((k) => k.size);
  const plan: Pattern[] = [];
  while (left.some((n) => n > 0)) {
    let best: { rate: number; counts: number[] } | undefined;
    for (const [i, fill] of bestFills(t, sizes, left).entries()) {
      const used = usedBy(fill.counts, t);
      if (used === 0) continue;
      const rate = t.stock[i]!.stock.cost / used;
      if (best === undefined || rate < best.rate - 1e-12) best = { rate, counts: fill.counts };
    }
    if (best === undefined) return [];
    best.counts.forEach((n, i) => {
      left[i]! -= n;
    });
    plan.push(shrunk(best.counts, t));
  }
  return plan;
}
