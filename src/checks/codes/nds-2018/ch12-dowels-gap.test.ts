import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Dowel, lateralValue, Rd, YIELD_MODES, type YieldMode } from './ch12-dowels.js';
import { lateralValueGap } from './ch12-dowels-gap.js';

const bolt: Dowel = { D: 0.5, lm: 1.5, ls: 1.5, Fem: 3150, Fes: 3150, Fyb: 45000, thetaMax: Math.PI / 2 };
const lag: Dowel = { D: 0.371, nominalD: 0.5, lm: 4, ls: 1.5, Fem: 5600, Fes: 3150, Fyb: 45000, thetaMax: Math.PI / 2 };
const screw: Dowel = { D: 0.171, nominalD: 0.216, lm: 2, ls: 1.5, Fem: 4000, Fes: 4650, Fyb: 80000, thetaMax: 0 };

/** Root of a rising function by bisection. */
function root(f: (P: number) => number, high: number): number {
  let [lo, hi] = [0, high];
  for (let i = 0; i < 200; i++) {
    const mid = (lo + hi) / 2;
    if (f(mid) > 0) hi = mid;
    else lo = mid;
  }
  return lo;
}

/**
 * P from the equilibrium of the free dowel, without the closed form: a member in which it turns rigidly bears forward to
 * (P/q + l)/2 and back beyond; one in which it bends has a hinge where the shear is used up. The moments of both about
 * their faces and P·g sum to nothing.
 */
function equilibrium(f: Dowel, g: number, mode: YieldMode): number {
  const M = (f.Fyb * f.D ** 3) / 6;
  const turns = (q: number, l: number) => (P: number) => {
    const a = (P / q + l) / 2;
    return q * (a * a - (l * l) / 2);
  };
  const bends = (q: number) => (P: number) => (P * P) / (2 * q) - M;
  const [qm, qs] = [f.Fem * f.D, f.Fes * f.D];
  const main = mode === 'IIIm' || mode === 'II' ? turns(qm, f.lm) : bends(qm);
  const side = mode === 'IIIs' || mode === 'II' ? turns(qs, f.ls) : bends(qs);
  return root((P) => main(P) + side(P) + P * g, 1e5) / Rd(mode, f.D, f.nominalD ?? f.D, f.thetaMax);
}

describe('a dowel across a gap', () => {
  it.each([bolt, lag, screw])('is the table formula when the gap closes', (f) => {
    const [ours, table] = [lateralValueGap(f, 0), lateralValue(f, 'single')];
    for (const m of YIELD_MODES) expect(ours.modes[m], m).toBeCloseTo(table.modes[m], 6);
    expect(ours.mode).toBe(table.mode);
  });

  it.each([
    [bolt, 0.4375],
    [lag, 0.5],
    [screw, 0.9375],
  ] as const)('balances in every mode', (f, g) => {
    const { modes } = lateralValueGap(f, g);
    for (const m of ['II', 'IIIm', 'IIIs', 'IV'] as const) expect(modes[m], m).toBeCloseTo(equilibrium(f, g, m), 4);
  });

  it('never grows with the gap', () => {
    let before = Number.POSITIVE_INFINITY;
    for (const g of [0, 0.25, 0.5, 1, 2, 4]) {
      const { Z } = lateralValueGap(bolt, g);
      expect(Z).toBeLessThanOrEqual(before);
      before = Z;
    }
  });

  it('by pocket calculator', () => {
    // qs = qm = 1575; A = 1/(4·1575)·2 = 3.1746e-4; B = 0.75 + 0.4375 + 0.75 = 1.9375; C = −2·1575·2.25/4 = −1771.875;
    // P = (−1.9375 + √(3.7539 + 2.25))/6.3492e-4 = 807.64; / (3.6·1.25) = 179.48 lb, mode II.
    const z = lateralValueGap(bolt, 0.4375);
    expect(z.mode).toBe('II');
    expect(z.Z).toBeCloseTo(179.48, 1);
  });
});

const dowel = fc.record({
  D: fc.double({ min: 0.1, max: 1, noNaN: true }),
  lm: fc.double({ min: 1, max: 8, noNaN: true }),
  ls: fc.double({ min: 0.5, max: 4, noNaN: true }),
  Fem: fc.double({ min: 1400, max: 7000, noNaN: true }),
  Fes: fc.double({ min: 1400, max: 7000, noNaN: true }),
  Fyb: fc.double({ min: 45000, max: 100000, noNaN: true }),
  thetaMax: fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
});

describe('any dowel', () => {
  it('without a gap is the yield limit of the standard, mode by mode', () => {
    fc.assert(
      fc.property(dowel, (d: Dowel) => {
        const a = lateralValueGap(d, 0);
        const b = lateralValue(d, 'single');
        for (const m of YIELD_MODES) expect(a.modes[m] / b.modes[m]).toBeCloseTo(1, 6);
      }),
    );
  });

  it('falls as the gap grows, and a very wide one holds next to nothing', () => {
    fc.assert(
      fc.property(dowel, fc.double({ min: 0.01, max: 2, noNaN: true }), (d, g) => {
        expect(lateralValueGap(d, g).Z).toBeLessThanOrEqual(lateralValueGap(d, g / 2).Z * (1 + 1e-9));
      }),
    );
  });

  it('16d through a 1/2 in. strip, by the quadratics worked out apart', () => {
    // D 0.162, G 0.5: Fe 4636.7, q 751.15 lb/in; M = 90000·0.162³/6 = 63.77; IV: P²·(1/751.15) + 0.5·P − 127.55 = 0 → P =
    // 174.25; /2.2 = 79.20 lb, where 0 in gives 140.7.
    const d = { D: 0.162, lm: 1.176, ls: 1.5, Fem: 4636.74, Fes: 4636.74, Fyb: 90000, thetaMax: 0 };
    const r = lateralValueGap(d, 0.5);
    expect(r.modes.IV).toBeCloseTo(79.204, 3);
  });
});
