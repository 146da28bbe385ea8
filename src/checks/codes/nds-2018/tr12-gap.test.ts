import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Dowel, lateralValue, lateralValueWithGap, YIELD_MODES } from './index.js';

const dowel = fc.record({
  D: fc.double({ min: 0.1, max: 1, noNaN: true }),
  lm: fc.double({ min: 1, max: 8, noNaN: true }),
  ls: fc.double({ min: 0.5, max: 4, noNaN: true }),
  Fem: fc.double({ min: 1400, max: 7000, noNaN: true }),
  Fes: fc.double({ min: 1400, max: 7000, noNaN: true }),
  Fyb: fc.double({ min: 45000, max: 100000, noNaN: true }),
  thetaMax: fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
});

it('without a gap is the yield limit of the standard, mode by mode', () => {
  fc.assert(
    fc.property(dowel, (d: Dowel) => {
      const a = lateralValueWithGap(d, 0);
      const b = lateralValue(d, 'single');
      for (const m of YIELD_MODES) expect(a.modes[m] / b.modes[m]).toBeCloseTo(1, 6);
    }),
  );
});

it('falls as the gap grows, and a very wide one holds next to nothing', () => {
  fc.assert(
    fc.property(dowel, fc.double({ min: 0.01, max: 2, noNaN: true }), (d, g) => {
      expect(lateralValueWithGap(d, g).Z).toBeLessThanOrEqual(lateralValueWithGap(d, g / 2).Z * (1 + 1e-9));
    }),
  );
});

it('16d through a 1/2 in. strip, by the quadratics worked out apart', () => {
  // D 0.162, G 0.5: Fe 4636.7, q 751.15 lb/in; M = 90000·0.162³/6 = 63.77; IV: P²·(1/751.15) + 0.5·P − 127.55 = 0 → P =
  // 174.25; /2.2 = 79.20 lb, where 0 in gives 140.7.
  const d = { D: 0.162, lm: 1.176, ls: 1.5, Fem: 4636.74, Fes: 4636.74, Fyb: 90000, thetaMax: 0 };
  const r = lateralValueWithGap(d, 0.5);
  expect(r.modes.IV).toBeCloseTo(79.204, 3);
});
