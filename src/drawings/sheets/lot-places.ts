/** Where a word on the lot plan stands clear of the distances drawn there. */
import type { Vec2 } from '../../base/vec.js';

/** Distance of a point from a straight line between two others. */
function toSegment(p: Vec2, a: Vec2, b: Vec2): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const size = dx * dx + dy * dy;
  const t = size > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / size)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** First of some places along a line farther than `reach` from every segment; the first of all when none is. */
export function clearPlace(start: Vec2, end: Vec2, reach: number, segments: readonly (readonly [Vec2, Vec2])[]): Vec2 {
  const places = [0.78, 0.6, 0.4, 0.25].map((k) => ({
    x: start.x + k * (end.x - start.x),
    y: start.y + k * (end.y - start.y),
  }));
  return places.find((p) => segments.every(([a, b]) => toSegment(p, a, b) > reach)) ?? places[0]!;
}
