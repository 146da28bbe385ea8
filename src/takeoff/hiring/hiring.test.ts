import { describe, expect, it } from 'vitest';
import type { Bid } from '../../project/model/buying.js';
import { place } from '../../structure/index.js';
import { gableProject } from '../../structure/testing.js';
import { takeOff } from '../take-off.js';
import { compareBids, scopesOf, strayBids } from './index.js';
import { TRADES } from './registry.js';

const structure = place(gableProject, {}).value!;
const scopes = scopesOf({ project: gableProject, structure, takeoff: takeOff(gableProject, structure) });
const [concrete] = scopes;

const bid = (bidder: string, total: number, o: Partial<Bid> = {}): Bid => ({
  trade: 'concrete',
  bidder,
  date: '2026-03-01',
  total,
  deposit: 0,
  lines: concrete!.lines.map((l) => ({ line: l.id, says: 'included', price: undefined, note: '' })),
  path: '/buying/bids/0',
  ...o,
});

describe('scopes', () => {
  it('take their numbers from the model', () => {
    const text = concrete!.lines.map((l) => `${l.text} ${l.quantity}`).join('\n');
    for (const f of structure.footings) expect(text).toContain(f.mark);
    const volume = structure.footings.reduce((s, f) => s + f.concrete, 0) / 1728;
    expect(text).toContain(`${volume.toFixed(1)} cu ft`);
    expect(text).toContain('inspection');
  });
  it('number their lines and share the sum out whole', () => {
    for (const s of scopes) {
      expect(new Set(s.lines.map((l) => l.id)).size).toBe(s.lines.length);
      expect(s.payments.reduce((n, p) => n + p.percent, 0)).toBe(100);
      // Something is held back until the final inspection.
      expect(s.payments.at(-1)!.proof).toContain('final inspection');
      expect(s.payments.at(-1)!.percent).toBeGreaterThanOrEqual(10);
    }
    expect(Object.keys(TRADES)).toEqual(expect.arrayContaining(scopes.map((s) => s.trade)));
  });
});

describe('compareBids', () => {
  it('finds what is left out, silent or different', () => {
    const [first, second, third, ...rest] = concrete!.lines;
    const lines: Bid['lines'] = [
      { line: first!.id, says: 'excluded', price: undefined, note: '' },
      { line: second!.id, says: 'different', price: 50, note: 'other mix' },
      { line: 'X9', says: 'included', price: undefined, note: '' },
      ...rest.map((l) => ({ line: l.id, says: 'included' as const, price: undefined, note: '' })),
    ];
    const [c] = compareBids(scopes, [bid('A', 4000, { lines, deposit: 1000 })]);
    expect(c!.standings[0]).toMatchObject({
      excluded: [first!.id],
      silent: [third!.id],
      different: [{ line: second!.id, note: 'other mix' }],
      stray: ['X9'],
      deposit: 0.25,
      whole: false,
    });
  });
  it('names the lowest of whole bids only', () => {
    const cheap = bid('Cheap', 1000, { lines: [] });
    const [c] = compareBids(scopes, [cheap, bid('B', 3000), bid('C', 2500)]);
    expect(c!.finding).toContain('C is lowest of the 2 bids');
    expect(compareBids(scopes, [cheap, bid('B', 3000)])[0]!.finding).toContain('cannot be compared yet');
    expect(compareBids(scopes, [])[0]!.finding).toContain('No bid');
  });
  it('tells bids on work no scope asks for', () => {
    expect(strayBids(scopes, [bid('A', 1, { trade: 'pool' })])).toHaveLength(1);
  });
});
