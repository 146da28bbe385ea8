import { SHEET_SIZES, type SheetSize } from '../ir/index.js';

/**
 * Lettering and symbol sizes of one sheet size: paper inches, text as cap height. A sheet of ARCH C or larger is likely to be
 * printed at half size, so its smallest content text is 1/8 in (a plan room's published rule); smaller
 * sheets are printed as they are and use 3/32 in.
 */
export interface Style {
  /** Notes, dimensions, tags. */
  readonly note: number;
  /** Labels of the title block and other form text. */
  readonly small: number;
  /** Heading of a note block or table. */
  readonly heading: number;
  readonly viewTitle: number;
  /** Baseline distance as a multiple of the cap height. */
  readonly leading: number;
  /** First dimension line from the object, and from one line to the next. */
  readonly dimFirst: number;
  readonly dimStep: number;
  /** Radius of grid bubbles and section marks. */
  readonly bubble: number;
  /** Paper kept free between views. */
  readonly gutter: number;
}

const style = (note: number): Style => ({
  note,
  small: note * 0.76,
  heading: note * 1.2,
  viewTitle: note * 1.5,
  leading: 1.72,
  dimFirst: note * 4,
  dimStep: note * 3,
  bubble: note * 2,
  gutter: note * 4,
});

const LARGE = style(0.125);
const SMALL = style(0.09375);

export const styleFor = (size: SheetSize): Style => (SHEET_SIZES[size].h >= 16 ? LARGE : SMALL);
