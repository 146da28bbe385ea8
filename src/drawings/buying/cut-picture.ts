/** One board as a bar to scale, with its pieces. */
import type { Vec2 } from '../../base/vec.js';
import type { Board, Cut } from '../../takeoff/index.js';
import { marks } from '../../takeoff/line.js';
import { type Block, pencil } from '../annotate/index.js';
import { type Primitive, textWidth } from '../ir/index.js';
import { PAPER_STYLE } from '../papers/index.js';
import { len, ranges } from './words.js';

const N = PAPER_STYLE.note;
const LEFT = 0.5;
const RIGHT = 0.55;
const BAR = 0.21;

/** One length on a board, with the marks it is cut for on the boards that are alike. */
interface Place {
  readonly length: number;
  readonly marks: readonly string[];
}

/** Boards cut to the same lengths, drawn once. */
export interface Alike {
  readonly board: Board;
  readonly count: number;
  readonly places: readonly Place[];
}

const likeness = (b: Board): string => `${b.stock.length}|${b.cuts.map((c) => len(c.length)).join('|')}`;

export function alikeBoards(boards: readonly Board[]): Alike[] {
  const groups = new Map<string, Board[]>();
  for (const b of boards) groups.set(likeness(b), [...(groups.get(likeness(b)) ?? []), b]);
  return [...groups.values()].map((list) => ({
    board: list[0]!,
    count: list.length,
    places: list[0]!.cuts.map((c, i) => ({ length: c.length, marks: marksOf(list.map((b) => b.cuts[i]!)) })),
  }));
}

const marksOf = (cuts: readonly Cut[]): string[] => marks(cuts.map((c) => c.mark));

/** `9 × BL 1'-10 1/2"`: equal pieces of one board together. */
function pieceList(places: readonly Place[]): string {
  const groups = new Map<string, { n: number; marks: Set<string> }>();
  for (const p of places) {
    const g = groups.get(len(p.length)) ?? { n: 0, marks: new Set() };
    for (const m of p.marks) g.marks.add(m);
    groups.set(len(p.length), { n: g.n + 1, marks: g.marks });
  }
  return [...groups]
    .map(([length, g]) => `${g.n > 1 ? `${g.n} × ` : ''}${ranges(marks([...g.marks]))} ${length}`)
    .join(',  ');
}

/** First of the labels that fits a width. */
const firstFitting = (width: number, ...labels: readonly string[]): string =>
  labels.find((l) => textWidth(l, N, 'condensed') <= width - 0.06) ?? '';

export function boardBlock({ board, count, places }: Alike, longest: number, kerf: number): Block {
  const height = BAR + 2.1 * N;
  return {
    kind: 'drawing',
    height,
    draw: (at: Vec2, width: number): Primitive[] => {
      const p = pencil('G-ANNO-SCHD', 'rule');
      const scale = (width - LEFT - RIGHT) / longest;
      const [x0, top] = [at.x + LEFT, at.y];
      const y = top - BAR;
      const items: Primitive[] = [
        p.text(at.x, y + (BAR - N) / 2, `${count} ×`, N, { face: 'condensed-bold' }),
        p.text(
          x0 + board.stock.length * scale + 0.07,
          y + (BAR - N) / 2,
          `${Number((board.stock.length / 12).toFixed(2))} ft`,
          N,
          { face: 'condensed-bold' },
        ),
        p.shape(
          [
            [x0, y],
            [x0 + board.stock.length * scale, y],
            [x0 + board.stock.length * scale, top],
            [x0, top],
          ],
          'new-fine',
          'tint',
        ),
      ];
      let x = x0;
      for (const c of places) {
        const w = c.length * scale;
        items.push(
          p.shape(
            [
              [x, y],
              [x + w, y],
              [x + w, top],
              [x, top],
            ],
            'new-fine',
            'paper',
          ),
        );
        const label = firstFitting(w, `${ranges(c.marks)}  ${len(c.length)}`, ranges(c.marks));
        if (label !== '')
          items.push(p.text(x + w / 2, y + (BAR - N) / 2, label, N, { face: 'condensed', align: 'center' }));
        x += w + kerf * scale;
      }
      const left = board.offcut > 1 / 16 ? `;  left ${len(board.offcut)}` : '';
      items.push(p.text(x0, y - 1.75 * N, `${pieceList(places)}${left}`, N, { face: 'condensed' }));
      return items;
    },
  };
}
