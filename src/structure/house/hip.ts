import type { Vec3 } from '../../base/vec.js';
import type { HouseRoofShape } from './contract.js';
import { rectangleOf } from './rectangle.js';

/** Four planes of one pitch, the same overhang all round; a square house comes to a point. */
export const hip: HouseRoofShape<'hip'> = {
  planes(r) {
    const { a0, a1, l0, l1, at } = rectangleOf(r);
    const tan = Math.tan(r.pitch);
    const o = r.overhang;
    const [A0, A1, L0, L1] = [a0 - o, a1 + o, l0 - o, l1 + o];
    const eave = r.plate - o * tan;
    // The ridge runs along the longer side whatever the file says: equal pitches leave no choice.
    const half = Math.min(A1 - A0, L1 - L0) / 2;
    const top = eave + half * tan;
    const p = at(A0 + half, L0 + half, top);
    const q = at(A1 - half, L1 - half, top);
    const c00 = at(A0, L0, eave);
    const c10 = at(A1, L0, eave);
    const c11 = at(A1, L1, eave);
    const c01 = at(A0, L1, eave);
    const long = A1 - A0 < L1 - L0;
    const planes: Vec3[][] = long
      ? [
          [c00, c10, p],
          [c10, c11, q, p],
          [c11, c01, q],
          [c01, c00, p, q],
        ]
      : [
          [c00, c10, q, p],
          [c10, c11, q],
          [c11, c01, p, q],
          [c01, c00, p],
        ];
    return planes.map(withoutRepeats);
  },
};

/** A square roof's ridge has no length: its four-cornered planes are triangles. */
const withoutRepeats = (ring: readonly Vec3[]): Vec3[] =>
  ring.filter((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z) > 1e-6;
  });
