import type { Vec2 } from '../base/vec.js';

/**
 * Intervals of `t` for which origin + t·along lies in a simple polygon, in order. `along` is a unit vector. A corner on
 * the line counts with the side it is crossed on, so that intervals neither vanish nor double there.
 */
export function insideIntervals(
  polygon: readonly Vec2[],
  origin: Vec2,
  along: Vec2,
): readonly (readonly [number, number])[] {
  const side = (p: Vec2): number => along.x * (p.y - origin.y) - along.y * (p.x - origin.x);
  const cuts: number[] = [];
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i]!;
    const b = polygon[(i + 1) % polygon.length]!;
    const sa = side(a);
    const sb = side(b);
    if (sa >= 0 === sb >= 0) continue;
    const k = sa / (sa - sb);
    cuts.push(along.x * (a.x + k * (b.x - a.x) - origin.x) + along.y * (a.y + k * (b.y - a.y) - origin.y));
  }
  cuts.sort((p, q) => p - q);
  const out: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < cuts.length; i += 2) if (cuts[i + 1]! > cuts[i]!) out.push([cuts[i]!, cuts[i + 1]!]);
  return out;
}
