import type { Vec2 } from '../../base/vec.js';
import type { SlabPlaced, Structure } from '../../structure/model.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { wasteOf } from '../waste.js';

/** A slab edge this near a wall is poured against the house, inches. */
const AGAINST = 6;

const atWall = (structure: Structure, p: Vec2): boolean =>
  structure.walls.some((w) => Math.abs((p.x - w.start.x) * w.out.x + (p.y - w.start.y) * w.out.y) < AGAINST);

/** Edges that need a board: those not against the house, inches. */
function openEdges(structure: Structure, s: SlabPlaced): number {
  return s.outline.reduce((sum, a, i) => {
    const b = s.outline[(i + 1) % s.outline.length]!;
    return atWall(structure, a) && atWall(structure, b) ? sum : sum + Math.hypot(b.x - a.x, b.y - a.y);
  }, 0);
}

/** Boards round new slabs; they come off and may serve again. */
export const slabForms: ItemKind = {
  count: ({ structure, buying }) => {
    const slabs = structure.slabs.filter((s) => s.state === 'new');
    const net = slabs.reduce((sum, s) => sum + openEdges(structure, s), 0) / 12;
    if (net <= 0) return [];
    return [
      line({
        group: 'concrete',
        phase: 'slab',
        item: 'slab edge form, 2-by as deep as the slab',
        net,
        unit: 'ft',
        waste: wasteOf(buying, 'forms'),
        sold: { unit: 'ft', holds: 1, rule: 'by the foot, from boards at hand where they do' },
        serves: slabs.map((s) => s.mark),
        note: 'Edges not against the house; stakes every 3 ft or so. Not drawn; may be used again.',
      }),
    ];
  },
};
