import { describe, expect, it } from 'vitest';
import { outside, overlaps, textBoxes } from '../annotate/index.js';
import { flatten, SHEET_SIZES } from '../ir/index.js';
import { type Paper, papersOf } from './index.js';

const DATA = { prefix: 'BUY', project: 'Patio roof', address: '1 Fern Lane, Dry Fork', date: '2026-03-02' };
const rows = Array.from({ length: 120 }, (_, i) => [`item ${i}`, String(i)]);
const long: Paper = {
  title: 'Take-off',
  sub: 'What to buy',
  blocks: [
    { kind: 'para', text: 'Net is what the model holds.' },
    { kind: 'table', title: 'Lumber', columns: [{ head: 'Item', grow: true }, { head: 'Net' }], rows },
  ],
};

describe('papersOf', () => {
  const pages = papersOf([long, { title: 'Orders', blocks: [{ kind: 'para', text: 'None.' }] }], DATA);
  const words = pages.map((p) => flatten(p).flatMap((f) => (f.kind === 'text' ? [f.content] : [])));

  it('keeps every row once, in order, over as many pages as it takes', () => {
    expect(pages.length).toBeGreaterThan(3);
    expect(words.flat().filter((t) => t.startsWith('item '))).toEqual(rows.map((r) => r[0]));
  });
  it('starts each paper on a page of its own and numbers through', () => {
    expect(words.at(-1)).toContain('Orders');
    expect(pages.map((p) => p.id)).toEqual(pages.map((_, i) => `BUY-${i + 1}`));
    expect(words[1]).toContain('Take-off, continued');
    expect(words[1]).toContain('Lumber (continued)');
  });
  it('is letter upright, nothing overlaps or leaves the paper', () => {
    expect(SHEET_SIZES[pages[0]!.size]).toEqual({ w: 8.5, h: 11 });
    for (const p of pages) {
      expect(overlaps(textBoxes(p))).toEqual([]);
      expect(outside(textBoxes(p), { x: 0.5, y: 0.4, w: 7.5, h: 10.2 })).toEqual([]);
    }
  });
});
