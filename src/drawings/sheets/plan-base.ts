/** What every plan over the house shows in the background: walls cut with openings, slabs, steps; and plan extents. */
import { clipHalfPlane } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Structure } from '../../structure/model.js';
import type { LayerName, PenName, Primitive, Rect } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { extents } from './parts.js';

/** Thickness the walls of the house are drawn with, inches. */
export const WALL = 6;

const poly = (points: readonly Vec2[], layer: LayerName, pen: PenName, mark?: string): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  points,
  closed: true,
  ...(mark !== undefined && { mark }),
});

/** House walls in plan between openings, drawn as existing cut work; only the part near the cover is of interest. */
export function housePlan(structure: Structure, depth: number, seen = planExtents(structure, depth)): Primitive[] {
  const out: Primitive[] = [];
  // Walls of a wing far off the cover would run off the sheet.
  const inView = (ring: readonly Vec2[]): readonly Vec2[] => {
    const within = (axis: 'x' | 'y', low: number, high: number, p: readonly Vec2[]): Vec2[] =>
      clipHalfPlane(
        clipHalfPlane(p, (q) => q[axis] - low),
        (q) => high - q[axis],
      );
    const cut = within('y', seen.y - WALL, seen.y + seen.h + WALL, ring);
    return within('x', seen.x - WALL, seen.x + seen.w + WALL, cut);
  };
  for (const w of structure.walls) {
    const dx = w.end.x - w.start.x;
    const dy = w.end.y - w.start.y;
    const size = Math.hypot(dx, dy);
    const u = { x: dx / size, y: dy / size };
    const at = (s: number, inward: number): Vec2 => ({
      x: w.start.x + u.x * s - w.out.x * inward,
      y: w.start.y + u.y * s - w.out.y * inward,
    });
    // The wall line itself is the outer face; walls deep in the house are cut off by the view.
    const openings = [...w.openings].filter((o) => o.head <= 120).sort((a, b) => a.offset - b.offset);
    const spans: [number, number][] = [];
    let from = 0;
    for (const o of openings) {
      if (o.offset > from) spans.push([from, o.offset]);
      from = Math.max(from, o.offset + o.width);
    }
    // In an inner corner of the house the next wall starts behind this one's end.
    const next = structure.walls.find((o) => Math.hypot(o.start.x - w.end.x, o.start.y - w.end.y) < 1e-6);
    const inner = next !== undefined && u.x * next.out.x + u.y * next.out.y < -1e-6;
    if (from < size) spans.push([from, inner ? size + WALL : size]);
    const clip = ([a, b]: [number, number]): [number, number] | undefined => {
      const ya = w.start.y + u.y * a;
      const yb = w.start.y + u.y * b;
      if (Math.max(ya, yb) < -depth) return undefined;
      if (Math.abs(u.y) < 1e-9) return [a, b];
      const s = (-depth - w.start.y) / u.y;
      return u.y > 0 ? [Math.max(a, s), b] : [a, Math.min(b, s)];
    };
    for (const span of spans) {
      const c = clip(span);
      if (!c) continue;
      const ring = inView([at(c[0], 0), at(c[1], 0), at(c[1], WALL), at(c[0], WALL)]);
      if (ring.length < 3) continue;
      out.push({
        kind: 'polyline',
        layer: 'A-WALL-EXST',
        points: ring,
        closed: true,
        fill: 'poche',
        pen: 'existing-cut',
      });
    }
    for (const o of openings) {
      const c = clip([o.offset, o.offset + o.width]);
      if (!c) continue;
      const layer: LayerName = o.kind === 'window' ? 'A-GLAZ-EXST' : 'A-DOOR-EXST';
      const whole = [at(c[0], 0), at(c[1], 0), at(c[1], WALL), at(c[0], WALL)];
      const ring = inView(whole);
      // An opening is shown whole or not at all.
      if (ring.length !== 4 || !whole.every((p) => ring.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-6))) continue;
      out.push(poly(whole, layer, 'existing', o.mark));
      out.push({ kind: 'line', layer, pen: 'existing', a: at(c[0], WALL / 2), b: at(c[1], WALL / 2) });
    }
  }
  return out;
}

