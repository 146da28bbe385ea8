import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import {
  adjusted,
  adjustedFb,
  adjustedFcPerp,
  bendingCompression,
  bendingTension,
  Cb,
  CD,
  CD_TABLE,
  CF4A,
  CF4B,
  CF4D,
  Cfu4A,
  CfuGlulam,
  Ci,
  CL,
  CM4A,
  CM4D,
  CMGlulam,
  CMScl,
  CP,
  CrSawn,
  CrScl,
  Ct,
  CV,
  CVScl,
  DURATION_OF_LOAD,
  eccentricCompression,
  eccentricityTerm,
  effectiveLength,
  FbE,
  FcE,
  fb,
  fcPerp,
  fv,
  hankinson,
  lateralSupportRule,
  needsBearingPlate,
  notchPermitted,
  RB,
  VrConnection,
  VrNotchCompression,
  VrNotchTension,
} from './index.js';

const stress = fc.double({ min: 50, max: 5000, noNaN: true });
const length = fc.double({ min: 1, max: 300, noNaN: true });

describe('chapter 2', () => {
  it('shortens the factor with the duration of the load', () => {
    const order = ['permanent', 'ten-years', 'two-months', 'seven-days', 'ten-minutes', 'impact'] as const;
    expect(order.map((d) => CD_TABLE[d])).toEqual([0.9, 1, 1.15, 1.25, 1.6, 2]);
    expect(CD(DURATION_OF_LOAD.snow)).toBe(1.15);
    expect(CD(DURATION_OF_LOAD.wind)).toBe(1.6);
  });

  it('knows the temperature table and its end', () => {
    expect([80, 110, 140].map((t) => Ct('Fb', t, false))).toEqual([1, 0.8, 0.7]);
    expect([80, 110, 140].map((t) => Ct('Fc', t, true))).toEqual([1, 0.7, 0.5]);
    expect([80, 110, 140].map((t) => Ct('E', t, true))).toEqual([1, 0.9, 0.9]);
    expect(Ct('Fb', 151, false)).toBeUndefined();
  });
});

describe('chapter 3, bending', () => {
  it('takes the effective length of the table', () => {
    expect(effectiveLength('simple-uniform', 100, 10)).toBeCloseTo(163 + 30, 9);
    expect(effectiveLength('simple-uniform', 60, 10)).toBeCloseTo(123.6, 9);
    expect(effectiveLength('cantilever-uniform', 100, 10)).toBeCloseTo(90 + 30, 9);
    expect(effectiveLength('cantilever-uniform', 60, 10)).toBeCloseTo(79.8, 9);
    expect(effectiveLength('cantilever-end-point', 100, 10)).toBeCloseTo(144 + 30, 9);
    expect(effectiveLength('cantilever-end-point', 60, 10)).toBeCloseTo(112.2, 9);
    expect(effectiveLength('simple-center-point', 60, 10)).toBeCloseTo(108, 9);
    for (const [loading, k] of [
      ['center-point-braced', 1.11],
      ['two-points-braced', 1.68],
      ['three-points-braced', 1.54],
      ['four-points-braced', 1.68],
      ['five-points-braced', 1.73],
      ['six-points-braced', 1.78],
      ['seven-or-more-points-braced', 1.84],
      ['equal-end-moments', 1.84],
    ] as const) {
      expect(effectiveLength(loading, 100, 10)).toBeCloseTo(k * 100, 9);
    }
    expect([60, 100, 200].map((lu) => effectiveLength('other', lu, 10))).toEqual(
      [123.6, 193, 368].map((x) => expect.closeTo(x, 9)),
    );
  });

  it('keeps CL between 0 and both 1 and FbE/Fb*, falling with length', () => {
    fc.assert(
      fc.property(stress, stress, (limit, star) => {
        const value = CL(limit, star);
        expect(value).toBeGreaterThan(0);
        expect(value).toBeLessThanOrEqual(1);
        expect(value).toBeLessThanOrEqual(limit / star + 1e-9);
      }),
    );
    fc.assert(
      fc.property(length, (lu) => {
        const at = (l: number) => CL(FbE(580e3, RB(effectiveLength('simple-uniform', l, 9.25), 1.5, 9.25)), 1200);
        expect(at(lu * 1.2)).toBeLessThanOrEqual(at(lu) + 1e-12);
      }),
    );
  });

  it('does not care for the sign of the moment', () => expect(fb(-1000, 2, 6)).toBeCloseTo((6 * 1000) / 72, 12));
});

