import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import {
  adjustedW,
  adjustedZ,
  builtUpNailing,
  CdeltaEnd,
  CdeltaSpacing,
  Ceg,
  Cg,
  CMConnection,
  CtConnection,
  Ctn,
  combinedLateralWithdrawal,
  dowelBearing,
  FeParallel,
  FePerp,
  FeSmall,
  KD,
  Kf,
  Ktheta,
  lateralValue,
  minEdgeDistance,
  minRowSpacing,
  penetrationFactor,
  Rd,
  roundFe,
  slipModulus,
  toeNail,
  W,
} from './index.js';

const RIGHT = Math.PI / 2;

describe('dowel bearing', () => {
  // NDS 2018 Table 12.3.3, rounded to 50 psi (recalled; DF-L 4650 and 5600 also read).
  const D = [1 / 4, 5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1];
  it.each([
    [0.55, 5550, 6150, [5150, 4600, 4200, 3900, 3650, 3250, 2950, 2750, 2550]],
    [0.5, 4650, 5600, [4450, 4000, 3650, 3400, 3150, 2800, 2600, 2400, 2250]],
    [0.43, 3500, 4800, [3600, 3200, 2950, 2700, 2550, 2250, 2050, 1900, 1800]],
    [0.42, 3350, 4700, [3450, 3100, 2850, 2600, 2450, 2200, 2000, 1850, 1750]],
    [0.36, 2550, 4050, [2750, 2500, 2250, 2100, 1950, 1750, 1600, 1500, 1400]],
  ])('G = %s', (G, small, par, perp) => {
    expect(roundFe(FeSmall(G))).toBe(small);
    expect(roundFe(FeParallel(G))).toBe(par);
    expect(D.map((d) => roundFe(FePerp(G, d)))).toEqual(perp);
  });

  it('is Hankinson between the two, and blind to the angle below 1/4 in.', () => {
    expect(dowelBearing(0.5, 0.5, 0, true)).toBeCloseTo(5600, 9);
    expect(dowelBearing(0.5, 0.5, RIGHT, true)).toBeCloseTo(3150, 9);
    expect(dowelBearing(0.5, 0.5, RIGHT / 2, true)).toBeCloseTo((2 * 5600 * 3150) / 8750, 6);
    expect(dowelBearing(0.5, 0.148, 0, true)).toBe(dowelBearing(0.5, 0.148, RIGHT, true));
  });
});

