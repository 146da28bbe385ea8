/** Cutting plans of random lists with the solver the apps use: never dearer than best-fit decreasing, never below their bound. */
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSolver } from '../../apps/cli/solver.js';
import { type Cut, type CuttingProblem, planCutting, type Solve } from '../../src/index.js';

const SEED = process.env.SEED === undefined ? 20_261_125 : Number(process.env.SEED);
const LISTS = 200;

/** Small linear congruential draws: the same numbers everywhere. */
function draws(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 2 ** 32;
  };
}

function list(random: () => number): CuttingProblem {
  const kinds = Array.from({ length: 2 + Math.floor(11 * random()) }, () => 10 + Math.round(random() * 225 * 8) / 8);
  const pieces = 4 + Math.floor(40 * random());
  const dear = random() < 0.5;
  return {
    // Half of the lists have prices that are not in proportion to length.
    stock: [8, 10, 12, 14, 16, 18, 20].map((f) => ({
      length: 12 * f,
      cost: dear ? Math.round(100 * f * (0.8 + 0.5 * random())) / 100 : 12 * f,
    })),
    cuts: Array.from(
      { length: pieces },
      (_, i): Cut => ({
        id: `c${i}`,
        mark: 'M',
        what: '',
        length: kinds[Math.floor(kinds.length * random())]!,
      }),
    ),
    kerf: 1 / 8,
    trim: 1,
  };
}

describe(`cutting plans, seed ${SEED}`, () => {
  let solve: Solve;
  beforeAll(async () => {
    solve = await loadSolver();
  });

  it(`of ${LISTS} random lists beat or equal best-fit decreasing and state their gap`, { timeout: 300_000 }, () => {
    const random = draws(SEED);
    let proved = 0;
    for (let k = 0; k < LISTS; k++) {
      const p = list(random);
      const plan = planCutting(p, solve);
      const name = `list ${k}`;
      expect(plan.cost, name).toBeLessThanOrEqual(plan.baseline + 1e-6);
      expect(plan.bound, name).toBeLessThanOrEqual(plan.cost + 1e-6);
      expect(plan.gap, name).toBeCloseTo((plan.cost - plan.bound) / plan.bound, 12);
      expect(plan.gap, name).toBeLessThan(0.05);
      expect(plan.cost, name).toBeCloseTo(
        plan.boards.reduce((s, b) => s + b.stock.cost, 0),
        6,
      );
      const ids = [...plan.boards.flatMap((b) => b.cuts), ...plan.tooLong].map((c) => c.id);
      expect([...ids].sort(), name).toEqual(p.cuts.map((c) => c.id).sort());
      for (const b of plan.boards) {
        const used = b.cuts.reduce((s, c) => s + c.length, 0) + (b.cuts.length - 1) * p.kerf;
        expect(used, name).toBeLessThanOrEqual(b.stock.length - (b.cuts.length > 1 ? p.trim : 0) + 1e-9);
      }
      if (plan.gap < 1e-9) proved++;
    }
    // Most are proved least; a solver that answered nothing would prove few.
    expect(proved).toBeGreaterThan(0.9 * LISTS);
  });

  it('gives the same plan twice', () => {
    const p = list(draws(7));
    expect(planCutting(p, solve)).toEqual(planCutting(p, solve));
  });
});
