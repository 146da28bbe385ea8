import { cross, dot, length, scale, sub, unit, type Vec3 } from '../vec.js';

/** Right-handed unit axes of a member. */
export interface MemberAxes {
  /** Along the member, from start to end. */
  readonly x: Vec3;
  /** Across it, as close to the reference direction `up` as can be: the depth of the section runs along y. */
  readonly y: Vec3;
  /** x × y: the width of the section runs along z. */
  readonly z: Vec3;
  readonly length: number;
}

/** Sine of the least angle between a member and its `up` at which the axes are still trusted. */
const LEAST_SINE = 1e-6;

/**
 * Axes of a member from `start` to `end`. Undefined when the member has no length or `up` runs along it, so that no
 * depth direction can be told; for a post give a level `up`.
 */
export function memberAxes(start: Vec3, end: Vec3, up: Vec3): MemberAxes | undefined {
  const run = sub(end, start);
  const l = length(run);
  const size = length(up);
  if (!(l > 0) || !(size > 0) || !Number.isFinite(l + size)) return undefined;
  const x = scale(run, 1 / l);
  const across = sub(up, scale(x, dot(up, x)));
  if (length(across) < LEAST_SINE * size) return undefined;
  const y = unit(across);
  return { x, y, z: cross(x, y), length: l };
}
