import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { read } from './read.js';

const text = readFileSync(join(import.meta.dirname, '../../examples/01-gable-scissor-kept-slab/project.json'), 'utf8');
const withBuying = (json: string): string => text.replace('"prices": []', `"prices": [], "buying": ${json}`);

describe('buying', () => {
  it('may be left out: the usual figures stand in its place', () => {
    expect(read(text).value!.buying).toMatchObject({
      kerf: 1 / 8,
      trim: 1,
      concrete: { by: 'bags', bag: 80 },
      bids: [],
    });
  });
  it('is read with its units', () => {
    const { value, issues } = read(
      withBuying(`{
        "stock": [{ "size": "2x10", "lengths": ["10 ft", "3 m"] }],
        "kerf": "3/32 in", "trim": "0 in",
        "concrete": { "by": "ready-mix", "leastLoad": 1, "shortLoad": 4 },
        "waste": [{ "of": "concrete", "percent": "12 %", "from": "my own jobs" }],
        "work": [{ "phase": "roofing", "by": "subcontract", "price": 2600, "from": "bid" }],
        "extras": [{ "item": "post wrap 1x8", "unit": "ft", "quantity": 64, "phase": "finish" }],
        "delivery": { "date": "2026-05-01" },
        "bids": [{ "trade": "concrete", "bidder": "A", "date": "2026-03-01", "total": 4200, "lines": [{ "line": "C1", "says": "excluded" }] }]
      }`),
    );
    expect(issues.filter((i) => i.severity === 'error')).toEqual([]);
    const b = value!.buying!;
    expect(b.stock[0]!.lengths[0]).toBe(120);
    expect(b.stock[0]!.lengths[1]).toBeCloseTo(118.11, 2);
    expect(b.waste[0]!.fraction).toBeCloseTo(0.12, 9);
    expect(b.concrete).toEqual({ by: 'ready-mix', bag: 80, leastLoad: 1, shortLoad: 4 });
    expect(b.bids[0]).toMatchObject({
      deposit: 0,
      path: '/buying/bids/0',
      lines: [{ line: 'C1', says: 'excluded', note: '' }],
    });
  });
  it.each([
    ['{ "kerf": "2 ft" }', '/buying/kerf'],
    ['{ "stock": [{ "size": "2x11", "lengths": ["8 ft"] }] }', '/buying/stock/0/size'],
    ['{ "work": [{ "phase": "party", "by": "own" }] }', '/buying/work/0/phase'],
    ['{ "bids": [{ "trade": "concrete", "bidder": "A", "date": "soon", "total": 1 }] }', '/buying/bids/0/date'],
  ])('refuses %s at its place', (json, path) => {
    expect(
      read(withBuying(json))
        .issues.filter((i) => i.severity === 'error')
        .map((i) => i.path),
    ).toEqual([path]);
  });
});
