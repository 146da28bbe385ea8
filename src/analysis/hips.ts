/**
 * Hips: bars on two bearings under what the jacks hand them and under the bit of roof beside them at the corner. The part of a
 * force square to the hip on plan does not bend it (the sheathing holds it) and goes to the two bearings by the lever; of
 * the rest the hip is solved like a rafter.
 */
import { area, centroid, clipConvex } from '../base/plane.js';
import { distance, dot, type Vec3 } from '../base/vec.js';
import type { Member, Surface } from '../structure/model.js';
import { onSurface } from '../structure/surfaces.js';
import type { StructureIndex } from './index-structure.js';
import type { MemberEffects } from './model.js';
import { edgeWidth } from './profile.js';
import { type Bar, type BarUnit, bendingStiffness, DOWN, makeBar, solveBar } from './rafter.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Term, Terms } from './terms.js';
import { makeSpans, makeStations } from './two-bearings.js';

export interface Hips {
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly joints: ReadonlyMap<string, Rows>;
  /** What comes to hips directly: their own weight and the corners of the roof. */
  readonly applied: Rows;
  readonly failures: readonly string[];
}

/** A force of one unit of a term on the hip, at a place along its axis. */
interface Push {
  readonly at: number;
  readonly force: Vec3;
}

/** What one unit of a term puts on a hip from its strips of one surface. */
function caught(member: Member, term: Term, surface: Surface, along: (p: Vec3) => number): Push[] {
  const { outline } = surface;
  return member.strips.flatMap((strip): Push[] => {
    if (strip.surface !== term.surface) return [];
    if (term.kind === 'edge') {
      const width = edgeWidth(outline, term.v, strip.u0, strip.u1);
      return [{ at: along(onSurface(surface, (strip.u0 + strip.u1) / 2, term.v)), force: { x: 0, y: 0, z: -width } }];
    }
    const high = Math.max(...outline.map((p) => p.y));
    const cut = clipConvex(outline, [
      { x: strip.u0, y: 0 },
      { x: strip.u1, y: 0 },
      { x: strip.u1, y: high },
      { x: strip.u0, y: high },
    ]);
    const met = term.region ? clipConvex(cut, term.region) : cut;
    if (met.length < 3) return [];
    const size = area(met);
    if (size < 1e-9) return [];
    const centre = centroid(met);
    const n = term.kind === 'normal' ? surface.n : { x: 0, y: 0, z: 1 };
    return [
      { at: along(onSurface(surface, centre.x, centre.y)), force: { x: -n.x * size, y: -n.y * size, z: -n.z * size } },
    ];
  });
}

/** Sum of units, each times its factor. */
function sumUnits(
  parts: readonly { readonly unit: BarUnit; readonly factor: number }[],
  pick: 'm' | 'v' | 'n' | 'sag',
  size: number,
): Float64Array {
  const out = new Float64Array(size);
  for (const { unit, factor } of parts) {
    const values = unit[pick];
    for (let i = 0; i < size; i++) out[i] = out[i]! + factor * values[i]!;
  }
  return out;
}

function solve(bar: Bar, pushes: readonly Push[], self: BarUnit, selfFactor: number) {
  const parts: { unit: BarUnit; factor: number }[] = [];
  if (selfFactor !== 0) parts.push({ unit: self, factor: selfFactor });
  const down = pushes.filter((p) => p.force.z !== 0).map((p) => ({ at: p.at, p: -p.force.z }));
  if (down.length > 0) parts.push({ unit: solveBar(bar, { direction: DOWN, lines: [], points: down }), factor: 1 });
  const level = pushes.map((p) => ({ at: p.at, p: dot(p.force, bar.level) }));
  if (level.some((p) => Math.abs(p.p) > 1e-12))
    parts.push({ unit: solveBar(bar, { direction: bar.level, lines: [], points: level }), factor: 1 });
  const ends = [0, 1].map((i) => {
    const sum = { x: 0, y: 0, z: 0 };
    for (const { unit, factor } of parts) {
      const f = i === 0 ? unit.first : unit.second;
      sum.x += factor * f.x;
      sum.y += factor * f.y;
      sum.z += factor * f.z;
    }
    return sum;
  });
  // Square to the hip on plan: by the lever between the bearings.
  const { first, second } = bar.beam;
  for (const p of pushes) {
    const l = dot(p.force, bar.level);
    const side = { x: p.force.x - l * bar.level.x, y: p.force.y - l * bar.level.y };
    const share = (p.at - first) / (second - first);
    for (const [i, k] of [1 - share, share].entries()) {
      ends[i]!.x += k * side.x;
      ends[i]!.y += k * side.y;
    }
  }
  return { parts, ends };
}

