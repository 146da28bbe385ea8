import type { Vec3 } from '../../base/vec.js';
import type { HouseRoof, HouseRoofKind } from '../../project/model.js';

/** Planes of an existing roof, counter-clockwise seen from above, overhangs included. */
export interface HouseRoofShape<K extends HouseRoofKind> {
  planes(roof: HouseRoof & { readonly kind: K }): readonly (readonly Vec3[])[];
}
