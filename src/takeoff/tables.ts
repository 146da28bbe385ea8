/** The purchase list and its company as tables, for spreadsheets and text files. */
import { formatLength } from '../base/quantity/index.js';
import type { DataTable, TableCellValue } from '../tables/index.js';
import type { Buy } from './buy.js';
import { PHASE_NAMES } from './words.js';

const round = (x: number): number => Math.round(x * 100) / 100;
const feet = (x: number): string => formatLength(x);
const inch = (x: number): number => Math.round(x * 10000) / 10000;

/** Lines to buy; in a spreadsheet the total follows the price that is typed in. */
export function purchaseTable(b: Buy): DataTable {
  const title = [
    `Purchase list: ${b.project.job.title}, ${b.project.job.address}`,
    `${b.project.job.date}${b.pricesAre ? `  ${b.pricesAre}` : ''}`,
  ];
  const first = title.length + 2;
  const rows = b.costs.lines.map(({ line, price, total }, i): TableCellValue[] => [
    PHASE_NAMES[line.phase],
    line.item,
    line.buy.quantity,
    line.buy.unit,
    price,
    // An empty price makes no total: nothing is taken for free.
    { formula: `IF(E${first + i}="","",C${first + i}*E${first + i})`, value: total === undefined ? 0 : round(total) },
    round(line.net),
    line.unit,
    `${line.waste.rule} (${line.waste.source})`,
    line.buy.rule,
    line.serves.join(' '),
    line.note,
  ]);
  const last = first + rows.length - 1;
  return {
    name: 'Purchase list',
    title,
    columns: [
      { head: 'Phase', kind: 'text', width: 18 },
      { head: 'Item', kind: 'text', width: 46 },
      { head: 'Quantity', kind: 'number' },
      { head: 'Unit', kind: 'text', width: 11 },
      { head: 'Price', kind: 'money' },
      { head: 'Total', kind: 'money' },
      { head: 'Net', kind: 'number' },
      { head: 'Net unit', kind: 'text', width: 9 },
      { head: 'Waste', kind: 'text', width: 40 },
      { head: 'Sold', kind: 'text', width: 40 },
      { head: 'For', kind: 'text', width: 26 },
      { head: 'Note', kind: 'text', width: 60 },
    ],
    rows: [
      ...rows,
      [
        '',
        'Sum of the lines with a price',
        undefined,
        '',
        undefined,
        { formula: `SUM(F${first}:F${last})`, value: round(b.costs.material) },
      ],
    ],
  };
}

/** Every piece of every board, in the order of cutting. */
export function cutTable(b: Buy): DataTable {
  return {
    name: 'Cut list',
    title: [
      `Cut list: ${b.project.job.title}`,
      `Saw cut ${feet(b.buying.kerf)}, ${feet(b.buying.trim)} off each board`,
    ],
    columns: [
      { head: 'Stock', kind: 'text', width: 40 },
      { head: 'Board', kind: 'number' },
      { head: 'Board length, ft', kind: 'number' },
      { head: 'Piece', kind: 'text', width: 16 },
      { head: 'Mark', kind: 'text', width: 8 },
      { head: 'Length', kind: 'text', width: 14 },
      { head: 'Length, in', kind: 'number' },
      { head: 'What', kind: 'text', width: 40 },
      { head: 'Left over, in', kind: 'number' },
    ],
    rows: b.takeoff.cuts.flatMap((g) =>
      g.plan.boards.flatMap((board, i) =>
        board.cuts.map((c, k): TableCellValue[] => [
          g.item,
          i + 1,
          board.stock.length / 12,
          c.id,
          c.mark,
          feet(c.length),
          inch(c.length),
          c.what,
          k === board.cuts.length - 1 ? inch(board.offcut) : undefined,
        ]),
      ),
    ),
  };
}

export function costTable(b: Buy): DataTable {
  return {
    name: 'Cost by phase',
    title: ['Cost by phase', b.pricesAre],
    columns: [
      { head: 'Phase', kind: 'text' },
      { head: 'Done by', kind: 'text', width: 14 },
      { head: 'Material', kind: 'money' },
      { head: 'Lines without price', kind: 'number' },
      { head: 'Work', kind: 'money' },
    ],
    rows: b.costs.phases.map((p) => [
      PHASE_NAMES[p.phase],
      p.by === 'own' ? 'own work' : 'subcontract',
      round(p.material),
      p.unpriced,
      p.work,
    ]),
  };
}

/** A bid form for each trade: one row a line of the scope, the answers empty. */
export const bidForms = (b: Buy): DataTable[] =>
  b.scopes.map((s) => ({
    name: `Bid ${s.trade}`,
    title: [
      `Bid form: ${s.title}`,
      `${b.project.job.title}, ${b.project.job.address}. Answer every line: included, excluded, or what is different.`,
    ],
    columns: [
      { head: 'Line', kind: 'text', width: 6 },
      { head: 'Work', kind: 'text', width: 80 },
      { head: 'Quantity', kind: 'text', width: 26 },
      { head: 'Included, excluded or different', kind: 'text', width: 18 },
      { head: 'Price', kind: 'money' },
      { head: 'Remark', kind: 'text', width: 40 },
    ],
    rows: s.lines.map((l) => [l.id, l.text, l.quantity, '', undefined, '']),
  }));

export const buyTables = (b: Buy): DataTable[] => [purchaseTable(b), cutTable(b), costTable(b), ...bidForms(b)];
