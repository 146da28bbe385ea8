import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lerpTable } from './interpolate.js';

describe('lerpTable', () => {
  const xs = [0, 10, 30];
  const ys = [5, 7, -3];
  it.each([
    [-1, 5],
    [0, 5],
    [5, 6],
    [10, 7],
    [20, 2],
    [30, -3],
    [Number.POSITIVE_INFINITY, -3],
  ])('at %d is %d', (x, y) => expect(lerpTable(xs, ys, x)).toBe(y));

  it('takes a table of one point', () => expect(lerpTable([4], [9], 100)).toBe(9));
  it('refuses an empty table and NaN', () => {
    expect(() => lerpTable([], [], 1)).toThrow(RangeError);
    expect(() => lerpTable(xs, ys, Number.NaN)).toThrow(RangeError);
  });

  it('follows a straight line through any places', () => {
    const places = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(places, fc.double({ min: 0, max: 1, noNaN: true }), (list, t) => {
        const p = [...list].sort((a, b) => a - b);
        const x = p[0]! + t * (p.at(-1)! - p[0]!);
        expect(
          lerpTable(
            p,
            p.map((v) => 3 * v - 2),
            x,
          ),
        ).toBeCloseTo(3 * x - 2, 8);
      }),
    );
  });
});
