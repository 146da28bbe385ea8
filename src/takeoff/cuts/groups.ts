/** Loose pieces → one cutting plan for each stock. */
import { PHASES } from '../../project/model/buying.js';
import type { PriceRow } from '../../project/model.js';
import { type CuttingPlan, planCutting, type Solve, type Stock } from '../cutting/index.js';
import { priceOf } from '../prices/match.js';
import type { CutGroup, LooseCut, PartCut, StockSpec } from './model.js';
import { boardItem } from './stock.js';

/** A length past those sold, to the next even foot: a special order, priced by its length. */
const special = (length: number): number => Math.ceil((length - 1e-6) / 24) * 24;

/** Boards by price when every length sold has one, else by length: then the least length is bought. */
interface Sold {
  readonly stock: Stock[];
  readonly priced: boolean;
  readonly from: string;
}

function stockOf(spec: StockSpec, prices: readonly PriceRow[]): Sold {
  const found = spec.lengths.map((length) => ({ length, row: priceOf(prices, boardItem(spec, length), 'each') }));
  const priced = found.filter((f) => f.row !== undefined);
  // Lengths without a price are left out when others have one: what the yard does not list it does not sell.
  if (priced.length > 0) {
    const from = priced.length === found.length ? spec.lengthsFrom : 'those that have a price';
    return { stock: priced.map((f) => ({ length: f.length, cost: f.row!.price })), priced: true, from };
  }
  return { stock: spec.lengths.map((length) => ({ length, cost: length })), priced: false, from: spec.lengthsFrom };
}

/** Plans of single pieces as one. */
function together(plans: readonly CuttingPlan[]): CuttingPlan {
  const sum = (of: (p: CuttingPlan) => number): number => plans.reduce((s, p) => s + of(p), 0);
  const [cost, bound] = [sum((p) => p.cost), sum((p) => p.bound)];
  return {
    boards: plans.flatMap((p) => p.boards),
    tooLong: plans.flatMap((p) => p.tooLong),
    cost,
    bound,
    gap: bound > 0 ? Math.max(0, (cost - bound) / bound) : 0,
    method: 'search',
    baseline: sum((p) => p.baseline),
  };
}

export function groupCuts(
  loose: readonly LooseCut[],
  prices: readonly PriceRow[],
  solve: Solve | undefined,
): CutGroup[] {
  const groups = new Map<string, LooseCut[]>();
  for (const l of loose) groups.set(l.spec.item, [...(groups.get(l.spec.item) ?? []), l]);
  return [...groups.values()].map((list): CutGroup => {
    const { spec } = list[0]!;
    const cuts = list.map((l) => l.cut);
    const phase = PHASES.find((p) => list.some((l) => l.phase === p))!;
    const { stock, priced, from } = stockOf(spec, prices);
    const longest = Math.max(...cuts.map((c) => c.length)) + spec.trim;
    const rate = Math.max(...stock.map((s) => s.cost / s.length));
    const known = stock.some((s) => s.length >= longest - 1e-6);
    const lengths = known ? stock : [...stock, { length: special(longest), cost: special(longest) * rate }];
    const plan = (list: readonly PartCut[]): CuttingPlan =>
      planCutting({ stock: lengths, cuts: list, kerf: spec.kerf, trim: spec.trim }, solve);
    return {
      ...spec,
      lengthsFrom: from,
      phase,
      cuts,
      priced,
      plan: spec.single ? together(cuts.map((c) => plan([c]))) : plan(cuts),
    };
  });
}
