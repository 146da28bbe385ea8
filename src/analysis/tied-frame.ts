/**
 * Tier 1, rafters that meet at a ridge board with a tie below: each pair is a frame of two bars hinged at the ridge and
 * tied, on two bearings. It is statically determinate, so everything follows from equilibrium:
 *
 *              hinge
 *             ／    ＼
 *           ／________＼   tie, tension T
 *         ／            ＼
 *        △              △   V at each foot; horizontal load half to each foot
 *
 * V from moments of the whole about a foot; T from moments of one rafter about the hinge; the hinge force from the
 * forces on that rafter. Gravity leaves no horizontal force at the feet: the tie holds it all. Rafters run from eave
 * to ridge board; the hinge stands on the ridge line. The board's weight hangs in the hinge, half on each rafter.
 */
import { dot, type Vec3 } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import type { Bearing } from './index-structure.js';
import type { Bar, BarLoad } from './rafter.js';
import { beamCurves, loadBefore, type PointLoad } from './two-bearings.js';

/** One rafter of a pair. Distances along its axis from the eave end, inches. */
export interface Half {
  readonly member: Member;
  readonly bar: Bar;
  readonly foot: Bearing;
  readonly atFoot: number;
  readonly atTie: number;
  readonly atHinge: number;
  readonly tieJoint: string;
  readonly ridgeJoint: string;
}

/** Force in the frame's plane: `h` along the left rafter's level direction, `z` up. */
interface Force {
  readonly h: number;
  readonly z: number;
}

export const along = (bar: Bar, d: number): { h: number; z: number } => ({ h: d * bar.cos, z: d * bar.sin });

interface HalfUnit {
  readonly m: Float64Array;
  readonly v: Float64Array;
  readonly n: Float64Array;
  readonly sag: Float64Array;
  /** What the foot's bearing receives, and what the ridge board does, house axes. */
  readonly foot: Vec3;
  readonly ridge: Vec3;
}

export interface FrameUnit {
  readonly halves: readonly [HalfUnit, HalfUnit];
  /** Tension in the tie, lb. */
  readonly T: number;
  readonly total: Vec3;
}

interface Moved {
  readonly amount: Force;
  /** The load as single forces at places in frame axes. */
  readonly points: readonly { readonly h: number; readonly z: number; readonly force: Force }[];
}

/** Frame geometry shared by all units. `left` has its level direction as the frame's. */
export interface Frame {
  readonly halves: readonly [Half, Half];
  /** Places in frame axes with the left foot's axis point as origin. */
  readonly foot: readonly [Force, Force];
  readonly hinge: Force;
  readonly tie: readonly [number, number];
}

export function frameOf(left: Half, right: Half): Frame {
  const place = (half: Half, d: number): Force => {
    const e = left.bar.level;
    const p = half.bar.start;
    const o = left.bar.start;
    const s = along(half.bar, d);
    const facing = dot(half.bar.level, e);
    return { h: (p.x - o.x) * e.x + (p.y - o.y) * e.y + facing * s.h, z: p.z + s.z };
  };
  const at = (half: Half, d: number): Force => {
    const zero = place(left, left.atFoot);
    const q = place(half, d);
    return { h: q.h - zero.h, z: q.z - zero.z };
  };
  return {
    halves: [left, right],
    foot: [at(left, left.atFoot), at(right, right.atFoot)],
    hinge: at(left, left.atHinge),
    tie: [at(left, left.atTie).z, at(right, right.atTie).z],
  };
}

/** Loads of one rafter as single forces in frame axes: lines by their resultants, exact for moments. */
function moved(frame: Frame, k: 0 | 1, load: BarLoad): Moved {
  const half = frame.halves[k];
  const e = frame.halves[0].bar.level;
  const f = { h: dot(load.direction, e), z: load.direction.z };
  const facing = dot(half.bar.level, e);
  const origin = frame.foot[k];
  const points: { h: number; z: number; force: Force }[] = [];
  const put = (d: number, p: number): void => {
    const s = along(half.bar, d - half.atFoot);
    points.push({ h: origin.h + facing * s.h, z: origin.z + s.z, force: { h: p * f.h, z: p * f.z } });
  };
  for (const l of load.lines) {
    const p = ((l.qa + l.qb) / 2) * (l.b - l.a);
    if (p === 0) continue;
    const first = p * l.a + ((l.b - l.a) ** 2 * (l.qa + 2 * l.qb)) / 6;
    put(first / p, p);
  }
  for (const q of load.points) put(q.at, q.p);
  const amount = points.reduce((sum, q) => ({ h: sum.h + q.force.h, z: sum.z + q.force.z }), { h: 0, z: 0 });
  return { amount, points };
}

