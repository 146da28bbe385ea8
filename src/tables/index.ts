/** Tables out and in: spreadsheets and comma-separated text. */
export { csvOf, parseCsv } from './csv.js';
export type { DataTable, Formula, TableCellValue, TableColumnSpec } from './model.js';
export { xlsxOf } from './xlsx.js';
