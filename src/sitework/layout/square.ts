/** Right angles: the triangle at home base, and the diagonals of every rectangle of points. */
import type { Diagonal, DiagonalPair, StakePoint, Triangle } from './model.js';
import { ANCHOR_TOLERANCE } from './words.js';

const SAME = 1 / 16;
/** Longest side of a triangle that one tape reaches. Common practice, no source. */
const LONGEST = 50 * 12;
/** Above this many rectangles only the next neighbours and the whole are given: the rest follow from them. */
const MANY = 10;

/**
 * Largest 3-4-5 triangle inside the work, in whole feet of the unit (3-4-5, 6-8-10, 9-12-15 …), below that in half feet;
 * undefined when not even 18-24-30 in fits.
 */
export function triangleIn(along: number, out: number): Triangle | undefined {
  for (const step of [12, 6]) {
    const units = (a: number, b: number): number =>
      Math.floor(Math.min(along / a, out / b, LONGEST / 5) / step + 1e-9) * step;
    const [flat, steep] = [units(4, 3), units(3, 4)];
    if (Math.max(flat, steep) <= 0) continue;
    return steep > flat
      ? { along: 3 * steep, out: 4 * steep, across: 5 * steep }
      : { along: 4 * flat, out: 3 * flat, across: 5 * flat };
  }
  return undefined;
}

export const between = (a: StakePoint, b: StakePoint): Diagonal => ({
  from: a.name,
  to: b.name,
  length: Math.hypot(b.along - a.along, b.out - a.out),
});

const values = (of: readonly number[]): number[] =>
  [...of].sort((a, b) => a - b).filter((v, i, all) => i === 0 || v - all[i - 1]! > SAME);

/**
 * Rectangles whose four corners are points. A corner that is off by the tolerance along a side s of a rectangle with
 * diagonal d makes the diagonals differ by nearly 2·tolerance·s/d: the shorter side gives the stricter difference.
 */
export function rectanglesOf(points: readonly StakePoint[]): readonly DiagonalPair[] {
  const columns = values(points.map((p) => p.along));
  const rows = values(points.map((p) => p.out));
  const place = (of: readonly number[], v: number): number => of.findIndex((c) => Math.abs(c - v) <= SAME);
  const grid = new Map(points.map((p) => [`${place(columns, p.along)} ${place(rows, p.out)}`, p]));
  const at = (column: number, row: number) => grid.get(`${column} ${row}`);
  const found: { pair: DiagonalPair; near: boolean }[] = [];
  const [last, top] = [columns.length - 1, rows.length - 1];
  for (let i = 0; i < last; i++)
    for (let j = i + 1; j <= last; j++)
      for (let k = 0; k < top; k++)
        for (let l = k + 1; l <= top; l++) {
          const [a, b, c, d] = [at(i, k), at(j, k), at(i, l), at(j, l)];
          if (!a || !b || !c || !d) continue;
          const first = between(a, d);
          const shorter = Math.min(columns[j]! - columns[i]!, rows[l]! - rows[k]!);
          const most = (2 * ANCHOR_TOLERANCE * shorter) / first.length;
          found.push({
            pair: { first, second: between(b, c), mostDifference: Math.max(1 / 16, Math.floor(most * 16) / 16) },
            near: (j === i + 1 && l === k + 1) || (i === 0 && k === 0 && j === last && l === top),
          });
        }
  return (found.length > MANY ? found.filter((f) => f.near) : found).map((f) => f.pair);
}