describe('chapter 3, shear and bearing', () => {
  it('reduces a notched end by the cube of the depth left', () => {
    const whole = VrNotchTension(180, 1.5, 9.25, 9.25);
    expect(whole).toBeCloseTo((2 / 3) * 180 * 1.5 * 9.25, 9);
    expect(VrNotchTension(180, 1.5, 9.25, 0.75 * 9.25) / whole).toBeCloseTo(0.75 ** 3, 12);
    expect(fv(whole, 1.5, 9.25)).toBeCloseTo(180, 9);
  });

  it('reduces a compression-edge notch with its length past the support, down to the depth left', () => {
    const at = (e: number) => VrNotchCompression(180, 1.5, 8, 6, e);
    expect(at(0)).toBeCloseTo((2 / 3) * 180 * 1.5 * 8, 9);
    expect(at(6)).toBeCloseTo((2 / 3) * 180 * 1.5 * 6, 9);
    expect(at(20)).toBeCloseTo(at(6), 9);
  });

  it('squares the depth ratio at fasteners near the end only', () => {
    expect(VrConnection(180, 3.5, 9, 6, 44)).toBeCloseTo((2 / 3) * 180 * 3.5 * 6 * (6 / 9) ** 2, 9);
    expect(VrConnection(180, 3.5, 9, 6, 45)).toBeCloseTo((2 / 3) * 180 * 3.5 * 6, 9);
  });

  // NDS 2018 Table 3.10.4 (recalled): 0.5 in. 1.75, 1 in. 1.38, 1.5 in. 1.25, 2 in. 1.19, 3 in. 1.13, 4 in. 1.10
  it.each([
    [0.5, 1.75],
    [1, 1.38],
    [1.5, 1.25],
    [2, 1.19],
    [3, 1.13],
    [4, 1.1],
    [6, 1],
  ])('bearing area factor of %s in.', (lb, printed) => expect(Math.abs(Cb(lb, 3) - printed)).toBeLessThan(0.0075));

  it('has no bearing area factor near the end', () => expect(Cb(1.5, 2.9)).toBe(1));

  it('ends at the two bearing values and lies between', () => {
    expect(hankinson(1500, 625, 0)).toBeCloseTo(1500, 9);
    expect(hankinson(1500, 625, Math.PI / 2)).toBeCloseTo(625, 9);
    // 45 degrees: 2 P Q / (P + Q)
    expect(hankinson(1500, 625, Math.PI / 4)).toBeCloseTo((2 * 1500 * 625) / 2125, 9);
    expect(needsBearingPlate(1126, 1500)).toBe(true);
    expect(needsBearingPlate(1124, 1500)).toBe(false);
    expect(fcPerp(625 * 1.5 * 3, 1.5, 3)).toBeCloseTo(625, 9);
  });
});

describe('chapter 3, columns', () => {
  it('tends to 1 for a short and to Euler for a slender column', () => {
    expect(CP(FcE(580e3, 1), 1500, 0.8)).toBeCloseTo(1, 2);
    const limit = FcE(580e3, 50);
    expect(CP(limit, 1500, 0.8) / (limit / 1500)).toBeGreaterThan(0.95);
    expect(CP(limit, 1500, 0.8) / (limit / 1500)).toBeLessThan(1);
  });

  it('stays between 0 and both bounds; Kf multiplies', () => {
    fc.assert(
      fc.property(stress, stress, fc.constantFrom(0.8, 0.85, 0.9), (limit, star, c) => {
        const value = CP(limit, star, c);
        expect(value).toBeGreaterThan(0);
        expect(value).toBeLessThanOrEqual(Math.min(1, limit / star) + 1e-9);
        expect(CP(limit, star, c, 0.6)).toBeCloseTo(0.6 * value, 12);
      }),
    );
  });
});

