/**
 * Beam on two bearings with overhangs, statically determinate: exact shear, moment and deflection at stations from
 * piecewise linear and point loads square to its axis (Macaulay brackets). Inches and pounds.
 */

/** Load square to the axis, positive against `up` (downward), lb/in, straight from `qa` at `a` to `qb` at `b`. */
export interface LineLoad {
  readonly a: number;
  readonly b: number;
  readonly qa: number;
  readonly qb: number;
}

export interface PointLoad {
  readonly at: number;
  readonly p: number;
}

export interface TwoBearings {
  readonly length: number;
  /** Positions of the bearings along the axis, lower first. */
  readonly first: number;
  readonly second: number;
  readonly EI: number;
}

export interface Stations {
  readonly x: Float64Array;
  /** −1: values just left of the place, +1: just right. */
  readonly side: Int8Array;
  readonly spanOf: Int32Array;
}

const total = (l: LineLoad): number => ((l.qa + l.qb) / 2) * (l.b - l.a);
const firstMoment = (l: LineLoad): number => {
  const h = l.b - l.a;
  return total(l) * l.a + (h * h * (l.qa + 2 * l.qb)) / 6;
};

/** Forces of the two bearings on the beam along `up`. */
export function bearingForces(
  beam: TwoBearings,
  lines: readonly LineLoad[],
  points: readonly PointLoad[],
): readonly [number, number] {
  let force = 0;
  let moment = 0;
  for (const l of lines) {
    force += total(l);
    moment += firstMoment(l);
  }
  for (const p of points) {
    force += p.p;
    moment += p.p * p.at;
  }
  const second = (moment - force * beam.first) / (beam.second - beam.first);
  return [force - second, second];
}

/** Sum over the loads of their n-fold integral at `x`: 1 shear, 2 moment, 4 EI times deflection. Bearings count as points. */
function loadIntegral(
  lines: readonly LineLoad[],
  points: readonly PointLoad[],
  x: number,
  side: number,
  n: 1 | 2 | 4,
): number {
  const [down, slopeDown] = n === 1 ? [1, 2] : n === 2 ? [2, 6] : [24, 120];
  let sum = 0;
  for (const l of lines) {
    if (x <= l.a) continue;
    const k = (l.qb - l.qa) / (l.b - l.a);
    const d = x - l.a;
    const dn = n === 1 ? d : n === 2 ? d * d : d * d * d * d;
    sum += (l.qa * dn) / down! + (k * dn * d) / slopeDown!;
    if (x > l.b) {
      const e = x - l.b;
      const en = n === 1 ? e : n === 2 ? e * e : e * e * e * e;
      sum -= (l.qb * en) / down! + (k * en * e) / slopeDown!;
    }
  }
  for (const p of points) {
    const d = x - p.at;
    if (d < 0 || (d === 0 && side < 0)) continue;
    sum += p.p * (n === 1 ? 1 : n === 2 ? d : (d * d * d) / 6);
  }
  return sum;
}

/** Sum of the loads left of `x` (`side` −1: without a point load at `x` itself). */
export const loadBefore = (lines: readonly LineLoad[], points: readonly PointLoad[], x: number, side: number): number =>
  loadIntegral(lines, points, x, side, 1);

export interface BeamCurves {
  /** dm/dx. */
  readonly v: Float64Array;
  /** Positive with the edge away from `up` in tension. */
  readonly m: Float64Array;
  /** Positive against `up`, from the line through the two bearings. */
  readonly sag: Float64Array;
}

/** Shear, moment and sag at the stations; `forces` from `bearingForces`. */
export function beamCurves(
  beam: TwoBearings,
  lines: readonly LineLoad[],
  points: readonly PointLoad[],
  forces: readonly [number, number],
  stations: Stations,
): BeamCurves {
  const n = stations.x.length;
  const all: PointLoad[] = [...points, { at: beam.first, p: -forces[0] }, { at: beam.second, p: -forces[1] }];
  const v = new Float64Array(n);
  const m = new Float64Array(n);
  const sag = new Float64Array(n);
  // EI·y'' = m with y along `up`; two constants put y = 0 at the bearings.
  const y1 = -loadIntegral(lines, all, beam.first, 1, 4);
  const y2 = -loadIntegral(lines, all, beam.second, 1, 4);
  const tilt = (y2 - y1) / (beam.second - beam.first);
  for (let i = 0; i < n; i++) {
    const x = stations.x[i]!;
    const side = stations.side[i]!;
    v[i] = -loadIntegral(lines, all, x, side, 1);
    m[i] = -loadIntegral(lines, all, x, side, 2);
    const y = -loadIntegral(lines, all, x, side, 4) - y1 - tilt * (x - beam.first);
    sag[i] = -y / beam.EI;
  }
  return { v, m, sag };
}

/** Stations per span; even, so that midspan is one of them. */
const PER_SPAN = 24;
const PER_OVERHANG = 6;

/** Even stations over overhangs and spans bounded by `supports` (increasing); supports appear twice. */
export function makeStations(length: number, supports: readonly number[]): Stations {
  const x: number[] = [];
  const side: number[] = [];
  const spanOf: number[] = [];
  const marks = [0, ...supports, length];
  let span = 0;
  for (let k = 0; k + 1 < marks.length; k++) {
    const a = marks[k]!;
    const b = marks[k + 1]!;
    if (b - a <= 1e-9) continue;
    const overhang = k === 0 || k === marks.length - 2;
    const parts = overhang ? PER_OVERHANG : PER_SPAN;
    for (let i = 0; i <= parts; i++) {
      x.push(i === parts ? b : a + ((b - a) * i) / parts);
      side.push(i === parts ? -1 : 1);
      spanOf.push(span);
    }
    span++;
  }
  return { x: Float64Array.from(x), side: Int8Array.from(side), spanOf: Int32Array.from(spanOf) };
}

/** Spans and overhangs as `makeStations` counts them. */
export function makeSpans(
  length: number,
  supports: readonly number[],
): readonly { from: number; to: number; length: number; kind: 'span' | 'overhang' }[] {
  const marks = [0, ...supports, length];
  const spans: { from: number; to: number; length: number; kind: 'span' | 'overhang' }[] = [];
  for (let k = 0; k + 1 < marks.length; k++) {
    const from = marks[k]!;
    const to = marks[k + 1]!;
    if (to - from <= 1e-9) continue;
    spans.push({ from, to, length: to - from, kind: k === 0 || k === marks.length - 2 ? 'overhang' : 'span' });
  }
  return spans;
}
