import type { Vec2 } from '../../base/vec.js';
import { type FaceName, type LayerName, type Primitive, type Rect, textWidth, wrapText } from '../ir/index.js';
import type { Block, BlockOf, Setting, Slug } from './block.js';
import { pencil } from './pencil.js';
import { stepSlug } from './step.js';
import type { Style } from './style.js';
import { layoutTable } from './table.js';

/** Lines of a paragraph as slugs; its first two and its last two lines stay together. */
function lineSlugs(
  lines: readonly string[],
  s: Setting,
  before: number,
  indent: number,
  face: FaceName,
  marker?: string,
  path?: string,
): Slug[] {
  const h = s.style.note;
  const step = h * s.style.leading;
  const p = pencil(s.layer);
  return lines.map((line, i) => ({
    height: i === lines.length - 1 ? h : step,
    before: i === 0 ? before : 0,
    keep: lines.length > 1 && (i === 0 || i === lines.length - 2),
    draw: (at) => [
      ...(i === 0 && marker !== undefined
        ? [p.text(at.x + indent - 0.55 * h, at.y - h, marker, h, { align: 'right', face })]
        : []),
      { ...p.text(at.x + indent, at.y - h, line, h, { face }), ...(path !== undefined && { path }) },
    ],
  }));
}

function listSlugs(items: readonly string[], marker: (i: number) => string, s: Setting): Slug[] {
  const h = s.style.note;
  const indent = Math.max(1.3 * h, ...items.map((_, i) => textWidth(marker(i), h) + 0.65 * h));
  return items.flatMap((text, i) =>
    lineSlugs(wrapText(text, s.width - indent, h), s, (i === 0 ? 0.85 : 0.9) * h, indent, 'regular', marker(i)),
  );
}

const MEASURE: { readonly [K in Block['kind']]: (b: BlockOf<K>, s: Setting) => Slug[] } = {
  heading: (b, s) => {
    const h = s.style.heading;
    const p = pencil(s.layer);
    const lines = wrapText(b.text, s.width, h, 'bold');
    return lines.map((line, i) => ({
      height: h + (i === lines.length - 1 ? 0.5 * h : 0.6 * h),
      before: i === 0 ? 1.9 * h : 0,
      keep: true,
      draw: (at) => [
        p.text(at.x, at.y - h, line, h, { face: 'bold' }),
        ...(i === lines.length - 1 ? [p.line(at.x, at.y - 1.5 * h, at.x + s.width, at.y - 1.5 * h, 'symbol')] : []),
      ],
    }));
  },
  para: (b, s) => {
    const lines = wrapText(b.text, s.width, s.style.note, b.face);
    const slugs = lineSlugs(lines, s, 0.9 * s.style.note, 0, b.face ?? 'regular', undefined, b.path);
    return b.keep ? slugs.map((l) => ({ ...l, keep: true })) : slugs;
  },
  bullets: (b, s) => listSlugs(b.items, () => '–', s),
  numbered: (b, s) => listSlugs(b.items, (i) => `${i + (b.start ?? 1)}.`, s),
  pairs: (b, s) => {
    const h = s.style.note;
    const p = pencil(s.layer);
    const step = h * 1.6;
    const left = Math.min(0.48 * s.width, Math.max(0, ...b.rows.map((r) => textWidth(r.name, h))) + 1.6 * h);
    return b.rows.map((r) => {
      const names = wrapText(r.name, left - 0.8 * h, h);
      const values = wrapText(r.value, s.width - left, h, 'bold');
      const height = h * 1.6 + (Math.max(names.length, values.length) - 1) * step + 0.6 * h;
      return {
        height,
        before: 0,
        keep: false,
        draw: (at) => [
          ...names.map((t, k) => p.text(at.x, at.y - 1.6 * h - k * step, t, h)),
          ...values.map((t, k) => ({
            ...p.text(at.x + left, at.y - 1.6 * h - k * step, t, h, { face: 'bold' as const }),
            ...(r.path !== undefined && { path: r.path }),
          })),
          p.line(at.x, at.y - height, at.x + s.width, at.y - height, 'hatch'),
        ],
      };
    });
  },
  table: (b, s) => {
    const t = layoutTable({ ...b, style: s.style, width: s.width, layer: s.layer });
    const head: Slug = {
      height: t.headHeight,
      before: 1.6 * s.style.heading,
      keep: b.rows.length > 0,
      draw: (at) => t.drawHead(at),
    };
    const repeat = { height: t.headHeight, draw: (at: Vec2) => t.drawHead(at, true) };
    return [
      head,
      ...b.rows.map(
        (_, i): Slug => ({
          height: t.rowHeights[i]!,
          before: 0,
          keep: b.whole === true && i < b.rows.length - 1,
          draw: (at) => t.drawRow(i, at),
          // The first row follows its own heading, so only later rows bring a copy.
          ...(i > 0 && { repeat }),
        }),
      ),
    ];
  },
  drawing: (b, s) => [{ height: b.height, before: s.style.note, keep: false, draw: (at) => b.draw(at, s.width) }],
  step: (b, s) => [stepSlug(b, s)],
  gap: (b, s) => [{ height: 0, before: b.height ?? s.style.note * 1.5, keep: false, draw: () => [] }],
};

