import { describe, expect, it } from 'vitest';
import { flattenItems } from '../ir/index.js';
import { columnsFlow, heightOf, measure, textBlock } from './flow.js';
import { outside, overlaps, textBoxes } from './layout.js';
import { styleFor } from './style.js';
import { layoutTable, table } from './table.js';

const style = styleFor('ANSI B');
const columns = [
  { head: 'Mark' },
  { head: 'What it is made of', grow: true },
  { head: 'Depth', align: 'right' as const },
];
const rows = Array.from({ length: 12 }, (_, i) => [
  `F${i + 1}`,
  i % 3 === 0 ? 'Concrete of 2,500 psi with three bars each way, bottom' : 'Concrete',
  `3'-${i}"`,
]);
const boxesOf = (items: Parameters<typeof flattenItems>[0]) => textBoxes(flattenItems(items));

describe('table', () => {
  it('is as high as its rows, and its ink stays inside', () => {
    const t = table({ at: { x: 1, y: 9 }, title: 'Footings', columns, rows, style });
    const l = layoutTable({ title: 'Footings', columns, rows, style });
    expect(t.height).toBeCloseTo(l.headHeight + l.rowHeights.reduce((a, b) => a + b, 0), 12);
    expect(t.drawn).toBe(12);
    const boxes = boxesOf(t.items);
    expect(outside(boxes, { x: 1, y: 9 - t.height, w: t.width, h: t.height })).toEqual([]);
    expect(overlaps(boxes)).toEqual([]);
  });

  it('wraps to a narrow width and stretches to a wide one', () => {
    const natural = layoutTable({ columns, rows, style });
    const narrow = layoutTable({ columns, rows, style, width: natural.width * 0.6 });
    expect(narrow.width).toBeCloseTo(natural.width * 0.6, 6);
    expect(narrow.height).toBeGreaterThan(natural.height);
    expect(layoutTable({ columns, rows, style, width: natural.width + 2 }).width).toBeCloseTo(natural.width + 2, 9);
    const drawn = table({ at: { x: 0, y: 0 }, columns, rows, style, width: natural.width * 0.6 });
    expect(overlaps(boxesOf(drawn.items))).toEqual([]);
  });

  it('stops at the height allowed and says where', () => {
    const whole = layoutTable({ columns, rows, style });
    const part = table({ at: { x: 0, y: 0 }, columns, rows, style, maxHeight: whole.height / 2 });
    expect(part.drawn).toBeGreaterThan(2);
    expect(part.drawn).toBeLessThan(12);
    expect(part.height).toBeLessThanOrEqual(whole.height / 2);
    expect(boxesOf(part.items).some((b) => b.content === `F${part.drawn + 1}`)).toBe(false);
  });
});

describe('flow', () => {
  const blocks = [
    { kind: 'heading' as const, text: 'Notes' },
    {
      kind: 'numbered' as const,
      items: Array.from(
        { length: 9 },
        (_, i) => `Sentence ${i} about the footings of this roof and what they bear on, said at some length.`,
      ),
    },
    { kind: 'heading' as const, text: 'Schedule' },
    { kind: 'table' as const, title: 'Footings', columns, rows },
    { kind: 'pairs' as const, rows: [{ name: 'Snow', value: '25 psf' }] },
  ];
  const slugs = measure(blocks, 3, style);

  it('block height is what it measured', () => {
    const b = textBlock(slugs, { x: 0, y: 0 });
    expect(b.height).toBeCloseTo(heightOf(slugs), 12);
    const boxes = boxesOf(b.items);
    expect(outside(boxes, { x: 0, y: -b.height, w: 3, h: b.height })).toEqual([]);
    expect(overlaps(boxes)).toEqual([]);
  });

  it('fills columns within their bounds and hands the rest on; nothing is lost or said twice', () => {
    const column = (x: number) => ({ x, y: 0, w: 3, h: 2.4 });
    const seen: string[] = [];
    let rest = slugs;
    for (let sheet = 0; rest.length > 0 && sheet < 9; sheet++) {
      const f = columnsFlow(rest, [column(0), column(3.5)]);
      const boxes = boxesOf(f.items);
      for (const b of boxes) expect(outside([b], column(b.x < 3.25 ? 0 : 3.5))).toEqual([]);
      seen.push(...boxes.map((b) => b.content));
      expect(f.rest.length).toBeLessThan(rest.length);
      rest = [...f.rest];
    }
    for (let i = 1; i <= 12; i++) expect(seen.filter((t) => t === `F${i}`)).toHaveLength(1);
    for (let i = 1; i <= 9; i++) expect(seen.filter((t) => t === `${i}.`)).toHaveLength(1);
    expect(seen).toContain('Footings (continued)');
  });

  it('a heading never ends a column', () => {
    const h = heightOf(slugs.slice(0, 1)) + 0.02;
    const f = columnsFlow(measure([{ kind: 'para', text: 'x' }, ...blocks], 3, style), [
      { x: 0, y: 0, w: 3, h },
      { x: 4, y: 0, w: 3, h: 9 },
    ]);
    const heading = boxesOf(f.items).find((b) => b.content === 'Notes')!;
    expect(heading.x).toBeGreaterThan(3.9);
  });

  it('draws a piece taller than the column rather than losing it', () => {
    const tall = measure([{ kind: 'drawing', height: 5, draw: () => [] }], 3, style);
    expect(columnsFlow(tall, [{ x: 0, y: 0, w: 3, h: 1 }]).rest).toEqual([]);
  });
});
