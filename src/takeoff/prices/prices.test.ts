import { describe, expect, it } from 'vitest';
import { USUAL_BUYING } from '../../project/complete/buying.js';
import { place } from '../../structure/index.js';
import { gableProject } from '../../structure/testing.js';
import { takeOff } from '../take-off.js';
import { costsOf } from './costs.js';
import { inventedPrices } from './invented.js';
import { pricesCsv, readPricesCsv } from './list.js';
import { priceOf } from './match.js';

const structure = place(gableProject, {}).value!;
const bare = takeOff(gableProject, structure);

describe('prices', () => {
  it('match whatever case, spaces and quotes a list is typed with', () => {
    const rows = [{ item: '5/8″  Bolt', unit: 'Each', price: 2 }];
    expect(priceOf(rows, '5/8" bolt', 'each')?.price).toBe(2);
    expect(priceOf(rows, '5/8" bolt', 'lb')).toBeUndefined();
  });
  it('go out as a list to fill in and come back', () => {
    const prices = inventedPrices(bare);
    const { value } = readPricesCsv(pricesCsv(bare, prices));
    for (const p of value!) expect(priceOf(prices, p.item, p.unit)?.price).toBe(p.price);
    expect(value!.length).toBe(prices.length);
    // Unpriced rows stand in the list and are no prices.
    expect(readPricesCsv(pricesCsv(bare, [])).value).toEqual([]);
  });
  it('are refused line by line', () => {
    const { value, issues } = readPricesCsv(
      'item,unit,price\r\nboard,each,cheap\r\n,each,3\r\nnail,lb,"$1,234.50"\r\n',
    );
    expect(value).toBeUndefined();
    expect(issues.map((i) => [i.code, i.line])).toEqual([
      ['csv-bad-price', 2],
      ['csv-no-item', 3],
    ]);
    expect(readPricesCsv('item,unit,price\r\nnail,lb,"$1,234.50"\r\n').value![0]!.price).toBe(1234.5);
    expect(readPricesCsv('a,b\r\n').issues[0]!.code).toBe('csv-no-heading');
  });
  it('choose the boards: a length made cheap is bought', () => {
    const posts = (prices: Parameters<typeof takeOff>[2]) =>
      takeOff(gableProject, structure, prices)
        .cuts.find((g) => g.head === '6x6')!
        .plan.boards.map((b) => b.stock.length);
    const list = (cheap: number) =>
      [8, 10, 12, 14, 16, 18, 20].map((ft) => ({
        item: `6x6x${ft} DF-L No. 1, treated above ground`,
        unit: 'each',
        price: ft === cheap ? ft : 3 * ft,
      }));
    expect(new Set(posts({ prices: list(10) }))).toEqual(new Set([120]));
    expect(new Set(posts({ prices: list(18) }))).toEqual(new Set([216]));
  });
});

describe('costsOf', () => {
  it('sums what has a price and names what has none', () => {
    const prices = inventedPrices(bare).filter((p) => p.unit !== 'bag');
    const t = takeOff(gableProject, structure, { prices });
    const c = costsOf(t, prices, {
      ...USUAL_BUYING,
      work: [
        { phase: 'roofing', by: 'subcontract', price: undefined, from: '' },
        { phase: 'framing', by: 'subcontract', price: 900, from: 'a bid' },
      ],
    });
    expect(c.unpriced.map((l) => l.buy.unit)).toEqual(['bag']);
    expect(c.unknownWork).toEqual(['roofing']);
    expect(c.work).toBe(900);
    const sum = c.lines.reduce((s, l) => s + (l.total ?? 0), 0);
    expect(c.material).toBeCloseTo(sum, 6);
    expect(c.total).toBeCloseTo(sum + 900, 6);
  });
});
