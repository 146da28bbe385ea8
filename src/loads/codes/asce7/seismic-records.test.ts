import { describe, expect, it } from 'vitest';
import { IRC_LIVE_RECORDS } from '../irc-2018/index.js';
import {
  ASCE7_RECORDS,
  approximatePeriod,
  baseShear,
  redundancyRho,
  seismicCs,
  seismicExempt,
  seismicSnow,
  timberCantileverHeightLimit,
  verticalSeismicEffect,
} from './index.js';

describe('equivalent lateral force', () => {
  const x = { SDS: 1, SD1: 0.6, S1: 0.5, R: 1.5, Ie: 1, T: 0.1, TL: 8 };
  it('takes the plateau, the ceiling, the floor', () => {
    expect(seismicCs(x, '7-16').Cs).toBeCloseTo(1 / 1.5, 12);
    expect(seismicCs({ ...x, T: 1 }, '7-16').Cs).toBeCloseTo(0.4, 12);
    expect(seismicCs({ ...x, T: 20 }, '7-16').upper).toBeCloseTo((0.6 * 8) / (400 * 1.5), 12);
    expect(seismicCs({ ...x, T: 20 }, '7-16').Cs).toBeCloseTo(0.044, 12);
    expect(seismicCs({ ...x, T: 20, S1: 0.6 }, '7-16').Cs).toBeCloseTo(0.2, 12);
    expect(seismicCs({ ...x, SDS: 0.05, T: 20 }, '7-16').lower).toBe(0.01);
  });

  it('is continuous at TL', () => {
    const at = (T: number) => seismicCs({ ...x, T }, '7-16').upper;
    expect(at(8 + 1e-9)).toBeCloseTo(at(8), 8);
  });

  it('small rules', () => {
    expect(approximatePeriod(16 * 12, '7-16')).toBeCloseTo(0.16, 12);
    expect(baseShear(0.5, 2000, '7-16')).toBe(1000);
    expect(verticalSeismicEffect(1, 100)).toBe(20);
    expect([redundancyRho('C'), redundancyRho('D')]).toEqual([1, 1.3]);
    expect(seismicSnow(30, '7-16')).toBe(0);
    expect(seismicSnow(40, '7-16')).toBe(8);
    expect(seismicSnow(45, '7-22')).toBe(0);
    expect(seismicSnow(60, '7-22')).toBe(9);
    expect(timberCantileverHeightLimit('D')).toBe(420);
    expect(timberCantileverHeightLimit('E')).toBeUndefined();
  });

  it('exempts dwellings in low categories only', () => {
    expect(seismicExempt(true, 'C', 1)).toBe(true);
    expect(seismicExempt(true, 'D', 0.39)).toBe(true);
    expect(seismicExempt(true, 'D', 0.4)).toBe(false);
    expect(seismicExempt(false, 'A', 0.1)).toBe(false);
  });
});

describe('records', () => {
  it('are unique, and whatever is not plainly read says what is recalled', () => {
    const all = [...ASCE7_RECORDS, ...IRC_LIVE_RECORDS];
    expect(new Set(all.map((r) => r.id)).size).toBe(all.length);
    for (const r of all) if (r.provenance === 'mixed') expect(r.note, r.id).toBeTruthy();
  });
});
