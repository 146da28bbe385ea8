import { contains } from '../../base/plane.js';
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { HousePlane } from '../model.js';

/** Height over a plan point of the plane through three corners of an outline. */
export function planeAt(outline: readonly Vec3[], p: Vec2): number {
  const [a, b, c] = outline as readonly [Vec3, Vec3, Vec3];
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const uz = b.z - a.z;
  const vx = c.x - a.x;
  const vy = c.y - a.y;
  const vz = c.z - a.z;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return a.z - (nx * (p.x - a.x) + ny * (p.y - a.y)) / nz;
}

/** Top of the wall under a house roof at a plan point on the wall line: the roof plane there, at least the plate. */
export function wallTopAt(planes: readonly HousePlane[], p: Vec2, plate: number): number {
  let top = plate;
  for (const plane of planes) {
    if (contains(plane.outline, p, 1e-6)) top = Math.max(top, planeAt(plane.outline, p));
  }
  return top;
}
