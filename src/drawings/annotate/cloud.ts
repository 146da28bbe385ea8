/** Revision clouds: a scalloped line round what was changed. */
import type { Vec2 } from '../../base/vec.js';
import type { Arc, Rect } from '../ir/index.js';
import type { Style } from './style.js';

const LAYER = 'G-ANNO-REVS';

/** Cloud round a rectangle, paper inches: arcs that bulge outward, about one note height in radius, all of one size a side. */
export function revisionCloud(r: Rect, style: Style): Arc[] {
  // Round a line of lettering the arcs are small, so that they stay off the lines above and below it.
  const chord = (r.h < 4 * style.note ? 0.9 : 1.9) * style.note;
  const corners: readonly Vec2[] = [
    { x: r.x, y: r.y },
    { x: r.x + r.w, y: r.y },
    { x: r.x + r.w, y: r.y + r.h },
    { x: r.x, y: r.y + r.h },
  ];
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % 4]!;
    const size = Math.hypot(b.x - a.x, b.y - a.y);
    const n = Math.max(1, Math.round(size / chord));
    const way = Math.atan2(b.y - a.y, b.x - a.x);
    // The corners run counter-clockwise, so outward is to the right of the way from one to the next.
    return Array.from({ length: n }, (_, k): Arc => {
      const t = (k + 0.5) / n;
      return {
        kind: 'arc',
        layer: LAYER,
        pen: 'new-fine',
        center: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) },
        radius: size / n / 2,
        start: way + Math.PI,
        end: way + 2 * Math.PI,
      };
    });
  });
}

/** Paper kept between what changed and its cloud. */
export const cloudMargin = (r: Rect, style: Style): number => (r.h < 3 * style.note ? 0.22 : 0.8) * style.note;