/** Measures blocks for columns of one width. */
export function measure(
  blocks: readonly Block[],
  width: number,
  style: Style,
  layer: LayerName = 'G-ANNO-NOTE',
): Slug[] {
  const s: Setting = { width, style, layer };
  return blocks.flatMap((b) => (MEASURE[b.kind] as (b: Block, s: Setting) => Slug[])(b, s));
}

export const heightOf = (slugs: readonly Slug[]): number =>
  slugs.reduce((sum, s, i) => sum + s.height + (i === 0 ? 0 : s.before), 0);

/** Draws measured text downward from a top left corner; no limit below. */
export function textBlock(
  slugs: readonly Slug[],
  at: Vec2,
): { readonly items: readonly Primitive[]; readonly height: number } {
  const items: Primitive[] = [];
  let y = at.y;
  slugs.forEach((s, i) => {
    if (i > 0) y -= s.before;
    items.push(...s.draw({ x: at.x, y }));
    y -= s.height;
  });
  return { items, height: at.y - y };
}

export interface Flowed {
  readonly items: readonly Primitive[];
  /** What did not fit: flow it into the columns of the next sheet. */
  readonly rest: readonly Slug[];
  /** Paper y of the lowest ink in each column. */
  readonly bottoms: readonly number[];
}

/**
 * Flows measured text through columns of equal width (the width it was measured for), left to right. Headings stay with
 * what follows. A piece taller than a whole column is drawn all the same, at the head of one, so that nothing is lost.
 */
export function columnsFlow(slugs: readonly Slug[], columns: readonly Rect[]): Flowed {
  const items: Primitive[] = [];
  const bottoms: number[] = [];
  let next = 0;
  for (const column of columns) {
    let y = column.y + column.h;
    let empty = true;
    while (next < slugs.length) {
      // A chain of pieces that keep together moves as one.
      let last = next;
      while (slugs[last]!.keep && last + 1 < slugs.length) last++;
      const chain = slugs.slice(next, last + 1);
      const repeat = empty ? chain[0]!.repeat : undefined;
      const need = (repeat?.height ?? 0) + heightOf(chain) + (empty ? 0 : chain[0]!.before);
      if (!empty && y - need < column.y - 1e-9) break;
      if (repeat !== undefined) {
        items.push(...repeat.draw({ x: column.x, y }));
        y -= repeat.height;
      }
      chain.forEach((s, i) => {
        if (!(empty && i === 0)) y -= s.before;
        items.push(...s.draw({ x: column.x, y }));
        y -= s.height;
      });
      empty = false;
      next = last + 1;
    }
    bottoms.push(y);
  }
  return { items, rest: slugs.slice(next), bottoms };
}
