/**
 * Symmetric matrix kept by columns, each from its first term that is not zero down to the diagonal (a skyline). The
 * factors L and D of LDLᵀ take the same room, so a long narrow structure costs in proportion to its length.
 */
export interface Skyline {
  readonly size: number;
  /** Place of each column's diagonal in `terms`. */
  readonly diagonal: Int32Array;
  /** First row stored of each column. */
  readonly top: Int32Array;
  readonly terms: Float64Array;
}

/** An empty matrix whose column j begins at row `top[j]`. */
export function makeSkyline(top: Int32Array): Skyline {
  const size = top.length;
  const diagonal = new Int32Array(size);
  let count = 0;
  for (let j = 0; j < size; j++) {
    count += j - top[j]! + 1;
    diagonal[j] = count - 1;
  }
  return { size, diagonal, top, terms: new Float64Array(count) };
}

/** Adds to the term of row i and column j, i ≤ j. */
export function addTerm(m: Skyline, i: number, j: number, value: number): void {
  const at = m.diagonal[j]! - (j - i);
  m.terms[at] = m.terms[at]! + value;
}

/** A pivot that has sunk to this part of the diagonal it began as is taken for zero: about 10⁴ times the round-off. */
const TINY = 1e-11;

/**
 * Factors in place. Returns -1, or the first column whose pivot is not positive, where it stops.
 */
export function factorise(m: Skyline): number {
  const { size, diagonal, top, terms } = m;
  for (let j = 0; j < size; j++) {
    const dj = diagonal[j]!;
    const tj = top[j]!;
    const cj = dj - j;
    for (let i = tj + 1; i < j; i++) {
      const ti = top[i]!;
      const ci = diagonal[i]! - i;
      let sum = 0;
      for (let k = Math.max(ti, tj); k < i; k++) sum += terms[ci + k]! * terms[cj + k]!;
      terms[cj + i] = terms[cj + i]! - sum;
    }
    const whole = terms[dj]!;
    let pivot = whole;
    for (let i = tj; i < j; i++) {
      const u = terms[cj + i]!;
      const l = u / terms[diagonal[i]!]!;
      pivot -= l * u;
      terms[cj + i] = l;
    }
    if (!(pivot > TINY * whole)) return j;
    terms[dj] = pivot;
  }
  return -1;
}

/** Solves in place with a factored matrix. */
export function solveSkyline(m: Skyline, b: Float64Array): void {
  const { size, diagonal, top, terms } = m;
  for (let j = 0; j < size; j++) {
    const cj = diagonal[j]! - j;
    let sum = b[j]!;
    for (let i = top[j]!; i < j; i++) sum -= terms[cj + i]! * b[i]!;
    b[j] = sum;
  }
  for (let j = 0; j < size; j++) b[j] = b[j]! / terms[diagonal[j]!]!;
  backSubstitute(m, b, size - 1);
}

/** Solves Lᵀ x = b in place for rows up to `last`. */
function backSubstitute(m: Skyline, b: Float64Array, last: number): void {
  const { diagonal, top, terms } = m;
  for (let j = last; j > 0; j--) {
    const x = b[j]!;
    if (x === 0) continue;
    const cj = diagonal[j]! - j;
    for (let i = top[j]!; i < j; i++) b[i] = b[i]! - terms[cj + i]! * x;
  }
}

/** The motion that meets no resistance, after `factorise` stopped at a column: zero beyond it, one in it. */
export function freeMotion(m: Skyline, column: number): Float64Array {
  const x = new Float64Array(m.size);
  x[column] = 1;
  backSubstitute(m, x, column);
  return x;
}
