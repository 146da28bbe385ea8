/** Lettering: inside the border, legible at the size it is printed, no text on another. */
import { outside, overlaps, textBoxes } from '../../drawings/annotate/layout.js';
import type { SheetCheck } from './contract.js';

/** Labels of the title strip and of view titles are form, not content. */
export const FORM_LAYERS: ReadonlySet<string> = new Set(['G-ANNO-TTLB', 'G-ANNO-TITL']);

/** Least cap height of content, paper inches: 3/32 in, the smallest plan rooms accept (src/drawings/annotate/style.ts). */
const LEAST = 3 / 32;

export const insideFrame: SheetCheck = {
  title: 'Every text stands inside the frame',
  run: ({ sheets, frame }) =>
    sheets.flatMap((s) => outside(textBoxes(s), frame).map((b) => ({ sheet: s.id, what: b.content }))),
};

export const textsApart: SheetCheck = {
  title: 'No two texts touch',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      overlaps(textBoxes(s)).map(([a, b]) => ({ sheet: s.id, what: `“${a.content}” and “${b.content}”` })),
    ),
};

export const textHeight: SheetCheck = {
  title: 'Content is lettered 3/32 in high or higher',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      textBoxes(s)
        .filter((b) => !FORM_LAYERS.has(b.layer) && b.h < LEAST - 1e-9)
        .map((b) => ({ sheet: s.id, what: b.content })),
    ),
};
