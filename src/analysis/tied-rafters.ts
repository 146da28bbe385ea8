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
import { distance, dot, sub, type Vec3 } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import { type Catch, catchTerms, rafterLoad } from './catch.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import type { MemberEffects } from './model.js';
import { type Bar, type BarLoad, DOWN, makeBar } from './rafter.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Terms } from './terms.js';
import {
  beamCurves,
  bearingForces,
  loadBefore,
  makeSpans,
  makeStations,
  type PointLoad,
  type Stations,
} from './two-bearings.js';

export interface TiedFrames {
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly joints: ReadonlyMap<string, Rows>;
  readonly applied: Rows;
  readonly failures: readonly string[];
}

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

const along = (bar: Bar, d: number): { h: number; z: number } => ({ h: d * bar.cos, z: d * bar.sin });

/** Stations of a rafter with the tie's place among them; the tie is no support, so spans stay whole. */
function stationsOf(length: number, foot: number, tie: number): Stations {
  // The end counts as a support here, so that the stretch up to the ridge is divided as a span.
  const places = Math.abs(tie - foot) > 1 ? [foot, tie].sort((p, q) => p - q) : [foot];
  const made = makeStations(length, [...places, length]);
  const spanOf = made.x.map((x, i) => (foot > 1e-9 && (x > foot || (x === foot && made.side[i]! > 0)) ? 1 : 0));
  return { ...made, spanOf: Int32Array.from(spanOf) };
}

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
  /** Moment about the eave end of the left rafter's foot line is taken later: the load's points in frame axes. */
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

const NONE: BarLoad = { direction: DOWN, lines: [], points: [] };

function halvesOf(index: StructureIndex, tie: Member): Half[] | string {
  const out: Half[] = [];
  for (const j of index.structure.joints) {
    if (j.kind !== 'tie-to-rafter' || j.ties[0]!.part !== tie.id) continue;
    const on = j.ties[1]!;
    const member = index.members.get(on.part)!;
    const foot = (index.below.get(member.id) ?? [])[0];
    const ridge = index.structure.joints.find((k) => k.kind === 'rafter-to-ridge' && k.ties[0]!.part === member.id);
    if (!foot || !ridge) return `${member.id} has no bearing or no ridge`;
    const length = distance(member.start, member.end);
    const EI = (member.section.values.E * member.section.b * member.section.d ** 3) / 12;
    const beam = { length, first: foot.upperAlong, second: length, EI };
    const bar = makeBar(member, beam, stationsOf(length, foot.upperAlong, on.along), [1, 0]);
    const board = index.members.get(ridge.ties[1]!.part)!;
    const atHinge = length + board.section.width / 2 / bar.cos;
    out.push({
      member,
      bar,
      foot,
      atFoot: foot.upperAlong,
      atTie: on.along,
      atHinge,
      tieJoint: j.id,
      ridgeJoint: ridge.id,
    });
  }
  return out.length === 2 ? out : `${tie.id} ties ${out.length} rafters, not two`;
}

/** Rafters that belong to a tied pair: the ordinary framing tier leaves them to this one. */
export const tiedRafters = (index: StructureIndex): ReadonlySet<string> =>
  new Set(index.structure.joints.filter((j) => j.kind === 'tie-to-rafter').map((j) => j.ties[1]!.part));

