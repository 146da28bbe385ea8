/**
 * Width profile of one strip of a roof surface within a region: how wide the loaded area is at each height v. Piecewise
 * linear, exact for straight-sided outlines. Inches.
 */
import { clipConvex } from '../base/plane.js';
import type { Vec2 } from '../base/vec.js';

/** Width runs straight from `wa` at `a` to `wb` at `b`. */
export interface Piece {
  readonly a: number;
  readonly b: number;
  readonly wa: number;
  readonly wb: number;
}
export type Profile = readonly Piece[];

/** Parts thinner than this, inches, are rounding. */
const THIN = 1e-9;

type Bounds = readonly [number, number, number, number];

const rectangles = new WeakMap<readonly Vec2[], Bounds | 'none'>();

/** Axis-parallel bounds of a polygon, when the polygon is exactly that rectangle. Every strip of a roof asks again. */
function asRectangle(p: readonly Vec2[]): Bounds | undefined {
  let known = rectangles.get(p);
  if (!known) {
    known = findRectangle(p) ?? 'none';
    rectangles.set(p, known);
  }
  return known === 'none' ? undefined : known;
}

function findRectangle(p: readonly Vec2[]): Bounds | undefined {
  if (p.length !== 4) return undefined;
  const [a, b, c, d] = p as [Vec2, Vec2, Vec2, Vec2];
  if (a.y === b.y && b.x === c.x && c.y === d.y && d.x === a.x) {
    return [Math.min(a.x, b.x), Math.max(a.x, b.x), Math.min(a.y, c.y), Math.max(a.y, c.y)];
  }
  if (a.x === b.x && b.y === c.y && c.x === d.x && d.y === a.y) {
    return [Math.min(a.x, c.x), Math.max(a.x, c.x), Math.min(a.y, b.y), Math.max(a.y, b.y)];
  }
  return undefined;
}

/** Total width of a polygon cut at height `v` (any simple polygon; `v` not at a corner). */
export function widthAt(p: readonly Vec2[], v: number): number {
  const cuts: number[] = [];
  for (let i = 0; i < p.length; i++) {
    const a = p[i]!;
    const b = p[(i + 1) % p.length]!;
    if (a.y > v !== b.y > v) cuts.push(a.x + ((v - a.y) * (b.x - a.x)) / (b.y - a.y));
  }
  cuts.sort((x, y) => x - y);
  let width = 0;
  for (let i = 0; i + 1 < cuts.length; i += 2) width += cuts[i + 1]! - cuts[i]!;
  return width;
}

function polygonProfile(p: readonly Vec2[]): Profile {
  const levels = [...new Set(p.map((q) => q.y))].sort((x, y) => x - y);
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < levels.length; i++) {
    const a = levels[i]!;
    const b = levels[i + 1]!;
    if (b - a <= THIN) continue;
    // Between two corner heights the width is linear: two inner cuts fix it, whatever happens at the corners.
    const w1 = widthAt(p, a + (b - a) / 4);
    const w3 = widthAt(p, b - (b - a) / 4);
    const slope = (w3 - w1) / 2;
    const wa = w1 - slope;
    const wb = w3 + slope;
    if (Math.max(wa, wb) > THIN) pieces.push({ a, b, wa, wb });
  }
  return pieces;
}

/** Profile of outline ∩ region ∩ strip u0..u1; empty where they do not meet. The region must be convex, counter-clockwise. */
export function stripProfile(
  outline: readonly Vec2[],
  region: readonly Vec2[] | undefined,
  u0: number,
  u1: number,
): Profile {
  const o = asRectangle(outline);
  const r = region ? asRectangle(region) : undefined;
  if (o && (!region || r)) {
    const w = Math.min(u1, o[1], r ? r[1] : u1) - Math.max(u0, o[0], r ? r[0] : u0);
    const a = r ? Math.max(o[2], r[2]) : o[2];
    const b = r ? Math.min(o[3], r[3]) : o[3];
    return w > THIN && b - a > THIN ? [{ a, b, wa: w, wb: w }] : [];
  }
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const p of outline) {
    low = Math.min(low, p.y);
    high = Math.max(high, p.y);
  }
  const strip = [
    { x: u0, y: low },
    { x: u1, y: low },
    { x: u1, y: high },
    { x: u0, y: high },
  ];
  const cut = clipConvex(outline, strip);
  return polygonProfile(region ? clipConvex(cut, region) : cut);
}

/** Width of the outline within u0..u1 right at an edge v = const (taken just inside the outline). */
export function edgeWidth(outline: readonly Vec2[], v: number, u0: number, u1: number): number {
  const o = asRectangle(outline);
  if (o) return Math.max(0, Math.min(u1, o[1]) - Math.max(u0, o[0]));
  const pieces = stripProfile(outline, undefined, u0, u1);
  const first = pieces[0];
  const last = pieces.at(-1);
  if (!first || !last) return 0;
  if (v <= first.a) return first.wa;
  if (v >= last.b) return last.wb;
  const at = pieces.find((p) => v >= p.a && v <= p.b);
  return at ? at.wa + ((at.wb - at.wa) * (v - at.a)) / (at.b - at.a) : 0;
}

/** Area of a profile, in². */
export const profileArea = (p: Profile): number => p.reduce((sum, q) => sum + ((q.wa + q.wb) / 2) * (q.b - q.a), 0);

/** First moment of a profile about v = 0, in³. */
export const profileMoment = (p: Profile): number =>
  p.reduce((sum, q) => {
    const h = q.b - q.a;
    return sum + ((q.wa + q.wb) / 2) * h * q.a + (h * h * (q.wa + 2 * q.wb)) / 6;
  }, 0);
