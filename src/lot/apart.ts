/** Distances between things on the lot: outlines, or points for what has none. */
import { contains, distanceToSegment } from '../base/plane.js';
import type { Vec2 } from '../base/vec.js';

export type Footprint = readonly Vec2[];

export interface Gap {
  /** Inches; 0 where they touch or overlap. */
  readonly distance: number;
  /** Nearest points, on the first and on the second. */
  readonly a: Vec2;
  readonly b: Vec2;
}

/** Point of segment p–q nearest to c. */
function foot(c: Vec2, p: Vec2, q: Vec2): Vec2 {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const n = dx * dx + dy * dy;
  const t = n === 0 ? 0 : Math.min(1, Math.max(0, ((c.x - p.x) * dx + (c.y - p.y) * dy) / n));
  return { x: p.x + t * dx, y: p.y + t * dy };
}

const sides = (o: Footprint): (readonly [Vec2, Vec2])[] => o.map((p, i) => [p, o[(i + 1) % o.length]!] as const);

/** Nearest places of one outline's corners on another's sides. */
function cornersTo(from: Footprint, to: Footprint): Gap {
  let best: Gap = { distance: Infinity, a: from[0]!, b: to[0]! };
  for (const c of from)
    for (const [p, q] of sides(to)) {
      const distance = distanceToSegment(c, p, q);
      if (distance < best.distance) best = { distance, a: c, b: foot(c, p, q) };
    }
  return best;
}

/** True when two sides of the outlines cross. */
const cross = (one: Footprint, two: Footprint): boolean =>
  sides(one).some(([a, b]) =>
    sides(two).some(([c, d]) => {
      const s = (p: Vec2, q: Vec2, r: Vec2): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
      return s(a, b, c) * s(a, b, d) < 0 && s(c, d, a) * s(c, d, b) < 0;
    }),
  );

/** Least distance between two outlines (three corners or more) or points (one corner). */
export function apart(one: Footprint, two: Footprint): Gap {
  const there = cornersTo(one, two);
  const back = cornersTo(two, one);
  const near = there.distance <= back.distance ? there : { distance: back.distance, a: back.b, b: back.a };
  const inside =
    (two.length > 2 && contains(two, one[0]!)) || (one.length > 2 && contains(one, two[0]!)) || cross(one, two);
  return inside ? { ...near, distance: 0 } : near;
}

/** The nearest of several outlines to one. */
export const nearestOf = (many: readonly Footprint[], to: Footprint): Gap | undefined =>
  many.map((m) => apart(m, to)).reduce<Gap | undefined>((a, b) => (a && a.distance <= b.distance ? a : b), undefined);
