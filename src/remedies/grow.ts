/**
 * Values of the project file that may be made larger, closer or more, and the next ones to try, least first. A value is
 * known by its key and by the keys beside it; nothing here asks what kind of thing it stands in.
 */
import { formatMixed, parseLength } from '../base/quantity/index.js';
import { GLULAM_DEPTHS, GLULAM_WIDTHS, LVL_DEPTHS, parseNominal, SAWN_SIZES } from '../catalog/index.js';

export interface Next {
  readonly value: unknown;
  /** `2x12`, `14 in`, `3 nails`. */
  readonly said: string;
}

export type Beside = Readonly<Record<string, unknown>>;

/** How many values of one key are tried before another is. */
const MOST = 6;

/** Sixteenths as the trade writes them; a module such as 19.2 in stays a decimal. */
const inches = (v: number): string =>
  Number.isInteger(v * 16) ? `${formatMixed(Math.floor(v), (v % 1) * 16, 16)} in` : `${v} in`;

const lengthOf = (v: unknown): number | undefined => {
  if (typeof v !== 'string') return undefined;
  const p = parseLength(v);
  return p.ok ? p.value : undefined;
};

const lengths = (list: readonly number[]): Next[] =>
  list.slice(0, MOST).map((v) => ({ value: inches(v), said: inches(v) }));

/** The next stocked sizes: deeper of the same thickness first, then thicker ones that are no shallower. */
function sizes(v: unknown): Next[] {
  const now = typeof v === 'string' ? parseNominal(v) : undefined;
  if (!now) return [];
  const larger = SAWN_SIZES.filter(
    (s) =>
      s.nominalThickness >= now.thickness &&
      s.nominalWidth >= now.width &&
      !(s.nominalThickness === now.thickness && s.nominalWidth === now.width),
  );
  return [...larger]
    .sort((a, b) => a.b * a.d - b.b * b.d)
    .slice(0, MOST)
    .map((s) => ({ value: s.nominal, said: s.nominal }));
}

const above = (list: readonly number[], v: unknown): Next[] => {
  const now = lengthOf(v);
  return now === undefined ? [] : lengths(list.filter((x) => x > now + 1e-6));
};

/** Steps up in even inches, as forms are built. */
const steps = (v: unknown, step: number): Next[] => {
  const now = lengthOf(v);
  return now === undefined ? [] : lengths(Array.from({ length: MOST }, (_, i) => now + step * (i + 1)));
};

const closer = (list: readonly number[], v: unknown): Next[] => {
  const now = lengthOf(v);
  return now === undefined ? [] : lengths(list.filter((x) => x < now - 1e-6));
};

const more = (v: unknown, most: number, what: string): Next[] =>
  typeof v !== 'number'
    ? []
    : [1, 2, 3].flatMap((n) => (v + n <= most ? [{ value: v + n, said: `${v + n} ${what}` }] : []));

type Grow = (v: unknown, beside: Beside) => Next[];

/** Common modules of framing and of nails, centre to centre, inches. Common practice, no source. */
const FRAMING = [24, 19.2, 16, 12];
const NAILS = [12, 8, 6, 4, 3];

const has = (o: Beside, ...keys: readonly string[]): boolean => keys.every((k) => k in o);

export const GROW: Readonly<Record<string, Grow>> = {
  size: sizes,
  ply: sizes,
  plies: (v) => more(v, 5, 'plies'),
  depth: (v, o) =>
    has(o, 'combination') ? above(GLULAM_DEPTHS, v) : has(o, 'plies', 'thickness') ? above(LVL_DEPTHS, v) : [],
  width: (v, o) => (has(o, 'combination') ? above(GLULAM_WIDTHS, v) : has(o, 'fc') ? steps(v, 2) : []),
  diameter: (v, o) => (has(o, 'fc') ? steps(v, 2) : []),
  thickness: (v, o) => (has(o, 'fc') ? steps(v, 1) : []),
  bottom: (v, o) => (has(o, 'fc') ? steps(v, 6) : []),
  spacing: (v, o) => (has(o, 'kind') ? closer(FRAMING, v) : []),
  edge: (v, o) => (has(o, 'field') ? closer(NAILS, v) : []),
  field: (v, o) => (has(o, 'edge') ? closer(NAILS, v) : []),
  count: (v, o) => more(v, 12, has(o, 'product') ? 'pieces' : 'nails'),
};

/** What a key is called when a remedy names it. */
export const WORDS: Readonly<Record<string, string>> = {
  size: '',
  ply: 'plies of',
  plies: '',
  depth: 'depth',
  width: 'width',
  diameter: 'diameter',
  thickness: 'thickness',
  bottom: 'depth of the underside',
  spacing: 'spacing',
  edge: 'nails at edges every',
  field: 'nails between every',
  count: '',
};
