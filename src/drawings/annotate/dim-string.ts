import type { Vec2 } from '../../base/vec.js';
import { DIMENSION_FORM, type Dimension, type LayerName, textWidth } from '../ir/index.js';
import { feetInches, roundTo } from './feet-inches.js';
import type { Style } from './style.js';

export type DimSide = 'above' | 'below' | 'left' | 'right';

/** One row of dimensions, e.g. edges, grid lines, or the overall length. */
export interface DimTier {
  /** Model coordinates along the string (x for above and below, y for left and right), any order; equal ones count once. */
  readonly stations: readonly number[];
  /** Replaces the text of a segment (counted along the string); undefined keeps the measured length. */
  readonly labels?: readonly (string | undefined)[];
  /** JSON pointer of the value behind each segment, so that a click can edit it. */
  readonly paths?: readonly (string | undefined)[];
  /** Model coordinate across the string from which extension lines start; one for all or one for each station. */
  readonly from?: number | readonly number[];
}

export interface DimStringOptions {
  readonly side: DimSide;
  /** Model coordinate across the string from which the first tier is offset: the outer edge of what is drawn. */
  readonly datum: number;
  /** Nearest the drawing first; by custom edges, then grid, then overall. */
  readonly tiers: readonly DimTier[];
  /** Paper inches per model inch of the viewport. */
  readonly scale: number;
  readonly layer: LayerName;
  readonly style: Style;
  readonly format?: (inches: number) => string;
  /** Finest step shown, as parts of an inch: 16 for sixteenths, 25.4 for millimetres. */
  readonly denominator?: number;
  /** Paper inches from the datum to the first line; the style's by default. */
  readonly first?: number;
  /** Sets no text beyond the ends of the string, where another string may stand: short end segments are staggered too. */
  readonly within?: boolean;
}

/** Values shown along one tier: their sum is exactly the overall, since positions are rounded, not differences. */
export interface DimChain {
  readonly values: readonly number[];
  readonly overall: number;
}

export interface DimString {
  readonly items: readonly Dimension[];
  readonly chains: readonly DimChain[];
  /** Paper inches from the datum to the outermost ink. */
  readonly depth: number;
}

/** Stations in order, each once, and the values shown between them: differences of positions rounded from `origin`. */
export function chainOf(
  stations: readonly number[],
  origin: number,
  denominator = 16,
): DimChain & { readonly at: readonly number[] } {
  const sorted = [...stations].sort((a, b) => a - b);
  const at = sorted.filter(
    (s, i) => i === 0 || roundTo(s - origin, denominator) !== roundTo(sorted[i - 1]! - origin, denominator),
  );
  const rounded = at.map((s) => roundTo(s - origin, denominator));
  const values = rounded.slice(1).map((r, i) => r - rounded[i]!);
  return { at, values, overall: at.length > 1 ? rounded.at(-1)! - rounded[0]! : 0 };
}

interface Placed {
  readonly shift?: Vec2;
  readonly row: number;
}

/**
 * Texts of one tier without overlap: over its segment if it fits; else outside the string at either end; else staggered
 * in rows on the outer side, with a small leader. Coordinates in paper inches along the reading direction.
 */
export function placeTexts(
  spans: readonly { readonly lo: number; readonly hi: number; readonly width: number }[],
  h: number,
  outward: 1 | -1,
  within = false,
): Placed[] {
  const pad = 0.75 * h;
  const rows: [number, number][][] = [];
  const last = spans.length - 1;
  return spans.map((s, i): Placed => {
    const length = s.hi - s.lo;
    if (s.width + pad <= length) return { row: 0 };
    const reach = length / 2 + s.width / 2 + 1.1 * h;
    if (i === 0 && !within) return { row: 0, shift: { x: -reach, y: 0 } };
    if (i === last && !within) return { row: 0, shift: { x: reach, y: 0 } };
    const mid = (s.lo + s.hi) / 2;
    let row = 1;
    let x = mid;
    for (; ; row++) {
      rows[row] ??= [];
      const right = Math.max(-Infinity, ...rows[row]!.map((t) => t[1]));
      x = Math.max(mid, right + pad + s.width / 2);
      // A text that would drift far from its segment starts a new row instead; the fourth row takes whatever is left.
      if (x - mid <= Math.max(length, 1.2 * s.width) || row >= 4) break;
    }
    rows[row]!.push([x - s.width / 2, x + s.width / 2]);
    const first = outward > 0 ? DIMENSION_FORM.row * h : -(2 * DIMENSION_FORM.clear + 1) * h;
    return { row, shift: { x: x - mid, y: first + outward * (row - 1) * DIMENSION_FORM.row * h } };
  });
}

