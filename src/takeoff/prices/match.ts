import type { PriceRow } from '../../project/model.js';

/** Names are one when they differ in case, spaces and quotes only. */
const plain = (text: string): string =>
  text.toLowerCase().replaceAll(/[“”″]/g, '"').replaceAll(/[’′]/g, "'").replaceAll(/\s+/g, ' ').trim();

export const priceKey = (item: string, unit: string): string => `${plain(item)}|${plain(unit)}`;

const made = new WeakMap<readonly PriceRow[], ReadonlyMap<string, PriceRow>>();

/** The price row of an item in the unit it is sold by; the last one where a list names it twice. */
export function priceOf(prices: readonly PriceRow[], item: string, unit: string): PriceRow | undefined {
  let rows = made.get(prices);
  if (!rows) {
    rows = new Map(prices.map((p) => [priceKey(p.item, p.unit), p]));
    made.set(prices, rows);
  }
  return rows.get(priceKey(item, unit));
}
