import { describe, expect, it } from 'vitest';
import { dowelBearing, lateralValue, lateralValueAcrossGap, YIELD_MODES } from './index.js';

const dowel = (D: number, lm: number, ls: number, Gm: number, Gs: number, Fyb: number) => ({
  D,
  lm,
  ls,
  Fem: dowelBearing(Gm, D, 0, false),
  Fes: dowelBearing(Gs, D, 0, false),
  Fyb,
  thetaMax: 0,
});

describe('a dowel across a gap', () => {
  it.each([
    [0.131, 1.0, 1.5, 0.42, 0.5, 100000],
    [0.196, 2.5, 1.5, 0.42, 0.5, 80000],
    [0.375, 3, 1.5, 0.5, 0.5, 45000],
    [0.5, 1.25, 3.5, 0.55, 0.42, 45000],
  ])('is the contact value of Table 12.3.1A without a gap (D %s)', (...a) => {
    const f = dowel(...a);
    const touching = lateralValue(f, 'single');
    const open = lateralValueAcrossGap(f, 0);
    for (const m of YIELD_MODES) expect(open.modes[m] / touching.modes[m]).toBeCloseTo(1, 9);
    expect(open.mode).toBe(touching.mode);
  });

  it('loses with every bit of gap, but never in crushing of one whole member', () => {
    const f = dowel(0.196, 2.5, 1.5, 0.42, 0.5, 80000);
    const at = (g: number) => lateralValueAcrossGap(f, g);
    for (const m of ['II', 'IIIm', 'IIIs', 'IV'] as const) {
      expect(at(0.5).modes[m]).toBeLessThan(at(0).modes[m]);
      expect(at(1).modes[m]).toBeLessThan(at(0.5).modes[m]);
    }
    expect(at(1).modes.Im).toBe(at(0).modes.Im);
    expect(at(1).modes.Is).toBe(at(0).modes.Is);
  });

  it('in mode IV far apart is two hinges over the gap: 2M/g', () => {
    const f = dowel(0.196, 2.5, 1.5, 0.42, 0.5, 80000);
    const M = (80000 * 0.196 ** 3) / 6;
    const g = 100;
    expect(lateralValueAcrossGap(f, g).modes.IV * (10 * 0.196 + 0.5)).toBeCloseTo((2 * M) / g, 1);
  });
});
