/**
 * One rafter under a unit of one term: a straight bar on two bearings. Loads act on its axis: vertical loads at the
 * point straight below, normal loads at the foot of the normal, so that both keep their line of action. Load past an end
 * of the axis (plumb cuts) acts at that end.
 */
import { dot, sub, type Vec3 } from '../base/vec.js';
import type { Member, Surface } from '../structure/model.js';
import type { Profile } from './profile.js';
import {
  beamCurves,
  bearingForces,
  type LineLoad,
  loadBefore,
  type PointLoad,
  type Stations,
  type TwoBearings,
} from './two-bearings.js';

export interface Bar {
  readonly start: Vec3;
  /** Unit axis, and its horizontal direction. */
  readonly axis: Vec3;
  readonly level: Vec3;
  readonly up: Vec3;
  readonly cos: number;
  readonly sin: number;
  readonly beam: TwoBearings;
  readonly stations: Stations;
  /** Share of the horizontal force each bearing takes; sums to 1. */
  readonly share: readonly [number, number];
}

/** Effects of one unit: curves at the stations, what each bearing receives, and the whole load, house axes. */
export interface BarUnit {
  readonly m: Float64Array;
  readonly v: Float64Array;
  readonly n: Float64Array;
  readonly sag: Float64Array;
  readonly first: Vec3;
  readonly second: Vec3;
  readonly total: Vec3;
}

/** Force per unit (direction of the load) with where it acts along the axis. */
export interface BarLoad {
  readonly direction: Vec3;
  readonly lines: readonly LineLoad[];
  readonly points: readonly PointLoad[];
}

export const makeBar = (
  member: Member,
  beam: TwoBearings,
  stations: Stations,
  share: readonly [number, number],
): Bar => {
  const d = sub(member.end, member.start);
  const level = Math.hypot(d.x, d.y);
  return {
    start: member.start,
    axis: { x: d.x / beam.length, y: d.y / beam.length, z: d.z / beam.length },
    level: { x: d.x / level, y: d.y / level, z: 0 },
    up: member.up,
    cos: level / beam.length,
    sin: d.z / beam.length,
    beam,
    stations,
    share,
  };
};

/** Where a height v of a surface meets the axis: place = at + rate · v. */
export function placeOnBar(
  bar: Bar,
  surface: Surface,
  vertical: boolean,
): { readonly at: number; readonly rate: number } {
  const from = sub(surface.origin, bar.start);
  return vertical
    ? { at: dot(from, bar.level) / bar.cos, rate: dot(surface.v, bar.level) / bar.cos }
    : { at: dot(from, bar.axis), rate: dot(surface.v, bar.axis) };
}

/** A width profile as line loads of one lb per in², with the parts past the ends gathered at the ends. */
export function profileOnBar(bar: Bar, surface: Surface, profile: Profile, vertical: boolean): BarLoad {
  const { at, rate } = placeOnBar(bar, surface, vertical);
  const L = bar.beam.length;
  const lines: LineLoad[] = [];
  const points: PointLoad[] = [];
  for (const q of profile) {
    const flip = rate < 0;
    const a = at + rate * (flip ? q.b : q.a);
    const b = at + rate * (flip ? q.a : q.b);
    // Width per inch of axis: the profile's own length is kept, whatever the rate.
    const stretch = Math.abs(rate);
    const qa = (flip ? q.wb : q.wa) / stretch;
    const qb = (flip ? q.wa : q.wb) / stretch;
    const slope = (qb - qa) / (b - a);
    const value = (x: number): number => qa + slope * (x - a);
    const low = Math.min(Math.max(a, 0), L);
    const high = Math.min(Math.max(b, 0), L);
    if (low > a) points.push({ at: 0, p: ((qa + value(Math.min(b, 0))) / 2) * (Math.min(b, 0) - a) });
    if (b > high) points.push({ at: L, p: ((value(Math.max(a, L)) + qb) / 2) * (b - Math.max(a, L)) });
    if (high > low) lines.push({ a: low, b: high, qa: value(low), qb: value(high) });
  }
  return { direction: vertical ? DOWN : { x: -surface.n.x, y: -surface.n.y, z: -surface.n.z }, lines, points };
}

/** EI of a member for bending in its depth direction, lb·in², from the unadjusted modulus. */
export const bendingStiffness = (m: Member): number => (m.section.values.E * m.section.b * m.section.d ** 3) / 12;

export const DOWN: Vec3 = { x: 0, y: 0, z: -1 };

const scaleLines = (lines: readonly LineLoad[], k: number): LineLoad[] =>
  lines.map((l) => ({ a: l.a, b: l.b, qa: l.qa * k, qb: l.qb * k }));
const scalePoints = (points: readonly PointLoad[], k: number): PointLoad[] =>
  points.map((p) => ({ at: p.at, p: p.p * k }));

/** Solves one load exactly. The bearings take the transverse part by the lever, the horizontal part by their shares. */
export function solveBar(bar: Bar, load: BarLoad): BarUnit {
  const f = load.direction;
  const across = -dot(f, bar.up);
  const along = dot(f, bar.axis);
  const lines = scaleLines(load.lines, across);
  const points = scalePoints(load.points, across);
  const forces = bearingForces(bar.beam, lines, points);
  const curves = beamCurves(bar.beam, lines, points, forces, bar.stations);

  let amount = 0;
  for (const l of load.lines) amount += ((l.qa + l.qb) / 2) * (l.b - l.a);
  for (const p of load.points) amount += p.p;
  const horizontal = amount * dot(f, bar.level);
  // Force of each bearing on the bar: its part along `up` is fixed by statics, its horizontal part by the shares.
  const bearing = (i: 0 | 1) => {
    const h = -bar.share[i] * horizontal;
    const z = (forces[i] + h * bar.sin) / bar.cos;
    return { h, z, along: h * bar.cos + z * bar.sin };
  };
  const one = bearing(0);
  const two = bearing(1);
  const axialLines = scaleLines(load.lines, along);
  const axialPoints = [
    ...scalePoints(load.points, along),
    { at: bar.beam.first, p: one.along },
    { at: bar.beam.second, p: two.along },
  ];
  const { x, side } = bar.stations;
  const n = new Float64Array(x.length);
  for (let i = 0; i < n.length; i++) n[i] = -loadBefore(axialLines, axialPoints, x[i]!, side[i]!);
  const received = (r: { h: number; z: number }): Vec3 => ({ x: -r.h * bar.level.x, y: -r.h * bar.level.y, z: -r.z });
  return {
    ...curves,
    n,
    first: received(one),
    second: received(two),
    total: { x: amount * f.x, y: amount * f.y, z: amount * f.z },
  };
}
