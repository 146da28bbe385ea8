/** The door that the apps use: text in, data out. Everything is pure and deterministic. */
export * from './checking.js';
export * as layout from './drawings/annotate/layout.js';
export { drawingArea, sheetFrame } from './drawings/annotate/title-block.js';
export { dxfModelPlan, dxfOf } from './drawings/backends/dxf/index.js';
export { type FontBytes, type PdfOptions, pdfOf } from './drawings/backends/pdf/index.js';
export * from './drawings/backends/svg/index.js';
export {
  FACES,
  type FaceName,
  SHEET_SIZES,
  type Sheet,
  type SheetSize,
} from './drawings/ir/index.js';
export type { DrawingInput } from './drawings/sheets/contract.js';
export { drawSet, SHEET_SIZE_NAMES } from './drawings/sheets/set.js';