export function slabPlan(structure: Structure): Primitive[] {
  return structure.slabs.map((s) =>
    poly(
      s.outline,
      s.state === 'new' ? 'S-SLAB' : 'S-SLAB-EXST',
      s.state === 'new' ? 'new-fine' : s.state === 'removed' ? 'demolition' : 'existing',
      s.mark,
    ),
  );
}

/** Ends of the walls on the line y = 0, the one the cover faces. */
/** Posts, each as wide and deep as it is and turned as it stands. */
export const postsOnPlan = (
  structure: Structure,
  look: { readonly pen: PenName; readonly fill?: 'poche' | 'ink' },
): Primitive[] =>
  structure.members
    .filter((m) => m.role === 'post')
    .map((m) => {
      const [w, d] = [m.section.width / 2, m.section.depth / 2];
      const [a, b] = Math.abs(m.up.x) > 0.5 ? [d, w] : [w, d];
      const { x, y } = m.start;
      return {
        kind: 'polyline',
        layer: 'S-COLS',
        closed: true,
        mark: m.mark,
        ...look,
        points: [
          { x: x - a, y: y - b },
          { x: x + a, y: y - b },
          { x: x + a, y: y + b },
          { x: x - a, y: y + b },
        ],
      };
    });

export const houseCorners = (structure: Structure): readonly Vec2[] =>
  structure.walls.flatMap((w) => [w.start, w.end]).filter((p) => Math.abs(p.y) < 1);

/** Rectangle round cover, slabs and a strip of the house behind the wall. */
export function planExtents(structure: Structure, behind: number): Rect {
  const points: Vec2[] = [
    ...structure.roofs.flatMap((r) => [r.min, r.max]),
    ...structure.slabs.flatMap((s) => s.outline),
    ...structure.footings.map((f) => f.at),
    // The corners of the house wall faced by the cover: layout is measured from one of them.
    ...houseCorners(structure),
  ];
  const e = extents(points);
  const y = Math.min(e.y, -behind);
  return { x: e.x, y, w: e.w, h: e.y + e.h - y };
}

/** A house nearer than this to the cover, inches, is shown with it on every plan. */
export const NEAR_HOUSE = 96;

/** True when the cover stands so far off the house that only the footing plan, which lays it out, shows both. */
export const standsOff = (structure: Structure): boolean =>
  Math.min(...structure.roofs.map((r) => r.min.y)) > NEAR_HOUSE;

/** Extents of the plans of what stands above the footings: without a house that is far off. */
export function coverExtents(structure: Structure, behind: number): Rect {
  if (!standsOff(structure)) return planExtents(structure, behind);
  return extents([
    ...structure.roofs.flatMap((r) => [r.min, r.max]),
    ...structure.members.filter((m) => m.role === 'post').map((m) => m.start),
    ...structure.slabs.filter((s) => s.outline.every((p) => p.y > NEAR_HOUSE / 2)).flatMap((s) => s.outline),
  ]);
}

/** The roof and the strip of house behind it: nothing on the framing plan is measured from the house corners. */
export function roofExtents(structure: Structure, behind: number): Rect {
  const over = (structure.overlays ?? []).flatMap((o) => o.faces.flatMap((f) => f.outline));
  const roofs = extents([...structure.roofs.flatMap((r) => [r.min, r.max]), ...over]);
  const low = standsOff(structure) ? roofs.y : Math.min(roofs.y, -behind);
  return { x: roofs.x - behind, y: low, w: roofs.w + 2 * behind, h: roofs.y + roofs.h - low };
}

/** Paper kept free round a plan: dimension strings stand at the cover's edge, so beside a longer house wall they need none. */
export function planMargin(ctx: SheetContext, model: Rect, scale = 1 / 96): { readonly x: number; readonly y: number } {
  const h = ctx.style.note;
  const { structure } = ctx.input;
  const xs = [
    ...structure.roofs.flatMap((r) => [r.min.x, r.max.x]),
    ...structure.slabs.flatMap((s) => s.outline.map((p) => p.x)),
  ];
  const spare = Math.min(Math.min(...xs) - model.x, model.x + model.w - Math.max(...xs));
  // Where the scale is not known yet, judged at the smallest of the plans, 1/8" = 1'-0".
  return { x: Math.max(h * 3, h * 13 - spare * scale), y: h * 11 };
}
