import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawFirst, drawingInput, editText, handlesOf } from '../../../src/drawing.js';
import { type PackedSheet, pack } from '../core/pack.js';
import { dirtyBoxes } from './dirty.js';

const text = readFileSync(join(import.meta.dirname, '../../../examples/05-l-shape-two-roofs/project.json'), 'utf8');
const sheetOf = (t: string): PackedSheet => pack(drawFirst(drawingInput(derive(t))!)!);

describe('dirtyBoxes', () => {
  const before = sheetOf(text);

  it('finds nothing between two drawings of the same file', () => {
    expect(dirtyBoxes(before, sheetOf(text), 0.1)).toEqual([]);
  });

  it('covers every item that a moved post changes, and leaves most of the paper alone', () => {
    const { project, structure } = derive(text);
    const post = handlesOf(project!, structure!).find((h) => h.mark === 'P4')!;
    const after = sheetOf(editText(text, post.edits(-6)).value!);
    const boxes = dirtyBoxes(before, after, 0.05)!;
    expect(boxes.length).toBeGreaterThan(0);
    expect(boxes.length).toBeLessThanOrEqual(6);
    const known = new Set(before.keys);
    const changed = [...after.keys].flatMap((k, i) => (known.has(k) ? [] : [[...after.boxes.slice(4 * i, 4 * i + 4)]]));
    expect(changed.length).toBeGreaterThan(0);
    for (const [x0, y0, x1, y1] of changed)
      expect(boxes.some((b) => b[0] <= x0! && b[1] <= y0! && b[2] >= x1! && b[3] >= y1!)).toBe(true);
    const covered = boxes.reduce((sum, b) => sum + (b[2] - b[0]) * (b[3] - b[1]), 0);
    expect(covered / (after.w * after.h)).toBeLessThan(0.5);
  });

  it('does not compare different sheets', () => {
    expect(dirtyBoxes(before, { ...before, id: 'A-101' }, 0.1)).toBeUndefined();
  });
});