describe('chapter 3, combined', () => {
  const base = { FcAdj: 600, Fb1Adj: 1500, Fb2Adj: 1600, FcE1: 2000, FcE2: 900, FbE: 5000 };

  it('is finite and at least 1 past a buckling limit', () => {
    for (const s of [
      { ...base, fc: 950, fb1: 100, fb2: 0 },
      { ...base, fc: 0, fb1: 6000, fb2: 0 },
      { ...base, fc: 800, fb1: 3000, fb2: 100 },
    ]) {
      const r = bendingCompression(s);
      expect(r.interaction).toBeUndefined();
      expect(r.ratio).toBeGreaterThanOrEqual(1);
      expect(Number.isFinite(r.ratio)).toBe(true);
    }
  });

  it('falls back to simple ratios', () => {
    expect(bendingCompression({ ...base, fc: 0, fb1: 750, fb2: 0 }).interaction).toBeCloseTo(0.5, 12);
    const rec = makeRecorder();
    bendingCompression({ ...base, fc: 90, fb1: 90, fb2: 0, FbE: 1e12 }, rec);
    const last = rec.lines.at(-1)!;
    expect(last).toHaveProperty('substituted', expect.stringContaining('no limit'));
    expect(last).toHaveProperty('substituted', expect.not.stringContaining('000000'));
    expect(bendingCompression({ ...base, fc: 300, fb1: 0, fb2: 0 }).interaction).toBeCloseTo(0.25, 12);
    expect(bendingCompression({ ...base, fc: 0, fb1: 0, fb2: 800 }).interaction).toBeCloseTo(0.5, 12);
  });

  it('never reports less than fc over Fc’ (3.7.1), which Eq. 3.9-3 squares', () => {
    // 300/600 = 0.5; its square alone would print 0.25.
    expect(bendingCompression({ ...base, fc: 300, fb1: 0, fb2: 0 }).ratio).toBeCloseTo(0.5, 12);
    // 60/600 = 0.1 beside 0.01 + 750/(1500·0.97) = 0.5255: bending governs.
    expect(bendingCompression({ ...base, fc: 60, fb1: 750, fb2: 0 }).ratio).toBeCloseTo(0.52546, 5);
  });

  it('grows with each stress, and with eccentricity', () => {
    const s = fc.record({
      fc: fc.double({ min: 0, max: 700, noNaN: true }),
      fb1: fc.double({ min: 0, max: 1400, noNaN: true }),
      fb2: fc.double({ min: 0, max: 1400, noNaN: true }),
    });
    fc.assert(
      fc.property(s, fc.double({ min: 0, max: 2, noNaN: true }), (x, k) => {
        const at = (y: typeof x, k1 = 0, k2 = 0) => eccentricCompression({ ...base, ...y }, k1, k2);
        const a = at(x);
        for (const b of [
          at({ ...x, fc: x.fc * 1.05 }),
          at({ ...x, fb1: x.fb1 * 1.05 }),
          at({ ...x, fb2: x.fb2 * 1.05 }),
          at(x, k, 0),
          at(x, 0, k),
        ]) {
          expect(Number.isFinite(b.ratio)).toBe(true);
          if (a.interaction !== undefined && b.interaction !== undefined) {
            expect(b.interaction).toBeGreaterThanOrEqual(a.interaction - 1e-12);
          }
        }
      }),
    );
    expect(eccentricityTerm(1, 6)).toBe(1);
  });

  it('adds the eccentric moment of 15.4 by hand', () => {
    const s = { ...base, fc: 200, fb1: 300, fb2: 0 };
    const k1 = eccentricityTerm(1.375, 5.5);
    const hand = (200 / 600) ** 2 + (300 + 200 * 1.5 * (1 + (0.234 * 200) / 2000)) / (1500 * (1 - 200 / 2000));
    expect(k1).toBe(1.5);
    expect(eccentricCompression(s, k1, 0).interaction).toBeCloseTo(hand, 12);
  });

  it('never lets tension relieve below zero', () => {
    expect(bendingTension(500, 600, 300, 1000, 900)).toEqual({
      tension: expect.closeTo(500 / 600 + 0.3, 12),
      compression: 0,
      ratio: expect.closeTo(500 / 600 + 0.3, 12),
    });
    expect(bendingTension(100, 600, 1000, 2000, 500).ratio).toBeCloseTo(1.8, 12);
  });
});

