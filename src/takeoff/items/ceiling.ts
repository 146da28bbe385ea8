import { findFinish } from '../../catalog/index.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { roofAreas } from '../roofing/area.js';
import { wasteOf } from '../waste.js';

/** Ceilings and soffits on the underside of the framing, where the roof has one. */
export const ceiling: ItemKind = {
  count: (ctx) =>
    roofAreas(ctx).flatMap(({ roof, area }) => {
      const finish = findFinish(roof.finish.ceiling);
      if (!finish) return [];
      return [
        line({
          group: 'finish',
          phase: 'finish',
          item: finish.name,
          net: area,
          unit: 'sq ft',
          waste: wasteOf(ctx.buying, 'ceiling'),
          sold: { unit: 'sq ft', holds: 1, rule: 'by the square foot; sheets of 32 sq ft where it comes in sheets' },
          serves: [roof.mark],
          note: 'Measured on the slope, overhangs included.',
        }),
      ];
    }),
};
