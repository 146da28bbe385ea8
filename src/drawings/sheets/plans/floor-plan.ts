/** Floor plan: the covered patio with the rooms, openings and equipment of the house beside it. */
import { formatSlope } from '../../../base/quantity/index.js';
import type { Vec2 } from '../../../base/vec.js';
import { equipmentAt } from '../../../checks/rooms/equipment.js';
import { leader, placeNote, placeTags, slopeArrow } from '../../annotate/index.js';
import type { Primitive, Rect } from '../../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from '../contract.js';
import { dims, extents, unique } from '../parts.js';
import { postsOnPlan, slabPlan } from '../plan-base.js';
import { floorBlocks } from './floor-tables.js';
import { oldNames, oldThings, roofWords, steps } from './ground.js';
import { type NearHouse, nearHouse, nearHousePlan, roofAbove } from './near-house.js';
import { doorLeaves, openingTags, roomLines, roomNames, shownOpenings } from './openings.js';
import { planSheet } from './plan-sheet.js';

/** Strings: posts and roof over the cover, its depth at the left, jambs along the house. */
function strings(ctx: SheetContext, v: NearHouse, shown: ReturnType<typeof shownOpenings>): Primitive[] {
  const { structure } = ctx.input;
  const posts = structure.members.filter((m) => m.role === 'post').map((m) => m.start);
  const roofs = structure.roofs;
  const slabs = structure.slabs.filter((s) => s.state !== 'removed').flatMap((s) => s.outline);
  const common = { scale: v.scale.ratio, layer: 'A-ANNO-DIMS' } as const;
  const rx = unique(roofs.flatMap((r) => [r.min.x, r.max.x]));
  const ry = unique(roofs.flatMap((r) => [r.min.y, r.max.y]));
  const left = Math.min(...rx, ...slabs.map((p) => p.x), ...posts.map((p) => p.x));
  const { model } = v;
  const rear = shown.filter((p) => Math.abs(p.wall.start.y) < 1 && Math.abs(p.wall.end.y) < 1);
  const corners = structure.walls
    .filter((w) => Math.abs(w.start.y) < 1)
    .flatMap((w) => [w.start.x, w.end.x])
    .filter((x) => x >= model.x && x <= model.x + model.w);
  const jambs = unique([...rear.flatMap((p) => [p.ground[0]!.x, p.ground[1]!.x]), ...corners]);
  return [
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: model.y + model.h,
      tiers: [
        { stations: unique(posts.map((p) => p.x)) },
        { stations: unique(slabs.map((p) => p.x)) },
        { stations: [rx[0]!, rx.at(-1)!] },
      ],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: left,
      tiers: [
        { stations: unique([0, ...posts.map((p) => p.y)]) },
        { stations: unique([0, ...slabs.map((p) => p.y)]) },
        { stations: [Math.min(0, ry[0]!), ry.at(-1)!] },
      ],
    }).items,
    ...(jambs.length > 1
      ? dims(ctx, { ...common, side: 'below', datum: model.y, tiers: [{ stations: jambs }] }).items
      : []),
  ];
}

/** Fall and name of each slab, clear of what stands on it. */
function slabWords(
  ctx: SheetContext,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const s of ctx.input.project.patio.slabs.filter((p) => p.state !== 'removed')) {
    const b = extents(s.outline);
    const places = [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((u) => [0.62, 0.4, 0.8, 0.25].map((v) => ({ u, v })));
    const at = (p: { u: number; v: number }): Vec2 => ({ x: b.x + p.u * b.w, y: b.y + p.v * b.h });
    const arrow = (p: { u: number; v: number }): Primitive =>
      slopeArrow({
        at: at(p),
        angle: s.fall < 0 ? -Math.PI / 2 : Math.PI / 2,
        text: formatSlope(Math.abs(s.fall)),
        layer: 'A-ANNO-SYMB',
        style: ctx.style,
        path: `${s.path}/fall`,
      });
    const name = (p: { u: number; v: number }): Primitive => ({
      kind: 'text',
      layer: 'A-ANNO-NOTE',
      at: at(p),
      content: `${s.mark}, ${s.state} slab, ${ctx.len(s.thickness)}`,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      path: s.path,
    });
    const [first, ...rest] = places;
    out.push(placeNote([name(first!), ...rest.map(name)], 0.4 * h, ratio, [...over, ...out], lines));
    if (s.fall !== 0)
      out.push(placeNote([arrow(first!), ...rest.map(arrow)], 0.4 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

/** Vents, meters and the like: a ring on the wall with its name out on the patio. */
function equipment(
  ctx: SheetContext,
  v: NearHouse,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const { project, structure } = ctx.input;
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const e of project.house.equipment) {
    const at = equipmentAt(structure, e);
    const wall = structure.walls[e.wall];
    if (!at || !wall || at.x < v.model.x || at.x > v.model.x + v.model.w || at.y < v.model.y) continue;
    out.push({
      kind: 'symbol',
      layer: 'A-ANNO-SYMB',
      at,
      items: [
        { kind: 'circle', layer: 'A-ANNO-SYMB', center: { x: 0, y: 0 }, radius: 0.5 * h, pen: 'symbol', fill: 'paper' },
      ],
    });
    const way = (dx: number, dy: number): Primitive =>
      leader({
        at,
        dx: dx * h,
        dy: dy * h,
        text: e.label,
        layer: 'A-ANNO-NOTE',
        style: ctx.style,
        mask: true,
        path: e.path,
      });
    const side = wall.out.x;
    const ways =
      Math.abs(side) > 0.5
        ? [way(2 * side, 2), way(2 * side, 5), way(2 * side, -3), way(2 * side, 8)]
        : [way(2, 3), way(-2, 3), way(3, 6), way(-3, 6), way(2, 9), way(-2, 9), way(3, 12)];
    out.push(placeNote(ways as [Primitive, ...Primitive[]], 0.4 * h, v.scale.ratio, [...over, ...out], lines));
  }
  return out;
}

function draw(ctx: SheetContext): SheetBody[] {
  const { structure } = ctx.input;
  const whole = (box: Rect): NearHouse => nearHouse(ctx, box, { rooms: true });
  return planSheet(ctx, {
    title: 'Floor plan',
    blocks: floorBlocks(ctx, shownOpenings(ctx, whole(ctx.area).model)),
    view: whole,
    content: (v) => {
      const shown = shownOpenings(ctx, v.model);
      const items: Primitive[] = [
        ...roomLines(ctx, v.model),
        ...slabPlan(structure),
        ...steps(ctx),
        ...oldThings(ctx, (t) => t.state === 'existing'),
        ...nearHousePlan(ctx, v),
        ...doorLeaves(shown),
        ...roofAbove(structure),
        ...postsOnPlan(structure, { pen: 'cut', fill: 'ink' }),
      ];
      const over: Primitive[] = strings(ctx, v, shown);
      over.push(...placeTags(openingTags(ctx, shown), v.scale.ratio, over, items));
      over.push(...roomNames(ctx, v.scale.ratio, over, items));
      over.push(...roofWords(ctx, v.scale.ratio, over, items));
      over.push(...slabWords(ctx, v.scale.ratio, over, items));
      over.push(
        ...oldNames(
          ctx,
          v.scale.ratio,
          over,
          items,
          (t) => t.name,
          (t) => t.state === 'existing',
        ),
      );
      over.push(...equipment(ctx, v, over, items));
      return { items, over };
    },
  });
}

export const floorPlan: SheetKind = { title: 'Floor plan', discipline: 'A', needed: () => true, draw };