export function analyseHips(index: StructureIndex, terms: Terms, jacks: ReadonlyMap<string, Rows>): Hips {
  const cases = terms.cases.length;
  const members = new Map<string, MemberEffects>();
  const joints = new Map<string, Rows>();
  const applied = makeRows(cases);
  const failures: string[] = [];
  for (const member of index.structure.members) {
    if (member.role !== 'hip') continue;
    const bearings = index.below.get(member.id) ?? [];
    const [a, b] = bearings;
    if (!a || !b || bearings.length > 2 || b.upperAlong - a.upperAlong < 1) {
      failures.push(
        `${member.id} has ${bearings.length} bearings; a hip needs two, one at its corner and one at the ridge`,
      );
      continue;
    }
    const length = distance(member.start, member.end);
    const supports = [a.upperAlong, b.upperAlong];
    const stations = makeStations(length, supports);
    const beam = { length, first: supports[0]!, second: supports[1]!, EI: bendingStiffness(member) };
    const bar = makeBar(member, beam, stations, [0.5, 0.5]);
    const along = (p: Vec3): number => {
      const d = (p.x - member.start.x) * bar.level.x + (p.y - member.start.y) * bar.level.y;
      return Math.min(Math.max(d / bar.cos, 0), length);
    };
    const w = member.section.weight;
    const self = solveBar(bar, { direction: DOWN, lines: [{ a: 0, b: length, qa: w, qb: w }], points: [] });
    const units = terms.terms.map((t) => caught(member, t, index.surfaces.get(t.surface)!, along));
    const above = (index.above.get(member.id) ?? []).map((j) => ({ at: j.lowerAlong, rows: jacks.get(j.joint.id) }));
    const [first, second] = [rowsOf(joints, a.joint.id, cases), rowsOf(joints, b.joint.id, cases)];
    const solved = terms.cases.map((c, i) => {
      const own: Push[] = [];
      for (let k = 0; k < c.term.length; k++) {
        const q = c.factor[k]!;
        for (const u of units[c.term[k]!]!)
          own.push({ at: u.at, force: { x: u.force.x * q, y: u.force.y * q, z: u.force.z * q } });
      }
      for (const p of own) addTo(applied, i, p.force.x, p.force.y, p.force.z);
      if (c.self !== 0) addTo(applied, i, 0, 0, -w * length, c.self);
      const pushes = [...own];
      for (const { at, rows } of above)
        if (rows) pushes.push({ at, force: { x: rows[3 * i]!, y: rows[3 * i + 1]!, z: rows[3 * i + 2]! } });
      const s = solve(bar, pushes, self, c.self);
      addTo(first, i, s.ends[0]!.x, s.ends[0]!.y, s.ends[0]!.z);
      addTo(second, i, s.ends[1]!.x, s.ends[1]!.y, s.ends[1]!.z);
      return s.parts;
    });
    const size = stations.x.length;
    const rows = (pick: 'm' | 'v' | 'n' | 'sag') => solved.map((parts) => sumUnits(parts, pick, size));
    const flat = new Float64Array(size);
    members.set(member.id, {
      member: member.id,
      stations: stations.x,
      spanOf: stations.spanOf,
      spans: makeSpans(length, supports),
      m: rows('m'),
      v: rows('v'),
      n: rows('n'),
      sag: rows('sag'),
      mWeak: solved.map(() => flat),
      vWeak: solved.map(() => flat),
    });
  }
  return { members, joints, applied, failures };
}
