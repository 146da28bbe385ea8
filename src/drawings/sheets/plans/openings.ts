/** Doors and windows of the house in plan: leaves and their swing, tags, and the rooms behind. */
import { centroid } from '../../../base/plane.js';
import type { Vec2 } from '../../../base/vec.js';
import { type Placed, placedOpenings } from '../../../checks/rooms/facts.js';
import { placeNote, type TagWish } from '../../annotate/index.js';
import { type Primitive, type Rect, wrapText } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { WALL } from '../plan-base.js';

/** Openings of the plan: at or below a man's height, and in view. */
export const shownOpenings = (ctx: SheetContext, seen: Rect): Placed[] =>
  placedOpenings(ctx.input.structure).filter(
    ({ opening, middle, ground }) =>
      opening.head <= 120 &&
      // Shown whole or not at all, as the wall is drawn.
      [ground[0]!, ground[1]!].every((p) => p.x > seen.x - WALL && p.x < seen.x + seen.w + WALL) &&
      middle.x > seen.x &&
      middle.x < seen.x + seen.w &&
      middle.y > seen.y - WALL &&
      middle.y < seen.y + seen.h + WALL,
  );

/** One leaf from its hinge, open square to the wall, with the arc it sweeps. */
function leaf(hinge: Vec2, along: Vec2, into: Vec2, width: number): Primitive[] {
  const tip = { x: hinge.x + into.x * width, y: hinge.y + into.y * width };
  const from = Math.atan2(along.y, along.x);
  const to = Math.atan2(into.y, into.x);
  // The quarter between the closed and the open leaf, counter-clockwise.
  const turn = (((to - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const [start, end] = turn < Math.PI ? [from, from + turn] : [to, to + (2 * Math.PI - turn)];
  return [
    { kind: 'line', layer: 'A-DOOR-EXST', pen: 'existing', a: hinge, b: tip },
    { kind: 'arc', layer: 'A-DOOR-EXST', pen: 'existing', center: hinge, radius: width, start, end },
  ];
}

/** Leaves of hinged doors whose swing is stated; others stay a line in the wall. */
export function doorLeaves(openings: readonly Placed[]): Primitive[] {
  return openings.flatMap(({ opening, wall, ground }) => {
    const { swing, width, kind } = opening;
    if ((swing !== 'in' && swing !== 'out') || (kind !== 'door' && kind !== 'french-door')) return [];
    const sign = swing === 'out' ? 1 : -1;
    const into = { x: sign * wall.out.x, y: sign * wall.out.y };
    const [a, b] = [ground[0]!, ground[1]!];
    const u = { x: (b.x - a.x) / width, y: (b.y - a.y) / width };
    const back = { x: -u.x, y: -u.y };
    // An inward leaf hangs on the inner face.
    const face = (p: Vec2): Vec2 => (swing === 'out' ? p : { x: p.x - WALL * wall.out.x, y: p.y - WALL * wall.out.y });
    return kind === 'door'
      ? leaf(face(a), u, into, width)
      : [...leaf(face(a), u, into, width / 2), ...leaf(face(b), back, into, width / 2)];
  });
}

/** Tags of openings, inside the house. */
export const openingTags = (ctx: SheetContext, openings: readonly Placed[]): TagWish[] =>
  openings.map(({ opening, wall, middle }) => ({
    kind: 'opening',
    text: opening.mark,
    at: middle,
    off: { x: -wall.out.x * ctx.style.note * 4.4, y: -wall.out.y * ctx.style.note * 4.4 },
    layer: 'A-ANNO-SYMB',
    style: ctx.style,
    path: opening.path,
  }));

/** Room outlines: inner faces of walls and partitions. */
export const roomLines = (ctx: SheetContext, seen: Rect): Primitive[] =>
  ctx.input.project.house.rooms.map((r) => ({
    kind: 'polyline',
    layer: 'A-FLOR-EXST',
    pen: 'existing',
    closed: true,
    points: r.outline.map((p) => ({ x: p.x, y: Math.max(p.y, seen.y) })),
    path: r.path,
  }));

/** Names of rooms, each clear of what stands there. */
export function roomNames(
  ctx: SheetContext,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const r of ctx.input.project.house.rooms) {
    const c = centroid(r.outline);
    const width = (Math.max(...r.outline.map((p) => p.x)) - Math.min(...r.outline.map((p) => p.x))) * ratio;
    const rows = [...wrapText(r.name.toUpperCase(), Math.max(8 * h, 0.9 * width), h, 'condensed-bold'), 'existing'];
    const way = (dx: number, dy: number): Primitive => ({
      kind: 'symbol',
      layer: 'A-FLOR-IDEN',
      at: { x: c.x + dx / ratio, y: c.y + dy / ratio },
      path: r.path,
      items: rows.map((content, i) => ({
        kind: 'text',
        layer: 'A-FLOR-IDEN',
        at: { x: 0, y: -i * 1.6 * h },
        content,
        height: h,
        align: 'center',
        face: i < rows.length - 1 ? 'condensed-bold' : 'condensed',
        mask: true,
      })),
    });
    out.push(
      placeNote(
        [way(0, 0), way(0, -4 * h), way(4 * h, 0), way(-4 * h, 0), way(0, 4 * h)],
        0.3 * h,
        ratio,
        [...over, ...out],
        lines,
      ),
    );
  }
  return out;
}
