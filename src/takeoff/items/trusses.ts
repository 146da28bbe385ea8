import { byMark, EACH, line } from '../line.js';
import type { ItemKind } from '../model.js';
import { NO_WASTE } from '../waste.js';

/** Trusses by mark; the order sheet says what they must be. */
export const trusses: ItemKind = {
  count: ({ structure }) => {
    const all = structure.members.filter((m) => m.truss && m.state === 'new');
    return [...new Set(all.map((m) => m.mark))].sort(byMark).map((mark) =>
      line({
        group: 'trusses',
        phase: 'framing',
        item: `truss ${mark}`,
        net: all.filter((m) => m.mark === mark).length,
        unit: 'each',
        waste: NO_WASTE,
        sold: EACH,
        serves: [mark],
      }),
    );
  },
};
