import { area } from '../../base/plane.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { wasteOf } from '../waste.js';

/** Base course under a new slab on ground, inches (IRC 2018 R506.2.2, recalled; well-drained soils may need none). */
export const BASE_COURSE = 4;
const CUBIC_INCHES_PER_YARD = 46656;

/** Base course and edge forms of new slabs. */
export const gravel: ItemKind = {
  count: ({ structure, buying }) => {
    const slabs = structure.slabs.filter((s) => s.state === 'new');
    if (slabs.length === 0) return [];
    const ground = slabs.reduce((sum, s) => sum + area(s.outline), 0);
    return [
      line({
        group: 'concrete',
        phase: 'slab',
        item: 'gravel or crushed stone, base course',
        net: (ground * BASE_COURSE) / CUBIC_INCHES_PER_YARD,
        unit: 'cu yd',
        waste: wasteOf(buying, 'gravel'),
        sold: { unit: 'cu yd', holds: 1, step: 0.5, rule: 'to the next half yard' },
        serves: slabs.map((s) => s.mark),
        note: `${BASE_COURSE} in under the slab (IRC R506.2.2, recalled); the office may let it go on well-drained soil. Not drawn.`,
      }),
    ];
  },
};
