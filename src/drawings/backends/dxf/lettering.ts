/**
 * Lettering in a DXF file. The faces of the sheets are rarely on a reader's machine, so the file asks for a face that is on
 * nearly every one and squeezes each text to the width the sheet was laid out with.
 */
import { type FaceName, textWidth } from '../../ir/index.js';

/** Widths in thousandths of an em, U+0020 to U+007E. Source: the core font metrics of the page-description language, Helvetica and
 * Helvetica-Bold; the file's faces are metric-compatible with them (apostrophe and grave of the typewriter forms, from memory). */
const PLAIN = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
const BOLD = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611,
  556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389,
  280, 389, 584,
];
/** Punctuation beyond these; every other character counts as wide as a figure. */
const OTHER: Readonly<Record<string, number>> = {
  '’': 222,
  '‘': 222,
  '“': 333,
  '”': 333,
  '·': 278,
  '²': 333,
  '³': 333,
};
/** Capitals in thousandths of an em: the lower of the two faces that answer to the name, so that no text comes out too wide. */
const CAPITALS = 690;

export interface TextStyle {
  readonly name: string;
  readonly file: string;
  readonly family: string;
  readonly bold: boolean;
  /** Width factor of the whole style, for text that cannot carry its own. */
  readonly width: number;
  readonly table: readonly number[];
}

const style = (name: string, bold: boolean, width: number): TextStyle => ({
  name,
  bold,
  width,
  file: bold ? 'arialbd.ttf' : 'arial.ttf',
  family: 'Arial',
  table: bold ? BOLD : PLAIN,
});

/** One text style for each face of the sheets. */
export const STYLES: Readonly<Record<FaceName, TextStyle>> = {
  regular: style('EW-REGULAR', false, 1),
  bold: style('EW-BOLD', true, 1),
  condensed: style('EW-CONDENSED', false, 0.85),
  'condensed-bold': style('EW-CONDENSED-BOLD', true, 0.85),
};

/** Width factor that makes a text as wide as it stands on the sheet, within what still reads well. */
export function widthFactor(content: string, height: number, face: FaceName): number {
  const { table } = STYLES[face];
  let sum = 0;
  for (const ch of spelled(content)) sum += table[ch.codePointAt(0)! - 32] ?? OTHER[ch] ?? 556;
  const theirs = (sum * height) / CAPITALS;
  if (theirs <= 0) return 1;
  return Math.round(Math.min(1.5, Math.max(0.7, textWidth(content, height, face) / theirs)) * 1000) / 1000;
}

const FIGURES = '⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉';
const figures = (text: string): string => [...text].map((c) => FIGURES.indexOf(c) % 10).join('');
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Fractions and high powers in plain figures, as drafters type them: few faces on a reader's machine have the raised ones. */
export const spelled = (content: string): string =>
  content
    .replace(
      /(\d?)([⁰¹²³⁴-⁹]+)⁄([₀-₉]+)/g,
      (_, d: string, n: string, of: string) => `${d === '' ? '' : `${d} `}${figures(n)}/${figures(of)}`,
    )
    .replace(/(\d?)([½⅓⅔¼¾⅛⅜⅝⅞])/g, (_, d: string, f: string) => `${d === '' ? '' : `${d} `}${VULGAR[f]}`)
    .replace(/[⁰⁴-⁹]+/g, (f) => `^${figures(f)}`);

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to remove.
const CONTROL = /[\u0000-\u001f\u007f]+/g;

/**
 * Content of a one-line text. From release 2007 on the file is UTF-8 and carries Greek letters and curly quotes as they are; a caret
 * and a doubled per cent sign would start a code and are written so that they show.
 */
export const plainText = (content: string): string =>
  spelled(content)
    .replace(CONTROL, ' ')
    .replace(/\^/g, '^ ')
    .replace(/%%/g, '%%%%%%')
    .replace(/\\(?=[UM]\+)/g, '/');

/** Content of a paragraph text: backslash and braces are its own signs. */
export const paragraphText = (content: string): string =>
  spelled(content)
    .replace(CONTROL, ' ')
    .replace(/[\\{}]/g, (c) => `\\${c}`)
    .replace(/\^/g, '^ ')
    .replace(/%%/g, '%%%%%%');

/** Length of a text in the file, in bytes of UTF-8. */
function bytes(text: string): number {
  let n = 0;
  for (const ch of text) {
    const code = ch.codePointAt(0)!;
    n += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return n;
}

/** A value longer than 255 bytes makes some programs refuse the whole file. Source: the format's reference, on group codes. */
const LONGEST = 250;
export const tooLong = (text: string): boolean => bytes(text) > LONGEST;

/** Pieces of at most 250 bytes, no character cut in two. */
export function chunks(text: string): string[] {
  const out: string[] = [''];
  let room = LONGEST;
  for (const ch of text) {
    const n = bytes(ch);
    if (n > room) {
      out.push('');
      room = LONGEST;
    }
    out[out.length - 1] += ch;
    room -= n;
  }
  return out;
}
