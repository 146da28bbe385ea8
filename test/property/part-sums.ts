/**
 * What comes to each placed part and what leaves it, case by case, from nothing but the published results: joint forces,
 * restraints, loads on the roof's surfaces and the parts' weights.
 */
import { area, clipConvex } from '../../src/base/plane.js';
import { distance, type Vec2, type Vec3 } from '../../src/base/vec.js';
import type { Member, Surface } from '../../src/index.js';
import type { Worked } from './covers.js';

export interface PartSum {
  /** Member id, or the roof whose framing is summed as one. */
  readonly part: string;
  readonly from: readonly Vec3[];
  readonly to: readonly Vec3[];
  /** Sum of the sizes of all forces, against which a difference counts. */
  readonly size: readonly number[];
}

class Sum {
  readonly total: { x: number; y: number; z: number }[];
  readonly size: number[];
  constructor(cases: number) {
    this.total = Array.from({ length: cases }, () => ({ x: 0, y: 0, z: 0 }));
    this.size = Array.from({ length: cases }, () => 0);
  }
  add(i: number, f: Vec3): void {
    const t = this.total[i]!;
    t.x += f.x;
    t.y += f.y;
    t.z += f.z;
    this.size[i] = this.size[i]! + Math.abs(f.x) + Math.abs(f.y) + Math.abs(f.z);
  }
}

const DOWN: Vec3 = { x: 0, y: 0, z: -1 };
const times = (v: Vec3, k: number): Vec3 => ({ x: v.x * k, y: v.y * k, z: v.z * k });

/** Loads on the strips of one framing member and its own weight, lb. */
function ownLoads(d: Worked, m: Member, surfaces: ReadonlyMap<string, Surface>, into: Sum): void {
  d.loads.cases.forEach((c, i) => {
    for (const strip of m.strips) {
      const s = surfaces.get(strip.surface)!;
      const top = Math.max(...s.outline.map((p) => p.y));
      const window: Vec2[] = [
        { x: strip.u0, y: 0 },
        { x: strip.u1, y: 0 },
        { x: strip.u1, y: top },
        { x: strip.u0, y: top },
      ];
      for (const load of c.areas) {
        if (load.surface !== s.id) continue;
        const part = clipConvex(clipConvex(s.outline, window), load.region ?? window);
        const lb = (Math.abs(area(part)) * load.psf) / 144;
        if (load.acts === 'normal') into.add(i, times(s.n, -lb));
        else into.add(i, times(DOWN, load.acts === 'plan' ? lb * Math.cos(s.slope) : lb));
      }
      for (const e of c.edges) {
        if (e.surface === s.id) into.add(i, times(DOWN, e.weight * (strip.u1 - strip.u0)));
      }
    }
    if (c.selfWeight) into.add(i, times(DOWN, weightOf(m)));
  });
}

const weightOf = (m: Member): number => (m.truss ? m.truss.weight : m.section.weight * distance(m.start, m.end));

/** Moves the level parts of what comes to the beams and leaves them into one sum, and their vertical parts too if asked. */
function beamsTogether(
  members: readonly Member[],
  sums: Map<string, { readonly from: Sum; readonly to: Sum }>,
  cases: number,
  vertical: boolean,
): void {
  const all = { from: new Sum(cases), to: new Sum(cases) };
  for (const m of members) {
    const s = m.role === 'beam' ? sums.get(m.id) : undefined;
    if (!s) continue;
    for (const side of ['from', 'to'] as const) {
      for (let i = 0; i < cases; i++) {
        const t = s[side].total[i]!;
        all[side].add(i, { x: t.x, y: t.y, z: vertical ? t.z : 0 });
        t.x = 0;
        t.y = 0;
        if (vertical) t.z = 0;
      }
    }
  }
  sums.set('beams together', all);
}

/** Trim weighs as an edge load on the framing; framing is summed roof by roof, as side loads are shared out there. */
export function partSums(d: Worked): readonly PartSum[] {
  const cases = d.loads.cases.length;
  const { structure, effects, loads } = d;
  const surfaces = new Map(structure.surfaces.map((s) => [s.id, s]));
  const sums = new Map<string, { from: Sum; to: Sum }>();
  const key = (m: Member): string | undefined => {
    if (m.role === 'fascia' || m.role === 'gutter' || m.role === 'blocking') return undefined;
    return m.roof !== undefined ? `framing of ${m.roof}` : m.id;
  };
  const keyOf = new Map(structure.members.map((m) => [m.id, key(m)]));
  const of = (k: string): { from: Sum; to: Sum } => {
    let s = sums.get(k);
    if (!s) {
      s = { from: new Sum(cases), to: new Sum(cases) };
      sums.set(k, s);
    }
    return s;
  };
  for (const m of structure.members) {
    const k = keyOf.get(m.id);
    if (k === undefined) continue;
    ownLoads(d, m, surfaces, of(k).from);
  }
  loads.cases.forEach((c, i) => {
    for (const s of c.side) of(`framing of ${s.roof}`).from.add(i, s.force);
  });
  for (const j of structure.joints) {
    const force = effects.joints.get(j.id)?.force;
    if (!force) continue;
    const upper = keyOf.get(j.ties[0]!.part);
    const lower = keyOf.get(j.ties.at(-1)!.part);
    if (upper === lower) continue;
    force.forEach((f, i) => {
      if (upper !== undefined) of(upper).to.add(i, f);
      if (lower !== undefined) of(lower).from.add(i, f);
    });
  }
  for (const r of effects.restraints) {
    const k = keyOf.get(r.beam);
    if (k !== undefined) for (const [i, f] of r.force.entries()) of(k).to.add(i, f);
  }
  // Beams that meet on one post hand each other level forces there that are in no joint; where the posts hold the roof,
  // the framing between two beams passes on level forces and the couple that keeps a beam from rolling.
  const framed = (effects.drift?.length ?? 0) > 0;
  const shared = d.project.cover.beams.some((b) => (b.shared ?? []).length > 0);
  if (framed || shared) beamsTogether(structure.members, sums, cases, framed);
  return [...sums].map(([part, { from, to }]) => {
    const papers = (i: number): boolean => part.startsWith('framing') && loads.cases[i]!.papers !== undefined;
    // Reactions copied from a sealed sheet start at the bearings: no load on the roof stands behind them.
    return {
      part,
      from: from.total.map((v, i) => (papers(i) ? to.total[i]! : v)),
      to: to.total,
      size: from.size.map((v, i) => v + to.size[i]!),
    };
  });
}
