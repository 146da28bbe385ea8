/** Exact search for short lists, for when no solver is at hand: piece by piece, longest first, cut off by cost. */
import type { Pattern } from './patterns.js';
import { cheapestFor } from './patterns.js';
import { holds, roundBound, type Ticked } from './ticks.js';

/** Least cost of any plan by material alone: all pieces at the best cost per tick of any board. */
export function materialBound(t: Ticked): number {
  const total = t.kinds.reduce((sum, k) => sum + k.size * k.cuts.length, 0);
  const rate = Math.min(...t.stock.map((s) => s.stock.cost / s.whole));
  return total === 0 ? 0 : roundBound(total * rate, t.grain);
}

export interface Searched {
  readonly plan: readonly Pattern[];
  /** True when everything was looked at within the limit, so that the plan is the cheapest there is. */
  readonly complete: boolean;
}

/** @param start a plan to beat; @param nodes pieces placed at most */
export function search(t: Ticked, start: readonly Pattern[], startCost: number, nodes: number): Searched {
  const list = t.kinds.flatMap((k, kind) => k.cuts.map(() => kind));
  const rest = list.map((_, i) => list.slice(i).reduce((sum, kind) => sum + t.kinds[kind]!.size, 0));
  const rate = Math.min(...t.stock.map((s) => s.stock.cost / s.whole));
  let best = { cost: startCost, plan: start };
  let left = nodes;
  const boards: { used: number; pieces: number; counts: number[] }[] = [];
  const priceOf = ({ used, pieces }: { used: number; pieces: number }): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const s of t.stock) if (holds(s, used, pieces)) least = Math.min(least, s.stock.cost);
    return least;
  };
  const most = Math.max(...t.stock.map((s) => s.capacity));
  const place = (i: number): void => {
    if (left-- <= 0) return;
    const spent = boards.reduce((sum, b) => sum + priceOf(b), 0);
    if (i === list.length) {
      if (spent < best.cost - 1e-9)
        best = { cost: spent, plan: boards.map((b) => ({ stock: cheapestFor(b.counts, t)!, counts: [...b.counts] })) };
      return;
    }
    // What is placed and what is to come cannot cost less than its material at the best rate, nor less than what is spent.
    const used = boards.reduce((sum, b) => sum + b.used, 0);
    if (roundBound(Math.max(spent, (used + rest[i]!) * rate), t.grain) >= best.cost - 1e-9) return;
    const kind = list[i]!;
    const size = t.kinds[kind]!.size;
    const tried = new Set<string>();
    for (const b of boards) {
      const key = b.counts.join(',');
      if (b.used + size > most || tried.has(key)) continue;
      tried.add(key);
      b.used += size;
      b.pieces++;
      b.counts[kind]!++;
      place(i + 1);
      b.used -= size;
      b.pieces--;
      b.counts[kind]!--;
    }
    boards.push({ used: size, pieces: 1, counts: t.kinds.map((_, k) => (k === kind ? 1 : 0)) });
    place(i + 1);
    boards.pop();
  };
  place(0);
  return { plan: best.plan, complete: left > 0 };
}