describe('chapter 4', () => {
  it('has the size factors of table 4A', () => {
    const widths = [2, 3, 4, 5, 6, 8, 10, 12, 14, 16];
    const row = (v: 'Fb' | 'Ft' | 'Fc', t: number) => widths.map((w) => CF4A(v, 'graded', t, w));
    expect(row('Fb', 2)).toEqual([1.5, 1.5, 1.5, 1.4, 1.3, 1.2, 1.1, 1, 0.9, 0.9]);
    expect(row('Fb', 4)).toEqual([1.5, 1.5, 1.5, 1.4, 1.3, 1.3, 1.2, 1.1, 1, 1]);
    expect(row('Ft', 4)).toEqual(row('Fb', 2));
    expect(row('Fc', 2)).toEqual([1.15, 1.15, 1.15, 1.1, 1.1, 1.05, 1, 1, 0.9, 0.9]);
    expect([4, 6, 8].map((w) => CF4A('Fb', 'stud', 2, w))).toEqual([1.1, 1, 1.2]);
    expect([4, 6, 8].map((w) => CF4A('Fc', 'stud', 2, w))).toEqual([1.05, 1, 1.05]);
    expect(CF4A('Fv', 'graded', 2, 4)).toBe(1);
    expect(CF4A('Fb', 'construction-standard', 2, 4)).toBe(1);
  });

  it('has the factors of Southern Pine and of timbers', () => {
    expect([CF4B('Fb', 2, 8), CF4B('Fb', 4, 8), CF4B('Fb', 4, 6), CF4B('Fc', 2, 14)]).toEqual([1, 1.1, 1, 0.9]);
    expect(CF4B('Fb', 4, 14)).toBeCloseTo(0.99, 12);
    expect([CF4D(11.5), CF4D(12)]).toEqual([1, 1]);
    expect(CF4D(24)).toBeCloseTo(0.9259, 4); // the ninth root of 1/2
    expect(CM4D('Fc', false)).toBe(0.91);
    expect(CM4D('FcPerp', false)).toBe(0.67);
    expect([CM4D('FcPerp', true), CM4D('Fb', false)]).toEqual([1, 1]);
  });

  it('switches wet service at the printed thresholds', () => {
    expect([CM4A('Fb', 1150), CM4A('Fb', 1151), CM4A('Fc', 750), CM4A('Fc', 751)]).toEqual([1, 0.85, 1, 0.8]);
    expect((['Ft', 'Fv', 'FcPerp', 'E', 'Emin'] as const).map((v) => CM4A(v, 0))).toEqual([1, 0.97, 0.67, 0.9, 0.9]);
    expect((['Fb', 'FcPerp', 'E'] as const).map((v) => Ci(v))).toEqual([0.8, 1, 0.95]);
  });

  it('knows flat use, repetition and support rules', () => {
    expect([2, 4, 5, 6, 8, 10].map((w) => Cfu4A(2, w))).toEqual([1, 1.1, 1.1, 1.15, 1.15, 1.2]);
    expect([4, 6, 10].map((w) => Cfu4A(4, w))).toEqual([1, 1.05, 1.1]);
    expect([CrSawn(2, 3, 24, true), CrSawn(2, 2, 16, true), CrSawn(2, 3, 25, true), CrSawn(2, 9, 16, false)]).toEqual([
      1.15, 1, 1, 1,
    ]);
    expect(CrSawn(6, 9, 16, true)).toBe(1);
    const rule = (b: number, d: number) => lateralSupportRule(b, d);
    expect([rule(4, 8), rule(2, 8), rule(2, 10), rule(2, 12), rule(2, 14)]).toEqual([
      'none',
      'ends',
      'one-edge-and-ends',
      'one-edge-ends-and-bracing-8ft',
      'both-edges',
    ]);
  });

  it('permits notches where 4.4.3 does', () => {
    const n = (place: 'end' | 'outer-third' | 'middle-third', edge: 'tension' | 'compression', depth: number, l = 1) =>
      ({ place, edge, depth, length: l }) as const;
    expect(notchPermitted(n('end', 'tension', 2), 3.5, 8)).toBe(true);
    expect(notchPermitted(n('end', 'tension', 2.1), 3.5, 8)).toBe(false);
    expect(notchPermitted(n('middle-third', 'compression', 0.1), 1.5, 8)).toBe(false);
    expect(notchPermitted(n('outer-third', 'tension', 1), 1.5, 8)).toBe(true);
    expect(notchPermitted(n('outer-third', 'tension', 1), 3.5, 8)).toBe(false);
    expect(notchPermitted(n('outer-third', 'compression', 1, 3), 1.5, 8)).toBe(false);
  });
});

