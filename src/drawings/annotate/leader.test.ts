import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenItems } from '../ir/index.js';
import { overlaps, textBoxes } from './layout.js';
import { leader, noteColumn, stack } from './leader.js';
import { styleFor } from './style.js';

const style = styleFor('ARCH D');
const note = fc.record({
  target: fc.record({ x: fc.double({ min: 0, max: 6, noNaN: true }), y: fc.double({ min: 0, max: 8, noNaN: true }) }),
  text: fc.constantFrom(
    'Post P1',
    'Existing slab on gravel, kept as it is and sealed',
    'Beam B1, built up of two plies with joint J2 at each post, level',
  ),
});

describe('noteColumn', () => {
  it.each(['left', 'right'] as const)('on the %s: no texts overlap and no leaders cross', (side) => {
    let crossed = 0;
    let runs = 0;
    fc.assert(
      fc.property(fc.array(note, { minLength: 1, maxLength: 8 }), (notes) => {
        const c = noteColumn({
          notes,
          x: side === 'right' ? 8 : -2,
          side,
          top: 8.5,
          bottom: -0.5,
          width: 2.2,
          layer: 'S-ANNO-NOTE',
          style,
        });
        expect(overlaps(textBoxes(flattenItems(c.items)))).toEqual([]);
        expect(c.overflow).toBe(0);
        runs++;
        if (c.crossings > 0) crossed++;
      }),
      { numRuns: 150 },
    );
    expect(runs).toBeGreaterThan(0);
    expect(crossed).toBe(0);
  });

  it('says by how much it does not fit', () => {
    const notes = Array.from({ length: 9 }, (_, i) => ({ target: { x: 0, y: i / 9 }, text: `Note ${i}` }));
    const c = noteColumn({ notes, x: 3, side: 'right', top: 1, bottom: 0, width: 2, layer: 'S-ANNO-NOTE', style });
    expect(c.overflow).toBeGreaterThan(0.5);
    expect(overlaps(textBoxes(flattenItems(c.items)))).toEqual([]);
  });
});

describe('stack', () => {
  it('keeps order and gaps, and leaves alone what already fits', () => {
    expect(stack([5, 3, 1], [0.5, 0.5, 0.5], 0.1, 6, 0)).toEqual([5, 3, 1]);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 1, maxLength: 10 }), (wanted) => {
        const sorted = [...wanted].sort((a, b) => b - a);
        const tops = stack(
          sorted,
          sorted.map(() => 0.6),
          0.2,
          10,
          0,
        );
        for (let i = 1; i < tops.length; i++) expect(tops[i - 1]! - 0.8).toBeGreaterThanOrEqual(tops[i]! - 1e-9);
        expect(tops[0]).toBeLessThanOrEqual(10 + 1e-9);
        expect(tops.at(-1)! - 0.6).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });
});

describe('leader', () => {
  it('sets the text on the side to which it leans', () => {
    const right = textBoxes(
      flattenItems([leader({ at: { x: 0, y: 0 }, dx: 1, dy: 1, text: 'Beam', layer: 'S-ANNO-NOTE', style })]),
    )[0]!;
    const left = textBoxes(
      flattenItems([leader({ at: { x: 0, y: 0 }, dx: -1, dy: 1, text: 'Beam', layer: 'S-ANNO-NOTE', style })]),
    )[0]!;
    expect(right.x).toBeGreaterThan(1);
    expect(left.x).toBeCloseTo(-right.x, 9);
  });
});
