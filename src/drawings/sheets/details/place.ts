/** One detail on paper: its views in a row over a title with bar scale, keyed notes beside them or below. */
import type { Vec2 } from '../../../base/vec.js';
import { heightOf, measure, placeTags, type Slug, scaleBar, textBlock, viewTitle } from '../../annotate/index.js';
import {
  centeredViewport,
  type DrawingScale,
  type Primitive,
  type Rect,
  SCALES,
  type Viewport,
} from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { titleBand } from '../parts.js';
import type { Detail, DetailView, Key } from './contract.js';

/** A detail measured for a cell of one width. */
export interface Measured {
  readonly detail: Detail;
  readonly scale: DrawingScale;
  readonly width: number;
  readonly height: number;
  /** Notes stand to the right of the views, else under them. */
  readonly beside: boolean;
  readonly views: { readonly w: number; readonly h: number };
  readonly slugs: readonly Slug[];
  readonly textWidth: number;
}

const paperSize = (ctx: SheetContext, v: DetailView, scale: number): { readonly w: number; readonly h: number } => {
  const h = ctx.style.note;
  return {
    w: v.frame.w * scale + (v.margin.left + v.margin.right) * h,
    h: v.frame.h * scale + (v.margin.above + v.margin.below) * h,
  };
};

/** Row over a view for its name, where a detail has several. */
const nameBand = (ctx: SheetContext, d: Detail): number => (d.views.length > 1 ? 2.2 * ctx.style.note : 0);

/** The view's name over it, kept clear of keys as all lettering is. */
const nameOf = (ctx: SheetContext, d: Detail, v: DetailView, scale: number): readonly Primitive[] =>
  v.name === undefined || d.views.length < 2
    ? []
    : [
        {
          kind: 'text',
          layer: 'S-ANNO-NOTE',
          at: {
            x: v.frame.x + v.frame.w / 2,
            y: v.frame.y + v.frame.h + ((v.margin.above + 1.2) * ctx.style.note) / scale,
          },
          content: v.name,
          height: ctx.style.note,
          face: 'condensed-bold',
          align: 'center',
        },
      ];

/** Notes in order of their first key, each once. */
export function notesOf(d: Detail): readonly Key[] {
  const seen = new Set<string>();
  return d.views.flatMap((v) => v.keys).filter((k) => !seen.has(k.text) && seen.add(k.text));
}

const widths = new WeakMap<SheetContext, Map<string, readonly Slug[]>>();

function slugsOf(ctx: SheetContext, d: Detail, width: number): readonly Slug[] {
  const known = widths.get(ctx) ?? new Map<string, readonly Slug[]>();
  widths.set(ctx, known);
  const key = `${d.id}|${width.toFixed(3)}`;
  const before = known.get(key);
  if (before) return before;
  const made = measure(
    [
      { kind: 'numbered', items: notesOf(d).map((k) => k.text) },
      ...(d.words && d.words.length > 0 ? [{ kind: 'bullets' as const, items: d.words }] : []),
    ],
    width,
    ctx.style,
    'S-ANNO-NOTE',
  );
  known.set(key, made);
  return made;
}

/** Shares of a cell's width that notes beside the views may have, the widest that leaves the views room. */
const SHARES = [0.62, 0.5, 0.4, 0.33] as const;

const shareFor = (views: number, width: number): number | undefined => SHARES.find((s) => views <= width * (1 - s));

