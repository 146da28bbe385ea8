import { describe, expect, it } from 'vitest';
import {
  adjacentLeewardDrift,
  driftHeight,
  exposureCe,
  flatRoofSnow,
  isOutOfScope,
  minimumRoofSnow,
  partialSnowPatterns,
  rainOnSnow,
  slidingApplies,
  slidingSnow,
  slopeCs,
  snowDensity,
  snowExempt,
  stepDrift,
  thermalCt,
  unbalancedApplies,
  unbalancedGableSnow,
} from './index.js';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const pitch = (rise: number): number => Math.atan(rise / 12);
const FT = 12;

describe('factors', () => {
  it('Ce by terrain, with no sheltered roof above the trees', () => {
    expect(exposureCe('B', 'sheltered', '7-16')).toBe(1.2);
    expect(exposureCe('C', 'sheltered', '7-22')).toBe(1.1);
    expect(exposureCe('D', 'fully-exposed', '7-16')).toBe(0.8);
    expect(isOutOfScope(exposureCe('above-treeline', 'sheltered', '7-16'))).toBe(true);
  });

  it('Ct of an open roof is 1.2 in both editions', () => {
    expect(thermalCt('unheated-or-open', '7-16', undefined)).toBe(1.2);
    expect(thermalCt('unheated-or-open', '7-22', undefined)).toBe(1.2);
    expect(thermalCt('cold-ventilated', '7-16', undefined)).toBe(1.1);
    expect(thermalCt('cold-ventilated', '7-22', undefined)).toBe(1.2);
    expect(thermalCt('heated', '7-16', undefined)).toBe(1.0);
    expect(thermalCt('freezer', '7-22', undefined)).toBe(1.3);
    expect(thermalCt('greenhouse', '7-22', undefined)).toBe(0.85);
  });

  it('7-22 heated roofs: linear both ways, ends held, R over 50 is 1.2', () => {
    const Ct = (R: number, pg: number) => thermalCt('heated', '7-22', { R, pg });
    expect(Ct(20, 30)).toBe(1.05);
    expect(Ct(25, 30)).toBeCloseTo(1.095, 12);
    expect(Ct(25, 35)).toBeCloseTo((1.03 + 1.135) / 2, 12);
    expect(Ct(10, 5)).toBe(1.2);
    expect(Ct(30, 200)).toBe(1.1);
    expect(Ct(51, 60)).toBe(1.2);
    expect(isOutOfScope(thermalCt('heated', '7-22', undefined))).toBe(true);
  });

  it('the importance factor counts in 7-16 only', () => {
    expect(flatRoofSnow(30, 1, 1.2, 1.1, '7-16')).toBeCloseTo(27.72, 12);
    expect(flatRoofSnow(30, 1, 1.2, 1.1, '7-22')).toBeCloseTo(25.2, 12);
  });
});

describe('slope factor', () => {
  it('is 1 to the knee, 0 at 70 degrees, continuous between', () => {
    for (const edition of ['7-16', '7-22'] as const)
      for (const Ct of [1.0, 1.1, 1.15, 1.2])
        for (const slippery of [true, false]) {
          const Cs = (deg: number) => slopeCs(rad(deg), Ct, slippery, true, edition);
          expect(Cs(0)).toBe(1);
          expect(Cs(70)).toBe(0);
          expect(Cs(80)).toBe(0);
          for (let deg = 0; deg < 75; deg += 0.5) {
            expect(Cs(deg + 0.5)).toBeLessThanOrEqual(Cs(deg) + 1e-12);
            // Steepest line: from the knee at 45 degrees, half a degree in 25.
            expect(Cs(deg) - Cs(deg + 0.5)).toBeLessThan(0.5 / 25 + 1e-9);
          }
        }
  });

  it.each([
    ['7-16', 1.0, false, true, 30],
    ['7-16', 1.0, true, true, 5],
    ['7-16', 1.0, true, false, 30],
    ['7-16', 1.1, true, false, 10],
    ['7-16', 1.1, false, false, 37.5],
    ['7-22', 1.1, true, true, 30],
    ['7-22', 1.14, false, true, 37.5],
    ['7-22', 1.2, true, true, 15],
    ['7-16', 1.2, false, true, 45],
  ] as const)('%s, Ct %f, slippery %s, gate %s: knee at %f degrees', (edition, Ct, slippery, gate, knee) => {
    expect(slopeCs(rad(knee), Ct, slippery, gate, edition)).toBe(1);
    expect(slopeCs(rad(knee + 1), Ct, slippery, gate, edition)).toBeCloseTo(1 - 1 / (70 - knee), 9);
  });
});

