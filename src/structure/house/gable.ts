import type { HouseRoofShape } from './contract.js';
import { rectangleOf } from './rectangle.js';

/** Two planes meeting over the middle, overhanging at the eaves and, by the rake, at the gable ends. */
export const gable: HouseRoofShape<'gable'> = {
  planes(r) {
    const { a0, a1, l0, l1, at } = rectangleOf(r);
    const tan = Math.tan(r.pitch);
    const mid = (a0 + a1) / 2;
    const eave = r.plate - r.overhang * tan;
    const ridge = r.plate + ((a1 - a0) / 2) * tan;
    const [s, e] = [l0 - r.rake, l1 + r.rake];
    return [
      [at(a0 - r.overhang, e, eave), at(a0 - r.overhang, s, eave), at(mid, s, ridge), at(mid, e, ridge)],
      [at(a1 + r.overhang, s, eave), at(a1 + r.overhang, e, eave), at(mid, e, ridge), at(mid, s, ridge)],
    ];
  },
};
