/** Pieces that most sheets share: a framed view with title, bar scale and north; extents; keyed lists. */
import type { Vec2 } from '../../base/vec.js';
import {
  type Block,
  columnsFlow,
  type DimString,
  type DimStringOptions,
  dimString,
  measure,
  northArrow,
  type Slug,
  scaleBar,
  splitColumns,
  viewTitle,
} from '../annotate/index.js';
import {
  centeredViewport,
  chooseScale,
  type DrawingScale,
  type LayerName,
  type Primitive,
  type Rect,
  SCALES,
  type ScaleName,
  type Viewport,
} from '../ir/index.js';
import type { SheetBody, SheetContext } from './contract.js';

export const PLAN_SCALES: readonly ScaleName[] = ['3/4', '1/2', '3/8', '1/4', '3/16', '1/8'];
export const SECTION_SCALES: readonly ScaleName[] = ['1-1/2', '1', '3/4', '1/2', '3/8', '1/4', '3/16', '1/8'];
export const DETAIL_SCALES: readonly ScaleName[] = ['1-1/2', '1', '3/4', '1/2', '3/8', '1/4'];
export const SITE_SCALES: readonly ScaleName[] = ['1:10', '1:20', '1:30', '1:40', '1:50', '1:60', '1:100'];

export interface PlacedView {
  readonly viewport: Viewport;
  readonly items: readonly Primitive[];
  readonly scale: DrawingScale;
}

/** Height kept under a view for its title and bar scale. */
export const titleBand = (ctx: SheetContext): number => ctx.style.bubble * 2.6 + ctx.style.note * 3;

/** Largest scale of a list at which a model extent with paper margins fits a box that also holds the title band. */
export function scaleFor(
  ctx: SheetContext,
  model: Rect,
  box: Rect,
  margin: { readonly x: number; readonly y: number },
  names: readonly ScaleName[],
): DrawingScale {
  const room = { w: box.w - 2 * margin.x, h: box.h - titleBand(ctx) - 2 * margin.y };
  return chooseScale(model, room, names) ?? SCALES[names.at(-1)!];
}

/** Puts a view in a box: contents centred above a title with its bar scale, and a north arrow on plans. */
export function placeView(
  ctx: SheetContext,
  o: {
    readonly box: Rect;
    readonly model: Rect;
    readonly scale: DrawingScale;
    readonly number: string;
    readonly title: string;
    readonly items: readonly Primitive[];
    readonly over?: readonly Primitive[];
    /** Paper angle of north from straight up, counter-clockwise; plans only. */
    readonly north?: number;
    /** Paper kept above and below the model for what stands round it: the view then takes only the top of its box. */
    readonly snug?: number;
    /** Items are in house axes, seen from above. */
    readonly plan?: boolean;
  },
): PlacedView {
  const { style } = ctx;
  const band = titleBand(ctx);
  const need = o.snug === undefined ? o.box.h : o.model.h * o.scale.ratio + 2 * o.snug + band;
  const h = Math.min(o.box.h, need);
  const box = { ...o.box, y: o.box.y + o.box.h - h, h };
  const view = centeredViewport({
    name: o.title,
    box: { x: box.x, y: box.y + band, w: box.w, h: box.h - band },
    model: o.model,
    scale: o.scale.ratio,
    items: o.items,
    ...(o.over && { over: o.over }),
  });
  const viewport: Viewport = o.plan ? { ...view, plan: true } : view;
  const y = box.y + band - style.bubble * 1.6;
  const title = viewTitle({ at: { x: box.x, y }, number: o.number, title: o.title, scale: o.scale.label, style });
  const bar = scaleBar({ at: { x: box.x + style.bubble * 2.6, y: y - style.note * 4.2 }, scale: o.scale, style });
  const items: Primitive[] = [...title.items, ...bar.items];
  if (o.north !== undefined) {
    items.push(
      northArrow({
        at: {
          x: box.x + Math.max(title.width, bar.width + style.bubble * 2.6) + style.bubble * 4,
          y: y + style.bubble * 0.2,
        },
        angle: o.north,
        style,
      }),
    );
  }
  return { viewport, items, scale: o.scale };
}

