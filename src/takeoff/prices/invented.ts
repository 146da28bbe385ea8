/**
 * Prices out of the air, for trying the program: rates by what a thing is, nothing asked of any seller. Whoever prints them
 * prints `INVENTED` with them.
 */
import type { PriceRow } from '../../project/model.js';
import type { CutGroup, StockKind } from '../cuts/model.js';
import { boardItem } from '../cuts/stock.js';
import type { GroupId, Line, Takeoff } from '../model.js';
import { priceKey } from './match.js';

export const INVENTED = 'INVENTED PRICES: for trying the program only. Ask your own sellers.';

const cents = (x: number): number => Math.round(x * 100) / 100;

/** Invented rate a cubic foot of wood, dearer where it is long. */
const WOOD: Readonly<Record<StockKind, number>> = { lumber: 14, engineered: 52, bar: 0, tube: 0 };

/** Section from the head of a board's name: `2x10`, `5 1/2" x 12"`. Square inches, nominal. */
function section(head: string): number {
  const [a, b] = head.split('x').map((s) => {
    const m = /(\d+)(?:\s+(\d+)\/(\d+))?/.exec(s);
    return m ? Number(m[1]) + (m[2] ? Number(m[2]) / Number(m[3]) : 0) : 1;
  });
  return (a ?? 1) * (b ?? 1);
}

function boardPrice(g: CutGroup, length: number): number {
  const feet = length / 12;
  if (g.kind === 'bar') return cents(feet * (0.25 + 0.22 * Number(/\d+/.exec(g.head)?.[0] ?? 4)));
  if (g.kind === 'tube') return cents(feet * (1.5 + 0.18 * Number(/\d+/.exec(g.head)?.[0] ?? 12)));
  const treated = g.tail.includes('treated') ? 1.35 : 1;
  const long = 1 + Math.max(0, feet - 12) * 0.02;
  return cents(((section(g.head) * feet) / 144) * WOOD[g.kind] * treated * long);
}

/** By the unit a line is sold in, with what a group makes dearer. */
const UNIT: Readonly<Record<string, number>> = {
  bag: 6.5,
  'cu yd': 165,
  sheet: 34,
  bundle: 38,
  square: 260,
  roll: 62,
  lb: 3.2,
  '5 lb box': 21,
  '10 ft piece': 14,
  gallon: 48,
  'sq ft': 1.9,
  ft: 3,
  each: 2.4,
};
const EACH: Partial<Record<GroupId, number>> = { trusses: 165, connectors: 6.5, anchors: 9.5, gutter: 6, roofing: 4 };

function linePrice(l: Line): number {
  const small = /nut|washer|clip|screw/.test(l.item) && !/base|cap|plate|anchor/.test(l.item);
  if (l.buy.unit === 'each') {
    if (small) return 0.45;
    const long = /long$/.test(l.item) ? 38 : 0;
    return long || (EACH[l.group] ?? UNIT.each!);
  }
  if (l.item.startsWith('gravel')) return 48;
  return UNIT[l.buy.unit] ?? 10;
}

/** A price for every line of a take-off and every length its boards come in. */
export function inventedPrices(t: Takeoff): PriceRow[] {
  const rows = new Map<string, PriceRow>();
  const put = (item: string, unit: string, price: number): void => {
    const key = priceKey(item, unit);
    if (!rows.has(key)) rows.set(key, { item, unit, price });
  };
  for (const g of t.cuts) {
    const used = g.plan.boards.map((b) => b.stock.length);
    for (const length of new Set([...g.lengths, ...used])) put(boardItem(g, length), 'each', boardPrice(g, length));
  }
  for (const l of t.lines) put(l.item, l.buy.unit, linePrice(l));
  return [...rows.values()];
}
