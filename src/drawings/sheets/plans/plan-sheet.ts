/**
 * A plan with its tables and notes: in a column beside it, or in a band under it when that earns the plan a larger scale. What
 * the column cannot hold goes on under the plan.
 */
import { type Block, columnsFlow, heightOf, measure, type Slug, splitColumns } from '../../annotate/index.js';
import type { DrawingScale, LayerName, Primitive, Rect } from '../../ir/index.js';
import type { SheetBody, SheetContext } from '../contract.js';
import { flowOn, northOnPlan, placeView, titleBand, withSideColumn } from '../parts.js';

/** What a plan shows at the scale a box allows; margins are paper kept round the model for strings. */
export interface PlanView {
  readonly model: Rect;
  readonly scale: DrawingScale;
  readonly margin: { readonly x: number; readonly y: number };
}

interface Layout {
  readonly main: Rect;
  readonly columns: readonly Rect[];
  readonly slugs: readonly Slug[];
  /** Keeps the view to the top of its box, so that text can run on under it. */
  readonly snug: boolean;
}

export interface PlanSheet<V extends PlanView> {
  readonly title: string;
  readonly blocks: readonly Block[];
  readonly view: (box: Rect) => V;
  readonly content: (view: V) => { readonly items: readonly Primitive[]; readonly over: readonly Primitive[] };
  readonly layer?: LayerName;
  /** Model rectangle beyond which items end. */
  readonly window?: (view: V) => Rect | undefined;
}

const fits = (slugs: readonly Slug[], columns: readonly Rect[]): boolean =>
  columnsFlow(slugs, columns).rest.length === 0;

/** Text in columns across the foot of the sheet, no taller than it must be; undefined when it would take half the sheet. */
function bandLayout(ctx: SheetContext, blocks: readonly Block[], layer: LayerName | undefined): Layout | undefined {
  const { area, style } = ctx;
  const count = area.w > 24 ? 3 : 2;
  const shares = Array.from({ length: count }, () => 1);
  const width = splitColumns(area, shares, style.gutter)[0]!.w;
  const slugs = measure(blocks, width, style, layer);
  for (let height = area.h / 8; height <= area.h / 2; height += area.h / 60) {
    const columns = splitColumns({ ...area, h: height }, shares, style.gutter);
    if (!fits(slugs, columns)) continue;
    const y = area.y + height + style.gutter;
    return { main: { ...area, y, h: area.y + area.h - y }, columns, slugs, snug: false };
  }
  return undefined;
}

/** Height of the tallest piece that must stand together, paper inches. */
function tallest(slugs: readonly Slug[]): number {
  let most = 0;
  for (let i = 0; i < slugs.length; ) {
    let last = i;
    while (slugs[last]!.keep && last + 1 < slugs.length) last++;
    most = Math.max(most, (slugs[i]!.repeat?.height ?? 0) + heightOf(slugs.slice(i, last + 1)));
    i = last + 1;
  }
  return most;
}

const SIDE = { share: 0.3, notes: 62 } as const;

function sideLayout(ctx: SheetContext, blocks: readonly Block[], o: PlanSheet<PlanView>): Layout {
  const { style, area } = ctx;
  const { main, side } = withSideColumn(area, Math.min(area.w * SIDE.share, SIDE.notes * style.note), style.gutter);
  const slugs = measure(blocks, side.w, style, o.layer);
  const { rest } = columnsFlow(slugs, [side]);
  if (rest.length === 0) return { main, columns: [side], slugs, snug: false };
  const v = o.view(main);
  const bottom = main.y + main.h - Math.min(main.h, v.model.h * v.scale.ratio + 2 * v.margin.y + titleBand(ctx));
  const height = bottom - style.gutter - main.y;
  const count =
    height < Math.max(8 * style.note, tallest(rest))
      ? 0
      : Math.floor((main.w + style.gutter) / (side.w + style.gutter));
  const under = Array.from({ length: count }, (_, i) => ({
    x: main.x + i * (side.w + style.gutter),
    y: main.y,
    w: side.w,
    h: height,
  }));
  return { main, columns: [side, ...under], slugs, snug: true };
}

const hasRoom = (ctx: SheetContext, v: PlanView, box: Rect): boolean =>
  v.model.w * v.scale.ratio + 2 * v.margin.x <= box.w + 1e-9 &&
  v.model.h * v.scale.ratio + 2 * v.margin.y + titleBand(ctx) <= box.h + 1e-9;

function chosen(ctx: SheetContext, o: PlanSheet<PlanView>): Layout {
  const blocks = o.blocks.filter((b) => b.kind !== 'table' || b.rows.length > 0);
  const side = sideLayout(ctx, blocks, o);
  const band = bandLayout(ctx, blocks, o.layer);
  if (!band) return side;
  const [a, b] = [o.view(side.main), o.view(band.main)];
  // At the least scale of all a view may still be too large for its box.
  if (!hasRoom(ctx, b, band.main)) return side;
  const [wide, low] = [a.scale.ratio, b.scale.ratio];
  return low > wide + 1e-9 || (low > wide - 1e-9 && !fits(side.slugs, side.columns)) ? band : side;
}

/** The sheet of one plan; text that finds no room at all goes on to a sheet of its own. */
export function planSheet<V extends PlanView>(ctx: SheetContext, o: PlanSheet<V>): SheetBody[] {
  const layout = chosen(ctx, o as unknown as PlanSheet<PlanView>);
  const v = o.view(layout.main);
  const { items, over } = o.content(v);
  const window = o.window?.(v);
  const view = placeView(ctx, {
    box: layout.main,
    model: v.model,
    scale: v.scale,
    number: '1',
    title: o.title,
    items,
    over,
    north: northOnPlan(ctx.input.lot.north),
    plan: true,
    ...(layout.snug && { snug: v.margin.y }),
  });
  const flowed = columnsFlow(layout.slugs, layout.columns);
  const first = layout.columns[0]!;
  const across = Math.floor((ctx.area.w + ctx.style.gutter) / (first.w + ctx.style.gutter));
  const rest = Array.from({ length: across }, (_, i) => ({
    x: ctx.area.x + i * (first.w + ctx.style.gutter),
    y: ctx.area.y,
    w: first.w,
    h: ctx.area.h,
  }));
  return [
    {
      title: o.title,
      scaleNote: view.scale.label,
      viewports: [window ? { ...view.viewport, window } : view.viewport],
      items: [...view.items, ...flowed.items],
    },
    ...flowOn(flowed.rest, rest, `${o.title}, continued`),
  ];
}
