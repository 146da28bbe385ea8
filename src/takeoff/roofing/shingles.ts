/** Shingles by the bundle: field, starter, ridge caps, nails. */
import { lengthOf } from '../edges.js';
import { line } from '../line.js';
import { CUT_UP_ROOF, wasteOf } from '../waste.js';
import { feet, type RoofingSystem, SQUARE } from './contract.js';

/** Bundles a square of three-tab and common laminated shingles (roofers' forum); heavy ones 4 to 5. */
export const BUNDLES_PER_SQUARE = 3;
/** Feet of eave and rake one bundle of starter covers: the lower of the figures read (110 to 120). */
export const STARTER_FEET = 110;
/** Feet of ridge or hip one bundle of cut caps covers: the lower of the figures read (26 to 35). */
export const CAP_FEET = 26;
/** Pounds of 1 in roofing nails a square (a how-to page). */
export const NAIL_POUNDS = 1.5;

const ROOFERS = 'a roofers’ forum and a roofer’s sheet';

export const shingles: RoofingSystem = {
  dripEdge: true,
  lines: ({ roof, covering, edges, area, cutUp }, { buying }) => {
    const waste = wasteOf(buying, 'roofing', cutUp ? CUT_UP_ROOF : undefined);
    const flashing = wasteOf(buying, 'flashing');
    const name = covering.name.toLowerCase();
    const common = { group: 'roofing', phase: 'roofing', serves: [roof.mark] } as const;
    const starter = feet(lengthOf(edges, 'eave', 'rake'));
    const caps = feet(lengthOf(edges, 'ridge', 'hip'));
    return [
      line({
        ...common,
        item: `${name}, bundle`,
        net: area / SQUARE,
        unit: 'square',
        waste,
        sold: {
          unit: 'bundle',
          holds: 1 / BUNDLES_PER_SQUARE,
          rule: `${BUNDLES_PER_SQUARE} bundles a square; heavy shingles 4 or 5, read the wrapper`,
        },
      }),
      line({
        ...common,
        item: 'starter strip, bundle',
        net: starter,
        unit: 'ft',
        waste: flashing,
        sold: {
          unit: 'bundle',
          holds: STARTER_FEET,
          rule: `eaves and rakes, ${STARTER_FEET} ft a bundle (${ROOFERS})`,
        },
      }),
      ...(caps > 0
        ? [
            line({
              ...common,
              item: 'ridge and hip caps, bundle',
              net: caps,
              unit: 'ft',
              waste: flashing,
              sold: { unit: 'bundle', holds: CAP_FEET, rule: `${CAP_FEET} ft a bundle of cut caps (${ROOFERS})` },
            }),
          ]
        : []),
      line({
        ...common,
        item: 'roofing nails, 1 in galvanized',
        net: (area / SQUARE) * NAIL_POUNDS,
        unit: 'lb',
        waste: wasteOf(buying, 'nails'),
        sold: { unit: '5 lb box', holds: 5, rule: `${NAIL_POUNDS} lb a square (a how-to page), to whole boxes` },
        note: 'Long enough to pass the sheathing; the shingles’ own paper says how many and where.',
      }),
    ];
  },
};
