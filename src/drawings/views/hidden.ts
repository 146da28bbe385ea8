/**
 * Hidden-line removal, exact for convex pieces: every edge is cut against every face that stands before it. For one edge
 * and one face the hidden part is an interval: inside the face's outline (Cyrus–Beck) and behind its plane (linear in the
 * edge's parameter, as both are straight). Intervals are subtracted; what is left is drawn.
 *
 * Pieces of one part may share flush faces (a wall broken into boxes round its openings). Seams between flush faces are no
 * edges of the part and are dropped before anything is hidden.
 */
import type { Vec2 } from '../../base/vec.js';
import type { Piece, Solid } from '../../structure/model.js';
import { type Camera, type Seen, see } from './camera.js';

export interface VisibleEdge {
  readonly a: Vec2;
  readonly b: Vec2;
  /** Index into the pieces given. */
  readonly piece: number;
  readonly hidden: boolean;
  /** Only one of the faces meeting here is seen: the part's outline. */
  readonly outline: boolean;
}

interface Face {
  readonly piece: number;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** depth = d0 + da·a + db·b over the picture plane. */
  readonly d0: number;
  readonly da: number;
  readonly db: number;
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
  readonly maxDepth: number;
}

interface Edge {
  readonly piece: number;
  readonly p: Seen;
  readonly q: Seen;
  readonly outline: boolean;
  /** Parts of 0..1 already dropped as seams. */
  seams: [number, number][];
}

/** Depth difference below which an edge counts as lying on a face, inches. */
const ON = 1e-4;
/** Cosine of the angle between the facets of a 16-sided pier and a little less: such edges are not edges of the part. */
const ROUND = 0.92;
/** Visible remnants shorter than this, model inches, are rounding at touching parts: a five-thousandth on paper at 1/4 scale. */
const SHORTEST = 0.2;
/** Edges closer to a face's outline than this are not inside it, inches in the picture. */
const INSIDE = 1e-4;

export function removeHidden(
  pieces: readonly { readonly solid: Solid; readonly part: Piece['part'] }[],
  camera: Camera,
  options: { readonly hidden?: (piece: number) => boolean } = {},
): VisibleEdge[] {
  const faces: Face[] = [];
  const edges: Edge[] = [];
  for (let i = 0; i < pieces.length; i++) collect(i, pieces[i]!.solid, camera, faces, edges);
  dropSeams(edges, pieces);
  const grid = new Grid(faces);
  const out: VisibleEdge[] = [];
  const seen = new Set<string>();
  for (const e of edges) {
    const covered: [number, number][] = [];
    for (const f of grid.near(e)) {
      if (f.maxDepth < Math.min(e.p.depth, e.q.depth) - ON) continue;
      const t = hiddenInterval(e, f);
      if (t !== undefined) covered.push(t);
    }
    const emit = (spans: readonly [number, number][], hidden: boolean) => {
      for (const [t0, t1] of spans) {
        const a = at(e, t0);
        const b = at(e, t1);
        if (Math.hypot(a.x - b.x, a.y - b.y) < SHORTEST) continue;
        const key = keyOf(a, b);
        if (seen.has(key)) continue;
        seen.add(key);
        out.push({ a, b, piece: e.piece, hidden, outline: e.outline });
      }
    };
    const shown = subtract([[0, 1]], [...e.seams, ...covered]);
    emit(shown, false);
    if (options.hidden?.(e.piece)) emit(subtract([[0, 1]], [...e.seams, ...shown]), true);
  }
  return out;
}

const at = (e: Edge, t: number): Vec2 => ({ x: e.p.a + t * (e.q.a - e.p.a), y: e.p.b + t * (e.q.b - e.p.b) });

function keyOf(a: Vec2, b: Vec2): string {
  const r = (v: number) => Math.round(v * 100);
  const [s, t] = [`${r(a.x)},${r(a.y)}`, `${r(b.x)},${r(b.y)}`];
  return s < t ? `${s};${t}` : `${t};${s}`;
}

