/**
 * Tier 1: rafters and trusses, each on its two bearings. A unit of every term is solved once for each distinct geometry;
 * a case is a sum of units. Members whose units are all the same share one set of curves.
 */
import { distance } from '../base/vec.js';
import type { Member, Surface } from '../structure/model.js';
import { barCurves, type Curves } from './bar-curves.js';
import { catchTerms, rafterLoad } from './catch.js';
import { analyseHips } from './hips.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import type { MemberEffects } from './model.js';
import { type Near, nearTo } from './near.js';
import { type Profile, profileArea, profileMoment } from './profile.js';
import { type Bar, type BarUnit, bendingStiffness, DOWN, makeBar, placeOnBar, solveBar } from './rafter.js';
import { addRows, addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Term, Terms } from './terms.js';
import { analyseTied, tiedRafters } from './tied-rafters.js';
import { seatTruss, type TrussUnit } from './truss.js';
import { makeStations } from './two-bearings.js';

export interface Framing {
  readonly members: ReadonlyMap<string, MemberEffects>;
  /** What each framing joint hands to the part below, per case. */
  readonly joints: ReadonlyMap<string, Rows>;
  /** Sum of all loads put on framing, per case. */
  readonly applied: Rows;
  /** One sentence for each member that cannot be worked out. */
  readonly failures: readonly string[];
}

export const isFraming = (m: Member): boolean => m.role === 'rafter' || m.role === 'truss' || m.role === 'gable-truss';

/** Lengths that agree to a micro-inch count as equal when work is shared. */
const key = (x: number): number => Math.round(x * 1e6) / 1e6;
const vecKey = (v: { x: number; y: number; z: number }): string => `${key(v.x)},${key(v.y)},${key(v.z)}`;

export const catchKey = (c: Profile | number): string =>
  typeof c === 'number' ? `${key(c)}` : c.map((q) => `${key(q.a)},${key(q.b)},${key(q.wa)},${key(q.wb)}`).join(';');

/** Which share of the horizontal force each bearing takes: all of it where one is held by the house, else half each. */
function horizontalShares(a: Bearing, b: Bearing, index: StructureIndex): readonly [number, number] {
  const onHouse = (p: Bearing): boolean => index.members.get(p.lower)?.role === 'ledger' || index.walls.has(p.lower);
  const first = onHouse(a);
  const second = onHouse(b);
  return first === second ? [0.5, 0.5] : first ? [1, 0] : [0, 1];
}

function trussUnit(a: Bearing, b: Bearing, term: Term, surface: Surface, caught: Profile | number): TrussUnit {
  const isEdge = typeof caught === 'number';
  const amount = isEdge ? caught : profileArea(caught);
  const v = isEdge ? term.v : amount === 0 ? 0 : profileMoment(caught) / amount;
  const { origin: o, v: up, n } = surface;
  const at = { x: o.x + v * up.x, y: o.y + v * up.y, z: o.z + v * up.z };
  const push = term.kind === 'normal' ? amount : 0;
  const down = term.kind === 'normal' ? 0 : amount;
  const force = { x: -push * n.x, y: -push * n.y, z: -push * n.z - down };
  return seatTruss({ first: a.joint.at, second: b.joint.at }, force, at);
}

interface Unit {
  readonly first: { x: number; y: number; z: number };
  readonly second: { x: number; y: number; z: number };
  readonly total: { x: number; y: number; z: number };
}

/** Adds a member's units, case by case, to its two joints and to the applied total. */
function spread(
  near: Near,
  units: readonly (Unit | undefined)[],
  self: Unit,
  first: Rows,
  second: Rows,
  applied: Rows,
): void {
  const put = (c: number, u: Unit, factor: number): void => {
    addTo(first, c, u.first.x, u.first.y, u.first.z, factor);
    addTo(second, c, u.second.x, u.second.y, u.second.z, factor);
    addTo(applied, c, u.total.x, u.total.y, u.total.z, factor);
  };
  for (const { index, self: own, term, factor } of near.cases) {
    if (own !== 0) put(index, self, own);
    for (let k = 0; k < term.length; k++) {
      const u = units[term[k]!];
      if (u) put(index, u, factor[k]!);
    }
  }
}

