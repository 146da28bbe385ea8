/** Simple polygons cut into convex ones: solids for pictures must be convex. */
import { signedArea } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';

/** Nearer than this two corners are one, inches. */
const SAME = 1e-7;

const turn = (a: Vec2, b: Vec2, c: Vec2): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const at = (ring: readonly Vec2[], i: number): Vec2 => ring[(i + ring.length) % ring.length]!;

const withoutRepeats = (ring: readonly Vec2[]): Vec2[] =>
  ring.filter((p, i) => {
    const q = at(ring, i + 1);
    return Math.hypot(p.x - q.x, p.y - q.y) > SAME;
  });

/** Where the edge into corner `i`, run on past it, first meets another edge. */
function firstHit(ring: readonly Vec2[], i: number): { edge: number; point: Vec2 } | undefined {
  const p = at(ring, i);
  const back = at(ring, i - 1);
  const d = { x: p.x - back.x, y: p.y - back.y };
  let nearest = Number.POSITIVE_INFINITY;
  let hit: { edge: number; point: Vec2 } | undefined;
  for (let k = 1; k < ring.length - 1; k++) {
    const j = (i + k) % ring.length;
    const a = at(ring, j);
    const b = at(ring, j + 1);
    const e = { x: b.x - a.x, y: b.y - a.y };
    const det = d.x * e.y - d.y * e.x;
    if (Math.abs(det) < 1e-12) continue;
    const t = ((a.x - p.x) * e.y - (a.y - p.y) * e.x) / det;
    const s = ((a.x - p.x) * d.y - (a.y - p.y) * d.x) / det;
    if (t <= 1e-9 || s < -1e-9 || s > 1 + 1e-9 || t >= nearest) continue;
    nearest = t;
    hit = { edge: j, point: { x: p.x + d.x * t, y: p.y + d.y * t } };
  }
  return hit;
}

/**
 * Convex polygons, counter-clockwise, that together are the given simple polygon. Cuts run on along existing edges, so a
 * rectangular outline falls into rectangles.
 */
export function convexParts(outline: readonly Vec2[]): Vec2[][] {
  const ring = withoutRepeats(signedArea(outline) < 0 ? [...outline].reverse() : outline);
  if (ring.length < 3 || signedArea(ring) < SAME) return [];
  const inside = ring.findIndex((p, i) => turn(at(ring, i - 1), p, at(ring, i + 1)) < -1e-9);
  const hit = inside < 0 ? undefined : firstHit(ring, inside);
  if (hit === undefined) return [ring];
  const one: Vec2[] = [];
  const two: Vec2[] = [hit.point];
  for (let i = inside; ; i = (i + 1) % ring.length) {
    one.push(ring[i]!);
    if (i === hit.edge) break;
  }
  one.push(hit.point);
  for (let i = (hit.edge + 1) % ring.length; ; i = (i + 1) % ring.length) {
    two.push(ring[i]!);
    if (i === inside) break;
  }
  return [...convexParts(one), ...convexParts(two)];
}
