/**
 * What every load-provision clause shares: edition tags, where a value was read, the answer "outside scope", and the
 * number text of a trace. Kept beside the clauses so that they import the base and nothing else.
 */
export type Asce7Edition = '7-16' | '7-22';

/**
 * Where a clause's numbers come from. `read`: seen in a copy of the standard or in a record that quotes it; `memory`:
 * recalled, to be confirmed in the adopted code; `mixed`: the note says which part is recalled.
 */
export type Provenance = 'read' | 'memory' | 'mixed';

/** One line of the list "where these values were read"; the program prints every one that is not plainly `read`. */
export interface ClauseRecord {
  readonly id: string;
  /** Standard, edition and section. */
  readonly clause: string;
  readonly title: string;
  readonly provenance: Provenance;
  /** What exactly is recalled, or what a reader should know of the source. */
  readonly note?: string;
}

/** Printed beside a traced step whose value nobody saw in print for this work. */
export const MEMORY_NOTE = 'value recalled from memory: confirm in the adopted code';

/** A question the standard's own limits put beyond this program: a licensed professional has to answer it. */
export interface OutOfScope {
  readonly outOfScope: true;
  readonly clause: string;
  readonly reason: string;
}
export type Scoped<T> = T | OutOfScope;

export const outOfScope = (clause: string, reason: string): OutOfScope => ({ outOfScope: true, clause, reason });

export const isOutOfScope = (value: unknown): value is OutOfScope =>
  typeof value === 'object' && value !== null && (value as { outOfScope?: unknown }).outOfScope === true;

/** `ASCE 7-16 Eq. 26.10-1` from the edition and the section. */
export const asce = (edition: Asce7Edition, section: string): string => `ASCE ${edition} ${section}`;

/** Number as a calculation sheet writes it: four figures, whole numbers from a thousand on, no trailing zeros. */
export const num = (value: number): string =>
  Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(4)));

/** Linear interpolation in a table with ascending `xs`; the end values hold outside the printed range. */
export function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let i = 1;
  while (xs[i]! < x) i += 1;
  const x0 = xs[i - 1]!;
  const y0 = ys[i - 1]!;
  return y0 + ((ys[i]! - y0) * (x - x0)) / (xs[i]! - x0);
}

/** Angle in degrees, since the standard's tables and rules are in degrees and the program's angles in radians. */
export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Angle in degrees with the last bits of a conversion rounded off, so that a roof drawn at exactly a printed limit
 * (7.5 degrees, 45 degrees) falls on the same side of it however the angle was reached.
 */
export const tableDegrees = (radians: number): number => Math.round(degrees(radians) * 1e9) / 1e9;
