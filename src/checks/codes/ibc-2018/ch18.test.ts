import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BACKFILL_OVERSIZE,
  BACKFILL_SAND_LAYER,
  BACKFILL_STRENGTH,
  constrainedEmbedment,
  effectiveWidthSquare,
  IBC_MAX_BOTTOM_SLOPE,
  IBC_MIN_FOOTING_DEPTH,
  IBC_MIN_FOOTING_WIDTH,
  ISOLATED_POLE_FACTOR,
  ibcFootingDepth,
  ibcFrostExempt,
  lateralBearing,
  nonconstrainedDepthAt,
  nonconstrainedEmbedment,
  PRESSURE_DEPTH_CAP,
  presumptiveSkinFriction,
  requiredBearingArea,
  slidingCohesion,
  slidingFriction,
} from './index.js';

describe('soil values in use', () => {
  it('lateral bearing grows with depth to 15 times its value', () => {
    expect(lateralBearing(150, 24)).toBe(300);
    expect(lateralBearing(150, 24, 2)).toBe(600);
    expect(lateralBearing(100, 20 * 12)).toBe(1500);
    expect(lateralBearing(100, 0)).toBe(0);
  });

  it('sliding by friction or by cohesion, never over half the dead load', () => {
    expect(slidingFriction(0.25, 1000)).toBe(250);
    expect(slidingCohesion(130, 2 * 144, 1000)).toBe(260);
    expect(slidingCohesion(130, 20 * 144, 1000)).toBe(500);
  });

  it('footing area has its floor', () => {
    expect(requiredBearingArea(3000, 1500)).toBe(288);
    expect(requiredBearingArea(100, 1500)).toBe(144);
    expect(presumptiveSkinFriction(1500)).toBe(250);
    expect(presumptiveSkinFriction(12000)).toBe(500);
  });
});

describe('embedded posts', () => {
  it('agrees with the equation worked by hand', () => {
    // P = 500 lb at 8 ft, 1 ft wide, 150 psf/ft. d = 5 ft: S1 = 250, A = 1170/250 = 4.68. d = 7 ft: S1 = 350,
    // A = 3.34286, 4.36·8/A = 10.4342, √11.4342 = 3.38145, right side 1.67143 · 4.38145 = 7.3233 ft. The root is above 7 ft.
    expect(nonconstrainedDepthAt(500, 96, 12, 250) / 12).toBeCloseTo(2.34 * (1 + Math.sqrt(1 + (4.36 * 8) / 4.68)), 9);
    expect(nonconstrainedDepthAt(500, 96, 12, 350) / 12).toBeCloseTo(7.3233, 3);
    const d = nonconstrainedEmbedment(500, 96, 12, 150) / 12;
    expect(d).toBeGreaterThan(7);
    expect(d).toBeLessThan(7.3233);
  });

  it('is the fixed point of Eq. 18-1, and the depth of Eq. 18-2 balances', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20000, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.double({ min: 50, max: 1200, noNaN: true }),
        (P, h, b, s) => {
          const d = nonconstrainedEmbedment(P, h, b, s);
          const S1 = (s * Math.min(d, PRESSURE_DEPTH_CAP)) / 36;
          expect(nonconstrainedDepthAt(P, h, b, S1) / d).toBeCloseTo(1, 5);
          const dc = constrainedEmbedment(P, h, b, s) / 12;
          const S3 = s * Math.min(dc, 12);
          expect(dc * dc * S3 * (b / 12)).toBeCloseTo(4.25 * P * (h / 12), 3);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('needs nothing without load, more in weaker ground', () => {
    expect(nonconstrainedEmbedment(0, 96, 12, 150)).toBe(0);
    expect(constrainedEmbedment(0, 96, 12, 150)).toBe(0);
    expect(nonconstrainedEmbedment(500, 96, 12, 100)).toBeGreaterThan(nonconstrainedEmbedment(500, 96, 12, 150));
    expect(constrainedEmbedment(500, 96, 12, 150)).toBeLessThan(nonconstrainedEmbedment(500, 96, 12, 150));
    expect(effectiveWidthSquare(10)).toBeCloseTo(14.142, 3);
  });
});

describe('shallow footings', () => {
  it('go below frost unless exempt', () => {
    expect(ibcFootingDepth(0, false)).toBe(12);
    expect(ibcFootingDepth(42, false)).toBe(42);
    expect(ibcFootingDepth(42, true)).toBe(12);
  });

  it('exempt only what is small, free-standing and of Risk Category I', () => {
    const x = { freeStanding: true, riskCategory: 'I', lightFrame: true, area: 600 * 144, eaveHeight: 120 } as const;
    expect(ibcFrostExempt(x)).toBe(true);
    expect(ibcFrostExempt({ ...x, freeStanding: false })).toBe(false);
    expect(ibcFrostExempt({ ...x, riskCategory: 'II' })).toBe(false);
    expect(ibcFrostExempt({ ...x, lightFrame: false })).toBe(false);
    expect(ibcFrostExempt({ ...x, area: 601 * 144 })).toBe(false);
    expect(ibcFrostExempt({ ...x, eaveHeight: 121 })).toBe(false);
  });
});

describe('printed limits', () => {
  it('as printed', () => {
    expect([BACKFILL_OVERSIZE, BACKFILL_STRENGTH, BACKFILL_SAND_LAYER]).toEqual([4, 2000, 8]);
    expect([IBC_MIN_FOOTING_DEPTH, IBC_MIN_FOOTING_WIDTH, IBC_MAX_BOTTOM_SLOPE]).toEqual([12, 12, 0.1]);
    expect(ISOLATED_POLE_FACTOR).toBe(2);
    const x = { freeStanding: true, riskCategory: 'I', lightFrame: false, eaveHeight: 120 } as const;
    expect([400, 401].map((ft2) => ibcFrostExempt({ ...x, area: ft2 * 144 }))).toEqual([true, false]);
  });
});
