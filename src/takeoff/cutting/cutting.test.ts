import { describe, expect, it } from 'vitest';
import { type CuttingProblem, planCutting } from './index.js';
import { bestFills } from './patterns.js';
import { search } from './search.js';
import { ticked } from './ticks.js';

const cut = (length: number, i: number) => ({ id: `c${String(i).padStart(3, '0')}`, mark: 'M', what: '', length });
const problem = (lengths: readonly number[], o: Partial<CuttingProblem> = {}): CuttingProblem => ({
  stock: [96, 120, 144].map((length) => ({ length, cost: length })),
  cuts: lengths.map(cut),
  kerf: 1 / 8,
  trim: 1,
  ...o,
});

describe('planCutting without a solver', () => {
  it('cuts every piece once and never more from a board than it holds', () => {
    const lengths = [93, 70, 61.5, 61.5, 40, 33, 33, 12.25, 90, 144, 143.5];
    const plan = planCutting(problem(lengths));
    expect(plan.boards.flatMap((b) => b.cuts.map((c) => c.id)).sort()).toEqual(lengths.map((l, i) => cut(l, i).id));
    for (const b of plan.boards) {
      const used = b.cuts.reduce((s, c) => s + c.length, 0) + (b.cuts.length - 1) / 8;
      expect(used).toBeLessThanOrEqual(b.stock.length - (b.cuts.length > 1 ? 1 : 0) + 1e-9);
    }
  });
  it('a piece as long as a board takes it whole; one longer is said to be too long', () => {
    const plan = planCutting(problem([144, 144.1]));
    expect(plan.boards.map((b) => b.stock.length)).toEqual([144]);
    expect(plan.tooLong.map((c) => c.length)).toEqual([144.1]);
  });
  it('two halves of a board do not fit it once the saw has passed', () => {
    expect(planCutting(problem([48, 48], { trim: 0 })).boards[0]!.stock.length).toBe(120);
    expect(planCutting(problem([48, 47.875], { trim: 0 })).boards[0]!.stock.length).toBe(96);
  });
  it('takes the dear short board only where it saves: cost decides, not length', () => {
    const stock = [
      { length: 96, cost: 10 },
      { length: 192, cost: 15 },
    ];
    expect(planCutting(problem([90, 90], { stock })).cost).toBe(15);
    expect(planCutting(problem([90], { stock })).cost).toBe(10);
  });
  it('an empty list costs nothing and claims no gap', () => {
    expect(planCutting(problem([]))).toMatchObject({ boards: [], cost: 0, bound: 0, gap: 0 });
  });
});

describe('search', () => {
  /** Every way of putting pieces into boards, by brute force. */
  function cheapest(p: CuttingProblem): number {
    const boards: number[][] = [];
    let best = Number.POSITIVE_INFINITY;
    const price = (list: readonly number[]): number => {
      const used = list.reduce((s, l) => s + l, 0) + (list.length - 1) * p.kerf;
      const fit = p.stock.filter((s) => used <= s.length - (list.length > 1 ? p.trim : 0) + 1e-9);
      return Math.min(...fit.map((s) => s.cost));
    };
    const place = (i: number): void => {
      if (i === p.cuts.length) {
        best = Math.min(
          best,
          boards.reduce((s, b) => s + price(b), 0),
        );
        return;
      }
      for (const b of [...boards]) {
        b.push(p.cuts[i]!.length);
        place(i + 1);
        b.pop();
      }
      boards.push([p.cuts[i]!.length]);
      place(i + 1);
      boards.pop();
    };
    place(0);
    return best;
  }
  it.each([[[50, 45, 40, 30, 30, 20]], [[95, 60, 60, 35.5, 24]], [[71.25, 71.25, 47, 47, 47, 23.5, 23.5]]])(
    'finds the cost brute force finds: %j',
    (lengths) => {
      const p = problem(lengths);
      const t = ticked(p);
      const found = search(t, [], Number.POSITIVE_INFINITY, 1e6);
      expect(found.complete).toBe(true);
      expect(found.plan.reduce((s, x) => s + t.stock[x.stock]!.stock.cost, 0)).toBe(cheapest(p));
      expect(planCutting(p).cost).toBe(cheapest(p));
    },
  );
});

describe('bestFills', () => {
  it('is the best of all fillings, none of a kind more often than wanted', () => {
    const t = ticked(problem([30, 30, 30, 22, 22, 17], { kerf: 0, trim: 0 }));
    const values = [31, 24, 16];
    const limits = [3, 2, 1];
    const best = bestFills(t, values, limits);
    for (const [s, { capacity }] of t.stock.entries()) {
      let most = 0;
      for (let a = 0; a <= 3; a++)
        for (let b = 0; b <= 2; b++)
          for (let c = 0; c <= 1; c++)
            if ((30 * a + 22 * b + 17 * c) * 16 <= capacity) most = Math.max(most, 31 * a + 24 * b + 16 * c);
      expect(best[s]!.value).toBe(most);
    }
  });
});
