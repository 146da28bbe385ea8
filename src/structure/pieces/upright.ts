import { prism } from '../../base/geometry/index.js';
import { area } from '../../base/plane.js';
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Solid } from '../model.js';

const UP: Vec3 = { x: 0, y: 0, z: 1 };

/** Smallest face worth drawing, square inches. */
const LEAST_AREA = 0.01;

/** An upright plane through a line on the ground: profiles in it are drawn as (distance along, height). */
export interface Upright {
  readonly origin: Vec2;
  /** Level unit vector along the line. */
  readonly dir: Vec2;
}

/** Part of an upright profile as a plate of some thickness, from `near` to `far` to the left of the line. */
export function plate(on: Upright, profile: readonly Vec2[], near: number, far: number): Solid[] {
  if (profile.length < 3 || area(profile) < LEAST_AREA) return [];
  const left = { x: -on.dir.y, y: on.dir.x };
  const origin = { x: on.origin.x + left.x * near, y: on.origin.y + left.y * near, z: 0 };
  const run = { x: left.x * (far - near), y: left.y * (far - near), z: 0 };
  return [prism(tidy(profile), origin, { x: on.dir.x, y: on.dir.y, z: 0 }, UP, run)];
}

/** Without corners that clipping left in one place. */
function tidy(p: readonly Vec2[]): Vec2[] {
  return p.filter((a, i) => {
    const b = p[(i + 1) % p.length]!;
    return Math.hypot(a.x - b.x, a.y - b.y) > 1e-7;
  });
}

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];
