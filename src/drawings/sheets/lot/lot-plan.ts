/** Lot plan: boundary, yards, buildings, utilities and the new roof, with the tables a zoning counter asks for. */
import { columnsFlow, measure, splitColumns } from '../../annotate/index.js';
import type { SheetBody, SheetContext, SheetKind } from '../contract.js';
import { northOnPlan, placeView } from '../parts.js';
import { planSheet } from '../plans/plan-sheet.js';
import { lotContent, lotView, lotWindow } from './content.js';
import { enlargedContent, enlargedView } from './enlarged.js';
import { lotBlocks } from './tables.js';

/** On a large sheet an engineer's scale leaves room: the new work is drawn once more beside the lot, larger. */
function withEnlarged(ctx: SheetContext): SheetBody[] | undefined {
  const { area, style } = ctx;
  const north = northOnPlan(ctx.input.lot.north);
  const v = lotView(ctx, { ...area, w: area.w * 0.52 });
  const width = Math.max(v.model.w * v.scale.ratio + 4 * v.margin.x, 24 * style.note);
  const main = { ...area, w: width };
  const rest = { ...area, x: area.x + width + style.gutter, w: area.w - width - style.gutter };
  const blocks = lotBlocks(ctx).filter((b) => b.kind !== 'table' || b.rows.length > 0);
  const count = rest.w > 110 * style.note ? 2 : 1;
  const shares = Array.from({ length: count }, () => 1);
  const slugs = measure(blocks, splitColumns(rest, shares, style.gutter)[0]!.w, style);
  let height = rest.h / 6;
  const columns = () => splitColumns({ ...rest, y: rest.y + rest.h - height, h: height }, shares, style.gutter);
  while (columnsFlow(slugs, columns()).rest.length > 0) {
    height += rest.h / 60;
    if (height > 0.6 * rest.h) return undefined;
  }
  const box = { ...rest, h: rest.h - height - style.gutter };
  const near = enlargedView(ctx, box);
  const fits =
    near.model.w * near.scale.ratio + 2 * near.margin.x <= box.w &&
    near.model.h * near.scale.ratio + 2 * near.margin.y <= box.h - 8 * style.note;
  if (!fits) return undefined;
  const whole = placeView(ctx, {
    box: main,
    model: v.model,
    scale: v.scale,
    number: '1',
    title: 'Lot plan',
    north,
    plan: true,
    ...lotContent(ctx, v),
  });
  const close = placeView(ctx, {
    box,
    model: near.model,
    scale: near.scale,
    number: '2',
    title: 'New roof, enlarged',
    north,
    ...enlargedContent(ctx, near),
  });
  return [
    {
      title: 'Lot plan',
      scaleNote: 'As noted',
      viewports: [{ ...whole.viewport, window: lotWindow(v) }, close.viewport],
      items: [...whole.items, ...close.items, ...columnsFlow(slugs, columns()).items],
    },
  ];
}

const draw = (ctx: SheetContext): SheetBody[] =>
  (ctx.area.w > 24 ? withEnlarged(ctx) : undefined) ??
  planSheet(ctx, {
    title: 'Lot plan',
    blocks: lotBlocks(ctx),
    view: (box) => lotView(ctx, box),
    content: (v) => lotContent(ctx, v),
    window: lotWindow,
  });

export const lotPlan: SheetKind = {
  title: 'Lot plan',
  discipline: 'C',
  file: 'site-plan',
  needed: () => true,
  draw,
};