export function analyseTied(index: StructureIndex, terms: Terms): TiedFrames {
  const cases = terms.cases.length;
  const members = new Map<string, MemberEffects>();
  const joints = new Map<string, Rows>();
  const applied = makeRows(cases);
  const failures: string[] = [];
  for (const tie of index.structure.members) {
    if (tie.role !== 'tie') continue;
    const found = halvesOf(index, tie);
    if (typeof found === 'string') {
      failures.push(found);
      continue;
    }
    const [left, right] = found as [Half, Half];
    const frame = frameOf(left, right);
    const caught = found.map((h): Catch => catchTerms(h.member, terms.terms, index.surfaces));
    const units = terms.terms.map((term, i) => {
      const loads = found.map((h, k) => {
        const c = caught[k]![i];
        return c === undefined ? NONE : rafterLoad(h.bar, term, index.surfaces.get(term.surface)!, c);
      }) as [BarLoad, BarLoad];
      return caught.some((c) => c[i] !== undefined) ? solveFrame(frame, loads, 0) : undefined;
    });
    const self = solveFrame(frame, ownWeight(index, tie, found), boardWeight(index, left));
    const sum = terms.cases.map((c) => {
      const list: { unit: FrameUnit; factor: number }[] = [];
      if (c.self !== 0) list.push({ unit: self, factor: c.self });
      c.term.forEach((t, k) => {
        const unit = units[t];
        if (unit) list.push({ unit, factor: c.factor[k]! });
      });
      return list;
    });
    found.forEach((h, k) => {
      const curve = (pick: 'm' | 'v' | 'n' | 'sag'): Float64Array[] =>
        sum.map((list) => {
          const out = new Float64Array(h.bar.stations.x.length);
          for (const { unit, factor } of list) {
            const row = unit.halves[k]![pick];
            for (let i = 0; i < out.length; i++) out[i] = out[i]! + factor * row[i]!;
          }
          return out;
        });
      const zero = new Float64Array(h.bar.stations.x.length);
      const flat = terms.cases.map(() => zero);
      members.set(h.member.id, {
        member: h.member.id,
        stations: h.bar.stations.x,
        spanOf: h.bar.stations.spanOf,
        spans: makeSpans(h.bar.beam.length, [h.atFoot, h.bar.beam.length]),
        m: curve('m'),
        v: curve('v'),
        n: curve('n'),
        mWeak: flat,
        vWeak: flat,
        sag: curve('sag'),
      });
      const e = left.bar.level;
      const sense = k === 0 ? 1 : -1;
      const halfTie = (tie.section.weight * tie.length) / 2;
      sum.forEach((list, c) => {
        for (const { unit, factor } of list) {
          const u = unit.halves[k]!;
          addTo(rowsOf(joints, h.foot.joint.id, cases), c, u.foot.x, u.foot.y, u.foot.z, factor);
          addTo(rowsOf(joints, h.ridgeJoint, cases), c, u.ridge.x, u.ridge.y, u.ridge.z, factor);
          const weight = unit === self ? halfTie : 0;
          const t = sense * unit.T;
          addTo(rowsOf(joints, h.tieJoint, cases), c, t * e.x, t * e.y, -weight, factor);
        }
      });
    });
    sum.forEach((list, c) => {
      for (const { unit, factor } of list) addTo(applied, c, unit.total.x, unit.total.y, unit.total.z, factor);
    });
    members.set(tie.id, tieEffects(tie, found, sum, terms));
  }
  return { members, joints, applied, failures };
}

/** Rafters' own weight and half of the tie's at each of its joints. */
function ownWeight(index: StructureIndex, tie: Member, found: readonly Half[]): [BarLoad, BarLoad] {
  const half = (tie.section.weight * tie.length) / 2;
  return found.map((h): BarLoad => {
    const w = index.members.get(h.member.id)!.section.weight;
    const lines = [{ a: 0, b: h.bar.beam.length, qa: w, qb: w }];
    return { direction: DOWN, lines, points: [{ at: h.atTie, p: half }] };
  }) as [BarLoad, BarLoad];
}

/** Weight of the stretch of ridge board over one pair: as wide as the pair's strip of roof. */
function boardWeight(index: StructureIndex, half: Half): number {
  const joint = index.structure.joints.find((j) => j.id === half.ridgeJoint)!;
  const board = index.members.get(joint.ties[1]!.part)!;
  const strip = half.member.strips[0];
  return strip ? board.section.weight * (strip.u1 - strip.u0) : 0;
}

/** Tension along the tie in every case; bending by its own weight alone, between its two joints. */
function tieEffects(
  tie: Member,
  found: readonly Half[],
  sum: readonly (readonly { unit: FrameUnit; factor: number }[])[],
  terms: Terms,
): MemberEffects {
  const L = distance(tie.start, tie.end);
  const axis = { x: (tie.end.x - tie.start.x) / L, y: (tie.end.y - tie.start.y) / L, z: 0 };
  const at = found
    .map((h) => {
      const s = along(h.bar, h.atTie);
      const p = { x: h.bar.start.x + s.h * h.bar.level.x, y: h.bar.start.y + s.h * h.bar.level.y, z: tie.start.z };
      return Math.min(L, Math.max(0, dot(sub(p, tie.start), axis)));
    })
    .sort((p, q) => p - q) as [number, number];
  const stations = makeStations(L, at);
  const { E } = tie.section.values;
  const beam = { length: L, first: at[0], second: at[1], EI: (E * tie.section.b * tie.section.d ** 3) / 12 };
  const lines = [{ a: 0, b: L, qa: tie.section.weight, qb: tie.section.weight }];
  const self = beamCurves(beam, lines, [], bearingForces(beam, lines, []), stations);
  const size = stations.x.length;
  const zero = new Float64Array(size);
  const flat = terms.cases.map(() => zero);
  const own = (curve: Float64Array): Float64Array[] => terms.cases.map((c) => curve.map((v) => c.self * v));
  const T = sum.map((list) => list.reduce((t, { unit, factor }) => t + factor * unit.T, 0));
  return {
    member: tie.id,
    stations: stations.x,
    spanOf: stations.spanOf,
    spans: makeSpans(L, at),
    m: own(self.m),
    v: own(self.v),
    n: T.map((t) => stations.x.map((x) => (x < at[0] || x > at[1] ? 0 : t))),
    mWeak: flat,
    vWeak: flat,
    sag: own(self.sag),
  };
}
