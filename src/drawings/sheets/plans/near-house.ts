/** The cover with the strip of house behind it, as floor, demolition and electrical plans show it. */
import type { Vec2 } from '../../../base/vec.js';
import type { Structure } from '../../../structure/model.js';
import { breakLine } from '../../annotate/index.js';
import type { Primitive, Rect } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { clearOfOpenings } from '../house-stretch.js';
import { extents, PLAN_SCALES, scaleFor } from '../parts.js';
import { housePlan, standsOff, WALL } from '../plan-base.js';
import type { PlanView } from './plan-sheet.js';

export interface NearHouse extends PlanView {
  /** How far into the house it looks, inches. */
  readonly depth: number;
}

/** House shown past the new work along the wall, and behind it where no rooms are stated, inches. */
const PAST = 24;
const BEHIND = 36;
/** Deeper rooms are broken off. */
const DEEPEST = 252;
/** A corner of the house this little beyond the view is shown too. */
const CORNER = 36;

const newWork = (structure: Structure): Vec2[] => [
  ...structure.roofs.flatMap((r) => [r.min, r.max]),
  ...structure.slabs.flatMap((s) => s.outline),
  ...structure.footings.map((f) => f.at),
];

/** Extents of the view; `rooms` shows the rooms stated behind the cover in full. */
export function nearHouse(ctx: SheetContext, box: Rect, o: { readonly rooms: boolean }): NearHouse {
  const { structure, project } = ctx.input;
  const h = ctx.style.note;
  const work = extents(newWork(structure));
  const rooms = o.rooms ? project.house.rooms.flatMap((r) => r.outline) : [];
  const deep = rooms.length > 0 ? Math.min(DEEPEST, 12 - Math.min(...rooms.map((p) => p.y))) : BEHIND;
  const depth = Math.max(BEHIND, deep);
  const old = project.patio.existing.flatMap((t) => t.outline);
  const near = standsOff(structure) && rooms.length === 0 ? structure.walls.filter((w) => Math.abs(w.start.y) < 1) : [];
  const wide = extents([
    { x: work.x - PAST, y: Math.min(work.y, -depth) },
    { x: work.x + work.w + PAST, y: work.y + work.h },
    ...near.map((w) => w.start),
    ...old,
    ...rooms.map((p) => ({ x: p.x, y: Math.max(p.y, -depth) })),
  ]);
  const corners = structure.walls.map((w) => w.start.x);
  const to = wide.x + wide.w;
  const low = clearOfOpenings(structure, Math.min(wide.x, ...corners.filter((x) => x > wide.x - CORNER)), -1);
  const high = clearOfOpenings(structure, Math.max(to, ...corners.filter((x) => x < to + CORNER)), 1);
  const model = { x: low - 2 * WALL, y: wide.y, w: high - low + 4 * WALL, h: wide.h };
  const margin = { x: 9 * h, y: 11 * h };
  return { model, depth, margin, scale: scaleFor(ctx, model, box, margin, PLAN_SCALES) };
}

/** Walls with openings, and break lines where the house goes on. */
export function nearHousePlan(ctx: SheetContext, v: NearHouse): Primitive[] {
  const { structure } = ctx.input;
  const { model, depth } = v;
  const walls = housePlan(structure, depth, model);
  const xs = structure.walls.map((w) => w.start.x);
  const rear = structure.walls.filter((w) => Math.abs(w.start.y) < 1 && Math.abs(w.end.y) < 1);
  const at = (x: number): Primitive[] =>
    breakLine({ a: { x, y: -2.5 * WALL }, b: { x, y: 1.5 * WALL }, layer: 'A-WALL-EXST', style: ctx.style });
  const reaches = (x: number): boolean =>
    rear.some((w) => Math.min(w.start.x, w.end.x) < x && x < Math.max(w.start.x, w.end.x));
  const low = model.x - WALL;
  const high = model.x + model.w + WALL;
  // Walls that run on into the house end at a break too.
  const deep = structure.walls.filter(
    (w) =>
      Math.abs(w.end.x - w.start.x) < 1 &&
      Math.min(w.start.y, w.end.y) < -depth - WALL &&
      Math.max(w.start.y, w.end.y) > -depth &&
      w.start.x > low &&
      w.start.x < high,
  );
  const ends = deep.flatMap((w) => {
    const y = -depth;
    return breakLine({
      a: { x: w.start.x - 1.5 * WALL - (w.out.x * WALL) / 2, y },
      b: { x: w.start.x + 1.5 * WALL - (w.out.x * WALL) / 2, y },
      layer: 'A-WALL-EXST',
      style: ctx.style,
    });
  });
  return [
    ...walls,
    ...ends,
    ...(Math.min(...xs) < low && reaches(low) ? at(low) : []),
    ...(Math.max(...xs) > high && reaches(high) ? at(high) : []),
  ];
}

/** Outline of the new roof as seen from below, dashed. */
export const roofAbove = (structure: Structure): Primitive[] =>
  structure.roofs.map((r) => ({
    kind: 'polyline',
    layer: 'A-ROOF-OTLN',
    pen: 'above',
    closed: true,
    mark: r.mark,
    points: [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }],
  }));
