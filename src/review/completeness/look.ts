/** Finding things on sheets: words, titles of sheets and views, layers with ink on them. */

import type { Sheet } from '../../drawings/ir/index.js';
import { boxesOf, flatOf } from '../sheets/flat.js';
import { type Found, OFFICE_LIST, type Submitted } from './contract.js';

const FORM = new Set(['G-ANNO-TTLB', 'G-ANNO-STMP']);

const words = new WeakMap<Sheet, string>();

/** All lettering of a sheet but the title strip's, lines of one note joined. */
export function wordsOf(s: Sheet): string {
  const known = words.get(s);
  if (known !== undefined) return known;
  const all = boxesOf(s)
    .filter((b) => !FORM.has(b.layer))
    .map((b) => b.content)
    .join(' ');
  words.set(s, all);
  return all;
}

const searched = (s: Submitted): readonly Sheet[] => s.sheets.filter((x) => !x.title.startsWith(OFFICE_LIST));

const idsOf = (sheets: readonly Sheet[]): string[] => sheets.map((s) => s.id);

/** Sheets that carry words; `on` narrows by sheet id. */
export const says = (s: Submitted, what: RegExp, on = /./): string[] =>
  idsOf(searched(s).filter((x) => on.test(x.id) && what.test(wordsOf(x))));

/** Sheets whose title, or a view of which, is called so. */
export const titled = (s: Submitted, what: RegExp): string[] =>
  idsOf(
    searched(s).filter(
      (x) =>
        what.test(x.title) ||
        x.viewports.some((v) => what.test(v.name)) ||
        boxesOf(x).some((b) => b.layer === 'G-ANNO-TITL' && what.test(b.content)),
    ),
  );

/** Sheets with ink on a layer. */
export const inked = (s: Submitted, layer: RegExp): string[] =>
  idsOf(searched(s).filter((x) => flatOf(x).some((f) => layer.test(f.layer))));

/** Shown on the sheets found, or else what a row without them comes to. */
export const shownOr = (sheets: readonly string[], otherwise: Found): Found =>
  sheets.length > 0 ? { state: 'shown', sheets: [...new Set(sheets)] } : otherwise;

export const missing = (why: string, path?: string): Found => ({
  state: 'missing',
  why,
  ...(path !== undefined && { path }),
});
export const beside = (why: string): Found => ({ state: 'beside', why });
export const notNeeded = (why: string): Found => ({ state: 'not-needed', why });
export const ask = (why: string, path?: string): Found => ({ state: 'ask', why, ...(path !== undefined && { path }) });

/** Sheets found in both lists. */
export const both = (a: readonly string[], b: readonly string[]): string[] => a.filter((id) => b.includes(id));
