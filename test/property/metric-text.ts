/** A project file's text with every US quantity written in metric, the way a careful user would: units in the words, many digits. */

const INCH = 25.4;
const POUND = 4.4482216152605;
const FOOT = 0.3048;

/** Unit as written → metric unit and factor. One unit of the left is `factor` of the right. */
const UNITS: readonly (readonly [RegExp, string, number])[] = [
  [/^psf\/ft$/, 'kPa/m', POUND / FOOT ** 2 / 1000 / FOOT],
  [/^psf$/, 'kPa', POUND / FOOT ** 2 / 1000],
  [/^psi$/, 'MPa', POUND / INCH ** 2],
  [/^pcf$/, 'kN/m3', POUND / FOOT ** 3 / 1000],
  [/^plf$/, 'kN/m', POUND / FOOT / 1000],
  [/^mph$/, 'm/s', 0.44704],
  [/^lb-ft$/, 'kN-m', (POUND * FOOT) / 1000],
  [/^lb$/, 'kN', POUND / 1000],
  [/^in\/ft$/, '', 0],
];

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const FRACTION = String.raw`(?:(\d+)\/(\d+))`;
const FEET_INCHES = new RegExp(`^(-?)(?:${NUMBER} ft)?(?: ?(?:${NUMBER}(?:-${FRACTION})?|${FRACTION}) in)?$`);

/** Inches of `-5 ft 9-1/2 in`; undefined when the text is no length. */
function inches(text: string): number | undefined {
  const m = FEET_INCHES.exec(text);
  if (!m || !/\d/.test(text)) return undefined;
  const [, sign, ft, whole, a, b, c, d] = m;
  const part = a ? Number(a) / Number(b) : c ? Number(c) / Number(d) : 0;
  return (sign ? -1 : 1) * (12 * Number(ft ?? 0) + Number(whole ?? 0) + part);
}

/** Whole quantities only; words with a length among them stay as they are. */
export function metricOf(text: string): string | undefined {
  const length = inches(text);
  // A file written by a person in metric has millimetres to the hundredth at best; the rest is left to the tolerance.
  if (length !== undefined) return `${Number((length * INCH).toFixed(5))} mm`;
  const m = new RegExp(`^(-?)${NUMBER} ([a-z][a-z/-]*)$`).exec(text);
  const row = m && UNITS.find(([unit]) => unit.test(m[3]!));
  if (!m || !row || row[1] === '') return undefined;
  return `${m[1]}${Number((Number(m[2]) * row[2]).toPrecision(14))} ${row[1]}`;
}

export interface Converted {
  readonly text: string;
  readonly count: number;
}

/** The file in metric and how many quantities were rewritten. Keys and comments stay. */
export function metricProject(text: string): Converted {
  let count = 0;
  const out = text.replace(
    /^(\s*\/\/.*)$|"((?:[^"\\]|\\.)*)"(\s*:)?/gm,
    (all, comment?: string, inner?: string, key?: string) => {
      if (comment !== undefined || key !== undefined || inner === undefined) return all;
      const metric = metricOf(inner.replace(/\\"/g, '"'));
      if (metric === undefined) return all;
      count++;
      return `"${metric}"`;
    },
  );
  return { text: out.replace('"units": "us"', '"units": "metric"'), count };
}