/**
 * A dimension string beside a view, in the view's model coordinates: goes into the viewport's `over` list.
 * Values shown add up in every tier and from tier to tier.
 */
export function dimString(o: DimStringOptions): DimString {
  const { side, datum, scale, layer, style } = o;
  const denominator = o.denominator ?? 16;
  const format = o.format ?? ((v) => feetInches(v, denominator));
  const h = style.note;
  const flat = side === 'above' || side === 'below';
  const angle = flat ? 0 : Math.PI / 2;
  // Outward is up or left of the reading direction (+1) or down and right (−1).
  const outward = side === 'above' || side === 'left' ? 1 : -1;
  const at = (along: number, across: number): Vec2 => (flat ? { x: along, y: across } : { x: across, y: along });
  const origin = Math.min(...o.tiers.flatMap((t) => t.stations));
  const items: Dimension[] = [];
  const chains: DimChain[] = [];
  const drawn: { readonly station: number; readonly level: number }[] = [];
  let level = o.first ?? style.dimFirst;
  let rowsBefore = 0;
  let started = false;
  for (const tier of o.tiers) {
    const chain = chainOf(tier.stations, origin, denominator);
    if (chain.at.length < 2) continue;
    if (started) level += style.dimStep + rowsBefore * DIMENSION_FORM.row * h;
    started = true;
    chains.push({ values: chain.values, overall: chain.overall });
    const texts = chain.values.map((v, i) => tier.labels?.[i] ?? format(v));
    const spans = texts.map((t, i) => ({
      lo: chain.at[i]! * scale,
      hi: chain.at[i + 1]! * scale,
      width: textWidth(t, h),
    }));
    const placed = placeTexts(spans, h, outward, o.within);
    rowsBefore = Math.max(0, ...placed.map((p) => p.row));
    // An extension line starts at the object or, where a nearer tier has drawn it, at that tier's line.
    const start = (i: number): { readonly across: number; readonly skip: boolean } => {
      const station = chain.at[i]!;
      const nearer = drawn.filter((d) => Math.abs(d.station - station) * scale < 0.01).at(-1);
      if (nearer !== undefined) return { across: datum + (outwardSign(side) * nearer.level) / scale, skip: false };
      const from = typeof tier.from === 'number' ? tier.from : tier.from?.[tier.stations.indexOf(station)];
      return { across: from ?? datum, skip: false };
    };
    const starts = chain.at.map((_, i) => start(i));
    chain.values.forEach((value, i) => {
      const p = placed[i]!;
      const path = tier.paths?.[i];
      items.push({
        kind: 'dimension',
        layer,
        a: at(chain.at[i]!, starts[i]!.across),
        b: at(chain.at[i + 1]!, starts[i + 1]!.across),
        angle,
        base: at(0, datum),
        offset: outward * level,
        value,
        text: texts[i]!,
        height: h,
        ...(p.shift && { shift: p.shift }),
        ...(path !== undefined && { path }),
        ...(i > 0 && { noExtensionA: true }),
      });
    });
    for (const station of chain.at) drawn.push({ station, level });
  }
  const above = outward > 0 ? (1 + DIMENSION_FORM.clear) * h : 0;
  return {
    items,
    chains,
    depth: started ? level + Math.max(above, DIMENSION_FORM.beyond * h) + rowsBefore * DIMENSION_FORM.row * h : 0,
  };
}

const outwardSign = (side: DimSide): 1 | -1 => (side === 'above' || side === 'right' ? 1 : -1);

/** One dimension parallel to the line from `a` to `b`, e.g. along a property line; positive offset to the left of a→b. */
export function alignedDimension(o: {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly offset: number;
  readonly layer: LayerName;
  readonly style: Style;
  readonly text?: string;
  readonly path?: string;
  readonly scale: number;
}): Dimension {
  const { a, b, offset, layer, style } = o;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const value = roundTo(length);
  const text = o.text ?? feetInches(value);
  const width = textWidth(text, style.note);
  const tight = width + 0.45 * style.note > length * o.scale;
  return {
    kind: 'dimension',
    layer,
    a,
    b,
    angle: Math.atan2(b.y - a.y, b.x - a.x),
    base: a,
    offset,
    value,
    text,
    height: style.note,
    ...(tight && { shift: { x: (length * o.scale + width) / 2 + 1.1 * style.note, y: 0 } }),
    ...(o.path !== undefined && { path: o.path }),
  };
}
