import { bad, good, normalise, type Parsed, quoted, scanNumber, scanSign, signed, type UnitSystem } from './number.js';
import { formatNumber } from './round.js';

/** Base value = written value · mul / div. Two factors, so that 3810 mm is exactly 150 in. */
export type Factor = readonly [mul: number, div: number];

/** A kind of quantity written as one number and one unit. */
export interface ScalarKind {
  /** For messages, e.g. `a force`. */
  readonly noun: string;
  /** Example in the trade's notation, for messages. */
  readonly expected: string;
  /** Every accepted spelling. Lower-case spellings match any case; spellings with capitals (SI) match exactly. */
  readonly units: ReadonlyMap<string, Factor>;
  /** How each system prints it. */
  readonly print: Readonly<Record<UnitSystem, PrintUnit>>;
}

export interface PrintUnit {
  readonly unit: string;
  readonly decimals: number;
  readonly trim?: boolean;
}

/** One unit: its spellings parted by commas, mul, and div (1 when left out). */
export type UnitRow = readonly [spellings: string, mul: number, div?: number];

export function unitTable(...rows: readonly UnitRow[]): ReadonlyMap<string, Factor> {
  const table = new Map<string, Factor>();
  for (const [spellings, mul, div = 1] of rows) {
    for (const s of spellings.split(',')) table.set(unitKey(s), [mul, div]);
  }
  return table;
}

/** One spelling for `lb·ft`, `lb ft` and `lb-ft`; for `in per ft` and `in/ft`; for `sq. ft.` and `sq ft`. */
function unitKey(text: string): string {
  return normalise(text)
    .replace(/\.(?= |$)/g, '')
    .replace(/ ?\bper\b ?/g, '/')
    .replace(/ ?\/ ?/g, '/')
    .replace(/ ?[·⋅*-] ?| /g, '-')
    .replace(/\^/g, '');
}

export function factorOf(kind: ScalarKind, unit: string): Factor | undefined {
  // Nearly every unit is written as its key: `ft`, `psf`, `mph`.
  const plain = kind.units.get(unit);
  if (plain) return plain;
  const key = unitKey(unit);
  return kind.units.get(key) ?? kind.units.get(key.toLowerCase());
}

/** Digits that mean something in a converted number; further ones are the arithmetic's own. */
const DIGITS = 12;

/** `304.8 mm` is 12 in, not 12.000000000000002: a limit met exactly must be met whatever units it was written in. */
function tidy(value: number): number {
  // Sixteenths below 1e8 have no more than 12 digits.
  if (Number.isInteger(value * 16) && Math.abs(value) < 1e8) return value;
  return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : value;
}

/** Reads a signed number followed by a unit of the kind; anything else is refused. */
export function parseScalar(text: string, kind: ScalarKind): Parsed {
  const s = normalise(text);
  const { sign, at } = scanSign(s);
  const n = scanNumber(s, at);
  if ('fault' in n) return bad(s === '' ? `${kind.noun} is missing` : `${quoted(text)}: ${n.fault}`, kind.expected);
  const unit = s.slice(n.end).trim();
  if (unit === '') return bad(`${quoted(text)} has no unit`, kind.expected);
  const factor = factorOf(kind, unit);
  if (!factor)
    return bad(`${quoted(text)}: ${quoted(unit)} is not a unit of ${kind.noun.replace(/^an? /, '')}`, kind.expected);
  const value = tidy((n.value * factor[0]) / factor[1]);
  if (!Number.isFinite(value)) return bad(`${quoted(text)}: the number is too large`, kind.expected);
  return good(signed(sign, value));
}

/** Prints a base value in a system's unit. `decimals` given means exactly that many; otherwise the kind's own habit. */
export function formatScalar(value: number, kind: ScalarKind, units: UnitSystem = 'us', decimals?: number): string {
  const p = kind.print[units];
  const factor = factorOf(kind, p.unit);
  if (!factor) throw new RangeError(`${p.unit} is not in the table of ${kind.noun}`);
  const shown = (value * factor[1]) / factor[0];
  return `${formatNumber(shown, decimals ?? p.decimals, { trim: decimals === undefined && p.trim === true })} ${p.unit}`;
}