describe('chapters 5 and 8', () => {
  it('caps the volume factor at 1 and shrinks it with size', () => {
    expect(CV(21, 12, 5.125, 10)).toBe(1);
    expect(CV(10, 9, 3.125, 10)).toBe(1);
    expect(CV(42, 12, 5.125, 10)).toBeCloseTo(0.5 ** 0.1, 12);
    expect(CV(42, 12, 5.125, 20)).toBeCloseTo(0.5 ** 0.05, 12);
    expect(CfuGlulam(6)).toBeCloseTo(2 ** (1 / 9), 12);
    expect(CfuGlulam(12)).toBe(1);
    expect((['Fb', 'Fv', 'FcPerp', 'Fc', 'E'] as const).map(CMGlulam)).toEqual([0.8, 0.875, 0.53, 0.73, 0.833]);
  });

  it('hands wet composite lumber to its evaluation report', () => {
    expect([CMScl(false), CMScl(true)]).toEqual([1, undefined]);
    expect(CVScl(12, 9)).toBe(1);
    expect(CVScl(24, 9)).toBeCloseTo(0.5 ** (1 / 9), 12);
    expect([CrScl(3, 16, true), CrScl(2, 16, true)]).toEqual([1.04, 1]);
  });
});

describe('adjusted values', () => {
  it('multiplies what applies and nothing else', () => {
    expect(adjustedFb(900, { CD: 1.15, CF: 1.1, Cr: 1.15, CP: 0.1 })).toBeCloseTo(900 * 1.15 * 1.1 * 1.15, 9);
    expect(adjustedFcPerp(625, { CD: 1.6, CM: 0.67, Cb: 1.25 })).toBeCloseTo(625 * 0.67 * 1.25, 9);
  });

  it('takes the lesser of CL and CV, or both where CV is above 1', () => {
    expect(adjusted('glulam', 'Fb', 2400, { CL: 0.9, CV: 0.95 })).toBeCloseTo(2160, 9);
    expect(adjusted('glulam', 'Fb', 2400, { CL: 0.99, CV: 0.95 })).toBeCloseTo(2280, 9);
    expect(adjusted('scl', 'Fb', 2600, { CL: 0.9, CV: 1.02 })).toBeCloseTo(2600 * 0.9 * 1.02, 9);
  });

  it('records the whole formula, and the same number with and without a recorder', () => {
    const rec = makeRecorder();
    const f = { CD: 1.15, CM: 0.85, CF: 1.2, Cr: 1.15, Ci: 0.8 };
    const value = adjustedFb(900, f, rec);
    expect(value).toBe(adjustedFb(900, f));
    const line = rec.lines[0]!;
    expect(line.kind === 'step' && line.formula).toBe('Fb·CD·CM·Ct·CL·CF·Cfu·Ci·Cr');
    expect(line.kind === 'step' && line.substituted).toBe('900·1.15·0.85·1·1·1.2·1·0.8·1.15');
    expect(line.kind === 'step' && line.value).toBe(value);
    const glulam = makeRecorder();
    adjusted('glulam', 'Fb', 2400, { CL: 0.9, CV: 0.95 }, glulam);
    const g = glulam.lines[0]!;
    expect(g.kind === 'step' && [g.formula, g.substituted]).toEqual(['Fb·CD·CM·Ct·min(CL,CV)·Cfu', '2400·1·1·1·0.9·1']);
  });
});

it('records one step a clause with its section, the value returned and no NaN text', () => {
  const rec = makeRecorder();
  const values = [
    CD('two-months', rec),
    fb(1000, 1.5, 9.25, rec),
    effectiveLength('simple-uniform', 100, 9.25, rec),
    RB(190, 1.5, 9.25, rec),
    FbE(580e3, 20, rec),
    CL(2000, 1000, rec),
    fv(500, 1.5, 9.25, rec),
    VrNotchTension(180, 1.5, 9.25, 7, rec),
    VrNotchCompression(180, 1.5, 9.25, 7, 2, rec),
    VrConnection(180, 1.5, 9.25, 7, 10, rec),
    FcE(580e3, 20, rec),
    CP(1000, 1500, 0.8, 1, rec),
    Cb(1.5, 4, rec),
    fcPerp(1000, 1.5, 3, rec),
    hankinson(1500, 625, 0.5, rec),
    CF4A('Fb', 'graded', 2, 8, rec),
    CF4D(13.5, rec),
    CM4A('Fb', 1200, rec),
    Ci('Fb', rec),
    CV(20, 12, 5.125, 10, rec),
  ];
  expect(rec.lines.map((l) => l.kind === 'step' && l.value)).toEqual(values);
  for (const l of rec.lines) {
    expect(l.kind === 'step' && /^NDS/.test(l.clause)).toBe(true);
    expect(l.kind === 'step' && /NaN|undefined|\?/.test(l.substituted + l.formula)).toBe(false);
  }
});
