import { type Primitive, type Rect, SHEET_SIZES, type SheetSize, textWidth, wrapText } from '../ir/index.js';
import { type Pencil, pencil } from './pencil.js';
import { type Style, styleFor } from './style.js';

/** What all sheets of a set have in common in their title blocks. */
export interface SetData {
  readonly project: string;
  readonly address: readonly string[];
  readonly owner: string;
  readonly parcel?: string;
  readonly jurisdiction?: string;
  readonly preparedBy: readonly string[];
  /** Printed as given; the caller's clock, never ours. */
  readonly date: string;
  readonly revisions: readonly { readonly mark: string; readonly date: string; readonly text: string }[];
  /** `preliminary` prints the banner; `issued` prints for what the set is issued. */
  readonly status: { readonly kind: 'preliminary' } | { readonly kind: 'issued'; readonly purpose: string };
  /** One or two sentences, small. */
  readonly cautions: readonly string[];
  /** Keeps the office's stamp space clear at the top of the strip; true unless said otherwise. */
  readonly stamp?: boolean;
}

/** What one sheet says of itself. */
export interface SheetData {
  readonly id: string;
  readonly title: string;
  readonly scaleNote: string;
  readonly number: number;
  /** Sheets in the set; 0 while that is not known, and then not printed. */
  readonly of: number;
}

interface Form {
  readonly style: Style;
  readonly border: Rect;
  readonly strip: number;
  readonly stampHeight: number;
}

/**
 * Border and strip of a sheet size. The stamp space is 3 3/4 by 5 3/4 in on large sheets, as one office’s plan-format checklist asks (read,
 * digital submittal rules), and half of that on small ones.
 */
function formOf(size: SheetSize, stamp: boolean): Form {
  const { w, h } = SHEET_SIZES[size];
  const style = styleFor(size);
  const large = h >= 16;
  const left = large ? 0.75 : 0.5;
  const edge = large ? 0.5 : 0.375;
  return {
    style,
    border: { x: left, y: edge, w: w - left - edge, h: h - 2 * edge },
    strip: large ? (stamp ? 3.95 : 3.25) : stamp ? 2.25 : 2.2,
    stampHeight: stamp ? (large ? 6.1 : 3.15) : 0,
  };
}

/** Paper rectangle for views and notes: inside the border, left of the title strip, with a margin. */
export function drawingArea(size: SheetSize, stamp = true): Rect {
  const f = formOf(size, stamp);
  const pad = f.style.note * 2.6;
  return { x: f.border.x + pad, y: f.border.y + pad, w: f.border.w - f.strip - 2 * pad, h: f.border.h - 2 * pad };
}

/**
 * Space at the top right corner that stays free of ink for the office's stamp: 3 3/4 by 5 3/4 in on large sheets, half of
 * that on small ones, which are read as half-size prints.
 */
export function stampSpace(size: SheetSize): Rect {
  const { border, strip } = formOf(size, true);
  const large = SHEET_SIZES[size].h >= 16;
  const [w, h] = large ? [3.75, 5.75] : [1.875, 2.875];
  // Its caption stands in what is left of the cell below it.
  return { x: border.x + border.w - strip + (strip - w) / 2, y: border.y + border.h - 0.1 - h, w, h };
}

/** Inside of the border, title strip included. */
export const sheetFrame = (size: SheetSize): Rect => formOf(size, false).border;

/** Cells of the strip are laid from the top down or from the bottom up between its two edges. */
interface Strip {
  readonly p: Pencil;
  readonly style: Style;
  readonly x0: number;
  readonly x1: number;
  readonly pad: number;
}

const label = (s: Strip, x: number, top: number, text: string): Primitive =>
  s.p.text(x, top - s.pad * 0.9 - s.style.small, text, s.style.small, { ink: 'soft', face: 'condensed' });

interface Cell {
  readonly height: number;
  readonly items: readonly Primitive[];
}

