/** The price list: every thing that is or could be bought, out as CSV to be filled in, and read back. */
import type { Issue, Outcome } from '../../base/issue.js';
import type { PriceRow } from '../../project/model.js';
import { csvOf, parseCsv } from '../../tables/index.js';
import { boardItem } from '../cuts/stock.js';
import type { Takeoff } from '../model.js';
import { priceKey, priceOf } from './match.js';

export interface Wanted {
  readonly item: string;
  readonly unit: string;
  /** A length of board that the plan does not buy now but might when it is cheaper. */
  readonly spare: boolean;
}

/** What a take-off needs prices of: its lines, and every length a yard sells of the sizes in it. */
export function wantedPrices(t: Takeoff): Wanted[] {
  const out = new Map<string, Wanted>();
  for (const l of t.lines) out.set(priceKey(l.item, l.buy.unit), { item: l.item, unit: l.buy.unit, spare: false });
  for (const g of t.cuts)
    for (const length of g.kind === 'engineered' ? [] : g.lengths) {
      const item = boardItem(g, length);
      const key = priceKey(item, 'each');
      if (!out.has(key)) out.set(key, { item, unit: 'each', spare: true });
    }
  return [...out.values()];
}

const COLUMNS = [
  { head: 'item', kind: 'text' },
  { head: 'unit', kind: 'text' },
  { head: 'price', kind: 'money' },
] as const;

/** A list to fill in: known prices stand in it, the others are empty. Rows of the project that fit nothing are kept. */
export function pricesCsv(t: Takeoff, prices: readonly PriceRow[]): string {
  const wanted = wantedPrices(t);
  const known = new Set(wanted.map((w) => priceKey(w.item, w.unit)));
  const rest = prices.filter((p) => !known.has(priceKey(p.item, p.unit)));
  return csvOf({
    columns: COLUMNS,
    rows: [
      ...wanted.map((w) => [w.item, w.unit, priceOf(prices, w.item, w.unit)?.price]),
      ...rest.map((p) => [p.item, p.unit, p.price]),
    ],
  });
}

const fault = (line: number, code: string, message: string, found: string, expected: string): Issue => ({
  code,
  severity: 'error',
  path: `/line/${line}`,
  line,
  message,
  found,
  expected,
});

/** `$1,234.50` and `1234.5` are one. */
function money(text: string): number | undefined {
  const plain = text.replaceAll(/[$€£\s]/g, '').replaceAll(/,(?=\d{3}\b)/g, '');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

/** Reads a filled list; rows without a price are left out. Every fault is told with its line. */
export function readPricesCsv(text: string): Outcome<readonly PriceRow[]> {
  const parsed = parseCsv(text);
  if (!parsed.value) return { value: undefined, issues: parsed.issues };
  const [head, ...rows] = parsed.value;
  const at = (name: string): number => head?.findIndex((h) => h.trim().toLowerCase() === name) ?? -1;
  const [item, unit, price] = [at('item'), at('unit'), at('price')];
  if (item < 0 || unit < 0 || price < 0) {
    const found = head?.join(', ') ?? 'an empty file';
    return {
      value: undefined,
      issues: [fault(1, 'csv-no-heading', 'The first line must name the columns.', found, 'item,unit,price')],
    };
  }
  const issues: Issue[] = [];
  const out: PriceRow[] = [];
  rows.forEach((row, i) => {
    const words = row[price]?.trim() ?? '';
    if (words === '') return;
    const value = money(words);
    if (value === undefined || value > 1e6)
      issues.push(fault(i + 2, 'csv-bad-price', 'This is not a price.', words, 'a number, e.g. 21.50'));
    else if ((row[item]?.trim() ?? '') === '')
      issues.push(fault(i + 2, 'csv-no-item', 'A price without an item.', words, 'the item as the take-off names it'));
    else out.push({ item: row[item]!.trim(), unit: row[unit]?.trim() ?? '', price: value });
  });
  return { value: issues.length > 0 ? undefined : out, issues };
}
