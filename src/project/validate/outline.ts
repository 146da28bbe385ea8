import type { Issue } from '../../base/issue.js';
import { area } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { fault } from '../issues.js';
import type { PathSegment } from '../text/node.js';

const side = (a: Vec2, b: Vec2, c: Vec2): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** True when c, known to lie on the line a–b, lies between them. */
const between = (a: Vec2, b: Vec2, c: Vec2): boolean =>
  Math.min(a.x, b.x) <= c.x && c.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= c.y && c.y <= Math.max(a.y, b.y);

/** True when two segments share a point. */
function touch(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  const s1 = side(a, b, c);
  const s2 = side(a, b, d);
  const s3 = side(c, d, a);
  const s4 = side(c, d, b);
  if (((s1 > 0 && s2 < 0) || (s1 < 0 && s2 > 0)) && ((s3 > 0 && s4 < 0) || (s3 < 0 && s4 > 0))) return true;
  return (
    (s1 === 0 && between(a, b, c)) ||
    (s2 === 0 && between(a, b, d)) ||
    (s3 === 0 && between(c, d, a)) ||
    (s4 === 0 && between(c, d, b))
  );
}

/** Numbers of two sides of a closed outline that cross or touch though they are not neighbours. */
export function crossing(p: readonly Vec2[]): readonly [number, number] | undefined {
  const n = p.length;
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (touch(p[i]!, p[i + 1]!, p[j]!, p[(j + 1) % n]!)) return [i, j];
    }
  }
  return undefined;
}

/** Least area of an outline that is meant, square inches. */
const LEAST_AREA = 1;

/** An outline encloses something and does not cross itself. */
export function outlineIssues(p: readonly Vec2[], path: readonly PathSegment[]): Issue[] {
  const same = p.findIndex((a, i) => a.x === p[(i + 1) % p.length]!.x && a.y === p[(i + 1) % p.length]!.y);
  if (same >= 0) {
    const message = `corners ${same + 1} and ${((same + 1) % p.length) + 1} of this outline are one point`;
    return [fault('outline-repeats', path, message, 'each corner once; the last joins the first by itself')];
  }
  const cross = crossing(p);
  if (!cross && area(p) < LEAST_AREA)
    return [fault('outline-empty', path, 'this outline encloses nothing', 'three corners or more, not in one line')];
  if (!cross) return [];
  const message = `sides ${cross[0] + 1} and ${cross[1] + 1} of this outline cross`;
  return [fault('outline-crosses', path, message, 'corners in order round the outline')];
}
