import type { Vec2 } from '../base/vec.js';
import type { Lot } from '../project/model.js';

/**
 * A ground offset (east, north of the house origin) in house axes: y along the azimuth `outward`, x a quarter turn
 * clockwise from it, so that z is up.
 */
export function toHouse(east: number, north: number, outward: number): Vec2 {
  const s = Math.sin(outward);
  const c = Math.cos(outward);
  return { x: tidy(east * c - north * s), y: tidy(east * s + north * c) };
}

/** To a millionth of an inch, so that sines of different machines give the same corner and right angles stay right. */
const tidy = (v: number): number => Math.round(v * 1e6) / 1e6 + 0;

/** Direction of north, radians counter-clockwise from the house x axis, from 0 to less than 2π. */
export function northAngle(outward: number): number {
  const full = 2 * Math.PI;
  return (((Math.PI / 2 + outward) % full) + full) % full;
}

export interface Traverse {
  /** Corners from the point of beginning; the misclosure is left in the last side. House axes. */
  readonly corners: readonly Vec2[];
  readonly closure: {
    readonly error: number;
    readonly perimeter: number;
    readonly ratio: number;
    readonly azimuth: number;
  };
}

/** Runs the courses: each adds distance·(sin, cos) of its azimuth to east and north. */
export function runTraverse(lot: Lot): Traverse {
  let east = -lot.origin.east;
  let north = -lot.origin.north;
  let perimeter = 0;
  const corners: Vec2[] = [];
  for (const c of lot.courses) {
    corners.push(toHouse(east, north, lot.outward));
    east += c.distance * Math.sin(c.azimuth);
    north += c.distance * Math.cos(c.azimuth);
    perimeter += c.distance;
  }
  const back = { east: -lot.origin.east - east, north: -lot.origin.north - north };
  const error = tidy(Math.hypot(back.east, back.north));
  const azimuth = error === 0 ? 0 : Math.atan2(back.east, back.north);
  return {
    corners,
    closure: { error, perimeter, ratio: error / perimeter, azimuth: azimuth < 0 ? azimuth + 2 * Math.PI : azimuth },
  };
}
