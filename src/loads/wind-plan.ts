/** Where a wind direction meets a roof: which way is across, which edge is windward, and regions on its surfaces. */
import type { Vec2 } from '../base/vec.js';
import type { RoofPlaced, Surface } from '../structure/model.js';
import type { WindDirection } from './model.js';

export const DIRECTIONS: readonly WindDirection[] = ['+x', '-x', '+y', '-y'];

export const heading = (d: WindDirection): Vec2 => ({
  x: d === '+x' ? 1 : d === '-x' ? -1 : 0,
  y: d === '+y' ? 1 : d === '-y' ? -1 : 0,
});

/** Plan length of a roof along the wind, inches (L of ASCE 7 Figs. 27.3-4 to 27.3-7). */
export const lengthAlong = (roof: RoofPlaced, d: WindDirection): number =>
  d.endsWith('x') ? roof.max.x - roof.min.x : roof.max.y - roof.min.y;

/** Coordinate of the windward edge measured along the wind, so that distance = p·heading − this. */
export const windwardEdge = (roof: RoofPlaced, d: WindDirection): number =>
  d === '+x' ? roof.min.x : d === '-x' ? -roof.max.x : d === '+y' ? roof.min.y : -roof.max.y;

/** True when the wind crosses the ridge (or runs up or down the fall of a monoslope). */
export const isAcross = (roof: RoofPlaced, d: WindDirection): boolean => !d.endsWith(roof.ridgeAxis);

/** Component of the wind's heading down the slope of a surface: positive when it meets the high edge first. */
export const downWind = (surface: Surface, h: Vec2): number => surface.downhill.x * h.x + surface.downhill.y * h.y;

/** A part of a surface: `whole` leaves the region out; undefined when the zone misses the surface. */
export type Part = { readonly whole: true } | { readonly whole: false; readonly region: readonly Vec2[] } | undefined;

/**
 * The part of a surface between two distances from the roof's windward edge, as a rectangle in its (u, v) frame. The
 * wind must run along u or along v in plan.
 */
export function zoneOn(surface: Surface, roof: RoofPlaced, d: WindDirection, from: number, to: number): Part {
  const h = heading(d);
  let u0 = Number.POSITIVE_INFINITY;
  let u1 = Number.NEGATIVE_INFINITY;
  let v0 = Number.POSITIVE_INFINITY;
  let v1 = Number.NEGATIVE_INFINITY;
  for (const p of surface.outline) {
    u0 = Math.min(u0, p.x);
    u1 = Math.max(u1, p.x);
    v0 = Math.min(v0, p.y);
    v1 = Math.max(v1, p.y);
  }
  const alongU = surface.u.x * h.x + surface.u.y * h.y;
  const alongV = surface.v.x * h.x + surface.v.y * h.y;
  const useU = Math.abs(alongU) > Math.abs(alongV);
  const rate = useU ? alongU : alongV;
  const zero = windwardEdge(roof, d) - (surface.origin.x * h.x + surface.origin.y * h.y);
  const a = (zero + from) / rate;
  const b = (zero + to) / rate;
  const tiny = 1e-6;
  const low = Math.max(Math.min(a, b), useU ? u0 : v0);
  const high = Math.min(Math.max(a, b), useU ? u1 : v1);
  if (high - low <= tiny) return undefined;
  if (low <= (useU ? u0 : v0) + tiny && high >= (useU ? u1 : v1) - tiny) return { whole: true };
  if (useU) {
    u0 = low;
    u1 = high;
  } else {
    v0 = low;
    v1 = high;
  }
  return {
    whole: false,
    region: [
      { x: u0, y: v0 },
      { x: u1, y: v0 },
      { x: u1, y: v1 },
      { x: u0, y: v1 },
    ],
  };
}
