/** Lines of a form: boxes to tick, places to write in. Paper inches. */
import type { Vec2 } from '../../base/vec.js';
import { type Block, pencil } from '../annotate/index.js';
import { type Primitive, textWidth, wrapText } from '../ir/index.js';
import { PAPER_STYLE } from '../papers/index.js';

const H = PAPER_STYLE.note;
const STEP = 1.5 * H;

export interface Tick {
  readonly text: string;
  readonly done: boolean;
  /** A line to write a measured value on. */
  readonly measure?: boolean | undefined;
  /** What was written: measured value, remark, picture. */
  readonly written?: string | undefined;
}

/** A box, its words, and a line for what was measured. */
export function tickBlock(t: Tick, width: number): Block {
  const room = width - 2.6 * H - (t.measure ? 17 * H : 0);
  const lines = wrapText(t.text, room, H);
  const written = t.written ? wrapText(t.written, width - 2.6 * H, H, 'bold') : [];
  const height = Math.max(1, lines.length) * STEP + written.length * STEP + 0.2 * H;
  return {
    kind: 'drawing',
    height,
    draw: (at: Vec2, w: number): Primitive[] => {
      const p = pencil('G-ANNO-NOTE', 'symbol');
      const base = at.y - 1.2 * H;
      const k = 1.15 * H;
      const [x0, y0] = [at.x, base - 0.1 * H];
      const out: Primitive[] = [
        p.shape(
          [
            [x0, y0],
            [x0 + k, y0],
            [x0 + k, y0 + k],
            [x0, y0 + k],
          ],
          'symbol',
        ),
        ...lines.map((l, i) => p.text(at.x + 2.2 * H, base - i * STEP, l, H)),
        ...written.map((l, i) => p.text(at.x + 2.2 * H, base - (lines.length + i) * STEP, l, H, { face: 'bold' })),
      ];
      if (t.done)
        out.push(
          p.path(
            [
              [x0 + 0.2 * k, y0 + 0.5 * k],
              [x0 + 0.42 * k, y0 + 0.22 * k],
              [x0 + 0.85 * k, y0 + 0.85 * k],
            ],
            'profile',
          ),
        );
      if (t.measure) {
        const right = at.x + w;
        out.push(p.text(right - 10.8 * H, base, 'measured', H, { face: 'condensed', align: 'right' }));
        out.push(p.line(right - 10 * H, base - 0.25 * H, right, base - 0.25 * H, 'rule'));
      }
      return out;
    },
  };
}

/** Rows of names with lines to write on; stays in one piece. */
export function writeLines(rows: readonly (readonly string[])[]): Block {
  const step = 2.4 * H;
  return {
    kind: 'drawing',
    height: rows.length * step,
    draw: (at, w) => {
      const p = pencil('G-ANNO-NOTE', 'rule');
      return rows.flatMap((names, k) => {
        const each = w / names.length;
        const y = at.y - k * step - 1.9 * H;
        return names.flatMap((n, i) => {
          const x = at.x + i * each;
          const start = x + textWidth(n, H, 'condensed') + 0.8 * H;
          const end = i === names.length - 1 ? at.x + w : x + each - 1.2 * H;
          return [p.text(x, y, n, H, { face: 'condensed' }), p.line(start, y - 0.25 * H, end, y - 0.25 * H, 'rule')];
        });
      });
    },
  };
}
