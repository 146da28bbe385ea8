/** One board as a bar to scale, with its pieces. */
import type { Vec2 } from '../../base/vec.js';
import type { Board, Cut } from '../../takeoff/index.js';
import { type Block, pencil } from '../annotate/index.js';
import { type Primitive, textWidth } from '../ir/index.js';
import { PAPER_STYLE } from '../papers/index.js';
import { len } from './words.js';

const N = PAPER_STYLE.note;
const LEFT = 0.5;
const RIGHT = 0.55;
const BAR = 0.21;

/** Boards cut alike, drawn once. */
export interface Alike {
  readonly board: Board;
  readonly count: number;
  readonly numbers: readonly number[];
}

const likeness = (b: Board): string =>
  `${b.stock.length}|${b.cuts.map((c) => `${c.mark} ${len(c.length)} ${c.what.replace(/^ply \d+ of \d+/, 'ply')}`).join('|')}`;

export function alikeBoards(boards: readonly Board[]): Alike[] {
  const groups = new Map<string, { board: Board; numbers: number[] }>();
  boards.forEach((board, i) => {
    const key = likeness(board);
    const g = groups.get(key);
    if (g) g.numbers.push(i + 1);
    else groups.set(key, { board, numbers: [i + 1] });
  });
  return [...groups.values()].map((g) => ({ ...g, count: g.numbers.length }));
}

/** `9 BL 1'-10 1/2"`: equal pieces of one board together. */
function pieceList(cuts: readonly Cut[]): string {
  const groups = new Map<string, number>();
  for (const c of cuts) {
    const key = `${c.mark} ${len(c.length)}`;
    groups.set(key, (groups.get(key) ?? 0) + 1);
  }
  return [...groups].map(([text, n]) => (n > 1 ? `${n} × ${text}` : text)).join(',  ');
}

/** First of the labels that fits a width. */
const firstFitting = (width: number, ...labels: readonly string[]): string =>
  labels.find((l) => textWidth(l, N, 'condensed') <= width - 0.06) ?? '';

export function boardBlock({ board, count }: Alike, longest: number, kerf: number): Block {
  const height = BAR + 2.5 * N;
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
      for (const c of board.cuts) {
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
        const label = firstFitting(w, `${c.mark}  ${len(c.length)}`, c.mark);
        if (label !== '')
          items.push(p.text(x + w / 2, y + (BAR - N) / 2, label, N, { face: 'condensed', align: 'center' }));
        x += w + kerf * scale;
      }
      const left = board.offcut > 1 / 16 ? `;  left ${len(board.offcut)}` : '';
      items.push(p.text(x0, y - 1.75 * N, `${pieceList(board.cuts)}${left}`, N, { face: 'condensed' }));
      return items;
    },
  };
}
