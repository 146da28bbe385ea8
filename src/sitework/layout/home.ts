import type { Vec2 } from '../../base/vec.js';
import type { Structure } from '../../structure/model.js';

export interface Home {
  readonly at: Vec2;
  readonly words: string;
  /** The other end of the wall line, to tie points from; undefined when the house has no second corner there. */
  readonly corner?: Vec2 | undefined;
}

const ON_LINE = 1;

/**
 * Home base: the house corner on the wall line (y = 0) nearest to the left of all footings, else the nearest to their right;
 * without any, the foot of the first footing's line on the wall.
 */
export function homeBase(structure: Structure): Home {
  const xs = structure.footings.map((f) => f.at.x);
  const corners = structure.walls
    .flatMap((w) => [w.start, w.end])
    .filter((p) => Math.abs(p.y) < ON_LINE)
    .map((p) => p.x)
    .sort((a, b) => a - b);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  const left = corners.filter((c) => c <= low + 1e-6).at(-1);
  const right = corners.find((c) => c >= high - 1e-6);
  if (left !== undefined)
    return {
      at: { x: left, y: 0 },
      words: 'left corner of the house wall, seen looking out of the house',
      corner: right === undefined ? undefined : { x: right, y: 0 },
    };
  if (right !== undefined)
    return { at: { x: right, y: 0 }, words: 'right corner of the house wall, seen looking out of the house' };
  return { at: { x: low, y: 0 }, words: 'point on the wall line opposite the leftmost footing' };
}
