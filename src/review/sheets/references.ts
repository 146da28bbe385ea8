/** References: the index is the set, and whatever points at a sheet points at one of the set. */
import { DISCIPLINES } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';
import { boxesOf, flatOf } from './flat.js';
import { FORM_LAYERS } from './text.js';

const LETTERS = Object.keys(DISCIPLINES).join('');
/** A discipline and a hyphen, or two letters (AD: architectural demolition), then three digits. */
const ID = `(?:[${LETTERS}]-|[${LETTERS}]D)\\d{3}`;
const SHEET_ID = new RegExp(`\\b${ID}\\b`, 'g');
const ONLY_ID = new RegExp(`^${ID}$`);

export const index: SheetCheck = {
  title: 'The cover lists the sheets of the set, in order',
  run({ sheets }) {
    const covers = sheets.filter((s) => s.id.startsWith('G-0'));
    const listed = covers.flatMap((s) =>
      boxesOf(s)
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
      boxesOf(s).flatMap((b) =>
        (b.content.match(SHEET_ID) ?? [])
          .filter((id) => !ids.has(id))
          .map((id) => ({ sheet: s.id, what: `${id} in “${b.content}”`, at: { x: b.x, y: b.y } })),
      ),
    );
  },
};

export const viewMarks: SheetCheck = {
  title: 'Every section, elevation and detail mark names a view that is on the sheet it names',
  run({ sheets }) {
    const views = new Map(
      sheets.map((s) => [
        s.id,
        new Set(flatOf(s).flatMap((f) => (f.kind === 'text' && f.role === 'view-number' ? [f.content] : []))),
      ]),
    );
    return sheets.flatMap((s) => {
      const marks = flatOf(s).flatMap((f) => (f.kind === 'text' && f.role?.startsWith('mark-') ? [f] : []));
      // A mark letters its view's number and then its sheet.
      return marks.flatMap((f, i) => {
        if (f.role !== 'mark-sheet') return [];
        const number = marks[i - 1]?.content ?? '';
        return views.get(f.content)?.has(number)
          ? []
          : [{ sheet: s.id, what: `${number} on ${f.content}`, at: { x: f.x, y: f.y } }];
      });
    });
  },
};
