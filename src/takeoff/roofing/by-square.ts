/** Coverings ordered by the square, with a cap along ridges and hips where they have one. */
import { lengthOf } from '../edges.js';
import { line } from '../line.js';
import { CUT_UP_ROOF, wasteOf } from '../waste.js';
import { feet, type RoofingSystem, SQUARE } from './contract.js';

export const bySquare = (o: {
  readonly cap: string;
  readonly dripEdge: boolean;
  readonly unit: string;
}): RoofingSystem => ({
  dripEdge: o.dripEdge,
  lines: ({ roof, covering, edges, area, cutUp }, { buying }) => {
    const common = { group: 'roofing', phase: 'roofing', serves: [roof.mark] } as const;
    const caps = feet(lengthOf(edges, 'ridge', 'hip'));
    return [
      line({
        ...common,
        item: covering.name.toLowerCase(),
        net: area / SQUARE,
        unit: 'square',
        waste: wasteOf(buying, 'roofing', cutUp ? CUT_UP_ROOF : undefined),
        sold: { unit: o.unit, holds: 1, rule: 'to whole squares; the seller packs them by the maker’s count' },
      }),
      ...(o.cap !== '' && caps > 0
        ? [
            line({
              ...common,
              item: o.cap,
              net: caps,
              unit: 'ft',
              waste: wasteOf(buying, 'flashing'),
              sold: { unit: 'ft', holds: 1, rule: 'by the foot; the maker says how many pieces' },
            }),
          ]
        : []),
    ];
  },
});
