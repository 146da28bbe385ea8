/** What the DXF tests read with, and what they expect of a sheet: two independent readers, the raw tags, the primitives. */
import { type DxfEntity, type DxfFile, parseString } from 'dxf';
import parserModule from 'dxf-parser';
import { expect } from 'vitest';
import {
  clipSegment,
  type Dimension,
  LAYERS,
  type Primitive,
  type Rect,
  type Text,
} from '../../src/drawings/ir/index.js';
import type { Sheet } from '../../src/index.js';

// ---------------------------------------------------------------------------------------------- the file as it is written

type Pair = readonly [code: number, value: string];

function pairsOf(text: string): Pair[] {
  const lines = text.split('\r\n');
  expect(lines.pop()).toBe('');
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}

export interface Raw {
  readonly type: string;
  readonly section: string;
  readonly pairs: readonly Pair[];
}

/** Everything that starts with a group 0, with the section it stands in. */
function rawsOf(pairs: readonly Pair[]): Raw[] {
  const out: { type: string; section: string; pairs: Pair[] }[] = [];
  let section = '';
  pairs.forEach(([code, value], i) => {
    if (code === 0) {
      if (value === 'SECTION') section = pairs[i + 1]![1];
      out.push({ type: value, section, pairs: [] });
    } else out.at(-1)!.pairs.push([code, value]);
  });
  return out;
}

/** Type of an entity; a text too long for one line is a paragraph, and counts as the text it is. */
export const kindOf = (e: { readonly type: string }): string => (e.type === 'MTEXT' ? 'TEXT' : e.type);

export const countBy = (types: readonly string[]): Record<string, number> => {
  const out: Record<string, number> = {};
  for (const t of types) out[t] = (out[t] ?? 0) + 1;
  return out;
};

export const only = (counts: Record<string, number>, types: readonly string[]): Record<string, number> =>
  Object.fromEntries(types.map((t) => [t, counts[t] ?? 0]));

/** Letters as both sides must have them, however a fraction or power is set. */
export const plain = (s: string): string =>
  s.replace(/\^ ?/g, '').normalize('NFKC').replaceAll('⁄', '/').replace(/\s+/g, ' ').trim();
export const spaced = (s: string): string => plain(s.replace(/(\d)([½¼¾⅛⅜⅝⅞]|[¹²³⁴-⁹⁰]+⁄)/g, '$1 $2'));

// -------------------------------------------------------------------------------------------------- what the sheets hold

/** Primitives of a sheet or view with those inside symbols, at any depth. */
const deep = (items: readonly Primitive[]): Primitive[] =>
  items.flatMap((p) => (p.kind === 'symbol' ? [p, ...deep(p.items)] : [p]));

export const inside = (p: { readonly x: number; readonly y: number }, r: Rect): boolean =>
  p.x >= r.x - 1e-9 && p.x <= r.x + r.w + 1e-9 && p.y >= r.y - 1e-9 && p.y <= r.y + r.h + 1e-9;

interface Shown {
  readonly items: readonly Primitive[];
  readonly window: Rect | undefined;
}
const partsOf = (s: Sheet): Shown[] => [
  ...s.viewports.flatMap((v) => [
    { items: v.items, window: v.window },
    { items: v.over ?? [], window: undefined },
  ]),
  { items: s.items, window: undefined },
];

/** Entities by type that a sheet must become; of windowed parts only what a window cannot cut in pieces. */
export function expected(s: Sheet): { readonly exact: Record<string, number>; readonly windowed: boolean } {
  const counts: Record<string, number> = { VIEWPORT: s.viewports.length + 1 };
  const add = (type: string, n = 1): void => {
    counts[type] = (counts[type] ?? 0) + n;
  };
  for (const { items, window } of partsOf(s))
    for (const p of items) {
      if (p.kind === 'line') {
        if (!window || clipSegment(p.a.x, p.a.y, p.b.x, p.b.y, window)) add('LINE');
      } else if (p.kind === 'dimension') {
        if (!window || inside(p.a, window) || inside(p.b, window)) add('DIMENSION');
      } else if (p.kind === 'symbol') {
        if (!window || inside(p.at, window)) add('INSERT');
      } else if (p.kind === 'text') {
        if (p.content.trim() === '' || (window && !inside(p.at, window))) continue;
        add('TEXT');
        if (p.mask) add('WIPEOUT');
      } else if (window) continue;
      else if (p.kind === 'hatch') add('HATCH', p.pattern.startsWith('wood-') ? p.loops.length : 1);
      else if (p.kind === 'arc') add('ARC');
      else {
        if (p.fill) add(p.fill === 'paper' ? 'WIPEOUT' : 'HATCH');
        if (p.pen) add(p.kind === 'circle' ? 'CIRCLE' : 'LWPOLYLINE');
      }
    }
  return { exact: counts, windowed: s.viewports.some((v) => v.window) };
}

export const dimensionsOf = (s: Sheet): Dimension[] =>
  partsOf(s)
    .flatMap((p) => p.items)
    .filter((p) => p.kind === 'dimension');
export const textsOf = (s: Sheet): Text[] =>
  partsOf(s)
    .flatMap((p) => deep(p.items.filter((q) => !(q.kind === 'symbol' && p.window && !inside(q.at, p.window)))))
    .filter((p): p is Text => p.kind === 'text' && p.content.trim() !== '');

