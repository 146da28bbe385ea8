/** Per-case rows of three numbers (house axes, lb), kept flat so that adding a case allocates nothing. */
import type { Vec3 } from '../base/vec.js';

/** `rows[3 * case + axis]`. */
export type Rows = Float64Array;

export const makeRows = (cases: number): Rows => new Float64Array(3 * cases);

export function addTo(rows: Rows, at: number, x: number, y: number, z: number, factor = 1): void {
  const i = 3 * at;
  rows[i] = rows[i]! + factor * x;
  rows[i + 1] = rows[i + 1]! + factor * y;
  rows[i + 2] = rows[i + 2]! + factor * z;
}

export function addRows(rows: Rows, other: Rows, factor = 1): void {
  for (let i = 0; i < rows.length; i++) rows[i] = rows[i]! + factor * other[i]!;
}

export const rowAt = (rows: Rows, at: number): Vec3 => ({
  x: rows[3 * at]!,
  y: rows[3 * at + 1]!,
  z: rows[3 * at + 2]!,
});

/** Most cases put nothing on most parts of a large cover: these share one vector. */
export const NOTHING: Vec3 = { x: 0, y: 0, z: 0 };

export function toVectors(rows: Rows): readonly Vec3[] {
  const out: Vec3[] = new Array(rows.length / 3);
  for (let c = 0; c < out.length; c++) {
    const i = 3 * c;
    out[c] = rows[i] === 0 && rows[i + 1] === 0 && rows[i + 2] === 0 ? NOTHING : rowAt(rows, c);
  }
  return out;
}

/** Rows of zeros of one length, in one piece of memory: a piece for each row would cost more than what is put in it. */
export function makeTable(rows: number, length: number): Float64Array[] {
  const { buffer } = new Float64Array(rows * length);
  return Array.from({ length: rows }, (_, i) => new Float64Array(buffer, 8 * i * length, length));
}

/** Rows of a key, made on first use. */
export function rowsOf(map: Map<string, Rows>, key: string, cases: number): Rows {
  let rows = map.get(key);
  if (!rows) {
    rows = makeRows(cases);
    map.set(key, rows);
  }
  return rows;
}
