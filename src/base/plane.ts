import type { Vec2 } from './vec.js';

/** Signed area of a simple polygon; positive when its corners run counter-clockwise. Square of the input unit. */
export function signedArea(p: readonly Vec2[]): number {
  let twice = 0;
  for (let i = 0; i < p.length; i++) {
    const a = p[i]!;
    const b = p[(i + 1) % p.length]!;
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

export const area = (p: readonly Vec2[]): number => Math.abs(signedArea(p));

/** Centroid of a simple polygon with area. */
export function centroid(p: readonly Vec2[]): Vec2 {
  const o = p[0]!;
  let twice = 0;
  let cx = 0;
  let cy = 0;
  for (let i = 1; i + 1 < p.length; i++) {
    const a = p[i]!;
    const b = p[i + 1]!;
    const k = (a.x - o.x) * (b.y - o.y) - (b.x - o.x) * (a.y - o.y);
    twice += k;
    cx += (k * (o.x + a.x + b.x)) / 3;
    cy += (k * (o.y + a.y + b.y)) / 3;
  }
  return { x: cx / twice, y: cy / twice };
}

/** Keeps the part of a polygon where `inside(p) >= 0`, for a function linear over the plane (one half-plane clip). */
export function clipHalfPlane(p: readonly Vec2[], side: (q: Vec2) => number): Vec2[] {
  const out: Vec2[] = [];
  for (let i = 0; i < p.length; i++) {
    const a = p[i]!;
    const b = p[(i + 1) % p.length]!;
    const sa = side(a);
    const sb = side(b);
    if (sa >= 0) out.push(a);
    if ((sa > 0 && sb < 0) || (sa < 0 && sb > 0)) {
      const t = sa / (sa - sb);
      out.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
  }
  return out;
}

/** Part of a polygon inside a convex counter-clockwise polygon. */
export function clipConvex(p: readonly Vec2[], window: readonly Vec2[]): Vec2[] {
  let out = [...p];
  for (let i = 0; i < window.length && out.length > 0; i++) {
    const a = window[i]!;
    const b = window[(i + 1) % window.length]!;
    out = clipHalfPlane(out, (q) => (b.x - a.x) * (q.y - a.y) - (b.y - a.y) * (q.x - a.x));
  }
  return out;
}

/** True when a point lies in a simple polygon; points on the edge count as inside within `tolerance`. */
export function contains(p: readonly Vec2[], q: Vec2, tolerance = 1e-9): boolean {
  let inside = false;
  for (let i = 0, j = p.length - 1; i < p.length; j = i++) {
    const a = p[i]!;
    const b = p[j]!;
    if (distanceToSegment(q, a, b) <= tolerance) return true;
    if (a.y > q.y !== b.y > q.y && q.x < ((b.x - a.x) * (q.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

export function distanceToSegment(q: Vec2, a: Vec2, b: Vec2): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const n = dx * dx + dy * dy;
  const t = n === 0 ? 0 : Math.min(1, Math.max(0, ((q.x - a.x) * dx + (q.y - a.y) * dy) / n));
  return Math.hypot(q.x - a.x - t * dx, q.y - a.y - t * dy);
}
