/** Gutters along the eaves of roofs that have them, with their leaders. */
import type { RoofEdge } from '../edges.js';
import { lengthOf } from '../edges.js';
import { line } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';
import { roofAreas } from '../roofing/area.js';
import { feet } from '../roofing/contract.js';
import { NO_WASTE, wasteOf } from '../waste.js';

/** Common practice, no source: hangers at 24 in, pieces of 10 ft, one leader to 40 ft of eave, three elbows each. */
const HANGER = 24;
const LEADER_REACH = 480;
const ELBOWS = 3;
const PIECE = { unit: '10 ft piece', holds: 10, rule: 'sold in 10 ft; common practice, no source' } as const;
const ONE = { unit: 'each', holds: 1 } as const;

const leaders = (e: RoofEdge): number => Math.max(1, Math.ceil(e.length / LEADER_REACH));

/** From the eave down to the ground under it, inches. */
function drop(ctx: TakeoffContext, e: RoofEdge): number {
  const at = { x: (e.a.x + e.b.x) / 2, y: (e.a.y + e.b.y) / 2 };
  const { grade } = ctx.structure;
  return Math.max(0, (e.a.z + e.b.z) / 2 - (grade.z0 + grade.gx * at.x + grade.gy * at.y));
}

export const gutter: ItemKind = {
  count: (ctx) =>
    roofAreas(ctx).flatMap(({ roof, edges }): Line[] => {
      const eaves = edges.filter((e) => e.kind === 'eave');
      if (!roof.finish.gutter || eaves.length === 0) return [];
      const common = { group: 'gutter', phase: 'finish', serves: [roof.mark] } as const;
      const waste = wasteOf(ctx.buying, 'gutter');
      const run = lengthOf(eaves, 'eave');
      const count = eaves.reduce((n, e) => n + leaders(e), 0);
      const down = eaves.reduce((sum, e) => sum + leaders(e) * drop(ctx, e), 0);
      return [
        line({
          ...common,
          item: 'gutter',
          net: feet(run),
          unit: 'ft',
          waste,
          sold: PIECE,
          note: 'Width and leaders by the gutter check.',
        }),
        line({
          ...common,
          item: 'gutter hanger',
          net: eaves.reduce((n, e) => n + Math.ceil(e.length / HANGER) + 1, 0),
          unit: 'each',
          waste,
          sold: { ...ONE, rule: `every ${HANGER} in; common practice, no source` },
        }),
        line({
          ...common,
          item: 'gutter end cap',
          net: 2 * eaves.length,
          unit: 'each',
          waste: NO_WASTE,
          sold: { ...ONE, rule: 'two on each eave' },
        }),
        line({
          ...common,
          item: 'downspout',
          net: feet(down),
          unit: 'ft',
          waste,
          sold: PIECE,
          note: `${count} in all, one to ${LEADER_REACH / 12} ft of eave, from the eave to the ground; the gutter check may ask for more.`,
        }),
        line({
          ...common,
          item: 'downspout outlet',
          net: count,
          unit: 'each',
          waste: NO_WASTE,
          sold: { ...ONE, rule: 'one a downspout' },
        }),
        line({
          ...common,
          item: 'downspout elbow',
          net: ELBOWS * count,
          unit: 'each',
          waste: NO_WASTE,
          sold: { ...ONE, rule: `${ELBOWS} a downspout; common practice, no source` },
        }),
      ];
    }),
};
