/** References: the index is the set, and whatever points at a sheet points at one of the set. */
import { textBoxes } from '../../drawings/annotate/layout.js';
import type { SheetCheck } from './contract.js';
import { FORM_LAYERS } from './text.js';

const SHEET_ID = /\b[GCSA]-\d{3}\b/g;
const ONLY_ID = /^[GCSA]-\d{3}$/;

export const index: SheetCheck = {
  title: 'The cover lists the sheets of the set, in order',
  run({ sheets }) {
    const covers = sheets.filter((s) => s.id.startsWith('G-'));
    const listed = covers.flatMap((s) =>
      textBoxes(s)
        .filter((b) => !FORM_LAYERS.has(b.layer) && ONLY_ID.test(b.content))
        .map((b) => b.content),
    );
    const ids = sheets.map((s) => s.id);
    const at = ids.findIndex((id, i) => listed[i] !== id);
    if (at < 0 && listed.length === ids.length) return [];
    const sheet = covers[0]?.id ?? '';
    return [{ sheet, what: `sheet ${at + 1} is ${ids[at] ?? 'none'}, the index has ${listed[at] ?? 'none'}` }];
  },
};

export const callouts: SheetCheck = {
  title: 'Every sheet named is in the set',
  run({ sheets }) {
    const ids = new Set(sheets.map((s) => s.id));
    return sheets.flatMap((s) =>
      textBoxes(s).flatMap((b) =>
        (b.content.match(SHEET_ID) ?? [])
          .filter((id) => !ids.has(id))
          .map((id) => ({ sheet: s.id, what: `${id} in “${b.content}”` })),
      ),
    );
  },
};

/** Marks over a drawing: bubbles stand on these layers, the sheet's id below the number of the view. */
const MARKS = /-ANNO-SYMB$/;
/** Numbers of view titles are lettered larger than the figures of scale bars beside them, paper inches. */
const TITLE_NUMBER = 0.11;

export const bubbles: SheetCheck = {
  title: 'Every bubble names a view that stands on its sheet',
  run({ sheets }) {
    const numbers = new Map(
      sheets.map((s) => [
        s.id,
        new Set(
          textBoxes(s)
            .filter((b) => b.layer === 'G-ANNO-TITL' && b.h > TITLE_NUMBER)
            .map((b) => b.content),
        ),
      ]),
    );
    return sheets.flatMap((s) => {
      const marks = textBoxes(s).filter((b) => MARKS.test(b.layer));
      return marks
        .filter((b) => ONLY_ID.test(b.content))
        .flatMap((b) => {
          const above = marks
            .filter((n) => n !== b && Math.abs(n.x - b.x) < 0.02 && n.y > b.y && n.y - b.y < 0.5)
            .sort((p, q) => p.y - q.y)[0];
          return above && numbers.get(b.content)?.has(above.content)
            ? []
            : [{ sheet: s.id, what: `${above?.content ?? 'no number'} on ${b.content}` }];
        });
    });
  },
};
