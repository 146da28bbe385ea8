/** One input changed, one result moved by a factor known beforehand. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type CheckResult, derive } from '../../src/index.js';

const text = readFileSync(resolve(import.meta.dirname, '../../examples/02-shed-snow-two-storey/project.json'), 'utf8');
const of = (source: string, id: string): CheckResult => derive(source).results.find((r) => r.id === id)!;

describe('one input, one known factor', () => {
  it('a wet beam sags by 1/0.9 more: CM of E is 0.9 (NDS Supplement Table 4A)', () => {
    const beam = text.indexOf('"beam": { "kind": "built-up"');
    const at = text.indexOf('"service": "dry"', beam);
    const wet = `${text.slice(0, at)}"service": "wet"${text.slice(at + '"service": "dry"'.length)}`;
    const dry = of(text, 'beam-deflection-live:B1');
    expect(of(wet, 'beam-deflection-live:B1').demand / dry.demand).toBeCloseTo(1 / 0.9, 6);
  });

  it('frost depth is counted from the finished grade, not from a slab above it', () => {
    // Ground 6 in lower: 6 in less of the footing lies below it; nothing else of the footing moves.
    const lower = text.replace('"grade": { "atHouse": "-11 in"', '"grade": { "atHouse": "-17 in"');
    expect(lower).not.toBe(text);
    const before = of(text, 'frost-depth:F1');
    const after = of(lower, 'frost-depth:F1');
    expect(before.capacity - after.capacity).toBeCloseTo(6, 6);
  });

  it('soil that is not there holds nothing down', () => {
    const lower = text.replace('"grade": { "atHouse": "-11 in"', '"grade": { "atHouse": "-17 in"');
    const [before, after] = [of(text, 'footing-uplift:F2'), of(lower, 'footing-uplift:F2')];
    // 36 in square pad, 12 in pier (16-sided in plan area of its circle), 6 in of soil at 105 pcf, factor 0.6.
    const lost = (0.6 * ((36 * 36 - Math.PI * 36) * 6 * 105)) / 1728;
    expect(before.capacity - after.capacity).toBeCloseTo(lost, 0);
  });
});
