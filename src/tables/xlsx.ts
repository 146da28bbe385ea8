/** Tables as one spreadsheet workbook: the only place that knows the library. The same tables give the same bytes. */
import type { DataTable, TableCellValue, TableColumnSpec } from './model.js';
import { repack } from './repack.js';

type Library = typeof import('hucre/xlsx');

const WIDTH: Readonly<Record<TableColumnSpec['kind'], number>> = { text: 22, number: 11, money: 12 };
const FORMAT: Readonly<Record<TableColumnSpec['kind'], string | undefined>> = {
  text: undefined,
  number: '#,##0.##',
  money: '#,##0.00',
};
/** Sheet names may not be longer, nor hold these. */
const nameOf = (name: string): string => name.replaceAll(/[:\\/?*[\]]/g, ' ').slice(0, 31);

type Writable = string | number | null;
const plain = (v: TableCellValue): Writable => (v === undefined ? null : typeof v === 'object' ? v.value : v);

/**
 * @param load the library; apps leave it out
 * @param date written as the time of creation, so that the same project gives the same bytes
 */
export async function xlsxOf(
  tables: readonly DataTable[],
  date: Date,
  load: () => Promise<Library> = () => import('hucre/xlsx'),
): Promise<Uint8Array> {
  const { writeXlsx } = await load();
  const book = await writeXlsx({
    properties: { creator: 'Eavewright', created: date, modified: date },
    sheets: tables.map((t) => {
      const top = t.title.length;
      const cells = new Map<string, object>();
      t.title.forEach((text, r) => {
        cells.set(`${r},0`, { value: text, style: { font: { bold: r === 0, size: r === 0 ? 14 : 10 } } });
      });
      t.columns.forEach((c, k) => {
        cells.set(`${top},${k}`, {
          value: c.head,
          style: {
            font: { bold: true },
            border: { bottom: { style: 'thin' } },
            alignment: { horizontal: c.kind === 'text' ? 'left' : 'right', wrapText: true, vertical: 'bottom' },
          },
        });
      });
      t.rows.forEach((row, r) => {
        row.forEach((v, k) => {
          const column = t.columns[k];
          const numFmt = column && FORMAT[column.kind];
          const style = {
            alignment: { vertical: 'top' as const, wrapText: column?.kind === 'text' },
            ...(numFmt === undefined ? {} : { numFmt }),
          };
          const value = plain(v);
          cells.set(
            `${top + 1 + r},${k}`,
            typeof v === 'object' ? { value, formula: v.formula, formulaResult: v.value, style } : { value, style },
          );
        });
      });
      return {
        name: nameOf(t.name),
        columns: t.columns.map((c) => ({ width: c.width ?? WIDTH[c.kind] })),
        rows: [
          ...t.title.map((text): Writable[] => [text]),
          t.columns.map((c): Writable => c.head),
          ...t.rows.map((row) => row.map(plain)),
        ],
        cells,
        freezePane: { rows: top + 1 },
        pageSetup: { orientation: 'landscape' as const, fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
      };
    }),
  });
  return repack(book);
}
