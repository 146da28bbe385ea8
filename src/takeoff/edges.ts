/** Edges of the roof by what they need: eaves, rakes, ridges, hips, valleys, and edges against the house. Lengths on the slope. */
import type { Vec3 } from '../base/vec.js';
import { AT_WALL } from '../structure/constants.js';
import { wallTopAt } from '../structure/house/profile.js';
import type { Structure, Surface, WallPlaced } from '../structure/model.js';

export type EdgeKind = 'eave' | 'rake' | 'top' | 'ridge' | 'hip' | 'valley' | 'wall-top' | 'wall-side';

export interface RoofEdge {
  readonly kind: EdgeKind;
  readonly roof: string;
  readonly surface: string;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly length: number;
}

/** Lines nearer than this are one, inches: planes lie on the framing, and two roofs need not be framed alike. */
const SAME = 2;
/** A stretch shorter than this is a corner, not an edge. */
const LEAST = 3;
const LEVEL = 1e-3;
/** Surfaces lie on the framing, valleys of an old roof at the top of the sheathing: at most this far apart, inches. */
const VALLEY_DEPTH = 3;

interface Raw {
  readonly s: Surface;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly length: number;
}

const along = (e: Raw, t: number): Vec3 => ({
  x: e.a.x + ((e.b.x - e.a.x) * t) / e.length,
  y: e.a.y + ((e.b.y - e.a.y) * t) / e.length,
  z: e.a.z + ((e.b.z - e.a.z) * t) / e.length,
});

function rawEdges(s: Surface): Raw[] {
  const at = (u: number, v: number): Vec3 => ({
    x: s.origin.x + u * s.u.x + v * s.v.x,
    y: s.origin.y + u * s.u.y + v * s.v.y,
    z: s.origin.z + u * s.u.z + v * s.v.z,
  });
  return s.outline.flatMap((p, i) => {
    const q = s.outline[(i + 1) % s.outline.length]!;
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    return length > LEAST ? [{ s, a: at(p.x, p.y), b: at(q.x, q.y), length }] : [];
  });
}

/** Place of a point along an edge and how far it lies off its line. */
function project(e: Raw, p: Vec3): { t: number; off: number } {
  const d = { x: (e.b.x - e.a.x) / e.length, y: (e.b.y - e.a.y) / e.length, z: (e.b.z - e.a.z) / e.length };
  const v = { x: p.x - e.a.x, y: p.y - e.a.y, z: p.z - e.a.z };
  const t = v.x * d.x + v.y * d.y + v.z * d.z;
  return { t, off: Math.hypot(v.x - t * d.x, v.y - t * d.y, v.z - t * d.z) };
}

/** Stretch of an edge that an edge of another surface shares. */
function shared(e: Raw, f: Raw): readonly [number, number] | undefined {
  const [p, q] = [project(e, f.a), project(e, f.b)];
  if (p.off > SAME || q.off > SAME) return undefined;
  const from = Math.max(0, Math.min(p.t, q.t));
  const to = Math.min(e.length, Math.max(p.t, q.t));
  return to - from > LEAST ? [from, to] : undefined;
}

const middle = (s: Surface): Vec3 => {
  const n = s.outline.length;
  const u = s.outline.reduce((sum, p) => sum + p.x, 0) / n;
  const v = s.outline.reduce((sum, p) => sum + p.y, 0) / n;
  return {
    x: s.origin.x + u * s.u.x + v * s.v.x,
    y: s.origin.y + u * s.u.y + v * s.v.y,
    z: s.origin.z + u * s.u.z + v * s.v.z,
  };
};

/** The other plane lies below this one: the edge sheds water both ways. */
function sheds(s: Surface, other: Surface): boolean {
  const m = middle(other);
  return (m.x - s.origin.x) * s.n.x + (m.y - s.origin.y) * s.n.y + (m.z - s.origin.z) * s.n.z < 0;
}

const isLevel = (e: Raw): boolean => Math.abs(e.b.z - e.a.z) < LEVEL * e.length;

/** House wall that stands behind an edge and rises above it. */
function wallBehind(structure: Structure, e: Raw): WallPlaced | undefined {
  const mid = along(e, e.length / 2);
  const planes = structure.housePlanes.filter((p) => p.state !== 'removed');
  return structure.walls.find((w) => {
    const gap = (p: Vec3): number => (p.x - w.start.x) * w.out.x + (p.y - w.start.y) * w.out.y;
    const d = { x: w.end.x - w.start.x, y: w.end.y - w.start.y };
    const t = ((mid.x - w.start.x) * d.x + (mid.y - w.start.y) * d.y) / (d.x * d.x + d.y * d.y);
    const near = Math.abs(gap(e.a)) <= AT_WALL && Math.abs(gap(e.b)) <= AT_WALL;
    return (
      near && t > 0 && t < 1 && wallTopAt(planes, { x: w.start.x + t * d.x, y: w.start.y + t * d.y }, w.plate) > mid.z
    );
  });
}

/** The edge runs in a valley on the old roof. */
const inOldValley = (structure: Structure, e: Raw): boolean =>
  (structure.overlays ?? []).some((o) =>
    o.valleys.some((v) => {
      const [p, q] = [project(e, v.foot), project(e, v.head)];
      return p.off < VALLEY_DEPTH && q.off < VALLEY_DEPTH;
    }),
  );

function outerKind(structure: Structure, e: Raw): EdgeKind {
  if (inOldValley(structure, e)) return 'valley';
  const low = Math.min(...e.s.outline.map((p) => p.y));
  const { origin } = e.s;
  const v = (e.a.x - origin.x) * e.s.v.x + (e.a.y - origin.y) * e.s.v.y + (e.a.z - origin.z) * e.s.v.z;
  const eave = isLevel(e) && v < low + 1;
  if (eave) return 'eave';
  const wall = wallBehind(structure, e) !== undefined;
  if (isLevel(e)) return wall ? 'wall-top' : 'top';
  return wall ? 'wall-side' : 'rake';
}

/** Every edge of every surface once; edges two surfaces share are listed with the first of them. */
export function roofEdges(structure: Structure): RoofEdge[] {
  const raws = structure.surfaces.flatMap(rawEdges);
  const index = new Map(structure.surfaces.map((s, i) => [s.id, i]));
  const out: RoofEdge[] = [];
  const put = (kind: EdgeKind, e: Raw, from: number, to: number): void => {
    out.push({ kind, roof: e.s.roof, surface: e.s.id, a: along(e, from), b: along(e, to), length: to - from });
  };
  for (const e of raws) {
    const taken: (readonly [number, number])[] = [];
    for (const f of raws) {
      if (f.s.id === e.s.id) continue;
      const stretch = shared(e, f);
      if (!stretch) continue;
      taken.push(stretch);
      if (index.get(e.s.id)! > index.get(f.s.id)!) continue;
      const ridge = isLevel(e);
      const convex = sheds(e.s, f.s);
      put(convex ? (ridge ? 'ridge' : 'hip') : 'valley', e, stretch[0], stretch[1]);
    }
    let at = 0;
    for (const [from, to] of [...taken.sort((a, b) => a[0] - b[0]), [e.length, e.length] as const]) {
      if (from - at > LEAST) put(outerKind(structure, e), e, at, from);
      at = Math.max(at, to);
    }
  }
  return out;
}

/** Sum of lengths of some kinds, inches. */
export const lengthOf = (edges: readonly RoofEdge[], ...kinds: readonly EdgeKind[]): number =>
  edges.reduce((sum, e) => (kinds.includes(e.kind) ? sum + e.length : sum), 0);
