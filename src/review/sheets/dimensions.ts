/** Dimensions: what is printed is what is drawn, the parts of a string add up to the whole, and both ends stand on something. */
import { parseLength } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import { type Dimension, type Primitive, type Sheet, toPaper, type Viewport } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';

/** A dimension with what it measures in its view: model inches along its own direction. */
interface Measured {
  readonly d: Dimension;
  readonly lo: number;
  readonly hi: number;
  /** Paper inches across, of the dimension line. */
  readonly level: number;
  readonly angle: number;
  /** Length printed, inches; undefined when the text holds none. */
  readonly printed: number | undefined;
  /** Half of the last place printed, inches. */
  readonly grain: number;
  /** Middle of what it measures, paper inches. */
  readonly at: Vec2;
}

/** Whole inches, fractions of the lettering and spaces between them. */
const INCHES = '[\\d ¹²³⁴-⁹⁄₀-₉½¼¾⅛⅜⅝⅞]';
const LENGTHS = new RegExp(`\\d[\\d,]*'-?${INCHES}+"|\\d[\\d,.]*'|${INCHES}+"|\\d+ mm|\\d+\\.\\d+ m\\b`, 'g');

/** The length a text prints, the last one where it says how it is made up (`4 @ 2'-0" = 8'-0"`), and half its last place. */
export function lengthIn(text: string): { readonly value: number; readonly grain: number } | undefined {
  const found = text.match(LENGTHS)?.at(-1);
  if (found === undefined) return undefined;
  const read = parseLength(found.trim());
  if (!read.ok) return undefined;
  const decimal = /^[\d,]+\.(\d+)'$/.exec(found);
  // Metric lengths are printed to the millimetre, feet and inches to the sixteenth.
  const grain = decimal ? 6 / 10 ** decimal[1]!.length : found.endsWith('m') ? 0.5 / 25.4 : 1 / 32;
  return { value: read.value, grain };
}

type View = Pick<Viewport, 'items' | 'over' | 'scale' | 'at' | 'from'>;

function* dimensionsOf(items: readonly Primitive[]): Generator<Dimension> {
  for (const p of items) {
    if (p.kind === 'dimension') yield p;
    if (p.kind === 'symbol') yield* dimensionsOf(p.items);
  }
}

const measuredIn = (v: View): Measured[] =>
  [...dimensionsOf(v.items), ...dimensionsOf(v.over ?? [])].map((d) => {
    const [c, s] = [Math.cos(d.angle), Math.sin(d.angle)];
    const along = [d.a, d.b].map((p) => p.x * c + p.y * s);
    const text = lengthIn(d.text);
    return {
      d,
      lo: Math.min(...along),
      hi: Math.max(...along),
      level: (d.base.y * c - d.base.x * s) * v.scale + d.offset,
      angle: Math.round(d.angle * 1e4),
      printed: text?.value,
      grain: text?.grain ?? 0,
      at: toPaper(v, { x: (d.a.x + d.b.x) / 2, y: (d.a.y + d.b.y) / 2 }),
    };
  });

const ORIGIN = { x: 0, y: 0 };
const views = (s: Sheet): readonly View[] => [...s.viewports, { items: s.items, scale: 1, at: ORIGIN, from: ORIGIN }];

export const dimensionsTrue: SheetCheck = {
  title: 'Every dimension prints the distance it measures',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      views(s).flatMap((v) =>
        measuredIn(v).flatMap((m) => {
          if (m.printed === undefined) return [{ sheet: s.id, what: `“${m.d.text}” prints no length`, at: m.at }];
          // Both ends are rounded from one origin, so a segment may be off by one place, half at each end.
          const off = Math.abs(m.hi - m.lo + (m.d.beyond ?? 0) - m.printed);
          const most = Math.max(1 / 16, 2 * m.grain) + 1e-6;
          return off <= most
            ? []
            : [{ sheet: s.id, what: `“${m.d.text}” over a distance of ${(m.hi - m.lo).toFixed(2)} in`, at: m.at }];
        }),
      ),
    ),
};

const NEAR = 1e-4;

/** Parts of one dimension line that run from end to end of another without a gap. */
function partsOf(whole: Measured, all: readonly Measured[]): readonly Measured[] {
  const others = all.filter((m) => m.angle === whole.angle && Math.abs(m.level - whole.level) > NEAR);
  for (const level of new Set(others.map((m) => Math.round(m.level * 1000)))) {
    const line = others.filter((m) => Math.round(m.level * 1000) === level);
    const inside = line.filter((m) => m.lo >= whole.lo - NEAR && m.hi <= whole.hi + NEAR).sort((a, b) => a.lo - b.lo);
    if (inside.length < 2) continue;
    const gaps = inside.some((m, i) => Math.abs(m.lo - (i === 0 ? whole.lo : inside[i - 1]!.hi)) > NEAR);
    if (!gaps && Math.abs(inside.at(-1)!.hi - whole.hi) <= NEAR) return inside;
  }
  return [];
}

export const dimensionsClose: SheetCheck = {
  title: 'The parts of a dimension string add up to the whole, as printed',
  run: ({ sheets }) =>
    sheets.flatMap((s) =>
      views(s).flatMap((v) => {
        const all = measuredIn(v);
        return all.flatMap((whole) => {
          const parts = partsOf(whole, all);
          if (parts.length === 0 || whole.printed === undefined) return [];
          const sum = parts.reduce((t, p) => t + (p.printed ?? Number.NaN), 0);
          return Math.abs(sum - whole.printed) <= 1e-6 * whole.printed + 1e-6
            ? []
            : [{ sheet: s.id, what: `${parts.map((p) => p.d.text).join(' + ')} is not ${whole.d.text}`, at: whole.at }];
        });
      }),
    ),
};