describe('reduction terms', () => {
  it('follows Table 12.3.1B', () => {
    expect([KD(0.131), KD(0.17), KD(0.2)]).toEqual([2.2, 2.2, 2.5]);
    expect([Ktheta(0), Ktheta(RIGHT)]).toEqual([1, 1.25]);
    expect((['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const).map((m) => Rd(m, 0.5, 0.5, 0))).toEqual([
      4, 4, 3.6, 3.2, 3.2, 3.2,
    ]);
    expect(Rd('IV', 0.173, 0.25, RIGHT)).toBeCloseTo((10 * 0.173 + 0.5) * 1.25, 12);
    expect(Rd('IV', 0.131, 0.148, RIGHT)).toBe(2.2);
  });
});

describe('yield limits', () => {
  const bolt = fc.record({
    D: fc.double({ min: 0.25, max: 1, noNaN: true }),
    lm: fc.double({ min: 1, max: 8, noNaN: true }),
    ls: fc.double({ min: 0.5, max: 4, noNaN: true }),
    Fem: fc.double({ min: 1400, max: 7000, noNaN: true }),
    Fes: fc.double({ min: 1400, max: 7000, noNaN: true }),
    Fyb: fc.constant(45000),
    thetaMax: fc.double({ min: 0, max: RIGHT, noNaN: true }),
  });

  it('is the least of its modes and rises with every length and strength', () => {
    fc.assert(
      fc.property(bolt, (b) => {
        const r = lateralValue(b, 'single');
        expect(r.Z).toBe(Math.min(...Object.values(r.modes)));
        for (const more of [
          { ...b, lm: b.lm * 1.1 },
          { ...b, ls: b.ls * 1.1 },
          { ...b, Fem: b.Fem * 1.1 },
          { ...b, Fes: b.Fes * 1.1 },
          { ...b, Fyb: b.Fyb * 1.1 },
        ]) {
          expect(lateralValue(more, 'single').Z).toBeGreaterThanOrEqual(r.Z * (1 - 1e-9));
        }
      }),
    );
  });

  it('keeps to one and a half limits: swapping the members swaps their modes', () => {
    fc.assert(
      fc.property(bolt, (b) => {
        const a = lateralValue(b, 'single').modes;
        const s = lateralValue({ ...b, lm: b.ls, ls: b.lm, Fem: b.Fes, Fes: b.Fem }, 'single').modes;
        expect(s.Im).toBeCloseTo(a.Is, 6);
        expect(s.II).toBeCloseTo(a.II, 4);
        expect(s.IIIm).toBeCloseTo(a.IIIs, 4);
        expect(s.IV).toBeCloseTo(a.IV, 4);
      }),
    );
  });

  it('doubles the side modes in double shear', () => {
    const b = { D: 0.5, lm: 3.5, ls: 1.5, Fem: 5600, Fes: 5600, Fyb: 45000, thetaMax: 0 };
    const one = lateralValue(b, 'single').modes;
    const two = lateralValue(b, 'double').modes;
    expect([two.Im, two.Is, two.IIIs, two.IV]).toEqual([one.Im, 2 * one.Is, 2 * one.IIIs, 2 * one.IV]);
  });
});

describe('withdrawal and combined load', () => {
  it('ends at the pure cases, and between them screws and nails differ', () => {
    for (const kind of ['lag', 'smooth-nail'] as const) {
      expect(combinedLateralWithdrawal(kind, 300, 100, 0)).toBeCloseTo(100, 9);
      expect(combinedLateralWithdrawal(kind, 300, 100, RIGHT)).toBeCloseTo(300, 9);
    }
    expect(combinedLateralWithdrawal('lag', 300, 100, RIGHT / 2)).toBeCloseTo((300 * 100) / 200, 9);
    expect(combinedLateralWithdrawal('smooth-nail', 300, 100, RIGHT / 2)).toBeCloseTo(
      (300 * 100) / (400 * Math.SQRT1_2),
      9,
    );
  });

  it('knows penetration, toe-nails and end grain', () => {
    expect(penetrationFactor('nail', 1.62, 0.162)).toBe(1);
    expect(penetrationFactor('nail', 0.9, 0.162)).toBeUndefined();
    expect(penetrationFactor('lag', 2, 0.5)).toBe(0.5);
    expect(penetrationFactor('lag', 1.9, 0.5)).toBeUndefined();
    expect([Ctn('lateral'), Ctn('withdrawal')]).toEqual([0.83, 0.67]);
    expect(toeNail(3).ls).toBe(1);
    expect(toeNail(3).penetration).toBeCloseTo(1.598, 3);
    expect([Ceg('lag', 'withdrawal'), Ceg('smooth-nail', 'withdrawal'), Ceg('lag', 'lateral')]).toEqual([
      0.75,
      undefined,
      0.67,
    ]);
    expect(W('wood-screw', 0.5, 0.19)).toBeCloseTo(2850 * 0.25 * 0.19, 9);
    expect(W('deformed-nail', 0.5, 0.131)).toBeCloseTo(1800 * 0.25 * 0.131, 9);
  });
});

describe('chapter 11', () => {
  // NDS 2018 Table 11.3.6A, D = 1 in., s = 4 in., E = 1.4e6, As/Am = 0.5, As = 5 in² (recalled).
  it.each([
    [2, 0.98],
    [3, 0.92],
    [4, 0.84],
    [5, 0.75],
    [6, 0.68],
    [8, 0.55],
    [10, 0.45],
    [12, 0.38],
  ])('group action of %s fasteners', (n, printed) => {
    const value = Cg(n, 4, 1, 1.4e6 * 10, 1.4e6 * 5, slipModulus(1, false));
    expect(Math.abs(value - printed)).toBeLessThan(0.0051);
  });

  it('has the slip moduli of 11.3.6', () => {
    expect([slipModulus(1, false), slipModulus(1, true)]).toEqual([180_000, 270_000]);
    expect(slipModulus(0.25, false)).toBe(180_000 / 8);
  });

  it('is 1 for one fastener or thin ones, and falls with their number', () => {
    expect([Cg(1, 4, 1, 1e7, 1e7, 1e5), Cg(9, 4, 0.2, 1e7, 1e7, 1e5)]).toEqual([1, 1]);
    const by = [2, 3, 4, 5, 6].map((n) => Cg(n, 3, 0.5, 1.6e6 * 8, 1.6e6 * 8, slipModulus(0.5, false)));
    // two fasteners between equal members share alike
    expect(by[0]).toBeCloseTo(1, 9);
    expect(by.every((c, i) => i === 0 || (c < 1 && c < by[i - 1]!))).toBe(true);
  });

  it('gives geometry factors, and no value below the least distance', () => {
    expect([3.5, 2, 1.75, 1.7].map((a) => CdeltaEnd(a, 0.5, 'tension'))).toEqual([1, 4 / 7, 0.5, undefined]);
    expect([2, 1, 0.9].map((a) => CdeltaEnd(a, 0.5, 'perpendicular'))).toEqual([1, 0.5, undefined]);
    expect([2, 1.5, 1.4].map((s) => CdeltaSpacing(s, 0.5))).toEqual([1, 0.75, undefined]);
    expect(CdeltaEnd(0.1, 0.162, 'tension')).toBe(1);
    expect(minEdgeDistance('perpendicular-loaded-edge', 3, 0.5)).toBe(2);
    expect(minEdgeDistance('parallel', 1.5, 0.5)).toBe(0.75);
    expect(minEdgeDistance('parallel', 5.5, 0.5, 2)).toBe(1);
    expect(minRowSpacing('perpendicular', 1, 0.5)).toBe(1.25);
    expect(minRowSpacing('perpendicular', 2, 0.5)).toBeCloseTo(1.875, 12);
    expect(minRowSpacing('perpendicular', 5, 0.5)).toBe(2.5);
  });

  it('wets connections by Table 11.3.3', () => {
    const at = (wetAtFabrication: boolean, wetInService: boolean) => ({ wetAtFabrication, wetInService });
    expect(CMConnection('dowel-lateral', at(false, false), 0.5, false)).toBe(1);
    expect(CMConnection('dowel-lateral', at(true, false), 0.5, false)).toBe(0.4);
    expect(CMConnection('dowel-lateral', at(true, false), 0.5, true)).toBe(1);
    expect(CMConnection('dowel-lateral', at(true, true), 0.5, true)).toBe(0.7);
    expect(CMConnection('nail-withdrawal', at(true, false), 0.131, false)).toBe(0.25);
    expect(CMConnection('nail-withdrawal', at(true, true), 0.131, false)).toBe(1);
    expect(CMConnection('lag-or-screw-withdrawal', at(false, true), 0.5, false)).toBe(0.7);
    expect([CtConnection(90, true), CtConnection(110, true), CtConnection(160, true)]).toEqual([1, 0.7, undefined]);
  });

  it('multiplies every connection factor', () => {
    const f = { CD: 1.6, CM: 0.7, Ct: 0.8, Cg: 0.9, Cdelta: 0.5, Ceg: 0.67, Cdi: 1.1, Ctn: 0.83 };
    expect(adjustedZ(100, f)).toBeCloseTo(100 * 1.6 * 0.7 * 0.8 * 0.9 * 0.5 * 0.67 * 1.1 * 0.83, 9);
    expect(adjustedW(100, f)).toBeCloseTo(100 * 1.6 * 0.7 * 0.8 * 0.67 * 0.83, 9);
  });
});

it('chapter 15: built-up columns', () => {
  expect([Kf('nailed', true), Kf('bolted', true), Kf('nailed', false)]).toEqual([0.6, 0.75, 1]);
  const n = builtUpNailing(1.5, 5.5, 0.148);
  expect(n.rows).toBe(2);
  expect(n.spacing[1]).toBe(9);
  expect(builtUpNailing(1.5, 3.5, 0.148).rows).toBe(1);
});

it('records the governing mode and the factors', () => {
  const rec = makeRecorder();
  const b = { D: 0.5, lm: 1.5, ls: 1.5, Fem: 5600, Fes: 5600, Fyb: 45000, thetaMax: 0 };
  const { Z, mode } = lateralValue(b, 'single', rec);
  adjustedZ(Z, { CD: 1.6 }, rec);
  adjustedW(100, {}, rec);
  W('lag', 0.5, 0.375, rec);
  penetrationFactor('lag', 2, 0.375, rec);
  combinedLateralWithdrawal('lag', 300, 100, 0.5, rec);
  dowelBearing(0.5, 0.5, 0, true, rec);
  Cg(3, 4, 0.5, 1e7, 1e7, 6e4, rec);
  CMConnection('dowel-lateral', { wetAtFabrication: false, wetInService: true }, 0.5, false, rec);
  Kf('nailed', true, rec);
  expect(rec.lines.length).toBe(10);
  const first = rec.lines[0]!;
  expect(first.kind === 'step' && first.meaning).toContain(`mode ${mode}`);
  for (const l of rec.lines) expect(l.kind === 'step' && /NaN|undefined|\?/.test(l.substituted)).toBe(false);
});
