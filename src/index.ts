/** The door that the apps use: text in, data out. Everything is pure and deterministic. */

export { type Comparison, compare } from './compare/index.js';
export * from './drawing.js';
export * as layout from './drawings/annotate/layout.js';
export { drawingArea, sheetFrame } from './drawings/annotate/title-block.js';
export { dxfModelPlan, dxfOf } from './drawings/backends/dxf/index.js';
export { type FontBytes, type PdfOptions, pdfOf } from './drawings/backends/pdf/index.js';
export * from './drawings/backends/svg/index.js';
export { buyPages, hirePages } from './drawings/buying/index.js';
export { PAPER_STYLE, PAPER_WIDTH, type Paper, type PaperData, papersOf } from './drawings/papers/index.js';
export { drawAnswers } from './drawings/sheets/answers.js';
export { drawAssociation } from './drawings/sheets/association/index.js';
export { type SetFile, separateFiles } from './drawings/sheets/files.js';
export { drawSiteBooklet } from './drawings/sheets/lot/booklet.js';
export { drawOne } from './drawings/sheets/one.js';
export { drawSet, SHEET_SIZE_NAMES } from './drawings/sheets/set.js';
export { type Drawn, drawJudged } from './drawn.js';
export { type Remedy, remediesOf } from './remedies/index.js';

export { type Answer, answerLetter, answersOf } from './report/answers.js';
export {
  askedText,
  type CompletenessRow,
  completeness,
  foundText,
  OFFICE_ROWS,
  OFFICES_READ,
  unknownRows,
} from './review/completeness/index.js';
export type { SheetFinding } from './review/sheets/contract.js';
export * from './scene/index.js';
export * from './site.js';
export {
  type ApprovalStep,
  type AsBuilt,
  approvalsOf,
  asBuiltOf,
  asMeasured,
  type Bar,
  type Change,
  changesBetween,
  type FitFinding,
  INSTRUMENTS,
  type Layout,
  layoutOf,
  OFFICES,
  type ReadReading,
  type Rerun,
  reopened,
  type Sequence,
  STAGES,
  type StageCard,
  type StageItem,
  type StakePoint,
  sequenceOf,
  stageCards,
} from './sitework/index.js';
export { type SizedProject, type SizeOptions, sizeProject } from './size.js';
export { dimensionsOf, type Sized, searchSizes } from './sizing/index.js';
export { csvOf, type DataTable, parseCsv, xlsxOf } from './tables/index.js';
export * from './takeoff/index.js';
