import { describe, expect, it } from 'vitest';
import { flattenItems, type Text } from '../ir/index.js';
import { outside, overlaps, splitColumns, splitRows, textBoxes } from './layout.js';

const text = (x: number, y: number, content: string, angle = 0): Text => ({
  kind: 'text',
  layer: 'G-ANNO-NOTE',
  at: { x, y },
  content,
  height: 0.1,
  angle,
});
const boxes = (...t: Text[]) => textBoxes(flattenItems(t));

describe('layout check', () => {
  it('finds texts that overlap, straight or turned, and only those', () => {
    expect(overlaps(boxes(text(0, 0, 'FIRST'), text(0.1, 0.03, 'SECOND')))).toHaveLength(1);
    expect(overlaps(boxes(text(0, 0, 'FIRST'), text(0, 0.15, 'SECOND')))).toHaveLength(0);
    // Bounding boxes of these two meet; the lettering itself does not.
    expect(overlaps(boxes(text(0, 0, 'LONG DIAGONAL', Math.PI / 4), text(0.4, 0, 'LOW')))).toHaveLength(0);
    expect(overlaps(boxes(text(0, 0, 'LONG DIAGONAL', Math.PI / 4), text(0.2, 0.25, 'ON IT')))).toHaveLength(1);
  });
  it('finds texts outside a frame', () => {
    const frame = { x: 0, y: 0, w: 1, h: 1 };
    expect(outside(boxes(text(0.1, 0.1, 'IN'), text(0.9, 0.5, 'CROSSING')), frame).map((b) => b.content)).toEqual([
      'CROSSING',
    ]);
  });
});

describe('splitting', () => {
  it('columns and rows fill the room, gaps included', () => {
    const r = { x: 1, y: 2, w: 10, h: 6 };
    const c = splitColumns(r, [1, 3], 0.4);
    expect(c.map((q) => q.w)).toEqual([2.4, 7.199999999999999]);
    expect(c[1]!.x + c[1]!.w).toBeCloseTo(11, 12);
    const rows = splitRows(r, [1, 1, 1], 0.3);
    expect(rows[0]!.y + rows[0]!.h).toBeCloseTo(8, 12);
    expect(rows[2]!.y).toBeCloseTo(2, 12);
  });
});
