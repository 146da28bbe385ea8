/**
 * Letter-size list pages: take-off, cut list, orders, stage cards. They belong to no drawing set and carry no title strip.
 *
 * ```ts
 * const papers: Paper[] = [{ title: 'Take-off', sub: 'What to buy, by phase', blocks: [
 *   { kind: 'para', text: 'Net is what the model holds.' },
 *   { kind: 'table', columns: [{ head: 'Item', grow: true }, { head: 'Net', align: 'right' }], rows: [['2x10', '14']] },
 *   { kind: 'drawing', height: 2.5, draw: (at, width) => primitives },      // `at` is its top left corner, paper inches
 * ] }];
 * const pages = papersOf(papers, { prefix: 'BUY', project, address, date });   // Sheet[]: hand to pdfOf or svgOf
 * ```
 *
 * Blocks are those of the notes sheets (annotate/block.ts); tables repeat their heading on the next page, headings stay with
 * what follows. `PAPER_WIDTH` is the width a drawing has when a paper has one column.
 */
import { type Block, columnsFlow, measure, pencil, type Slug, splitColumns, styleFor } from '../annotate/index.js';
import { type Primitive, type Rect, SHEET_SIZES, type Sheet, textWidth, wrapText } from '../ir/index.js';

/** One document of the bundle: starts on a page of its own. */
export interface Paper {
  readonly title: string;
  /** One line under the title. */
  readonly sub?: string;
  readonly blocks: readonly Block[];
  /** Columns of running text; 1 by default. */
  readonly columns?: 1 | 2;
}

/** What every page of the bundle says. */
export interface PaperData {
  /** Before the page number in the page's id: `BUY` gives `BUY-1`. */
  readonly prefix: string;
  readonly project: string;
  readonly address: string;
  readonly date: string;
  /** Foot of every page; by default that the program certifies nothing. */
  readonly foot?: string;
  /** Printed large on every page where the set may not be relied on yet. */
  readonly banner?: string;
}

const SIZE = 'Letter';
const { w: W, h: H } = SHEET_SIZES[SIZE];
const SIDE = 0.6;
const STYLE = styleFor(SIZE);
const N = STYLE.note;
const FOOT = 0.62;
const FIRST_HEAD = 1.3;
const NEXT_HEAD = 0.95;
const GUTTER = 0.35;

export const PAPER_WIDTH = W - 2 * SIDE;
/** Lettering and spacings of these pages. */
export const PAPER_STYLE = STYLE;

const CAUTION = 'Prepared with a program that certifies nothing. The authority having jurisdiction decides.';

/** Cut off with an ellipsis at a width. */
function fitted(text: string, width: number, height: number): string {
  const first = wrapText(text, width, height)[0]!;
  if (first === text) return text;
  return `${wrapText(text, width - textWidth('…', height), height)[0]!}…`;
}

function head(paper: Paper, data: PaperData, first: boolean): Primitive[] {
  const p = pencil('G-ANNO-TTLB', 'rule');
  const top = H - 0.5;
  const big = first ? 1.85 * N : 1.2 * N;
  const right = fitted(`${data.project}, ${data.address}`, PAPER_WIDTH * 0.62, N);
  const items: Primitive[] = [
    p.text(SIDE, top - N, right, N, { face: 'condensed' }),
    p.text(W - SIDE, top - N, data.date, N, { face: 'condensed', align: 'right' }),
    p.line(SIDE, top - 1.9 * N, W - SIDE, top - 1.9 * N, 'rule'),
  ];
  if (data.banner !== undefined)
    items.push(p.text(W - SIDE - 1.1, top - N, data.banner, N, { face: 'condensed-bold', align: 'right' }));
  const base = top - 1.9 * N - (first ? 1.5 : 1.1) * N - big;
  items.push(p.text(SIDE, base, first ? paper.title : `${paper.title}, continued`, big, { face: 'bold' }));
  if (first && paper.sub !== undefined)
    items.push(p.text(SIDE, base - 2 * N, fitted(paper.sub, PAPER_WIDTH, N), N, { face: 'regular' }));
  return items;
}

function foot(data: PaperData, number: number, of: number): Primitive[] {
  const p = pencil('G-ANNO-TTLB', 'rule');
  return [
    p.line(SIDE, FOOT, W - SIDE, FOOT, 'rule'),
    p.text(SIDE, FOOT - 1.7 * N, data.foot ?? CAUTION, N, { face: 'condensed' }),
    p.text(W - SIDE, FOOT - 1.7 * N, `${data.prefix}-${number} of ${of}`, N, {
      face: 'condensed-bold',
      align: 'right',
    }),
  ];
}

interface Body {
  readonly paper: Paper;
  readonly first: boolean;
  readonly items: readonly Primitive[];
}

function bodiesOf(paper: Paper): Body[] {
  const count = paper.columns ?? 1;
  const width = (PAPER_WIDTH - GUTTER * (count - 1)) / count;
  const bodies: Body[] = [];
  let rest: readonly Slug[] = measure(paper.blocks, width, STYLE);
  do {
    const first = bodies.length === 0;
    const low = FOOT + 1.3 * N;
    const area: Rect = { x: SIDE, y: low, w: PAPER_WIDTH, h: H - (first ? FIRST_HEAD : NEXT_HEAD) - 0.1 - low };
    const flowed = columnsFlow(rest, splitColumns(area, Array(count).fill(1), GUTTER));
    bodies.push({ paper, first, items: flowed.items });
    rest = flowed.rest;
  } while (rest.length > 0);
  return bodies;
}

/** Pages of a bundle, numbered through. Pure: the same papers give the same pages. */
export function papersOf(papers: readonly Paper[], data: PaperData): Sheet[] {
  const bodies = papers.flatMap(bodiesOf);
  return bodies.map((b, i) => ({
    id: `${data.prefix}-${i + 1}`,
    title: b.first ? b.paper.title : `${b.paper.title}, continued`,
    discipline: 'G',
    size: SIZE,
    viewports: [],
    scaleNote: '',
    items: [...head(b.paper, data, b.first), ...b.items, ...foot(data, i + 1, bodies.length)],
  }));
}
