import { FACES, type FaceName } from './faces.js';
import { METRICS } from './metrics.generated.js';

const LIMIT = 0x2700;
const NONE = 0xffff;

const TABLES = Object.fromEntries(
  Object.entries(METRICS).map(([name, m]) => {
    const table = new Uint16Array(LIMIT).fill(NONE);
    for (const run of m.runs)
      for (let i = 1; i < run.length; i++) if (run[0]! + i - 1 < LIMIT) table[run[0]! + i - 1] = run[i]!;
    return [name, table];
  }),
) as Readonly<Record<FaceName, Uint16Array>>;

const has = (face: FaceName, cp: number): boolean => cp < LIMIT && TABLES[face][cp] !== NONE;

/** Face that really draws a character: the face asked for, or its fallback when only that one has the glyph. */
const drawnBy = (face: FaceName, cp: number): FaceName => {
  const other = FACES[face].fallback;
  return !has(face, cp) && other !== undefined && has(other, cp) ? other : face;
};

/** Em size in the unit of `capHeight` for a lettering of that cap height. */
export const emSize = (capHeight: number, face: FaceName = 'regular'): number =>
  (capHeight * 1000) / METRICS[face].capHeight;

/** Depth of the descenders below the baseline, same unit as `capHeight`. */
export const descent = (capHeight: number, face: FaceName = 'regular'): number =>
  (-METRICS[face].descent * 0.8 * capHeight) / METRICS[face].capHeight;

/**
 * Width of one line of text. Advance widths only: the back-ends switch kerning and ligatures off, so this width is exact.
 * A character in no face counts as wide as a digit; `missingGlyphs` finds it.
 */
export const textWidth = (content: string, capHeight: number, face: FaceName = 'regular'): number =>
  widthOf(unitsIn(content, face), capHeight, face);

const widthOf = (units: number, capHeight: number, face: FaceName): number =>
  (units * capHeight) / METRICS[face].capHeight;

/** Sum of advance widths in the font's own units: whole numbers, so sums of parts are exact. */
function unitsIn(content: string, face: FaceName): number {
  const table = TABLES[face];
  const spare = FACES[face].fallback;
  let sum = 0;
  for (let i = 0; i < content.length; i++) {
    const cp = content.charCodeAt(i);
    let w = cp < LIMIT ? table[cp]! : NONE;
    if (w === NONE && spare !== undefined && cp < LIMIT) w = TABLES[spare][cp]!;
    sum += w === NONE ? 600 : w;
  }
  return sum;
}

/** Splits a line at the characters that a fallback face draws. Back-ends emit one run each. */
export function faceRuns(
  content: string,
  face: FaceName = 'regular',
): readonly { readonly face: FaceName; readonly text: string }[] {
  if (FACES[face].fallback === undefined) return content === '' ? [] : [{ face, text: content }];
  const out: { face: FaceName; text: string }[] = [];
  for (const ch of content) {
    const f = drawnBy(face, ch.codePointAt(0)!);
    const last = out.at(-1);
    if (last?.face === f) last.text += ch;
    else out.push({ face: f, text: ch });
  }
  return out;
}

/** Characters that neither the face nor its fallback can draw, each once, in order of appearance. */
export function missingGlyphs(content: string, face: FaceName = 'regular'): string[] {
  const out: string[] = [];
  for (const ch of content) {
    const cp = ch.codePointAt(0)!;
    if (!has(drawnBy(face, cp), cp) && !out.includes(ch)) out.push(ch);
  }
  return out;
}

/**
 * Breaks text into lines no wider than `width`, at spaces and after hyphens and slashes that join words; a line feed always
 * breaks. A word wider than the measure is cut. Never returns an empty list.
 */
export function wrapText(content: string, width: number, capHeight: number, face: FaceName = 'regular'): string[] {
  const lines: string[] = [];
  const space = unitsIn(' ', face);
  for (const part of content.split('\n')) {
    let line = '';
    let units = 0;
    for (const word of part.split(/[ \t]+/)) {
      const own = unitsIn(word, face);
      const all = line === '' ? own : units + space + own;
      if (widthOf(all, capHeight, face) <= width || (line === '' && word === '')) {
        line = line === '' ? word : `${line} ${word}`;
        units = all;
        continue;
      }
      if (line !== '') lines.push(line);
      line = word;
      units = own;
      while (textWidth(line, capHeight, face) > width && line.length > 1) {
        const cut = cutIndex(line, width, capHeight, face);
        lines.push(line.slice(0, cut));
        line = line.slice(cut);
        units = unitsIn(line, face);
      }
    }
    lines.push(line);
  }
  return lines;
}

/** Last good place to cut a word that is too wide: after a hyphen or slash if one fits, else by the letter. */
function cutIndex(word: string, width: number, capHeight: number, face: FaceName): number {
  let fit = 1;
  let soft = 0;
  let w = 0;
  for (let i = 0; i < word.length; i++) {
    w += textWidth(word[i]!, capHeight, face);
    if (w > width) break;
    fit = i + 1;
    if ((word[i] === '-' || word[i] === '/') && i > 0) soft = i + 1;
  }
  return soft > 0 && soft < word.length ? soft : Math.max(1, fit);
}
