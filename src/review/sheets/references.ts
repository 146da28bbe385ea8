/** References: the index is the set, and whatever points at a sheet points at one of the set. */
import { textBoxes } from '../../drawings/annotate/layout.js';
import type { SheetCheck } from './contract.js';
import { FORM_LAYERS } from './text.js';

const SHEET_ID = /\b(?:[GCSAE]-|AD)\d{3}\b/g;
const ONLY_ID = /^(?:[GCSAE]-|AD)\d{3}$/;

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
