import type { ItemKind } from '../model.js';
import { roofAreas } from '../roofing/area.js';
import { systemOf } from '../roofing/registry.js';

/** The covering itself, as its system is bought. */
export const roofing: ItemKind = {
  count: (ctx) => roofAreas(ctx).flatMap((r) => systemOf(r.covering.id).lines(r, ctx)),
};