/** Moment of forces about a point, turning from h toward z. */
const momentAbout = (o: Force, points: Moved['points']): number =>
  points.reduce((sum, q) => sum + (q.h - o.h) * q.force.z - (q.z - o.z) * q.force.h, 0);

/** Equilibrium of one load on both rafters; `hang` is a force straight down in the hinge, half on each. */
export function solveFrame(frame: Frame, loads: readonly [BarLoad, BarLoad], hang: number): FrameUnit {
  const [left, right] = frame.halves;
  const [l, r] = [moved(frame, 0, loads[0]), moved(frame, 1, loads[1])];
  const { hinge, foot } = frame;
  const H = -(l.amount.h + r.amount.h) / 2;
  const whole = [...l.points, ...r.points, { ...hinge, force: { h: 0, z: -hang } }];
  const V2 = -(momentAbout(foot[0], whole) - (foot[1].z - foot[0].z) * H) / (foot[1].h - foot[0].h);
  const V1 = -(l.amount.z + r.amount.z - hang) - V2;
  const feet = [
    { h: H, z: V1 },
    { h: H, z: V2 },
  ] as const;
  const aboutHinge = momentAbout(hinge, [...l.points, { ...foot[0], force: feet[0] }]);
  // The tie draws the left rafter along +h below the hinge: its moment is −(z − hinge.z)·T.
  const T = aboutHinge / (frame.tie[0] - hinge.z);
  const halves = ([left, right] as const).map((half, k) => {
    const load = loads[k]!;
    const sense = k === 0 ? 1 : -1;
    const applied = k === 0 ? l.amount : r.amount;
    const ridge = { h: -(applied.h + feet[k]!.h + sense * T), z: -(applied.z - hang / 2 + feet[k]!.z) };
    return halfUnit(half, frame.halves[0].bar.level, load, sense * T, feet[k]!, ridge, hang / 2);
  }) as [HalfUnit, HalfUnit];
  const total = (k: 0 | 1): Vec3 => {
    const load = loads[k];
    let amount = 0;
    for (const q of load.lines) amount += ((q.qa + q.qb) / 2) * (q.b - q.a);
    for (const q of load.points) amount += q.p;
    const d = load.direction;
    return { x: amount * d.x, y: amount * d.y, z: amount * d.z };
  };
  const [a, b] = [total(0), total(1)];
  return { halves, T, total: { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z - hang } };
}

/** Curves along one rafter from everything that acts on it. Forces on the rafter in frame axes. */
function halfUnit(half: Half, e: Vec3, load: BarLoad, tie: number, foot: Force, ridge: Force, hang: number): HalfUnit {
  const { bar } = half;
  const toHouse = (f: Force): Vec3 => ({ x: f.h * e.x, y: f.h * e.y, z: f.z });
  // Points square to the axis (against `up` positive) and along it (uphill positive).
  const point = (at: number, f: Vec3): { across: PointLoad; along: PointLoad } => ({
    across: { at, p: -dot(f, bar.up) },
    along: { at, p: dot(f, bar.axis) },
  });
  const tied = point(half.atTie, toHouse({ h: tie, z: 0 }));
  const on = point(half.atFoot, toHouse(foot));
  const end = point(half.atHinge, toHouse({ h: ridge.h, z: ridge.z - hang }));
  const across = -dot(load.direction, bar.up);
  const axial = dot(load.direction, bar.axis);
  const scale = (k: number) => ({
    lines: load.lines.map((q) => ({ a: q.a, b: q.b, qa: q.qa * k, qb: q.qb * k })),
    points: load.points.map((q) => ({ at: q.at, p: q.p * k })),
  });
  const square = scale(across);
  const lengthwise = scale(axial);
  const beam = { ...bar.beam, first: half.atFoot, second: half.atHinge };
  const points = [...square.points, tied.across];
  const curves = beamCurves(beam, square.lines, points, [-on.across.p, -end.across.p], bar.stations);
  const axialPoints = [...lengthwise.points, tied.along, on.along];
  const { x, side } = bar.stations;
  const n = new Float64Array(x.length);
  for (let i = 0; i < n.length; i++) n[i] = -loadBefore(lengthwise.lines, axialPoints, x[i]!, side[i]!);
  const back = (f: Force): Vec3 => toHouse({ h: -f.h, z: -f.z });
  return { ...curves, n, foot: back(foot), ridge: back(ridge) };
}
