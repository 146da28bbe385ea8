/**
 * Comma-separated text (RFC 4180): CR LF, quotes where needed. Text that a spreadsheet would take for a formula gets an
 * apostrophe in front, which reading takes off again.
 */
import type { Issue, Outcome } from '../base/issue.js';
import type { DataTable, TableCellValue } from './model.js';

const FORMULA = /^[=+\-@\t\r]/;
const GUARDED = /^'[=+\-@\t\r]/;

function field(v: TableCellValue): string {
  if (v === undefined) return '';
  if (typeof v === 'number') return String(v);
  if (typeof v === 'object') return String(v.value);
  const safe = FORMULA.test(v) ? `'${v}` : v;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Heading and rows; titles are for sheets and left out. */
export const csvOf = (t: Pick<DataTable, 'columns' | 'rows'>): string =>
  [t.columns.map((c) => c.head), ...t.rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');

/** Rows of fields. An open quote is an issue with the line it was opened in. */
export function parseCsv(text: string): Outcome<readonly (readonly string[])[]> {
  const issues: Issue[] = [];
  const rows: string[][] = [];
  let row: string[] = [];
  let value = '';
  let quoted = false;
  let opened = 0;
  let line = 1;
  const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const endField = (): void => {
    row.push(GUARDED.test(value) ? value.slice(1) : value);
    value = '';
  };
  const endRow = (): void => {
    endField();
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
  };
  for (let i = 0; i < source.length; i++) {
    const c = source[i]!;
    if (c === '\n') line++;
    if (quoted) {
      if (c !== '"') value += c;
      else if (source[i + 1] === '"') {
        value += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && value === '') {
      quoted = true;
      opened = line;
    } else if (c === ',') endField();
    else if (c === '\n') endRow();
    else if (c !== '\r') value += c;
  }
  if (quoted) {
    issues.push({
      code: 'csv-open-quote',
      severity: 'error',
      path: `/line/${opened}`,
      message: 'A quote is opened here and never closed.',
      expected: 'a quote at the end of the field; a quote within it doubled',
    });
    return { value: undefined, issues };
  }
  if (value !== '' || row.length > 0) endRow();
  return { value: rows, issues };
}
