/** What a joint can carry each way under the combination that asks most of it that way: product, or wood on wood. */
import type { CheckContext, CheckResult } from '../contract.js';
import { RATIO_CAP } from '../finding.js';
import type { JointDemand } from './demands.js';
import { durationPart, lieOf, ratings, WAY, type Way } from './rating.js';
import { servedBy } from './serving.js';

export interface WayCapacity {
  readonly way: Way;
  readonly demand: number;
  /** Pounds; undefined when nothing is named that holds it this way. */
  readonly capacity: number | undefined;
  /** What holds it: a product's name, `wood bearing on wood`, or what is missing. */
  readonly by: string;
  /** Check that asked: `joint-products` or `joint-bearing`. */
  readonly check: string;
}

const DEMAND: Readonly<Record<Way, 'down' | 'up' | 'alongX' | 'alongY'>> = {
  down: 'down',
  up: 'up',
  along: 'alongX',
  across: 'alongY',
};

const durationOf = (ctx: CheckContext, combination: string): number =>
  ctx.loads.combinations.find((c) => c.id === combination)?.CD ?? 1;

/** All four ways of one mark. `results` are the run's own, so that the bearing ratio is the one printed. */
export function jointCapacities(
  ctx: CheckContext,
  d: JointDemand,
  results: readonly CheckResult[],
): readonly WayCapacity[] {
  const served = servedBy(ctx.project.choices, d.mark, d.kind);
  const product = served?.by === 'product' ? served.product : undefined;
  const calculated = results.find(
    (r) => r.check === 'joint-products' && r.subject === d.mark && !product && r.ratio > 0,
  );
  const rated = product && ratings(product, lieOf(ctx, product));
  const bearing = results.find((r) => r.check === 'joint-bearing' && r.subject === d.mark);
  return (['down', 'up', 'along', 'across'] as const).map((way): WayCapacity => {
    const { value: demand, combination } = d[DEMAND[way]];
    const rating = rated?.[way];
    if (product && rating !== undefined) {
      const capacity = rating * durationPart(durationOf(ctx, combination), product.duration);
      return { way, demand, capacity, by: `${product.count} × ${product.product}`, check: 'joint-products' };
    }
    if (way === 'down' && bearing && bearing.ratio > 0 && bearing.ratio < RATIO_CAP) {
      return { way, demand, capacity: demand / bearing.ratio, by: 'wood bearing on wood', check: 'joint-bearing' };
    }
    // The interaction of all ways together is printed for each: no way alone is nearer its limit.
    if (calculated && demand > 0 && calculated.ratio < RATIO_CAP) {
      return { way, demand, capacity: demand / calculated.ratio, by: 'calculated connection', check: 'joint-products' };
    }
    const by = demand > 0 ? `open: nothing named holds it ${WAY[way]}` : 'nothing asked';
    return { way, demand, capacity: undefined, by, check: 'joint-products' };
  });
}