/** Fits a detail into a cell of a width at one scale; undefined when the views are too wide for it. */
export function measureAt(ctx: SheetContext, d: Detail, width: number, scale: DrawingScale): Measured | undefined {
  const gap = ctx.style.gutter / 2;
  const sizes = d.views.map((v) => paperSize(ctx, v, scale.ratio));
  const views = {
    w: sizes.reduce((sum, s) => sum + s.w, gap * (sizes.length - 1)),
    h: Math.max(...sizes.map((s) => s.h)) + nameBand(ctx, d),
  };
  if (views.w > width) return undefined;
  const own = views.h + titleBand(ctx);
  const below = slugsOf(ctx, d, width);
  const under = { slugs: below, textWidth: width, beside: false, height: own + heightOf(below) + ctx.style.note };
  const share = shareFor(views.w + gap, width);
  if (share === undefined) return { detail: d, scale, width, views, ...under };
  const slugs = slugsOf(ctx, d, width * share);
  const side = { slugs, textWidth: width * share, beside: true, height: Math.max(own, heightOf(slugs)) };
  return { detail: d, scale, width, views, ...(side.height <= under.height ? side : under) };
}

/** The largest scale at which a detail is no taller than a height; the smallest scale that fits the width when none is. */
export function measureDetail(ctx: SheetContext, d: Detail, width: number, most: number): Measured | undefined {
  let last: Measured | undefined;
  for (const name of d.scales) {
    const m = measureAt(ctx, d, width, SCALES[name]);
    if (!m) continue;
    last = m;
    if (m.height <= most) return m;
  }
  return last;
}

export interface Drawn {
  readonly viewports: readonly Viewport[];
  readonly items: readonly Primitive[];
}

/** Draws a measured detail with the top left corner of its cell at a paper point. */
export function drawDetail(ctx: SheetContext, m: Measured, at: Vec2, number: string): Drawn {
  const { style } = ctx;
  const h = style.note;
  const gap = style.gutter / 2;
  const viewports: Viewport[] = [];
  const items: Primitive[] = [];
  const notes = notesOf(m.detail);
  const numberOf = (k: Key): string => String(notes.findIndex((n) => n.text === k.text) + 1);
  const textLeft = m.beside ? at.x + m.width - m.textWidth : at.x;
  const room = m.beside ? textLeft - at.x - gap : m.width;
  let x = at.x + Math.max(0, (room - m.views.w) / 2);
  for (const v of m.detail.views) {
    const size = paperSize(ctx, v, m.scale.ratio);
    const top = at.y - nameBand(ctx, m.detail);
    const box: Rect = {
      x: x + v.margin.left * h,
      y: top - v.margin.above * h - v.frame.h * m.scale.ratio,
      w: v.frame.w * m.scale.ratio,
      h: v.frame.h * m.scale.ratio,
    };
    const over = [...(v.over?.(m.scale.ratio) ?? []), ...nameOf(ctx, m.detail, v, m.scale.ratio)];
    const tags = placeTags(
      v.keys.map((k) => ({
        kind: 'note' as const,
        text: numberOf(k),
        at: k.at,
        off: { x: (k.off?.x ?? 3) * h, y: (k.off?.y ?? 2.4) * h },
        layer: 'S-ANNO-SYMB' as const,
        style,
        ...(k.mark !== undefined && { mark: k.mark }),
        ...(k.path !== undefined && { path: k.path }),
      })),
      m.scale.ratio,
      over,
      v.items,
    );
    viewports.push(
      centeredViewport({
        name: v.name ? `${m.detail.title}, ${v.name}` : m.detail.title,
        box,
        model: v.frame,
        window: v.frame,
        scale: m.scale.ratio,
        items: v.items,
        over: [...over, ...tags],
      }),
    );
    x += size.w + gap;
  }
  const y = at.y - m.views.h - style.bubble * 1.1;
  const title = viewTitle({ at: { x: at.x, y }, number, title: m.detail.title, scale: m.scale.label, style });
  const bar = scaleBar({ at: { x: at.x + style.bubble * 2.6, y: y - h * 4.2 }, scale: m.scale, style });
  const text = textBlock(m.slugs, { x: textLeft, y: m.beside ? at.y : at.y - m.views.h - titleBand(ctx) - h });
  items.push(...title.items, ...bar.items, ...text.items);
  return { viewports, items };
}