export const inflate = (r: Rect, by: number): Rect => ({ x: r.x - by, y: r.y - by, w: r.w + 2 * by, h: r.h + 2 * by });

export function extents(points: readonly Vec2[]): Rect {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
}

/** North on a plan drawn with the house x axis to the right: angle from straight up. */
export const northOnPlan = (north: number): number => north - Math.PI / 2;

/** Right part of a sheet for notes and tables, left for views. */
export function withSideColumn(
  area: Rect,
  width: number,
  gutter: number,
): { readonly main: Rect; readonly side: Rect } {
  return {
    main: { x: area.x, y: area.y, w: area.w - width - gutter, h: area.h },
    side: { x: area.x + area.w - width, y: area.y, w: width, h: area.h },
  };
}

/** Dimension strings lettered as this set letters lengths; tiers that say nothing new are left out. */
export function dims(ctx: SheetContext, o: Omit<DimStringOptions, 'style' | 'format'>): DimString {
  const said = new Set<string>();
  const tiers = o.tiers.filter((t) => {
    const stations = [...new Set(t.stations.map((v) => Math.round(v * 64)))].sort((a, b) => a - b);
    const key = stations.join();
    if (stations.length < 2 || said.has(key)) return false;
    said.add(key);
    return true;
  });
  return dimString({ ...o, tiers, style: ctx.style, format: ctx.len });
}

/** Values in order, each once. */
export const unique = (values: readonly number[]): number[] =>
  [...values].sort((a, b) => a - b).filter((v, i, all) => i === 0 || Math.abs(v - all[i - 1]!) > 1e-6);

/** Text and tables flowed through columns onto as many sheets as they need; nothing is dropped. Empty tables are left out. */
export function flowSheets(
  ctx: SheetContext,
  o: {
    readonly title: string;
    readonly blocks: readonly Block[];
    readonly columns: number;
    readonly layer?: LayerName;
  },
): SheetBody[] {
  const boxes = splitColumns(
    ctx.area,
    Array.from({ length: o.columns }, () => 1),
    ctx.style.gutter,
  );
  const slugs = measure(
    o.blocks.filter((b) => b.kind !== 'table' || b.rows.length > 0),
    boxes[0]!.w,
    ctx.style,
    o.layer,
  );
  return flowOn(slugs, boxes, `${o.title}, continued`).map((b, i) => (i === 0 ? { ...b, title: o.title } : b));
}

/** Measured text flowed through the same columns of as many sheets as it needs; none for none. */
export function flowOn(slugs: readonly Slug[], columns: readonly Rect[], title: string): SheetBody[] {
  const bodies: SheetBody[] = [];
  let rest = slugs;
  while (rest.length > 0) {
    const flowed = columnsFlow(rest, columns);
    bodies.push({ title, scaleNote: 'No scale', viewports: [], items: flowed.items });
    rest = flowed.rest;
  }
  return bodies;
}

/** Columns cut to the least height at which measured text still fits them, so that they end together; as they are when it does not fit. */
export function evened(slugs: readonly Slug[], columns: readonly Rect[]): readonly Rect[] {
  const cut = (h: number): Rect[] => columns.map((c) => ({ ...c, y: c.y + c.h - h, h }));
  const fits = (h: number): boolean => columnsFlow(slugs, cut(h)).rest.length === 0;
  const most = columns[0]!.h;
  if (!fits(most)) return columns;
  let [low, high] = [0, most];
  for (let k = 0; k < 8; k++) {
    const mid = (low + high) / 2;
    // A piece taller than its column is drawn all the same: such a height is none.
    if (slugs.every((s) => s.height <= mid) && fits(mid)) high = mid;
    else low = mid;
  }
  return cut(high);
}
