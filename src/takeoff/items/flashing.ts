/** Metal along edges and walls. */
import { lengthOf, type RoofEdge } from '../edges.js';
import { line } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';
import { roofAreas } from '../roofing/area.js';
import { feet, type RoofArea } from '../roofing/contract.js';
import { systemOf } from '../roofing/registry.js';
import { NO_WASTE, wasteOf } from '../waste.js';

/** Pieces of drip edge are 10 ft (a roofer's sheet); the same sheet buys five more, we buy the allowance. */
const PIECE = 10;
/** Step flashing: one piece a course of shingles, 5 in to the weather. Common practice, no source. */
export const STEP_COURSE = 5;

const SOLD = { unit: '10 ft piece', holds: PIECE, rule: 'sold in 10 ft (a roofer’s sheet)' } as const;

/** Lower ends of runs along a wall: there water must be turned out past the cladding. */
const kickOuts = (edges: readonly RoofEdge[]): number => edges.filter((e) => e.kind === 'wall-side').length;

function linesOf(r: RoofArea, { buying }: TakeoffContext): Line[] {
  const common = { group: 'roofing', phase: 'roofing', serves: [r.roof.mark] } as const;
  const waste = wasteOf(buying, 'flashing');
  const run = (item: string, inches: number, note = ''): Line[] =>
    inches > 0 ? [line({ ...common, item, net: feet(inches), unit: 'ft', waste, sold: SOLD, note })] : [];
  const sides = lengthOf(r.edges, 'wall-side');
  return [
    ...(systemOf(r.covering.id).dripEdge ? run('drip edge', lengthOf(r.edges, 'eave', 'rake', 'top')) : []),
    ...run('valley metal', lengthOf(r.edges, 'valley')),
    ...run(
      'apron flashing at the wall',
      lengthOf(r.edges, 'wall-top'),
      'Behind the cladding and its water barrier, over the roofing.',
    ),
    ...(sides > 0
      ? [
          line({
            ...common,
            item: 'step flashing piece',
            net: Math.ceil(sides / STEP_COURSE),
            unit: 'each',
            waste,
            sold: {
              unit: 'each',
              holds: 1,
              rule: `one each ${STEP_COURSE} in of slope; metal roofs take a side-wall trim of the same length in place`,
            },
            note: `${feet(sides).toFixed(1)} ft along the wall.`,
          }),
          line({
            ...common,
            item: 'kick-out flashing',
            net: kickOuts(r.edges),
            unit: 'each',
            waste: NO_WASTE,
            sold: { unit: 'each', holds: 1, rule: 'one at the foot of each run along a wall' },
          }),
        ]
      : []),
  ];
}

export const flashing: ItemKind = { count: (ctx) => roofAreas(ctx).flatMap((r) => linesOf(r, ctx)) };