export const FIRST_KNOWS = ['LINE', 'LWPOLYLINE', 'CIRCLE', 'ARC', 'TEXT', 'INSERT', 'DIMENSION'] as const;
export const SECOND_KNOWS = [...FIRST_KNOWS, 'HATCH', 'VIEWPORT'] as const;

/** Its types promise an ES module; the package is a CommonJS one whose export is the class itself. */
const DxfParser = parserModule as unknown as new () => { parseSync(text: string): FirstFile };

interface FirstFile {
  readonly entities: readonly First[];
  readonly blocks: Readonly<Record<string, { readonly entities?: readonly First[] }>>;
  readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
}

export interface First {
  readonly type: string;
  readonly handle: string;
  readonly layer: string;
  readonly text?: string;
  readonly block?: string;
  readonly actualMeasurement?: number;
}

/** Reads with both; a reader that throws fails the test. */
export function read(text: string) {
  const first = new DxfParser().parseSync(text);
  const second: DxfFile = parseString(text);
  const raws = rawsOf(pairsOf(text));
  return {
    first,
    second,
    raws,
    entities: raws.filter((r) => r.section === 'ENTITIES' && !/SECTION|ENDSEC/.test(r.type)),
  };
}

/** Points of an entity, in its space. */
export function pointsOf(e: DxfEntity): { x: number; y: number }[] {
  const own = e.x !== undefined && e.y !== undefined ? { x: e.x, y: e.y } : undefined;
  if (e.type === 'CIRCLE' && own) {
    return [
      { x: own.x - e.r!, y: own.y - e.r! },
      { x: own.x + e.r!, y: own.y + e.r! },
    ];
  }
  if (e.type === 'ARC' && own) {
    const sweep = (e.endAngle! - e.startAngle! + 2 * Math.PI) % (2 * Math.PI);
    return [0, 0.25, 0.5, 0.75, 1].map((k) => {
      const angle = e.startAngle! + k * sweep;
      return { x: own.x + e.r! * Math.cos(angle), y: own.y + e.r! * Math.sin(angle) };
    });
  }
  const loops = e.boundary?.loops.flatMap((l) => l.entities.flatMap((x) => x.points)) ?? [];
  const list = [e.start, e.end, e.measureStart, e.measureEnd, ...(e.vertices ?? []), ...loops].filter(
    (p) => p !== undefined,
  );
  return e.type === 'TEXT' || e.type === 'MTEXT' || e.type === 'INSERT' ? [own!] : list;
}

export function soundFile(text: string): void {
  const pairs = pairsOf(text);
  expect(pairs.at(-1)).toEqual([0, 'EOF']);
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
  // Reals without exponent, integers whole.
  for (const [code, value] of pairs) {
    if ((code >= 10 && code <= 59) || (code >= 140 && code <= 149)) expect(value).toMatch(/^-?\d+\.\d+$/);
    if ((code >= 60 && code <= 99) || (code >= 170 && code <= 179) || code === 370) expect(value).toMatch(/^-?\d+$/);
    if (code < 10 || code >= 1000) expect(Buffer.byteLength(value, 'utf8')).toBeLessThanOrEqual(255);
  }
  const handles = pairs.filter(([c]) => c === 5 || c === 105).map(([, v]) => v);
  // The first is the seed of the header.
  const [seed, ...own] = handles;
  expect(new Set(own).size).toBe(own.length);
  expect(Math.max(...own.map((h) => Number.parseInt(h, 16)))).toBeLessThan(Number.parseInt(seed!, 16));
  const known = new Set([...own, '0']);
  // Owners, dictionary entries and references; wipeouts name no image.
  const loose = pairs.filter(([c, v]) => [330, 331, 340, 350, 360, 390].includes(c) && !known.has(v));
  expect(loose).toEqual([]);
}

/** Names that entities use and the tables must hold. */
export function soundNames(raws: readonly Raw[], layers: RegExp): void {
  const table = (type: string) =>
    new Set(
      raws.filter((r) => r.section === 'TABLES' && r.type === type).map((r) => r.pairs.find(([c]) => c === 2)![1]),
    );
  const graphic = raws.filter((r) => /ENTITIES|BLOCKS/.test(r.section) && r.pairs.some(([c]) => c === 8));
  const used = (code: number, types: RegExp = /./) =>
    new Set(
      graphic.filter((r) => types.test(r.type)).flatMap((r) => r.pairs.filter(([c]) => c === code).map(([, v]) => v)),
    );
  const missing = (a: Set<string>, b: Set<string>) => [...a].filter((n) => !b.has(n));
  expect(missing(used(8), table('LAYER'))).toEqual([]);
  expect(
    [...table('LAYER')].filter((l) => l !== '0' && l !== 'Defpoints' && !(l.replace(layers, '') in LAYERS)),
  ).toEqual([]);
  expect(missing(used(6), table('LTYPE'))).toEqual([]);
  expect(missing(used(7, /TEXT/), table('STYLE'))).toEqual([]);
  expect(missing(used(3, /^DIMENSION$/), table('DIMSTYLE'))).toEqual([]);
  const blocks = new Set(raws.filter((r) => r.type === 'BLOCK').map((r) => r.pairs.find(([c]) => c === 2)![1]));
  expect(missing(used(2, /^(INSERT|DIMENSION)$/), blocks)).toEqual([]);
  expect([...blocks].sort()).toEqual([...table('BLOCK_RECORD')].sort());
}
