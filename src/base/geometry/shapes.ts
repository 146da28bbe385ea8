import { signedArea } from '../plane.js';
import { add, cross, dot, scale, type Vec2, type Vec3 } from '../vec.js';
import { memberAxes } from './axes.js';
import type { Solid } from './solid.js';

/** Upright box between two corners. */
export function box(min: Vec3, max: Vec3): Solid {
  const ring = [
    { x: min.x, y: min.y },
    { x: max.x, y: min.y },
    { x: max.x, y: max.y },
    { x: min.x, y: max.y },
  ];
  const origin = { x: 0, y: 0, z: min.z };
  return prism(ring, origin, { x: 1, y: 0, z: 0 }, { x: 0, y: 1, z: 0 }, { x: 0, y: 0, z: max.z - min.z });
}

/**
 * A convex profile, drawn in the plane through `origin` spanned by `ux` and `uy`, pushed along `run`. The profile may
 * turn either way and `run` may point to either side: the faces look outward all the same.
 */
export function prism(profile: readonly Vec2[], origin: Vec3, ux: Vec3, uy: Vec3, run: Vec3): Solid {
  const n = profile.length;
  const turn = signedArea(profile) * dot(cross(ux, uy), run);
  if (n < 3 || !(Math.abs(turn) > 0))
    throw new RangeError('a prism needs a profile with area and a run out of its plane');
  const ring = turn > 0 ? profile : [...profile].reverse();
  const near = ring.map((p) => add(origin, add(scale(ux, p.x), scale(uy, p.y))));
  const indices = ring.map((_, i) => i);
  const sides = indices.map((i) => {
    const j = (i + 1) % n;
    return [i, j, n + j, n + i];
  });
  return {
    vertices: [...near, ...near.map((p) => add(p, run))],
    faces: [[...indices].reverse(), indices.map((i) => n + i), ...sides],
  };
}

export interface BarOptions {
  /** Moves the section along the depth direction, e.g. `-depth / 2` hangs the bar under its line. */
  readonly rise?: number;
  /** Moves the section along x × y (to the right, seen from the start with `up` upward). */
  readonly aside?: number;
  /** Extra length beyond the start and beyond the end; negative cuts back. */
  readonly extendStart?: number;
  readonly extendEnd?: number;
}

/**
 * Rectangular bar from `start` to `end`, its line at the centre of the section. `depth` is measured along `up` made
 * square to the line, `width` across both. Throws when no depth direction can be told (see memberAxes).
 */
export function barBetween(
  start: Vec3,
  end: Vec3,
  up: Vec3,
  width: number,
  depth: number,
  { rise = 0, aside = 0, extendStart = 0, extendEnd = 0 }: BarOptions = {},
): Solid {
  const a = memberAxes(start, end, up);
  if (!a) throw new RangeError('a bar needs a length, and an up that does not run along it');
  const h = depth / 2;
  const w = width / 2;
  const profile = [
    { x: rise - h, y: aside - w },
    { x: rise + h, y: aside - w },
    { x: rise + h, y: aside + w },
    { x: rise - h, y: aside + w },
  ];
  const origin = add(start, scale(a.x, -extendStart));
  return prism(profile, origin, a.y, a.z, scale(a.x, a.length + extendStart + extendEnd));
}
