import { EACH, line } from '../line.js';
import type { ItemKind } from '../model.js';

/** What the project file asks to buy beside the model. */
export const extras: ItemKind = {
  count: ({ buying }) =>
    buying.extras.map((e) =>
      line({
        group: 'extras',
        phase: e.phase,
        item: e.item,
        net: e.quantity,
        unit: e.unit,
        waste: { fraction: 0, rule: 'in the quantity entered', source: 'project file' },
        sold: { ...EACH, unit: e.unit, rule: 'as entered' },
        serves: [],
      }),
    ),
};
