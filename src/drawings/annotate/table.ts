import type { Vec2 } from '../../base/vec.js';
import { type FaceName, type HAlign, type LayerName, type Primitive, textWidth, wrapText } from '../ir/index.js';
import { pencil } from './pencil.js';
import type { Style } from './style.js';

export interface TableColumn {
  readonly head: string;
  readonly align?: HAlign;
  readonly face?: FaceName;
  /** Fixed width, paper inches, padding included. */
  readonly width?: number;
  /** Widest natural width before the text wraps. */
  readonly max?: number;
  /** Takes its share of spare width when the table is stretched. */
  readonly grow?: boolean;
}

export interface TableCell {
  readonly text: string;
  readonly face?: FaceName;
  readonly mark?: string;
  readonly path?: string;
}

export type TableRow = readonly (string | TableCell)[];

export interface TableOptions {
  readonly title?: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly layer?: LayerName;
  readonly style: Style;
  /** Stretches or squeezes the table to this width; its natural width by default. */
  readonly width?: number;
  /** Lettering of the body; the style's note height by default. */
  readonly height?: number;
}

/** A measured table: its pieces can be drawn at once (`table`) or flowed row by row. */
export interface TableLayout {
  readonly width: number;
  /** Title, heading row and rules above the first row. */
  readonly headHeight: number;
  readonly rowHeights: readonly number[];
  readonly height: number;
  drawHead(at: Vec2, continued?: boolean): Primitive[];
  drawRow(index: number, at: Vec2): Primitive[];
}

const cellOf = (c: string | TableCell): TableCell => (typeof c === 'string' ? { text: c } : c);

const longestWord = (text: string, h: number, face: FaceName): number =>
  Math.max(0, ...text.split(/\s+/).map((w) => textWidth(w, h, face)));

/** Column widths: natural ones, squeezed from the widest down to the longest word, or stretched where `grow` allows. */
function columnWidths(o: TableOptions, h: number, pad: number): number[] {
  const face = (c: TableColumn): FaceName => c.face ?? 'condensed';
  const natural: number[] = [];
  const least: number[] = [];
  o.columns.forEach((c, i) => {
    let want = 0;
    let floor = longestWord(c.head, h, 'condensed-bold');
    for (const line of c.head.split('\n')) want = Math.max(want, textWidth(line, h, 'condensed-bold'));
    for (const row of o.rows) {
      const cell = cellOf(row[i] ?? '');
      const f = cell.face ?? face(c);
      for (const line of cell.text.split('\n')) want = Math.max(want, textWidth(line, h, f));
      floor = Math.max(floor, longestWord(cell.text, h, f));
    }
    const limit = c.max === undefined ? want : Math.min(want, Math.max(floor, c.max));
    natural.push(c.width ?? limit + 2 * pad + 1e-6);
    least.push(c.width ?? Math.min(limit, floor) + 2 * pad + 1e-6);
  });
  const total = natural.reduce((a, b) => a + b, 0);
  if (o.width === undefined) return natural;
  if (total <= o.width) {
    const growing = o.columns.map((c) => (c.grow ? 1 : 0));
    const shares = growing.some((g) => g > 0) ? growing : o.columns.map((c) => (c.width === undefined ? 1 : 0));
    const count = shares.reduce<number>((a, b) => a + b, 0);
    return natural.map((w, i) => w + (count > 0 ? ((o.width! - total) * shares[i]!) / count : 0));
  }
  // Lower a common ceiling on the wide columns until the sum fits; none goes below its longest word.
  let [lo, hi] = [0, Math.max(...natural)];
  const cap = (ceiling: number) => natural.map((w, i) => Math.max(least[i]!, Math.min(w, ceiling)));
  for (let k = 0; k < 40; k++) {
    const mid = (lo + hi) / 2;
    if (cap(mid).reduce((a, b) => a + b, 0) > o.width) hi = mid;
    else lo = mid;
  }
  return cap(lo);
}

