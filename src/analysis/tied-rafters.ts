/**
 * Tier 1, rafters that meet at a ridge board with a tie below: each pair is solved as a tied frame (tied-frame.ts) for a
 * unit of every term, and the units summed case by case to curves, to what the joints hand on, and to the tie's tension.
 */
import { distance, dot, sub } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import { catchTerms, rafterLoad } from './catch.js';
import type { StructureIndex } from './index-structure.js';
import type { MemberEffects } from './model.js';
import { nearTo } from './near.js';
import { type BarLoad, DOWN, makeBar } from './rafter.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Terms } from './terms.js';
import { along, type FrameUnit, frameOf, type Half, solveFrame } from './tied-frame.js';
import { beamCurves, bearingForces, makeSpans, makeStations, type Stations } from './two-bearings.js';

export interface TiedFrames {
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly joints: ReadonlyMap<string, Rows>;
  readonly applied: Rows;
  readonly failures: readonly string[];
}

/** Stations of a rafter with the tie's place among them; the tie is no support, so spans stay whole. */
function stationsOf(length: number, foot: number, tie: number): Stations {
  // The end counts as a support here, so that the stretch up to the ridge is divided as a span.
  const places = Math.abs(tie - foot) > 1 ? [foot, tie].sort((p, q) => p - q) : [foot];
  const made = makeStations(length, [...places, length]);
  const spanOf = made.x.map((x, i) => (foot > 1e-9 && (x > foot || (x === foot && made.side[i]! > 0)) ? 1 : 0));
  return { ...made, spanOf: Int32Array.from(spanOf) };
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
    const caught = found.map((h) => {
      const near = nearTo(h.member, terms).terms;
      return new Map(catchTerms(h.member, terms, index.surfaces).map((c, i) => [near[i]!, c]));
    });
    const units = terms.terms.map((term, i) => {
      const loads = found.map((h, k) => {
        const c = caught[k]!.get(i);
        return c === undefined ? NONE : rafterLoad(h.bar, term, index.surfaces.get(term.surface)!, c);
      }) as [BarLoad, BarLoad];
      return caught.some((c) => c.get(i) !== undefined) ? solveFrame(frame, loads, 0) : undefined;
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
