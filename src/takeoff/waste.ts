/** Waste allowances: the project's own, else the trade's with its source. */
import type { Buying, WasteOf } from '../project/model/buying.js';
import type { Waste } from './model.js';

interface Usual {
  readonly fraction: number;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

export const USUAL_WASTE: Readonly<Record<WasteOf, Usual>> = {
  concrete: { fraction: 0.1, source: 'bag calculators of several trade pages, 10 %' },
  gravel: { fraction: 0.1, source: PRACTICE },
  steel: { fraction: 0.05, source: PRACTICE },
  fasteners: { fraction: 0.05, source: PRACTICE },
  nails: { fraction: 0.2, source: 'Army correspondence course EN0069, table 4-1, common wire nails' },
  roofing: { fraction: 0.1, source: 'a trade book on roofing: 10 % on gables, 15 % on hips' },
  underlayment: { fraction: 0.1, source: `${PRACTICE}; laps are in the roll's coverage` },
  flashing: { fraction: 0.1, source: `${PRACTICE}; laps and cuts` },
  ceiling: { fraction: 0.1, source: PRACTICE },
  paint: { fraction: 0.1, source: PRACTICE },
  gutter: { fraction: 0.05, source: PRACTICE },
};

/** Roofs with hips or valleys lose more to cuts (the same trade book). */
export const CUT_UP_ROOF = 0.15;

const percent = (x: number): string => `${Number((100 * x).toFixed(1))} %`;

/** The allowance of a kind; `usual` in place of the trade's figure where the roof's shape calls for another. */
export function wasteOf(buying: Buying, of: WasteOf, usual?: number): Waste {
  const own = buying.waste.find((w) => w.of === of);
  const fraction = own?.fraction ?? usual ?? USUAL_WASTE[of].fraction;
  return {
    fraction,
    rule: `${percent(fraction)} allowance`,
    source: own ? own.from || 'project file' : USUAL_WASTE[of].source,
  };
}

/** For what is counted by the piece and comes in no surplus. */
export const NO_WASTE: Waste = { fraction: 0, rule: 'none: counted by the piece', source: 'the model' };
