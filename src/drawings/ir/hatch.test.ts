import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area, contains } from '../../base/plane.js';
import { v2 } from '../../base/vec.js';
import { lineFamily } from './hatch.js';
import { PATTERNS, type PatternName } from './pattern.js';

const square = (x: number, y: number, s: number) => [v2(x, y), v2(x + s, y), v2(x + s, y + s), v2(x, y + s)];
const length = (s: readonly number[]) => {
  let sum = 0;
  for (let i = 0; i + 3 < s.length; i += 2) sum += Math.hypot(s[i + 2]! - s[i]!, s[i + 3]! - s[i + 1]!);
  return sum;
};

describe('hatch', () => {
  it('strokes of parallel lines stay inside a random star and cover it evenly', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.4, max: 1.5, noNaN: true }), { minLength: 5, maxLength: 12 }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (radii, angle) => {
          const loop = radii.map((r, i) =>
            v2(r * Math.cos((2 * Math.PI * i) / radii.length), r * Math.sin((2 * Math.PI * i) / radii.length)),
          );
          const strokes = lineFamily([loop], angle, 0.01);
          for (const s of strokes)
            expect(contains(loop, v2((s[0]! + s[2]!) / 2, (s[1]! + s[3]!) / 2), 1e-6)).toBe(true);
          const covered = strokes.reduce((sum, s) => sum + length(s), 0) * 0.01;
          expect(Math.abs(covered - area(loop))).toBeLessThan(0.02 * area(loop) + 0.02);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('leaves a hole empty', () => {
    const loops = [square(0, 0, 1), square(0.4, 0.4, 0.2)];
    for (const s of lineFamily(loops, Math.PI / 4, 0.03)) {
      const m = v2((s[0]! + s[2]!) / 2, (s[1]! + s[3]!) / 2);
      expect(m.x > 0.41 && m.x < 0.59 && m.y > 0.41 && m.y < 0.59).toBe(false);
    }
  });

  it.each(Object.keys(PATTERNS) as PatternName[])(
    '%s stays inside a square, marks it, and comes out the same twice',
    (name) => {
      const loop = square(2.03, 1.07, 0.9);
      const first = PATTERNS[name].strokes([loop], 0, 1);
      expect(first.length).toBeGreaterThan(0);
      for (const s of first) {
        for (let i = 0; i < s.length; i += 2) expect(contains(loop, v2(s[i]!, s[i + 1]!), 0.02)).toBe(true);
      }
      expect(PATTERNS[name].strokes([loop], 0, 1)).toEqual(first);
    },
  );

  it.each(Object.keys(PATTERNS) as PatternName[])('%s makes nothing of an area without size', (name) => {
    expect(PATTERNS[name].strokes([[]], 0, 1)).toEqual([]);
  });

  it('neighbouring areas of one material run through', () => {
    const left = lineFamily([square(0, 0, 1)], Math.PI / 4, 0.1);
    const right = lineFamily([square(1, 0, 1)], Math.PI / 4, 0.1);
    const offsets = (list: readonly number[][]) => list.map((s) => (((s[1]! - s[0]!) / Math.SQRT2 / 0.1) % 1) + 0);
    for (const o of [...offsets(left), ...offsets(right)]) expect(Math.abs(o - Math.round(o))).toBeLessThan(1e-6);
  });
});
