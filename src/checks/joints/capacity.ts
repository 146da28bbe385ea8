/** What a joint can carry each way under the combination that asks most of it that way: product, or wood on wood. */
import type { CheckContext, CheckResult } from '../contract.js';
import { RATIO_CAP } from '../finding.js';
import { type Action, actionsOf } from './actions.js';
import type { JointDemand } from './demands.js';
import { durationPart, lieOf, ratings, WAY, type Way } from './rating.js';
import { servedBy } from './serving.js';

export interface WayCapacity {
  readonly way: Way;
  readonly demand: number;
  /** Pounds; undefined when nothing is named that holds it this way, or when only all ways together are known. */
  readonly capacity: number | undefined;
  /** Ratio of all ways together, for a connection that is worked out for the force as it comes. */
  readonly together?: number;
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

/** The action that asks most of one rating, each at its own load duration. */
function mostAsked(
  actions: readonly Action[],
  way: Way,
  rating: number,
  published: number,
): { readonly demand: number; readonly capacity: number } {
  let worst = { demand: 0, capacity: rating };
  let most = 0;
  for (const a of actions) {
    const z = a.z * a.raise.factor;
    const P = { down: -z, up: z, along: Math.abs(a.x), across: Math.abs(a.y) }[way];
    const capacity = rating * durationPart(a.combination.CD, published);
    if (P <= 0 || P / capacity <= most) continue;
    most = P / capacity;
    worst = { demand: P, capacity };
  }
  return worst;
}

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
  const actions = (product && actionsOf(ctx, d.mark)) ?? [];
  const bearing = results.find((r) => r.check === 'joint-bearing' && r.subject === d.mark);
  return (['down', 'up', 'along', 'across'] as const).map((way): WayCapacity => {
    const { value: demand } = d[DEMAND[way]];
    const rating = rated?.[way];
    if (product && rating !== undefined) {
      const asked = mostAsked(actions, way, rating, product.duration);
      return { way, ...asked, by: `${product.count} × ${product.product}`, check: 'joint-products' };
    }
    if (way === 'down' && bearing && bearing.ratio > 0 && bearing.ratio < RATIO_CAP) {
      return { way, demand, capacity: demand / bearing.ratio, by: 'wood bearing on wood', check: 'joint-bearing' };
    }
    if (calculated && demand > 0 && calculated.ratio < RATIO_CAP) {
      const by = 'calculated connection';
      return { way, demand, capacity: undefined, together: calculated.ratio, by, check: 'joint-products' };
    }
    const by = demand > 0 ? `open: nothing named holds it ${WAY[way]}` : 'nothing asked';
    return { way, demand, capacity: undefined, by, check: 'joint-products' };
  });
}
