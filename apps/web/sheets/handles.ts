/** Handles of a plan on the screen: which one is under the pointer, and how far a drag has brought it. */
import type { HandleRow } from '../core/api.js';
import type { PackedSheet, PackedView } from '../core/pack.js';
import type { Point } from './camera.js';

export interface Grip {
  readonly handle: HandleRow;
  readonly view: PackedView;
  /** Paper point of the handle, and of its other end when it is a line. */
  readonly at: Point;
  readonly to: Point | undefined;
}

export const onPaper = (v: PackedView, p: Point): Point => ({
  x: v.at.x + (p.x - v.from.x) * v.scale,
  y: v.at.y + (p.y - v.from.y) * v.scale,
});

/** Plans, by their title, on which a thing of that kind is drawn at its place. */
const WHERE: Readonly<Record<string, RegExp>> = {
  post: /footing|column/i,
  'beam-end': /beam/i,
  beam: /beam/i,
  'roof-edge': /roof|framing/i,
};

const kindOf = (h: HandleRow): string => h.id.slice(0, h.id.indexOf(':'));

export function gripsOf(s: PackedSheet, handles: readonly HandleRow[]): Grip[] {
  return s.views
    .filter((v) => v.plan)
    .flatMap((view) =>
      handles
        .filter((h) => WHERE[kindOf(h)]?.test(s.title) ?? false)
        .map((handle) => ({
          handle,
          view,
          at: onPaper(view, handle.at),
          to: handle.to && onPaper(view, handle.to),
        })),
    );
}

const distance = (p: Point, g: Grip): number => {
  if (!g.to) return Math.hypot(p.x - g.at.x, p.y - g.at.y);
  const [ux, uy] = [g.to.x - g.at.x, g.to.y - g.at.y];
  const l2 = ux * ux + uy * uy;
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - g.at.x) * ux + (p.y - g.at.y) * uy) / l2));
  return Math.hypot(p.x - g.at.x - t * ux, p.y - g.at.y - t * uy);
};

/** Nearest grip within reach; points before lines, since a post stands on its beam. */
export function gripAt(grips: readonly Grip[], p: Point, reach: number): Grip | undefined {
  const near = grips.filter((g) => distance(p, g) <= (g.to ? reach * 0.6 : reach));
  near.sort((a, b) => Number(a.to !== undefined) - Number(b.to !== undefined) || distance(p, a) - distance(p, b));
  return near[0];
}

/** Inches along the handle's axis for a move on paper, so that the value it is counted in lands on the step. */
export function snapped(g: Grip, from: Point, to: Point, step: number): number {
  const { axis, value } = g.handle;
  const by = ((to.x - from.x) * axis.x + (to.y - from.y) * axis.y) / g.view.scale;
  return Math.round((value + by) / step) * step - value;
}
