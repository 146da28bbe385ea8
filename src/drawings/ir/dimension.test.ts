import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explodeDimension, readingAngle } from './dimension.js';
import type { Dimension, Line, Text } from './primitive.js';

const base: Dimension = {
  kind: 'dimension',
  layer: 'S-ANNO-DIMS',
  a: { x: 1, y: 0 },
  b: { x: 4, y: 0 },
  angle: 0,
  base: { x: 0, y: 0 },
  offset: 0.5,
  value: 144,
  text: `12'-0"`,
  height: 0.125,
};
const linesOf = (d: Dimension, pen: string) =>
  explodeDimension(d).filter((p): p is Line => p.kind === 'line' && p.pen === pen);
const textOf = (d: Dimension) => explodeDimension(d).find((p): p is Text => p.kind === 'text')!;

describe('explodeDimension', () => {
  it('leaves a gap at the object, passes the line a little, and letters above the middle', () => {
    const [a, b, line] = linesOf(base, 'dimension');
    expect(a!.a.y).toBeGreaterThan(0.03);
    expect(a!.b.y).toBeGreaterThan(0.5);
    expect(b!.a.x).toBe(4);
    expect([line!.a.y, line!.b.y]).toEqual([0.5, 0.5]);
    expect(textOf(base).at).toEqual({ x: 2.5, y: 0.5 + 0.42 * 0.125 });
    expect(linesOf(base, 'tick')).toHaveLength(2);
  });
  it('a neighbour may draw the extension line', () => {
    expect(linesOf({ ...base, noExtensionA: true }, 'dimension')).toHaveLength(2);
  });
  it('runs the line on under a text set outside', () => {
    const line = linesOf({ ...base, shift: { x: 2.5, y: 0 } }, 'dimension')[2]!;
    expect(line.b.x).toBeGreaterThan(5);
  });
  it('measures along its own direction: a vertical line reads from the right', () => {
    const d = { ...base, angle: Math.PI / 2, a: { x: 0, y: 1 }, b: { x: 0.7, y: 4 }, offset: 0.5 };
    expect(textOf(d).at.x).toBeCloseTo(-0.5 - 0.42 * 0.125, 12);
    expect(textOf(d).at.y).toBeCloseTo(2.5, 12);
    expect(textOf(d).angle).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('readingAngle', () => {
  it('is the same for both directions of a line and never upside down', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (a) => {
        const r = readingAngle(a);
        expect(r > -Math.PI / 2 && r <= Math.PI / 2 + 2e-9).toBe(true);
        expect(Math.abs(Math.sin(r - a))).toBeLessThan(1e-9);
      }),
    );
    expect(readingAngle(-Math.PI / 2)).toBeCloseTo(Math.PI / 2, 12);
    expect(readingAngle((3 * Math.PI) / 2)).toBeCloseTo(Math.PI / 2, 12);
    expect(readingAngle(Math.PI)).toBeCloseTo(0, 12);
  });
});
