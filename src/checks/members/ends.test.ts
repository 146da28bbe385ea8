import { describe, expect, it } from 'vitest';
import { contextFor, v } from '../testing.js';
import { place, startName } from './ends.js';
import { sizeText } from './scan.js';

const to = (x: number, y: number, z: number) => ({ start: v(0, 0, 0), end: v(x, y, z) });

describe('the end stations are measured from', () => {
  it.each([
    [to(0, 0, 96), 'bottom'],
    [to(0, 120, 30), 'low end'],
    [to(0, 120, -30), 'high end'],
    [to(120, 0, 0), 'left end'],
    [to(-120, 0, 0), 'right end'],
    [to(0, 144, 0), 'end nearer the house'],
    [to(0, -144, 0), 'end away from the house'],
  ] as const)('%o', (member, name) => expect(startName(member)).toBe(name));

  it('is named with the distance', () => expect(place(to(0, 120, 30), 83.25)).toBe('6.94 ft from its low end'));
});

describe('a sum printed as a size', () => {
  it('adds up to the size', () => {
    const ctx = contextFor({ structure: { members: [], joints: [] } });
    const combination = ctx.loads.combinations.find((c) => c.terms.length === 2)!;
    const text = sizeText(ctx, combination, () => -50);
    const sum = [...text.matchAll(/([\d.]+)·([-\d.]+)/g)].reduce((s, m) => s + Number(m[1]) * Number(m[2]), 0);
    expect(sum).toBeCloseTo(50 * combination.terms.reduce((s, t) => s + t.factor, 0), 6);
  });
});
