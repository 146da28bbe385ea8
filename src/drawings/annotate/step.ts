/** A step of a calculation as lettered: symbol and meaning, the clause at the right edge, the working below or between. */
import { textWidth, wrapText } from '../ir/index.js';
import type { BlockOf, Setting, Slug } from './block.js';
import { pencil } from './pencil.js';

/** Where the working starts when everything fits on one line, as a share of the width. */
const TAB = 0.4;

/** One piece: a step is never split between columns. */
export function stepSlug(b: BlockOf<'step'>, s: Setting): Slug {
  const h = s.style.note;
  const p = pencil(s.layer);
  const line = h * s.style.leading;
  const gap = 1.2 * h;
  const face = 'condensed' as const;
  const width = (t: string): number => textWidth(t, h, face);
  const symbol = textWidth(b.symbol, h, 'condensed-bold') + 0.8 * h;
  // A long clause wraps at the right of its own, so that it never squeezes the meaning to a sliver.
  const clauses = wrapText(b.clause, 0.42 * s.width, h, face);
  const clause = Math.max(0, ...clauses.map(width));
  const tab = TAB * s.width;
  const single =
    clauses.length === 1 &&
    symbol + width(b.meaning) + gap <= tab &&
    tab + width(b.expression) + gap + clause <= s.width;
  const meanings = wrapText(b.meaning, Math.max(8 * h, s.width - symbol - clause - gap), h, face);
  const workings = single ? [] : wrapText(b.expression, s.width - 2 * h, h, face);
  const head = Math.max(meanings.length, clauses.length);
  const rows = single ? 1 : head + workings.length;
  return {
    height: (rows - 1) * line + h,
    before: 0.85 * h,
    keep: false,
    draw: ({ x, y }) => [
      p.text(x, y - h, b.symbol, h, { face: 'condensed-bold' }),
      ...meanings.map((t, i) => p.text(x + symbol, y - h - i * line, t, h, { face })),
      ...clauses.map((t, i) => p.text(x + s.width, y - h - i * line, t, h, { face, align: 'right' })),
      ...(single ? [p.text(x + tab, y - h, b.expression, h, { face })] : []),
      ...workings.map((t, i) => p.text(x + 2 * h, y - h - (head + i) * line, t, h, { face })),
    ],
  };
}