export function layoutTable(o: TableOptions): TableLayout {
  const { style } = o;
  const h = o.height ?? style.note;
  const layer = o.layer ?? 'G-ANNO-SCHD';
  const padX = 0.8 * h;
  const padY = 0.62 * h;
  const step = 1.5 * h;
  const p = pencil(layer, 'rule');
  const widths = columnWidths(o, h, padX);
  const width = widths.reduce((a, b) => a + b, 0);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((a, b) => a + b, 0));
  const wrap = (text: string, i: number, face: FaceName) => wrapText(text, widths[i]! - 2 * padX + 1e-6, h, face);
  const tall = (lines: number) => h + (lines - 1) * step + 2 * padY;

  const heads = o.columns.map((c, i) => wrap(c.head, i, 'condensed-bold'));
  const body = o.rows.map((row) =>
    o.columns.map((c, i) => {
      const cell = cellOf(row[i] ?? '');
      const face = cell.face ?? c.face ?? 'condensed';
      return { cell, face, lines: wrap(cell.text, i, face) };
    }),
  );
  const titleHeight = o.title === undefined ? 0 : style.heading + 0.75 * h;
  const headRow = tall(Math.max(1, ...heads.map((l) => l.length)));
  const rowHeights = body.map((row) => tall(Math.max(1, ...row.map((c) => c.lines.length))));

  const letters = (
    lines: readonly string[],
    i: number,
    top: number,
    x0: number,
    face: FaceName,
    cell?: TableCell,
  ): Primitive[] => {
    const align = o.columns[i]!.align ?? 'left';
    const x = x0 + lefts[i]! + (align === 'left' ? padX : align === 'right' ? widths[i]! - padX : widths[i]! / 2);
    return lines.map((line, k) => ({
      ...p.text(x, top - padY - h - k * step, line, h, { face, align }),
      ...(cell?.mark !== undefined && { mark: cell.mark }),
      ...(cell?.path !== undefined && { path: cell.path }),
    }));
  };

  return {
    width,
    rowHeights,
    headHeight: titleHeight + headRow,
    height: titleHeight + headRow + rowHeights.reduce((a, b) => a + b, 0),
    drawHead(at, continued = false) {
      const items: Primitive[] = [];
      if (o.title !== undefined) {
        const text = continued ? `${o.title} (continued)` : o.title;
        items.push(p.text(at.x, at.y - style.heading, text, style.heading, { face: 'bold' }));
      }
      const top = at.y - titleHeight;
      items.push(p.line(at.x, top, at.x + width, top, 'rule-bold'));
      heads.forEach((lines, i) => {
        // Headings stand on the rule below them, as do the numbers of a column.
        const drop = headRow - tall(lines.length);
        items.push(...letters(lines, i, top - drop, at.x, 'condensed-bold'));
      });
      items.push(p.line(at.x, top - headRow, at.x + width, top - headRow, 'symbol'));
      return items;
    },
    drawRow(index, at) {
      const row = body[index]!;
      const y = at.y - rowHeights[index]!;
      const items = row.flatMap((c, i) => letters(c.lines, i, at.y, at.x, c.face, c.cell));
      items.push(p.line(at.x, y, at.x + width, y, index === body.length - 1 ? 'symbol' : 'hatch'));
      return items;
    },
  };
}

export interface DrawnTable {
  readonly items: readonly Primitive[];
  readonly width: number;
  readonly height: number;
  /** Index of the first row that did not fit under `maxHeight`; the number of rows when all did. */
  readonly drawn: number;
}

/**
 * Draws a table with its top left corner at `at` (paper inches). With `maxHeight`, rows that do not fit are left out and
 * `drawn` says how many stand: pass the rest to another call with `continued`.
 */
export function table(
  o: TableOptions & { readonly at: Vec2; readonly maxHeight?: number; readonly continued?: boolean },
): DrawnTable {
  const t = layoutTable(o);
  const items = t.drawHead(o.at, o.continued);
  let y = o.at.y - t.headHeight;
  let drawn = 0;
  for (; drawn < o.rows.length; drawn++) {
    if (o.maxHeight !== undefined && o.at.y - y + t.rowHeights[drawn]! > o.maxHeight + 1e-9) break;
    items.push(...t.drawRow(drawn, { x: o.at.x, y }));
    y -= t.rowHeights[drawn]!;
  }
  return { items, width: t.width, height: o.at.y - y, drawn };
}
