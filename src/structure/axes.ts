import type { Vec3 } from '../base/vec.js';
import type { ShedFall } from '../project/model.js';

/**
 * Roof axes: `a` across the ridge (growing to the right, looking along it), `l` along the ridge, `z` up. Right-handed, so a
 * roof shape is written once for both ridge directions.
 */
export interface RoofAxes {
  readonly across: Vec3;
  readonly along: Vec3;
}

const AXES: Readonly<Record<'x' | 'y', RoofAxes>> = {
  y: { across: { x: 1, y: 0, z: 0 }, along: { x: 0, y: 1, z: 0 } },
  x: { across: { x: 0, y: -1, z: 0 }, along: { x: 1, y: 0, z: 0 } },
};

/** Axes of a one-slope roof: it rises with `a`, against the direction it falls in. */
const FALL_AXES: Readonly<Record<ShedFall, RoofAxes>> = {
  '+y': AXES.x,
  '-x': AXES.y,
  '+x': { across: { x: -1, y: 0, z: 0 }, along: { x: 0, y: -1, z: 0 } },
};

export const fallAxes = (fall: ShedFall): RoofAxes => FALL_AXES[fall];

export const roofAxes = (ridge: 'x' | 'y'): RoofAxes => AXES[ridge];

/** House point of roof coordinates. */
export const toHouse = (axes: RoofAxes, a: number, l: number, z: number): Vec3 => ({
  x: axes.across.x * a + axes.along.x * l,
  y: axes.across.y * a + axes.along.y * l,
  z,
});

/** Roof coordinates of a plan point. */
export const toRoof = (axes: RoofAxes, p: { readonly x: number; readonly y: number }): { a: number; l: number } => ({
  a: axes.across.x * p.x + axes.across.y * p.y,
  l: axes.along.x * p.x + axes.along.y * p.y,
});
