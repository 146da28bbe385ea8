/** Plan outlines of parts, counter-clockwise. */
import type { Vec2 } from '../../base/vec.js';
import type { Footing, Member } from '../model.js';

/** Rectangle round a line: `half` to both sides, `extend` past both ends. */
export function ribbon(a: Vec2, b: Vec2, half: number, extend = 0): Vec2[] {
  const l = Math.hypot(b.x - a.x, b.y - a.y);
  const d = { x: (b.x - a.x) / l, y: (b.y - a.y) / l };
  const at = (p: Vec2, s: number, n: number): Vec2 => ({ x: p.x + d.x * s - d.y * n, y: p.y + d.y * s + d.x * n });
  return [at(a, -extend, -half), at(b, extend, -half), at(b, extend, half), at(a, -extend, half)];
}

/** Outline of a post, turned with its beam. */
export function postOutline(post: Member): Vec2[] {
  const { x, y } = post.start;
  const across = post.up;
  const half = post.section.depth / 2;
  return ribbon(
    { x: x - across.x * half, y: y - across.y * half },
    { x: x + across.x * half, y: y + across.y * half },
    post.section.width / 2,
  );
}

export const beamOutline = (beam: Member): Vec2[] => ribbon(beam.start, beam.end, beam.section.width / 2);

/** Outline of the widest part of a footing; a round one as a square round it, which errs towards reporting. */
export function footingOutline(f: Footing): Vec2[] {
  const h = Math.max(f.size, f.pierDiameter) / 2;
  const { x, y } = f.at;
  return [
    { x: x - h, y: y - h },
    { x: x + h, y: y - h },
    { x: x + h, y: y + h },
    { x: x - h, y: y + h },
  ];
}
