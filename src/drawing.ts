/**
 * The door for an app that shows one sheet before the rest of the set is loaded: text in, results and the first sheet out. It
 * is a part of `index.ts`; the other sheets and the makers of files are behind that one.
 */
export * from './checking.js';
export {
  emSize,
  FACES,
  type FaceName,
  FILLS,
  type Flat,
  faceRuns,
  flatten,
  INKS,
  PENS,
  type Pen,
  type Primitive,
  penOf,
  SHEET_SIZES,
  type Sheet,
  type SheetSize,
  textWidth,
  type Viewport,
} from './drawings/ir/index.js';
export type { DrawingInput } from './drawings/sheets/contract.js';
export { drawFirst, FIRST_SHEET } from './drawings/sheets/first.js';
export * from './edit/index.js';