export function analyseFraming(index: StructureIndex, terms: Terms): Framing {
  const cases = terms.cases.length;
  const joints = new Map<string, Rows>();
  const members = new Map<string, MemberEffects>();
  const applied = makeRows(cases);
  const failures: string[] = [];
  const tied = tiedRafters(index);
  const bars = new Map<string, { bar: Bar; self: BarUnit; supports: readonly number[] }>();
  const barUnits = new Map<string, BarUnit>();
  const shared = new Map<string, Curves>();

  for (const member of index.structure.members) {
    if (!isFraming(member) || tied.has(member.id)) continue;
    const bearings = index.below.get(member.id) ?? [];
    const [a, b] = bearings;
    if (!a || !b || bearings.length > 2) {
      failures.push(
        `${member.id} has ${bearings.length} bearing${bearings.length === 1 ? '' : 's'}; the framing tier needs two`,
      );
      continue;
    }
    const near = nearTo(member, terms);
    const caught = catchTerms(member, terms, index.surfaces);
    const first = rowsOf(joints, a.joint.id, cases);
    const second = rowsOf(joints, b.joint.id, cases);
    if (member.truss) {
      if (Math.hypot(b.joint.at.x - a.joint.at.x, b.joint.at.y - a.joint.at.y) < 1) {
        failures.push(`${member.id} has both bearings at one place`);
        continue;
      }
      const units = caught.map((c, i) => {
        const term = terms.terms[near.terms[i]!]!;
        return c === undefined ? undefined : trussUnit(a, b, term, index.surfaces.get(term.surface)!, c);
      });
      const middle = {
        x: (a.joint.at.x + b.joint.at.x) / 2,
        y: (a.joint.at.y + b.joint.at.y) / 2,
        z: (a.joint.at.z + b.joint.at.z) / 2,
      };
      const self = seatTruss(
        { first: a.joint.at, second: b.joint.at },
        { x: 0, y: 0, z: -member.truss.weight - (member.hung ?? 0) * distance(member.start, member.end) },
        middle,
      );
      spread(near, units, self, first, second, applied);
      continue;
    }
    const length = distance(member.start, member.end);
    if (
      b.upperAlong - a.upperAlong < 1 ||
      Math.hypot(member.end.x - member.start.x, member.end.y - member.start.y) < 1
    ) {
      failures.push(`${member.id} has both bearings at one place, or stands upright`);
      continue;
    }
    const share = horizontalShares(a, b, index);
    const EI = bendingStiffness(member);
    const w = member.section.weight + (member.hung ?? 0);
    const geometry = `${key(length)}|${key(a.upperAlong)}|${key(b.upperAlong)}|${vecKey(member.up)}|${vecKey({ x: member.end.x - member.start.x, y: member.end.y - member.start.y, z: member.end.z - member.start.z })}|${share}|${EI}|${w}`;
    let known = bars.get(geometry);
    if (!known) {
      const supports = [a.upperAlong, b.upperAlong];
      const beam = { length, first: supports[0]!, second: supports[1]!, EI };
      const bar = makeBar(member, beam, makeStations(length, supports), share);
      const self = solveBar(bar, { direction: DOWN, lines: [{ a: 0, b: length, qa: w, qb: w }], points: [] });
      known = { bar, self, supports };
      bars.set(geometry, known);
    }
    // The bar of the first member of this geometry, moved here: only its start differs.
    const bar: Bar = { ...known.bar, start: member.start };
    let groupKey = geometry;
    const units: (BarUnit | undefined)[] = new Array(caught.length).fill(undefined);
    const places = new Map<string, string>();
    near.terms.forEach((number, i) => {
      const c = caught[i];
      if (c === undefined) return;
      const term = terms.terms[number]!;
      const surface = index.surfaces.get(term.surface)!;
      let place = places.get(`${term.kind} ${term.surface}`);
      if (place === undefined) {
        const { at, rate } = placeOnBar(bar, surface, term.kind !== 'normal');
        place = `${term.kind}${key(at)},${key(rate)}`;
        places.set(`${term.kind} ${term.surface}`, place);
      }
      const own = `${place},${key(term.v)}:${catchKey(c)}`;
      groupKey += `/${number}#${own}`;
      const unitKey = `${geometry}#${own}`;
      let unit = barUnits.get(unitKey);
      if (!unit) {
        unit = solveBar(bar, rafterLoad(bar, term, surface, c));
        barUnits.set(unitKey, unit);
      }
      units[i] = unit;
    });
    spread(near, units, known.self, first, second, applied);
    let curves = shared.get(groupKey);
    if (!curves) {
      curves = barCurves(bar, cases, near, units, known.self, known.supports);
      shared.set(groupKey, curves);
    }
    members.set(member.id, { member: member.id, ...curves });
  }
  const frames = analyseTied(index, terms);
  for (const [id, effects] of frames.members) members.set(id, effects);
  for (const [id, rows] of frames.joints) joints.set(id, rows);
  addRows(applied, frames.applied);
  failures.push(...frames.failures);
  const hips = analyseHips(index, terms, joints);
  for (const [id, effects] of hips.members) members.set(id, effects);
  for (const [id, rows] of hips.joints) joints.set(id, rows);
  addRows(applied, hips.applied);
  failures.push(...hips.failures);
  return { members, joints, applied, failures };
}