/** Labelled field with wrapped lines of lettering. */
function field(
  s: Strip,
  top: number,
  name: string,
  lines: readonly string[],
  height: number,
  face: 'regular' | 'bold' = 'regular',
  x0 = s.x0,
  x1 = s.x1,
): Cell {
  const wrapped = lines.flatMap((l) => wrapText(l, x1 - x0 - 2 * s.pad, height, face));
  const step = height * 1.55;
  const first = s.pad * 0.9 + s.style.small + 0.75 * s.style.note + height;
  const items: Primitive[] = [label(s, x0 + s.pad, top, name)];
  wrapped.forEach((line, i) => {
    items.push(s.p.text(x0 + s.pad, top - first - i * step, line, height, { face }));
  });
  return { items, height: first + (Math.max(1, wrapped.length) - 1) * step + s.pad };
}

/** The banner of a set that may not be handed in: words, not colour. */
function banner(s: Strip, top: number, status: SetData['status']): Cell {
  if (status.kind === 'issued') return field(s, top, 'Issued for', [status.purpose], s.style.note, 'bold');
  const width = s.x1 - s.x0 - 2 * s.pad;
  const big = Math.min(
    s.style.viewTitle * 1.25,
    (s.style.note * width * 0.9) / textWidth('PRELIMINARY', s.style.note, 'bold'),
  );
  const low = Math.min(s.style.note, (s.style.note * width * 0.9) / textWidth('NOT FOR PERMIT', s.style.note, 'bold'));
  const height = big + low + 3.4 * s.style.note;
  const mid = (s.x0 + s.x1) / 2;
  const y0 = top - s.pad;
  const y1 = y0 - height;
  return {
    height: height + 2 * s.pad,
    items: [
      s.p.shape(
        [
          [s.x0 + s.pad, y0],
          [s.x1 - s.pad, y0],
          [s.x1 - s.pad, y1],
          [s.x0 + s.pad, y1],
        ],
        'cut',
      ),
      s.p.text(mid, y0 - 1.1 * s.style.note - big, 'PRELIMINARY', big, { face: 'bold', align: 'center' }),
      s.p.text(mid, y1 + 1.1 * s.style.note, 'NOT FOR PERMIT', low, { face: 'bold', align: 'center' }),
    ],
  };
}

/** Lines that the revision block has room for; the newest revisions fill it, each with at most two. */
const REVISION_LINES = 5;

function revisions(s: Strip, top: number, rows: SetData['revisions']): Cell {
  const h = s.style.small;
  const step = 1.95 * h;
  const first = s.pad * 0.9 + h;
  const x1 = s.x0 + s.pad;
  const x2 = x1 + 2.4 * h;
  const x3 = x2 + textWidth('0000-00-00', h, 'condensed') + 1.2 * h;
  const lines: { readonly mark: string; readonly date: string; readonly text: string }[] = [];
  for (const r of [...rows].reverse()) {
    const texts = wrapText(r.text, s.x1 - s.pad - x3, h, 'condensed').slice(0, 2);
    if (lines.length + texts.length > REVISION_LINES) break;
    lines.unshift(...texts.map((text, i) => (i === 0 ? { ...r, text } : { mark: '', date: '', text })));
  }
  const count = Math.max(3, lines.length);
  const items: Primitive[] = [label(s, x1, top, 'Revisions')];
  for (let i = 0; i < count; i++) {
    const y = top - first - (i + 1) * step - 0.4 * h;
    items.push(s.p.line(x1, y - 0.5 * h, s.x1 - s.pad, y - 0.5 * h, 'hatch'));
    const r = lines[i];
    if (r === undefined) continue;
    items.push(s.p.text(x1, y, r.mark, h, { face: 'condensed-bold' }));
    items.push(s.p.text(x2, y, r.date, h, { face: 'condensed' }));
    items.push(s.p.text(x3, y, r.text, h, { face: 'condensed' }));
  }
  return { items, height: first + count * step + 1.2 * h + s.pad };
}

/** Corner marks round the stamp space and its caption below; nothing inside. */
function stampCell(s: Strip, top: number, height: number, space: Rect): Cell {
  const c = 0.18;
  const corner = (x: number, y: number, dx: number, dy: number) =>
    s.p.path(
      [
        [x + dx * c, y],
        [x, y],
        [x, y + dy * c],
      ],
      'rule',
    );
  const [right, up] = [space.x + space.w, space.y + space.h];
  return {
    height,
    items: [
      corner(space.x, up, 1, -1),
      corner(right, up, -1, -1),
      corner(space.x, space.y, 1, 1),
      corner(right, space.y, -1, 1),
      s.p.text((s.x0 + s.x1) / 2, top - height + 0.08, 'Space reserved for the reviewing office', s.style.small, {
        ink: 'soft',
        face: 'condensed',
        align: 'center',
      }),
    ].map((i) => ({ ...i, layer: 'G-ANNO-STMP' as const })),
  };
}

