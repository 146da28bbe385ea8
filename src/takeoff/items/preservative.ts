import { isCut } from '../cuts/members.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { NO_WASTE } from '../waste.js';

/** Treated wood is untreated inside: what is cut, notched or drilled on the site is brushed (IRC R317.1.1, recalled). */
export const preservative: ItemKind = {
  count: ({ structure }) => {
    const treated = structure.members.filter((m) => isCut(m) && m.section.treatment !== 'none');
    if (treated.length === 0) return [];
    return [
      line({
        group: 'lumber',
        phase: 'posts-and-beams',
        item: 'wood preservative for cut ends',
        net: 1,
        unit: 'quart',
        waste: NO_WASTE,
        sold: { unit: 'quart', holds: 1, rule: 'one can does a job of this size; common practice, no source' },
        serves: treated.map((m) => m.mark),
        note: 'Brushed on every field cut, notch and hole of treated wood (IRC R317.1.1, recalled). Gloves and eye protection; read the label.',
      }),
    ];
  },
};