describe('minimum, rain on snow, exemption', () => {
  it('pm under 15 degrees only', () => {
    expect(minimumRoofSnow(15, 'III', rad(10), '7-16')).toBeCloseTo(16.5, 12);
    expect(minimumRoofSnow(40, 'IV', rad(10), '7-16')).toBe(24);
    expect(minimumRoofSnow(40, 'II', rad(15), '7-16')).toBe(0);
    expect(minimumRoofSnow(28, 'II', 0, '7-22')).toBe(28);
    expect(minimumRoofSnow(60, 'II', 0, '7-22')).toBe(30);
  });

  it('rain on snow at its gates', () => {
    expect(rainOnSnow(20, 'II', rad(0.3), 20 * FT, '7-16')).toBe(5);
    expect(rainOnSnow(20.1, 'II', rad(0.3), 20 * FT, '7-16')).toBe(0);
    expect(rainOnSnow(30, 'II', rad(0.3), 20 * FT, '7-22')).toBe(8);
    expect(rainOnSnow(20, 'II', rad(0.4), 20 * FT, '7-16')).toBe(0);
    expect(rainOnSnow(0, 'II', 0, 20 * FT, '7-16')).toBe(0);
  });

  it('7-22 exempts light snow on short fetches', () => {
    expect(snowExempt(10, 100 * FT, '7-22')).toBe(true);
    expect(snowExempt(10.1, 50 * FT, '7-22')).toBe(false);
    expect(snowExempt(5, 300 * FT, '7-22')).toBe(true);
    expect(snowExempt(5, 301 * FT, '7-22')).toBe(false);
    expect(snowExempt(5, 20 * FT, '7-16')).toBe(false);
  });

  it('density stops at 30 pcf', () => {
    expect(snowDensity(0, '7-16')).toBe(14);
    expect(snowDensity(200, '7-16')).toBe(30);
  });
});

describe('unbalanced gable', () => {
  const x = { pg: 30, Is: 1, W2: 0.5, gamma: 17.9, ps: 25.2, theta: pitch(4), simpleMembers: true };
  it('from 1/2 in 12 to 7 in 12, both in', () => {
    expect(unbalancedApplies(pitch(0.5))).toBe(true);
    expect(unbalancedApplies(pitch(7))).toBe(true);
    expect(unbalancedApplies(pitch(0.49))).toBe(false);
    expect(unbalancedApplies(pitch(7.1))).toBe(false);
  });

  it('is narrow up to 20 ft of simple members, wide else', () => {
    expect(unbalancedGableSnow({ ...x, W: 240 }, '7-16')).toEqual({
      windward: 0,
      leeward: 30,
      surcharge: 0,
      extent: 0,
    });
    const wide = unbalancedGableSnow({ ...x, W: 240, simpleMembers: false }, '7-16')!;
    expect(wide.windward).toBeCloseTo(0.3 * 25.2, 12);
    expect(wide.leeward).toBe(25.2);
    const hd = driftHeight({ ...x, lu: 240 }, '7-16') / 12;
    expect(wide.surcharge).toBeCloseTo((hd * 17.9) / Math.sqrt(3), 9);
    expect(wide.extent / 12).toBeCloseTo((8 / 3) * hd * Math.sqrt(3), 9);
    expect(unbalancedGableSnow({ ...x, W: 240, theta: pitch(8) }, '7-16')).toBeUndefined();
  });
});

