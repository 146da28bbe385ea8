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

export interface SizedProject extends Sized {
  /** Products whose own words name a size that is in no part any more: they are not made for what was found. */
  readonly misfits: readonly string[];
}

/** `6x6` in the words of a product. */
const SIZE = /\b(\d{1,2})\s*x\s*(\d{1,2})\b/g;

function misfits(p: Project): string[] {
  const { value } = place(p, {});
  if (!value) return [];
  const sizes = new Set(value.members.map((m) => `${m.section.nominal.thickness}x${m.section.nominal.width}`));
  return p.choices.joints
    .filter((j) => [...j.product.matchAll(SIZE)].some(([, a, b]) => !sizes.has(`${a}x${b}`)))
    .map((j) => j.product);
}

/** Beams, posts, rafters and pads of the project, sized together. Boards are planned without a solver here. */
export function sizeProject(project: Project, o: SizeOptions): SizedProject {
  const buying = project.buying ?? USUAL_BUYING;
  const pricedAt = (p: Project): { total: number; unpriced: number } | undefined => {
    const { value, issues } = place(p, {});
    if (!value || hasErrors(issues)) return undefined;
    const t = takeOff(p, value, o.prices === 'invented' ? {} : { prices: o.prices });
    const costs = costsOf(t, o.prices === 'invented' ? inventedPrices(t) : o.prices, buying);
    return { total: costs.total, unpriced: costs.unpriced.length };
  };
  const base = pricedAt(project)?.unpriced ?? 0;
  const found = searchSizes(
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
  return { ...found, misfits: found.best ? misfits(found.best.project) : [] };
}
