import type { Inches } from '../units.js';
import { MILLIMETRES_PER_INCH } from './constants.js';
import { bad, good, normalise, type Parsed, quoted, scanNumber, scanSign, signed, type UnitSystem } from './number.js';
import { formatNumber, roundHalfUp } from './round.js';
import { parseScalar, type ScalarKind, unitTable } from './scalar.js';

const LENGTH: ScalarKind = {
  noun: 'a length',
  expected: `feet and inches, e.g. 12'-6 1/2", or a number and a unit, e.g. "12.5 ft" or "3.81 m"`,
  units: unitTable(
    ['in,inch,inches,"', 1],
    ["ft,foot,feet,'", 12],
    ['yd,yard,yards', 36],
    ['mm,millimetre,millimetres,millimeter,millimeters', 1, MILLIMETRES_PER_INCH],
    ['cm,centimetre,centimetres,centimeter,centimeters', 10, MILLIMETRES_PER_INCH],
    ['m,metre,metres,meter,meters', 1000, MILLIMETRES_PER_INCH],
  ),
  print: { us: { unit: 'in', decimals: 3 }, metric: { unit: 'mm', decimals: 0 } },
};

const FEET_MARK = / ?(?:'|(?:ft|foot|feet)(?![a-z])\.?)/iy;
const INCH_MARK = / ?(?:"|in(?:ch(?:es)?)?(?![a-z])\.?)$/iy;
const BETWEEN = / ?-? ?/y;

/**
 * Length → inches. Reads `12'-6 1/2"`, `12' 6-1/2"`, `12'6.5"`, `12'`, `6 ½"`, `150 1/2 in`, `12.5 ft`, `12 ft 6 in`,
 * `3.81 m`, `381 cm`, `3810 mm`, each with a leading minus if need be. A bare number is refused: it could be anything.
 */
export function parseLength(text: string): Parsed<Inches> {
  const s = normalise(text);
  const { sign, at } = scanSign(s);
  const feet = scanNumber(s, at);
  const mark = 'fault' in feet ? undefined : after(FEET_MARK, s, feet.end);
  if ('fault' in feet || mark === undefined || mark === s.length) return parseScalar(text, LENGTH);

  const refuse = (why: string) => bad(`${quoted(text)}: ${why}`, LENGTH.expected);
  const inches = scanNumber(s, after(BETWEEN, s, mark));
  if ('fault' in inches) return refuse(`after the feet, ${inches.fault}`);
  const written = s.slice(at, feet.end);
  if (!/^\d[\d,]*$/.test(written)) return refuse('feet must be whole when inches follow');
  const end = after(INCH_MARK, s, inches.end);
  if (end !== s.length) {
    const rest = s.slice(inches.end).trim();
    return refuse(rest === '' ? 'the inches have no inch mark (")' : `${quoted(rest)} is not an inch mark`);
  }
  if (inches.value >= 12) return refuse('inches after feet must be less than 12');
  return good(signed(sign, feet.value * 12 + inches.value));
}

function after(mark: RegExp, s: string, at: number): number | undefined {
  mark.lastIndex = at;
  return mark.test(s) ? mark.lastIndex : undefined;
}

/**
 * `building`: as dimensioned on plans, `12'-6 1/2"` or `3810 mm`. `inches`: sizes, never split into feet, `150 1/2"` or
 * `3810 mm`. `survey`: as on a plat, decimal feet to hundredths `62.50'`, or metres to millimetres `19.050 m`.
 */
export type LengthStyle = 'building' | 'inches' | 'survey';

export interface LengthFormat {
  readonly units?: UnitSystem;
  readonly style?: LengthStyle;
  /** Smallest fraction of an inch, default 16. */
  readonly denominator?: number;
  /** True fractions for drawings: `½`, `⁵⁄₁₆`. */
  readonly glyphs?: boolean;
}

/** Prints inches, rounded half away from zero to 1/denominator inch, a hundredth of a foot, or a millimetre. */
export function formatLength(inches: Inches, format: LengthFormat = {}): string {
  const { units = 'us', style = 'building', denominator = 16, glyphs = false } = format;
  if (units === 'metric') {
    const mm = inches * MILLIMETRES_PER_INCH;
    return style === 'survey' ? `${formatNumber(mm / 1000, 3)} m` : `${formatNumber(mm, 0, { group: false })} mm`;
  }
  if (style === 'survey') return `${formatNumber(inches / 12, 2)}'`;

  const steps = roundHalfUp(inches * denominator);
  const all = Math.abs(steps);
  const minus = steps < 0 ? '-' : '';
  const perFoot = 12 * denominator;
  const feet = style === 'inches' ? 0 : Math.floor(all / perFoot);
  const rest = all - feet * perFoot;
  const whole = Math.floor(rest / denominator);
  const inchText = formatMixed(whole, rest % denominator, denominator, glyphs);
  if (feet === 0) return `${minus}${inchText}"`;
  // The trade writes the nought: 12'-0 1/2", so that a half inch is not misread as half a foot.
  return `${minus}${feet}'-${whole === 0 && rest > 0 ? '0 ' : ''}${inchText}"`;
}

/** `6 1/2`, `6`, `1/2`, `0`; with glyphs `6 ½`, `⁵⁄₁₆`. The fraction is reduced. */
export function formatMixed(whole: number, numerator: number, denominator: number, glyphs = false): string {
  if (numerator === 0) return String(whole);
  const g = greatestDivisor(numerator, denominator);
  const top = numerator / g;
  const bottom = denominator / g;
  const plain = `${top}/${bottom}`;
  const fraction = glyphs ? (PRECOMPOSED[plain] ?? `${digits(top, SUPERSCRIPT)}⁄${digits(bottom, SUBSCRIPT)}`) : plain;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

const PRECOMPOSED: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};
const SUPERSCRIPT = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPT = '₀₁₂₃₄₅₆₇₈₉';
const digits = (n: number, set: string): string => [...String(n)].map((d) => set[Number(d)]).join('');
const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));
