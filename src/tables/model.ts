/** A table as a spreadsheet or a text file holds it. */

/** A formula carries the value it has now, so that a reader that does not calculate shows it all the same. */
export interface Formula {
  /** Without the leading equals sign, in A1 style. */
  readonly formula: string;
  readonly value: number;
}
export type TableCellValue = string | number | Formula | undefined;

export interface TableColumnSpec {
  readonly head: string;
  readonly kind: 'text' | 'number' | 'money';
  /** Characters wide; by kind when absent. */
  readonly width?: number;
}

export interface DataTable {
  /** Name of the sheet: 31 characters at most, none of `: \ / ? * [ ]`. */
  readonly name: string;
  /** Lines above the heading; the first is set large. */
  readonly title: readonly string[];
  readonly columns: readonly TableColumnSpec[];
  readonly rows: readonly (readonly TableCellValue[])[];
}
