/**
 * The tag stream of a DXF file: pairs of a group code and a value, each on its own line.
 * Source: the format's published reference, release 2007 (group codes, value types, order of subclass markers).
 */
export type Tag = readonly [code: number, value: string | number];

/** Group codes whose values are reals; the others of number type are whole numbers. */
const isReal = (code: number): boolean =>
  (code >= 10 && code <= 59) ||
  (code >= 110 && code <= 149) ||
  (code >= 210 && code <= 239) ||
  (code >= 1010 && code <= 1059);

/** Millionths of an inch or of a degree: far finer than any drawing, and never written with an exponent. */
export function real(v: number): string {
  const n = Math.round(v * 1e6) / 1e6 + 0;
  return Number.isInteger(n) ? `${n}.0` : String(n);
}

/** Lines of one tag. A value never holds a line end: that would shift every tag after it. */
export function tagText([code, value]: Tag): string {
  const text = typeof value === 'string' ? value.replace(/[\r\n]+/g, ' ') : isReal(code) ? real(value) : String(value);
  return `${String(code).padStart(3)}\r\n${text}\r\n`;
}

export const tagsText = (tags: readonly Tag[]): string => tags.map(tagText).join('');

/** Handles: unique hexadecimal numbers, counted up in the order of the file. */
export function handles(): { next(): string; seed(): string } {
  let n = 0x10;
  return {
    next: () => (n++).toString(16).toUpperCase(),
    seed: () => n.toString(16).toUpperCase(),
  };
}

/** A point of two or three coordinates on consecutive codes: 10, 20, 30 or 11, 21, 31 … */
export const point2 = (code: number, x: number, y: number): Tag[] => [
  [code, x],
  [code + 10, y],
];
export const point = (code: number, x: number, y: number): Tag[] => [...point2(code, x, y), [code + 20, 0]];

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Degrees from 0 up to, not including, 360. */
export function turn(radians: number): number {
  const d = Math.round((degrees(radians) % 360) * 1e6) / 1e6;
  return d < 0 ? d + 360 : d;
}
