import type { Vec3 } from '../../base/vec.js';
import type { HouseRoof } from '../../project/model.js';

/**
 * A house roof in its own axes: `a` across the ridge, `l` along it, from the wall-line rectangle. Every plane passes through
 * the plate height over its wall line.
 */
export interface RoofRectangle {
  readonly a0: number;
  readonly a1: number;
  readonly l0: number;
  readonly l1: number;
  readonly at: (a: number, l: number, z: number) => Vec3;
}

export function rectangleOf(r: HouseRoof): RoofRectangle {
  // Across runs to +x for a ridge along y and to −y for one along x, so that the frame stays right-handed.
  return r.ridge === 'y'
    ? { a0: r.min.x, a1: r.max.x, l0: r.min.y, l1: r.max.y, at: (a, l, z) => ({ x: a, y: l, z }) }
    : { a0: -r.max.y, a1: -r.min.y, l0: r.min.x, l1: r.max.x, at: (a, l, z) => ({ x: l, y: -a, z }) };
}
