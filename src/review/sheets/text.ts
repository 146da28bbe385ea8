/** Lettering: inside the border, legible at the size it is printed, no text on another. */
import { outside, overlaps, type TextBox } from '../../drawings/annotate/layout.js';
import type { Flat, Rect } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';
import { boxesOf, flatOf } from './flat.js';

/** Labels of the title strip and of view titles are form, not content. */
export const FORM_LAYERS: ReadonlySet<string> = new Set(['G-ANNO-TTLB', 'G-ANNO-TITL', 'G-ANNO-STMP']);

/** Least cap height of content, paper inches: 3/32 in, the smallest plan rooms accept (src/drawings/annotate/style.ts). */
const LEAST = 3 / 32;

/** Middle of a text, for a fault to point at. */
const placeOf = (b: TextBox) => ({ x: b.x, y: b.y });

/** Lines and arcs of a flat picture that reach past a rectangle, by layer. */
function strayLayers(flats: readonly Flat[], r: Rect): ReadonlySet<string> {
  const slack = 0.005;
  const past = (x: number, y: number): boolean =>
    x < r.x - slack || y < r.y - slack || x > r.x + r.w + slack || y > r.y + r.h + slack;
  const stray = new Set<string>();
  for (const f of flats) {
    if (f.kind === 'arc' && (past(f.x - f.r, f.y - f.r) || past(f.x + f.r, f.y + f.r))) stray.add(f.layer);
    if (f.kind !== 'path') continue;
    for (const s of f.strokes) for (let i = 0; i + 1 < s.length; i += 2) if (past(s[i]!, s[i + 1]!)) stray.add(f.layer);
  }
  return stray;
}

export const insideFrame: SheetCheck = {
  title: 'Every text and line stands inside the frame',
  run: ({ sheets, frame }) =>
    sheets.flatMap((s) => {
      const flats = flatOf(s);
      return [
        ...outside(boxesOf(s), frame).map((b) => ({ sheet: s.id, what: b.content, at: placeOf(b) })),
        ...[...strayLayers(flats, frame)].map((layer) => ({ sheet: s.id, what: `lines on ${layer}` })),
      ];
    }),
};

export const textsApart: SheetCheck = {
  title: 'No two texts touch',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      overlaps(boxesOf(s)).map(([a, b]) => ({
        sheet: s.id,
        what: `“${a.content}” and “${b.content}”`,
        at: placeOf(a),
      })),
    ),
};

export const textHeight: SheetCheck = {
  title: 'Content is lettered 3/32 in high or higher',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      boxesOf(s)
        .filter((b) => !FORM_LAYERS.has(b.layer) && b.h < LEAST - 1e-9)
        .map((b) => ({ sheet: s.id, what: b.content, at: placeOf(b) })),
    ),
};
