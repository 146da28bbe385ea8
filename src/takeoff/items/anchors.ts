import { formatLength } from '../../base/quantity/index.js';
import { EACH, line } from '../line.js';
import type { ItemKind } from '../model.js';
import { NO_WASTE } from '../waste.js';

const size = (x: number): string => formatLength(x, { style: 'inches' });

/** Cast-in bolts of post bases, each with nut and washer; ready before the pour. */
export const anchors: ItemKind = {
  count: ({ project, structure }) =>
    Object.entries(project.choices.anchors ?? {}).flatMap(([name, a]) => {
      const at = structure.footings.filter((f) => f.choice === name);
      if (at.length === 0) return [];
      return [
        line({
          group: 'anchors',
          phase: 'footings',
          item: `${size(a.bolt)} headed anchor bolt, ${size(a.embedment)} embedded, with nut and washer`,
          net: at.length,
          unit: 'each',
          waste: NO_WASTE,
          sold: EACH,
          serves: at.map((f) => f.mark),
          note: 'Embedded length to the bearing face of the head; add what stands up through the post base. In place before the pour.',
        }),
      ];
    }),
};
