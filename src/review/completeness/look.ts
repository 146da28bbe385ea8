/** Finding things on sheets: words, titles of sheets and views, layers with ink on them. */
import type { LayerName, Primitive, Sheet } from '../../drawings/ir/index.js';
import { type Found, OFFICE_LIST, type Submitted } from './contract.js';

const FORM = new Set<LayerName>(['G-ANNO-TTLB', 'G-ANNO-STMP']);

/** What a sheet carries, read from its primitives: finding words needs no picture. */
interface Carried {
  readonly words: string;
  /** Lettering of view titles. */
  readonly titles: readonly string[];
  readonly layers: ReadonlySet<LayerName>;
}

const known = new WeakMap<Sheet, Carried>();

function carried(s: Sheet): Carried {
  const before = known.get(s);
  if (before) return before;
  const words: string[] = [];
  const titles: string[] = [];
  const layers = new Set<LayerName>();
  const take = (p: Primitive): void => {
    layers.add(p.layer);
    if (p.kind === 'symbol') p.items.forEach(take);
    if (p.kind === 'dimension') words.push(p.text);
    if (p.kind !== 'text' || FORM.has(p.layer)) return;
    words.push(p.content);
    if (p.layer === 'G-ANNO-TITL') titles.push(p.content);
  };
  for (const v of s.viewports) [...v.items, ...(v.over ?? [])].forEach(take);
  s.items.forEach(take);
  // Lines of one note follow each other.
  const found = { words: words.join(' '), titles: [...titles, s.title, ...s.viewports.map((v) => v.name)], layers };
  known.set(s, found);
  return found;
}

const searched = (s: Submitted): readonly Sheet[] => s.sheets.filter((x) => !x.title.startsWith(OFFICE_LIST));

const idsOf = (sheets: readonly Sheet[]): string[] => sheets.map((s) => s.id);

/** Sheets that carry words; `on` narrows by sheet id. */
export const says = (s: Submitted, what: RegExp, on = /./): string[] =>
  idsOf(searched(s).filter((x) => on.test(x.id) && what.test(carried(x).words)));

/** Sheets whose title, or a view of which, is called so. */
export const titled = (s: Submitted, what: RegExp): string[] =>
  idsOf(searched(s).filter((x) => carried(x).titles.some((t) => what.test(t))));

/** Sheets with ink on a layer. */
export const inked = (s: Submitted, layer: RegExp): string[] =>
  idsOf(searched(s).filter((x) => [...carried(x).layers].some((l) => layer.test(l))));

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
