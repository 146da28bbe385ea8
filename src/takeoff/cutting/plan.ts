/**
 * The cutting plan of least cost. With a solver: every pattern where they are few, else those that column generation finds,
 * then whole numbers of them within a limit of nodes; the bound of the linear model says how far from the best the plan can
 * be. Without one: rules of thumb, and an exact search where the list is short. The same list gives the same plan.
 */
import { bestFitDecreasing, costOf, greedyFill } from './heuristic.js';
import { generate, modelText, wholePlan } from './master.js';
import type { Board, Cut, CuttingPlan, CuttingProblem, Method, Solve } from './model.js';
import { allPatterns, cheapestFor, type Pattern, usedBy } from './patterns.js';
import { materialBound, search } from './search.js';
import { roundBound, TICKS_PER_INCH, type Ticked, ticked } from './ticks.js';

/** Patterns written into one model at most, before column generation chooses among them. */
const FEW = 1500;
const NODES = 2000;
const SEARCH_NODES = 40_000;

interface Found {
  readonly plan: readonly Pattern[];
  readonly bound: number;
  readonly method: Method;
}

export function planCutting(p: CuttingProblem, solve?: Solve): CuttingPlan {
  const t = ticked(p);
  const bfd = bestFitDecreasing(t);
  const greedy = greedyFill(t);
  const baseline = costOf(bfd, t);
  const start = greedy.length > 0 && costOf(greedy, t) < baseline - 1e-9 ? greedy : bfd;
  const found = t.kinds.length === 0 ? { plan: [], bound: 0, method: 'search' as const } : best(t, start, bfd, solve);
  const boards = cutUp(t, found.plan);
  const cost = boards.reduce((sum, b) => sum + b.stock.cost, 0);
  const bound = Math.min(cost, found.bound);
  return {
    boards,
    tooLong: t.tooLong,
    cost,
    bound,
    gap: bound > 0 ? Math.max(0, (cost - bound) / bound) : 0,
    method: found.method,
    baseline,
  };
}

function best(t: Ticked, start: readonly Pattern[], bfd: readonly Pattern[], solve: Solve | undefined): Found {
  const material = materialBound(t);
  if (costOf(start, t) <= material + 1e-9) return { plan: start, bound: material, method: 'heuristic' };
  const solved = solve && bySolver(t, start, bfd, solve, material);
  if (solved) return solved;
  const s = search(t, start, costOf(start, t), SEARCH_NODES);
  const cost = costOf(s.plan, t);
  return { plan: s.plan, bound: s.complete ? cost : material, method: s.complete ? 'search' : 'heuristic' };
}

function bySolver(
  t: Ticked,
  start: readonly Pattern[],
  bfd: readonly Pattern[],
  solve: Solve,
  material: number,
): Found | undefined {
  const every = allPatterns(t, FEW);
  const singles = t.kinds.map((_, i) => {
    const counts = t.kinds.map((_, k) => (k === i ? 1 : 0));
    return { stock: cheapestFor(counts, t)!, counts };
  });
  const generated = every
    ? { patterns: every, bound: undefined }
    : generate(t, unique([...singles, ...bfd, ...start]), solve);
  if (!generated) return undefined;
  const { patterns } = generated;
  // Costs come in whole grains, so an answer less than one from the bound is the best there is.
  const answer = solve(modelText(t, patterns, true), { nodes: NODES, gap: 0.99 * t.grain });
  const plan = answer && wholePlan(t, patterns, answer);
  const better = plan && costOf(plan, t) < costOf(start, t) - 1e-9 ? plan : start;
  const cost = costOf(better, t);
  const method: Method = every ? 'all patterns' : 'column generation';
  if (every && answer?.optimal)
    return { plan: better, bound: Math.min(cost, roundBound(answer.objective, t.grain)), method };
  const linear = every ? solve(modelText(t, patterns, false), { nodes: 1, gap: 0 })?.objective : generated.bound;
  return { plan: better, bound: Math.max(material, roundBound(linear ?? 0, t.grain)), method };
}

const unique = (patterns: readonly Pattern[]): Pattern[] => [
  ...new Map(patterns.map((p) => [`${p.stock}|${p.counts.join(',')}`, p])).values(),
];

/**
 * Patterns → boards with their pieces. A pattern may give more of a kind than is wanted: what is over is not cut, and the
 * board becomes the cheapest that holds the rest. Fullest boards first, so that what is left over lies in the last.
 */
function cutUp(t: Ticked, plan: readonly Pattern[]): Board[] {
  const queues = t.kinds.map((k) => [...k.cuts]);
  const order = [...plan].sort((a, b) => rank(b, t) - rank(a, t) || compare(b.counts, a.counts));
  const boards: Board[] = [];
  for (const p of order) {
    const counts = p.counts.map((n, i) => Math.min(n, queues[i]!.length));
    if (counts.every((n) => n === 0)) continue;
    const { stock, capacity } = t.stock[cheapestFor(counts, t)!]!;
    const cuts: Cut[] = counts.flatMap((n, i) => queues[i]!.splice(0, n));
    boards.push({ stock, cuts, offcut: Math.max(0, (capacity - usedBy(counts, t)) / TICKS_PER_INCH) });
  }
  return boards;
}

const rank = (p: Pattern, t: Ticked): number => usedBy(p.counts, t) / t.stock[p.stock]!.capacity;
const compare = (a: readonly number[], b: readonly number[]): number => {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
};
