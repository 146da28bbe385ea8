/** Least cost that passes, of one project: the search over sizes with the whole flow and the take-off behind it. */
import { hasErrors } from './base/issue.js';
import { deriveProject } from './derive.js';
import { USUAL_BUYING } from './project/complete/buying.js';
import type { PriceRow, Project } from './project/index.js';
import { dimensionsOf, type Sized, searchSizes } from './sizing/index.js';
import { place } from './structure/index.js';
import { costsOf, inventedPrices, takeOff } from './takeoff/index.js';

export interface SizeOptions {
  /** Prices of everything the sizes may ask for, or made-up ones. */
  readonly prices: readonly PriceRow[] | 'invented';
  /** Combinations worked out in full at most; 400 when left out. */
  readonly most?: number;
}

/** Beams, posts, rafters and pads of the project, sized together. Boards are planned without a solver here. */
export function sizeProject(project: Project, o: SizeOptions): Sized {
  const buying = project.buying ?? USUAL_BUYING;
  const pricedAt = (p: Project): { total: number; unpriced: number } | undefined => {
    const { value, issues } = place(p, {});
    if (!value || hasErrors(issues)) return undefined;
    const t = takeOff(p, value, o.prices === 'invented' ? {} : { prices: o.prices });
    const costs = costsOf(t, o.prices === 'invented' ? inventedPrices(t) : o.prices, buying);
    return { total: costs.total, unpriced: costs.unpriced.length };
  };
  const base = pricedAt(project)?.unpriced ?? 0;
  return searchSizes(
    project,
    dimensionsOf(project),
    {
      derive: (p) => deriveProject(p),
      place: (p) => {
        const { value, issues } = place(p, {});
        return hasErrors(issues) ? undefined : value;
      },
      // What the project as it is leaves without a price counts for nothing in every option alike; a new gap rules one out.
      cost: (p) => {
        const c = pricedAt(p);
        return c === undefined || c.unpriced > base ? undefined : c.total;
      },
    },
    o.most,
  );
}