describe('drift', () => {
  const x = { pg: 30, Is: 1, W2: 0.5, lu: 100 * FT, gamma: 17.9 };

  it('7-16 floors the fetch at 20 ft unless the short-fetch limit is lower', () => {
    expect(driftHeight({ ...x, lu: 5 * FT }, '7-16')).toBe(driftHeight({ ...x, lu: 20 * FT }, '7-16'));
    const limit = Math.sqrt((30 * 5) / (4 * 17.9)) * 12;
    expect(driftHeight({ ...x, lu: 5 * FT }, '7-16', true)).toBeCloseTo(
      Math.min(limit, driftHeight({ ...x, lu: 240 }, '7-16')),
      9,
    );
    expect(driftHeight({ ...x, lu: 5 * FT }, '7-22')).toBeLessThan(driftHeight({ ...x, lu: 20 * FT }, '7-22'));
  });

  it('keeps its area when the step cuts it, up to eight times the clear height', () => {
    const free = stepDrift('leeward', x, 20 * FT, 25, '7-16');
    const cut = stepDrift('leeward', x, 4.2 * FT, 25, '7-16');
    expect(cut.height).toBeCloseTo(cut.hc, 12);
    expect(cut.width * cut.height).toBeCloseTo(free.width * free.height, 6);
    const low = stepDrift('leeward', x, 2.2 * FT, 25, '7-16');
    expect(low.width).toBeCloseTo(8 * low.hc, 9);
  });

  it('needs a clear height of a fifth of the balanced depth', () => {
    expect(stepDrift('leeward', x, 1.0 * FT, 25, '7-16').required).toBe(false);
    const hb = 25 / 17.9;
    expect(stepDrift('leeward', x, 1.21 * hb * FT, 25, '7-16').required).toBe(true);
    expect(stepDrift('leeward', x, 1.19 * hb * FT, 25, '7-16').required).toBe(false);
  });

  it('windward drifts stand three quarters high, and twice as flat in 7-22', () => {
    const lee = stepDrift('leeward', x, 30 * FT, 25, '7-16');
    const wind = stepDrift('windward', x, 30 * FT, 25, '7-16');
    expect(wind.height).toBeCloseTo(0.75 * lee.height, 12);
    expect(wind.width).toBeCloseTo(4 * wind.height, 12);
    const w22 = stepDrift('windward', x, 30 * FT, 25, '7-22');
    expect(w22.width).toBeCloseTo(8 * w22.height, 12);
  });

  it('across a gap fades to nothing', () => {
    expect(adjacentLeewardDrift(36, 60, 0)).toEqual({ height: 36, extent: 216 });
    expect(adjacentLeewardDrift(36, 60, 200)).toEqual({ height: 160 / 6, extent: 160 });
    expect(adjacentLeewardDrift(36, 60, 240)).toEqual({ height: 0, extent: 0 });
    expect(adjacentLeewardDrift(36, 10, 60)).toEqual({ height: 0, extent: 0 });
  });
});

describe('sliding snow', () => {
  it('spreads over 15 ft and is never heaped on a narrower roof', () => {
    const full = slidingSnow(20, 40 * FT, 15 * FT, '7-16');
    expect(full.intensity).toBeCloseTo(21.3333, 4);
    expect(full.total * 12).toBeCloseTo(320, 9);
    const narrow = slidingSnow(20, 40 * FT, 10 * FT, '7-16');
    expect(narrow.intensity).toBeCloseTo(full.intensity, 12);
    expect(narrow.total * 12).toBeCloseTo(213.333, 3);
    expect(slidingSnow(20, 40 * FT, 30 * FT, '7-16').width).toBe(180);
  });

  it('falls short across a gap', () => {
    const at = (s: number, h: number) => slidingSnow(20, 40 * FT, 20 * FT, '7-16', { s, h });
    expect(at(60, 120).width).toBe(120);
    expect(at(60, 120).total * 12).toBeCloseTo((320 * 10) / 15, 9);
    expect(at(180, 400).total).toBe(0);
    expect(at(60, 60).total).toBe(0);
  });

  it('needs a slope', () => {
    expect(slidingApplies(pitch(0.25), true)).toBe(false);
    expect(slidingApplies(pitch(0.3), true)).toBe(true);
    expect(slidingApplies(pitch(2), false)).toBe(false);
    expect(slidingApplies(pitch(2.1), false)).toBe(true);
  });
});

describe('partial loading', () => {
  it('lists each pattern once', () => {
    expect(partialSnowPatterns(1)).toEqual([]);
    expect(partialSnowPatterns(2)).toEqual([
      [1, 0.5],
      [0.5, 1],
    ]);
    expect(partialSnowPatterns(3)).toEqual([
      [1, 0.5, 0.5],
      [0.5, 1, 1],
      [0.5, 0.5, 1],
      [1, 1, 0.5],
    ]);
    expect(partialSnowPatterns(4)).toContainEqual([0.5, 1, 1, 0.5]);
  });
});
