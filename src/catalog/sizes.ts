import type { Sourced } from './model.js';

/** A sawn size: its nominal name and its dressed dimensions in inches, thickness `b` by width `d`. */
export interface DressedSize extends Sourced {
  readonly nominal: string;
  readonly nominalThickness: number;
  readonly nominalWidth: number;
  readonly b: number;
  readonly d: number;
}

export interface Nominal {
  readonly thickness: number;
  readonly width: number;
}

/** Reads `2x10`, `2 x 10`, `6×6` into nominal inches, smaller side first; undefined when it is not a size. */
export function parseNominal(text: string): Nominal | undefined {
  const m = /^\s*(\d{1,2})\s*[x×X]\s*(\d{1,2})\s*$/.exec(text);
  if (m === null) return undefined;
  const a = Number(m[1]);
  const b = Number(m[2]);
  if (a < 1 || b < 1) return undefined;
  return { thickness: Math.min(a, b), width: Math.max(a, b) };
}

/**
 * Dressed side of a nominal one, inches: boards and dimension lumber dry, timbers (5 in. and thicker) green,
 * NDS Supplement 2018 Table 1A. Newer product standards also list dry timbers whose 8 in. and wider faces lose 3/4 in.
 */
export function dressed(nominal: number, timber: boolean): number {
  if (timber) return nominal - 0.5;
  if (nominal === 1) return 0.75;
  return nominal >= 8 ? nominal - 0.75 : nominal - 0.5;
}

/** Dressed size of any nominal pair. */
export function dressedSize(n: Nominal): DressedSize {
  const timber = n.thickness >= 5;
  return {
    nominal: `${n.thickness}x${n.width}`,
    nominalThickness: n.thickness,
    nominalWidth: n.width,
    b: dressed(n.thickness, timber),
    d: dressed(n.width, timber),
    source: 'NDS Supplement Table 1A',
    edition: '2018',
    provenance: timber || n.thickness === 1 ? 'memory' : 'read',
  };
}

const SOLD: readonly (readonly [thickness: number, widths: readonly number[]])[] = [
  [1, [4, 6, 8, 10, 12]],
  [2, [4, 6, 8, 10, 12, 14]],
  [3, [6, 8, 10, 12]],
  [4, [4, 6, 8, 10, 12, 14]],
  [6, [6, 8, 10, 12, 14]],
  [8, [8, 10, 12]],
];

/** Sawn sizes a lumber yard usually stocks or brings in, smallest first. */
export const SAWN_SIZES: readonly DressedSize[] = SOLD.flatMap(([thickness, widths]) =>
  widths.map((width) => Object.freeze(dressedSize({ thickness, width }))),
);

const BY_NAME: ReadonlyMap<string, DressedSize> = new Map(SAWN_SIZES.map((s) => [s.nominal, s]));

/** A stocked size by any spelling of its name. */
export function findSize(text: string): DressedSize | undefined {
  const n = parseNominal(text);
  return n === undefined ? undefined : BY_NAME.get(`${n.thickness}x${n.width}`);
}

/** Stock lengths of sawn lumber, feet. Common practice, no source; longer lengths are a special order. */
export const STOCK_LENGTHS_FT: readonly number[] = [8, 10, 12, 14, 16, 18, 20];

/** Finished glulam widths, inches (western and Southern Pine layups). Common practice, no source. */
export const GLULAM_WIDTHS: readonly number[] = [3.125, 3.5, 5.125, 5.5, 6.75];
/** Lamination thickness of western glulam, inches. Common practice, no source. */
export const GLULAM_LAMINATION = 1.5;
/** Finished glulam depths, inches: whole laminations, 6 in. to 24 in. Common practice, no source. */
export const GLULAM_DEPTHS: readonly number[] = Array.from({ length: 13 }, (_, i) => (i + 4) * GLULAM_LAMINATION);

/** Thickness of one ply of laminated veneer lumber, inches. Common practice, no source. */
export const LVL_THICKNESS = 1.75;
/** Depths of laminated veneer lumber, inches. Common practice, no source. */
export const LVL_DEPTHS: readonly number[] = [9.5, 11.25, 11.875, 14, 16];
