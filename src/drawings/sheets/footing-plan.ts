/** Footing plan: where every footing lies, measured from the house. */
import { placeTags, type TagWish } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { type FootingLayout, footingBlocks, footingLayout } from './footing-layout.js';
import { alongHouse, houseStretch, type Stretch, stretchPlan } from './house-stretch.js';
import { dims, unique } from './parts.js';
import { slabPlan } from './plan-base.js';
import { planSheet } from './plans/plan-sheet.js';

function content(ctx: SheetContext, stretch: Stretch, { xs, ys, diagonals }: FootingLayout) {
  const { structure } = ctx.input;
  const { style } = ctx;
  const h = style.note;
  const { model, scale } = stretch;
  const items: Primitive[] = [...stretchPlan(ctx, stretch), ...slabPlan(structure)];
  const over: Primitive[] = [];
  const wishes: TagWish[] = [];
  for (const f of structure.footings) {
    const half = f.size / 2;
    const { x, y } = f.at;
    const outline: Primitive = f.round
      ? { kind: 'circle', layer: 'S-FNDN', center: f.at, radius: half, pen: 'hidden', mark: f.mark }
      : {
          kind: 'polyline',
          layer: 'S-FNDN',
          pen: 'hidden',
          closed: true,
          mark: f.mark,
          points: [
            { x: x - half, y: y - half },
            { x: x + half, y: y - half },
            { x: x + half, y: y + half },
            { x: x - half, y: y + half },
          ],
        };
    items.push(outline);
    if (f.pierDiameter > 0)
      items.push({
        kind: 'circle',
        layer: 'S-FNDN',
        center: f.at,
        radius: f.pierDiameter / 2,
        pen: 'new',
        mark: f.mark,
      });
    const post = structure.members.find((m) => m.role === 'post' && Math.hypot(m.start.x - x, m.start.y - y) < 1);
    if (post) {
      const w = post.section.width / 2;
      items.push({
        kind: 'polyline',
        layer: 'S-COLS',
        pen: 'cut',
        closed: true,
        fill: 'paper',
        mark: post.mark,
        points: [
          { x: x - w, y: y - w },
          { x: x + w, y: y - w },
          { x: x + w, y: y + w },
          { x: x - w, y: y + w },
        ],
      });
    }
    const reach = half + 6;
    items.push({ kind: 'line', layer: 'S-GRID', pen: 'center', a: { x: x - reach, y }, b: { x: x + reach, y } });
    items.push({ kind: 'line', layer: 'S-GRID', pen: 'center', a: { x, y: y - reach }, b: { x, y: y + reach } });
    const sx = x <= model.x + model.w / 2 ? 1 : -1;
    const dy = half * scale.ratio + h * 1.6;
    wishes.push({
      kind: 'footing',
      text: f.mark,
      at: f.at,
      off: { x: sx * (half * scale.ratio + h * 3), y: dy },
      layer: 'S-ANNO-SYMB',
      style,
      path: f.path,
    });
    if (post)
      wishes.push({
        kind: 'post',
        text: post.mark,
        at: f.at,
        off: { x: sx * (half * scale.ratio + h * 3), y: -dy },
        layer: 'S-ANNO-SYMB',
        style,
        path: post.path,
      });
  }
  const slabs = structure.slabs.flatMap((p) => p.outline);
  const leftEdge = Math.min(...xs, ...slabs.map((p) => p.x));
  const rightEdge = Math.max(...xs, ...slabs.map((p) => p.x));
  // Offsets from the house face run up both sides, since opposite sides must match; spacings run along the yard; the
  // string below ties them to the house corners.
  const onLine = (x: number): number[] =>
    unique(structure.footings.filter((f) => Math.abs(f.at.x - x) < 1e-6).map((f) => f.at.y));
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  over.push(
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: leftEdge,
      tiers: [{ stations: [0, ...onLine(xs[0]!)] }, { stations: [0, Math.max(...ys)] }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'right',
      datum: rightEdge,
      tiers: [{ stations: [0, ...onLine(xs.at(-1)!)] }, { stations: [0, Math.max(...ys)] }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: model.y + model.h,
      tiers: [{ stations: xs }, { stations: [xs[0]!, xs.at(-1)!] }],
    }).items,
    ...alongHouse(ctx, stretch, common, xs),
  );
  wishes.push(
    ...structure.joints
      .filter((j, i, all) => j.kind === 'post-to-footing' && all.findIndex((o) => o.mark === j.mark) === i)
      .map(
        (j): TagWish => ({
          kind: 'joint',
          text: j.mark,
          at: { x: j.at.x, y: j.at.y },
          off: { x: (j.at.x <= model.x + model.w / 2 ? 1 : -1) * (h * 8 + 15 * scale.ratio), y: h * 0.4 },
          layer: 'S-ANNO-SYMB',
          style,
          path: j.path,
        }),
      ),
  );
  over.push(...placeTags(wishes, scale.ratio, over, [...items, ...diagonals]));
  return { items: [...items, ...diagonals], over };
}

function draw(ctx: SheetContext): SheetBody[] {
  const layout = footingLayout(ctx);
  return planSheet(ctx, {
    title: 'Footing plan',
    blocks: footingBlocks(ctx, layout),
    view: (box) => houseStretch(ctx, box),
    content: (v) => content(ctx, v, layout),
  });
}

export const footingPlan: SheetKind = {
  title: 'Footing plan',
  discipline: 'S',
  needed: (i) => i.structure.footings.length > 0,
  draw,
};