function collect(piece: number, solid: Solid, camera: Camera, faces: Face[], edges: Edge[]): void {
  const v = solid.vertices.map((p) => see(camera, p));
  const facing = new Map<string, { count: number; i: number; j: number; flat: number[][] }>();
  for (const face of solid.faces) {
    let nx = 0;
    let ny = 0;
    let nz = 0;
    for (let k = 0; k < face.length; k++) {
      const p = v[face[k]!]!;
      const q = v[face[(k + 1) % face.length]!]!;
      nx += (p.b - q.b) * (p.depth + q.depth);
      ny += (p.depth - q.depth) * (p.a + q.a);
      nz += (p.a - q.a) * (p.b + q.b);
    }
    const size = Math.hypot(nx, ny, nz);
    if (size < 1e-12 || nz / size <= 1e-6) continue;
    const normal = [nx / size, ny / size, nz / size];
    for (let k = 0; k < face.length; k++) {
      const i = face[k]!;
      const j = face[(k + 1) % face.length]!;
      const key = i < j ? `${i},${j}` : `${j},${i}`;
      const known = facing.get(key);
      if (known) {
        known.count++;
        known.flat.push(normal);
      } else facing.set(key, { count: 1, i, j, flat: [normal] });
    }
    faces.push(
      faceOf(
        piece,
        face.map((k) => v[k]!),
        normal,
      ),
    );
  }
  for (const { count, i, j, flat } of facing.values()) {
    const p = v[i]!;
    const q = v[j]!;
    if (Math.hypot(p.a - q.a, p.b - q.b) < 1e-6) continue;
    if (count === 2) {
      const [m, n] = [flat[0]!, flat[1]!];
      if (m[0]! * n[0]! + m[1]! * n[1]! + m[2]! * n[2]! > ROUND) continue; // facets of a round pier
    }
    edges.push({ piece, p, q, outline: count === 1, seams: [] });
  }
}

function faceOf(piece: number, corners: readonly Seen[], normal: readonly number[]): Face {
  const [nx, ny, nz] = [normal[0]!, normal[1]!, normal[2]!];
  const c = corners[0]!;
  const da = -nx / nz;
  const db = -ny / nz;
  const xs = Float64Array.from(corners, (p) => p.a);
  const ys = Float64Array.from(corners, (p) => p.b);
  return {
    piece,
    xs,
    ys,
    da,
    db,
    d0: c.depth - da * c.a - db * c.b,
    minX: Math.min(...xs),
    maxX: Math.max(...xs),
    minY: Math.min(...ys),
    maxY: Math.max(...ys),
    maxDepth: Math.max(...corners.map((p) => p.depth)),
  };
}

/** Interval of the edge's parameter hidden by the face, or undefined. */
function hiddenInterval(e: Edge, f: Face): [number, number] | undefined {
  const { p, q } = e;
  if (Math.max(p.a, q.a) <= f.minX || Math.min(p.a, q.a) >= f.maxX) return undefined;
  if (Math.max(p.b, q.b) <= f.minY || Math.min(p.b, q.b) >= f.maxY) return undefined;
  let t0 = 0;
  let t1 = 1;
  const dx = q.a - p.a;
  const dy = q.b - p.b;
  const n = f.xs.length;
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    const ex = f.xs[j]! - f.xs[i]!;
    const ey = f.ys[j]! - f.ys[i]!;
    const size = Math.hypot(ex, ey);
    if (size < 1e-9) continue;
    const s0 = (ex * (p.b - f.ys[i]!) - ey * (p.a - f.xs[i]!)) / size - INSIDE;
    const ds = (ex * dy - ey * dx) / size;
    if (Math.abs(ds) < 1e-12) {
      if (s0 < 0) return undefined;
    } else if (ds > 0) t0 = Math.max(t0, -s0 / ds);
    else t1 = Math.min(t1, -s0 / ds);
    if (t0 >= t1) return undefined;
  }
  // Behind: face depth − edge depth > ON.
  const g0 = f.d0 + f.da * p.a + f.db * p.b - p.depth - ON;
  const dg = f.da * dx + f.db * dy - (q.depth - p.depth);
  if (Math.abs(dg) < 1e-12) return g0 > 0 ? [t0, t1] : undefined;
  const root = -g0 / dg;
  if (dg > 0) t0 = Math.max(t0, root);
  else t1 = Math.min(t1, root);
  return t1 - t0 > 1e-9 ? [t0, t1] : undefined;
}

/** Removes intervals from intervals; all within 0..1. */
export function subtract(from: readonly [number, number][], cut: readonly [number, number][]): [number, number][] {
  if (cut.length === 0) return [...from];
  const sorted = [...cut].sort((a, b) => a[0] - b[0]);
  const out: [number, number][] = [];
  for (const [s, e] of from) {
    let x = s;
    for (const [c0, c1] of sorted) {
      if (c1 <= x) continue;
      if (c0 >= e) break;
      if (c0 > x) out.push([x, c0]);
      x = Math.max(x, c1);
    }
    if (x < e) out.push([x, e]);
  }
  return out;
}

