/** What a reader of text returns: a value in base units, or what is wrong and an example of what would be right. */
export type Parsed<T = number> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly expected: string };

/** Which system a person reads; the program itself always works in inches and pounds. */
export type UnitSystem = 'us' | 'metric';

export const good = <T>(value: T): Parsed<T> => ({ ok: true, value });
export const bad = (message: string, expected: string): Parsed<never> => ({ ok: false, message, expected });

/** Nothing in it that `normalise` changes, but for two feet marks: nearly all that is written in a project file. */
const PLAIN = /^[!-_a-~]+(?: [!-_a-~]+)*$/;

/**
 * Brings the many ways a keyboard or a word processor writes one thing to a single one: straight feet and inch marks,
 * a plain hyphen for every dash and minus, `1/2` for `½` and `⁵⁄₁₆`, single spaces, `m2` for `m²`.
 */
export function normalise(text: string): string {
  if (PLAIN.test(text) && !text.includes("''")) return text;
  return (
    text
      .replace(/[’‘′ʹ`´]/g, "'")
      .replace(/[”“″ʺ]/g, '"')
      .replace(/''/g, '"')
      .replace(/[−–—‐‑‒]/g, '-')
      .replace(/º/g, '°')
      // The space keeps `6½` from becoming 61/2.
      .replace(/[¼-¾⅐-⅞]|[⁰¹²³⁴-⁹]+⁄[₀-₉]+/g, ' $&')
      .normalize('NFKC')
      .replace(/⁄/g, '/')
      .replace(/\s+/g, ' ')
      .trim()
  );
}

/** `text` quoted and cut short for a message. */
export const quoted = (text: string): string => {
  const t = text.length > 40 ? `${text.slice(0, 37)}…` : text;
  return t.includes('"') ? `‘${t}’` : `"${t}"`;
};

/** A number found at the head of a text: its value and where the rest begins; or what is wrong with it. */
export type Scanned = { readonly value: number; readonly end: number } | { readonly fault: string };

const MIXED = /(\d+)(?: ?- ?| )(\d+) ?\/ ?(\d+)/y;
const FRACTION = /(\d+) ?\/ ?(\d+)/y;
const DECIMAL = /\d{1,3}(?:,\d{3})+(?![\d,])(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+/y;

/** Reads an unsigned decimal (`1,800.5`), fraction (`5/16`) or mixed number (`6 1/2`, `6-1/2`) of a normalised text. */
export function scanNumber(text: string, at = 0): Scanned {
  const mixed = match(MIXED, text, at);
  if (mixed) {
    const top = Number(mixed[2]);
    const bottom = Number(mixed[3]);
    if (top >= bottom)
      return { fault: `the fraction ${mixed[2]}/${mixed[3]} after a whole number must be less than one` };
    return finite(Number(mixed[1]) + top / bottom, at + mixed[0].length);
  }
  const fraction = match(FRACTION, text, at);
  if (fraction) {
    const bottom = Number(fraction[2]);
    if (bottom === 0) return { fault: `the fraction ${fraction[0]} divides by zero` };
    return finite(Number(fraction[1]) / bottom, at + fraction[0].length);
  }
  const decimal = match(DECIMAL, text, at);
  if (!decimal)
    return {
      fault: at >= text.length ? 'a number is missing' : `${quoted(text.slice(at))} does not start with a number`,
    };
  const end = at + decimal[0].length;
  if (text[end] === ',') return { fault: 'commas only separate thousands; write decimals with a point' };
  return finite(Number(decimal[0].replaceAll(',', '')), end);
}

/** Leading sign of a normalised text: the factor and where the number begins. */
export function scanSign(text: string): { readonly sign: 1 | -1; readonly at: number } {
  const m = /^([+-]) ?/.exec(text);
  return m ? { sign: m[1] === '-' ? -1 : 1, at: m[0].length } : { sign: 1, at: 0 };
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

const finite = (value: number, end: number): Scanned =>
  Number.isFinite(value) ? { value, end } : { fault: 'the number is too large' };

/** Avoids -0, which would print and compare oddly. */
export const signed = (sign: 1 | -1, value: number): number => (value === 0 ? 0 : sign * value);

/** A number with no unit, e.g. `0.8`, `1,200`, `2 1/2`. */
export function parseNumber(text: string): Parsed {
  const expected = 'a plain number, e.g. "0.8"';
  const s = normalise(text);
  const { sign, at } = scanSign(s);
  const n = scanNumber(s, at);
  if ('fault' in n) return bad(`${quoted(text)}: ${n.fault}`, expected);
  const rest = s.slice(n.end).trim();
  if (rest !== '') return bad(`${quoted(text)}: ${quoted(rest)} was not expected after the number`, expected);
  return good(signed(sign, n.value));
}
