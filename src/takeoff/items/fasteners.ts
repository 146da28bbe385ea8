/** Connectors and fasteners, put together by item and activity; nails are bought by the pound. */

import { houseTies } from '../fasteners/house-ties.js';
import { countJoints } from '../fasteners/joints.js';
import type { Counted } from '../fasteners/model.js';
import { plies } from '../fasteners/plies.js';
import { sheathingNails } from '../fasteners/sheathing-nails.js';
import { EACH, line } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';
import { NO_WASTE, wasteOf } from '../waste.js';

function together(list: readonly Counted[]): Counted[] {
  const rows = new Map<string, Counted>();
  for (const c of list) {
    if (c.count <= 0) continue;
    const key = `${c.phase}|${c.item}`;
    const old = rows.get(key);
    rows.set(
      key,
      old
        ? { ...old, count: old.count + c.count, serves: [...old.serves, ...c.serves], note: old.note || c.note || '' }
        : c,
    );
  }
  return [...rows.values()];
}

function lineOf(c: Counted, { buying }: TakeoffContext): Line {
  const common = {
    group: 'connectors',
    phase: c.phase,
    item: c.item,
    net: c.count,
    unit: 'each',
    serves: c.serves,
    note: c.note ?? '',
  } as const;
  if (c.perPound !== undefined)
    return line({
      ...common,
      waste: wasteOf(buying, 'nails'),
      sold: {
        unit: 'lb',
        holds: c.perPound,
        rule: `${Math.round(c.perPound)} to the pound, from its size and the weight of steel`,
      },
    });
  // Small hardware is dropped and bent; connectors and plates are not.
  const small = /screw|bolt|nut|washer/.test(c.item) && !/base|plate|hanger|strap|tie,/.test(c.item);
  return line({ ...common, waste: small ? wasteOf(buying, 'fasteners') : NO_WASTE, sold: EACH });
}

export const fasteners: ItemKind = {
  count: (ctx) =>
    together([
      ...countJoints(ctx).counted,
      ...houseTies.count(ctx),
      ...plies.count(ctx),
      ...sheathingNails.count(ctx),
    ]).map((c) => lineOf(c, ctx)),
};