/**
 * Seams: where two pieces of one part have an edge along the same line, both with flush faces on either side, neither is
 * an edge of the part. Flush is judged by the depth of the two edges being equal and both being outlines of their pieces.
 */
function dropSeams(edges: readonly Edge[], pieces: readonly { readonly part: string }[]): void {
  const lines = new Map<string, Edge[]>();
  for (const e of edges) {
    if (!e.outline) continue;
    const dx = e.q.a - e.p.a;
    const dy = e.q.b - e.p.b;
    const size = Math.hypot(dx, dy);
    let ux = dx / size;
    let uy = dy / size;
    if (ux < -1e-9 || (Math.abs(ux) <= 1e-9 && uy < 0)) [ux, uy] = [-ux, -uy];
    const offset = -uy * e.p.a + ux * e.p.b;
    const key = `${pieces[e.piece]!.part}|${Math.round(ux * 1e4)}|${Math.round(uy * 1e4)}|${Math.round(offset * 100)}`;
    const list = lines.get(key);
    if (list) list.push(e);
    else lines.set(key, [e]);
  }
  for (const list of lines.values()) {
    for (let i = 0; i < list.length; i++) {
      for (let j = i + 1; j < list.length; j++) {
        if (list[i]!.piece !== list[j]!.piece) matchSeam(list[i]!, list[j]!);
      }
    }
  }
}

function matchSeam(e: Edge, f: Edge): void {
  const dx = e.q.a - e.p.a;
  const dy = e.q.b - e.p.b;
  const n = dx * dx + dy * dy;
  const param = (s: Seen) => ((s.a - e.p.a) * dx + (s.b - e.p.b) * dy) / n;
  const [u, w] = [param(f.p), param(f.q)];
  const depthOn = (t: number) => e.p.depth + t * (e.q.depth - e.p.depth);
  if (Math.abs(depthOn(u) - f.p.depth) > 0.01 || Math.abs(depthOn(w) - f.q.depth) > 0.01) return;
  const t0 = Math.max(0, Math.min(u, w));
  const t1 = Math.min(1, Math.max(u, w));
  if (t1 - t0 < 1e-6) return;
  e.seams.push([t0, t1]);
  const back = (t: number) => (t - u) / (w - u);
  const [b0, b1] = [back(t0), back(t1)];
  f.seams.push([Math.min(b0, b1), Math.max(b0, b1)]);
}

/** Coarse grid over the picture so that an edge meets only faces near it. */
class Grid {
  private readonly cells: Face[][] = [];
  private readonly n = 24;
  private minX = Number.POSITIVE_INFINITY;
  private minY = Number.POSITIVE_INFINITY;
  private sx = 1;
  private sy = 1;

  constructor(faces: readonly Face[]) {
    let maxX = Number.NEGATIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    for (const f of faces) {
      this.minX = Math.min(this.minX, f.minX);
      this.minY = Math.min(this.minY, f.minY);
      maxX = Math.max(maxX, f.maxX);
      maxY = Math.max(maxY, f.maxY);
    }
    if (faces.length === 0) return;
    this.sx = this.n / Math.max(1e-9, maxX - this.minX);
    this.sy = this.n / Math.max(1e-9, maxY - this.minY);
    for (const f of faces) {
      for (let i = this.col(f.minX); i <= this.col(f.maxX); i++) {
        for (let j = this.row(f.minY); j <= this.row(f.maxY); j++) {
          const k = i * this.n + j;
          const cell = this.cells[k];
          if (cell) cell.push(f);
          else this.cells[k] = [f];
        }
      }
    }
  }

  private col(x: number): number {
    return Math.max(0, Math.min(this.n - 1, Math.floor((x - this.minX) * this.sx)));
  }
  private row(y: number): number {
    return Math.max(0, Math.min(this.n - 1, Math.floor((y - this.minY) * this.sy)));
  }

  near(e: Edge): Iterable<Face> {
    const i0 = this.col(Math.min(e.p.a, e.q.a));
    const i1 = this.col(Math.max(e.p.a, e.q.a));
    const j0 = this.row(Math.min(e.p.b, e.q.b));
    const j1 = this.row(Math.max(e.p.b, e.q.b));
    if (i0 === i1 && j0 === j1) return this.cells[i0 * this.n + j0] ?? [];
    const out = new Set<Face>();
    for (let i = i0; i <= i1; i++) {
      for (let j = j0; j <= j1; j++) for (const f of this.cells[i * this.n + j] ?? []) out.add(f);
    }
    return out;
  }
}