/** Border and title strip of a sheet, in paper inches. */
export function titleBlock(size: SheetSize, set: SetData, sheet: SheetData): readonly Primitive[] {
  const f = formOf(size, set.stamp ?? true);
  const { style, border } = f;
  const p = pencil('G-ANNO-TTLB', 'rule');
  const right = border.x + border.w;
  const topEdge = border.y + border.h;
  const s: Strip = { p, style, x0: right - f.strip, x1: right, pad: style.note * 1.25 };
  const items: Primitive[] = [];
  const rule = (y: number, pen: 'rule' | 'rule-bold' = 'rule') => items.push(p.line(s.x0, y, s.x1, y, pen));

  let y = topEdge;
  const down = (c: Cell, pen: 'rule' | 'rule-bold' = 'rule') => {
    items.push(...c.items);
    y -= c.height;
    rule(y, pen);
  };
  if (f.stampHeight > 0) down(stampCell(s, y, f.stampHeight, stampSpace(size)), 'rule-bold');
  down(field(s, y, 'Project', [set.project], style.heading * 1.12, 'bold'));
  down(field(s, y, 'Site', set.address, style.note));
  const half = (s.x0 + s.x1) / 2;
  down(field(s, y, 'Owner', [set.owner], style.note));
  if (set.parcel !== undefined) down(field(s, y, 'Parcel', [set.parcel], style.note));
  if (set.jurisdiction !== undefined) down(field(s, y, 'Building office', [set.jurisdiction], style.note));
  down(field(s, y, 'Prepared by', set.preparedBy, style.note));

  // From the bottom: the sheet's number is where a thumb looks for it.
  let foot = border.y;
  const idHeight = Math.min(style.viewTitle * 3.1, (f.strip - 2 * s.pad) / textWidth(sheet.id, 1, 'bold'));
  items.push(p.text(s.x0 + s.pad, foot + s.pad, sheet.id, idHeight, { face: 'bold' }));
  const ofText = `${sheet.number} of ${sheet.of}`;
  const idTop = foot + s.pad + idHeight + 0.9 * style.note;
  if (sheet.of > 0)
    items.push(p.text(s.x1 - s.pad, idTop, ofText, style.small, { face: 'condensed', align: 'right', ink: 'soft' }));
  items.push(p.text(s.x0 + s.pad, idTop, 'Sheet', style.small, { face: 'condensed', ink: 'soft' }));
  foot = idTop + style.small + s.pad * 0.75;
  rule(foot, 'rule-bold');
  const up = (make: (top: number) => Cell, pen: 'rule' | 'rule-bold' = 'rule') => {
    const height = make(0).height;
    foot += height;
    items.push(...make(foot).items);
    rule(foot, pen);
  };
  up((top) => field(s, top, 'Sheet title', [sheet.title], style.viewTitle, 'bold'));
  up((top) => {
    const a = field(s, top, 'Date', [set.date], style.note, 'regular', s.x0, half);
    const b = field(s, top, 'Scale', [sheet.scaleNote], style.note, 'regular', half, s.x1);
    const height = Math.max(a.height, b.height);
    return { height, items: [...a.items, ...b.items, p.line(half, top, half, top - height)] };
  });
  up((top) => revisions(s, top, set.revisions));
  up((top) => banner(s, top, set.status));
  if (set.cautions.length > 0) {
    const h = style.small;
    const lines = set.cautions.flatMap((c) => wrapText(c, f.strip - 2 * s.pad, h, 'condensed'));
    const height = lines.length * h * 1.6 + 1.5 * s.pad;
    items.push(
      ...lines.map((t, i) =>
        p.text(s.x0 + s.pad, foot + height - s.pad - h - i * h * 1.6, t, h, { face: 'condensed' }),
      ),
    );
    foot += height;
    rule(foot);
  }
  items.push(p.line(s.x0, border.y, s.x0, topEdge, 'profile'));
  items.push(
    p.shape(
      [
        [border.x, border.y],
        [right, border.y],
        [right, topEdge],
        [border.x, topEdge],
      ],
      'border',
    ),
  );
  return items;
}
