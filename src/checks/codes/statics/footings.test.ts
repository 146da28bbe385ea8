import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  footingVolume,
  kneeBraceForces,
  rectangularFootingPressure,
  roundFootingPressure,
  UPLIFT_DEAD_FACTOR,
  upliftResistance,
  weightOf,
} from './index.js';
import { areaIntegrals, clipPositive } from './polygon-integrals.js';

describe('rectangular footing', () => {
  it('central, at the kern, beyond it', () => {
    // 3 ft square, 9000 lb: mean 1000 psf.
    expect(rectangularFootingPressure(36, 36, 9000, 0, 0)).toEqual({ qMax: 1000, qMin: 1000, contact: 1 });
    const kern = rectangularFootingPressure(36, 36, 9000, 6, 0)!;
    expect(kern.qMax).toBeCloseTo(2000, 9);
    expect(kern.qMin).toBeCloseTo(0, 9);
    const beyond = rectangularFootingPressure(36, 36, 9000, 0, -9)!;
    // Triangle 3·(18 − 9) = 27 in long: 2·9000/(3 ft · 2.25 ft).
    expect(beyond.qMax).toBeCloseTo((2 * 9000) / (3 * 2.25), 9);
    expect(beyond.contact).toBeCloseTo(0.75, 12);
  });

  it('overturns at the edge and needs a load that presses', () => {
    expect(rectangularFootingPressure(36, 36, 9000, 18, 0)).toBeUndefined();
    expect(rectangularFootingPressure(36, 36, 9000, 0, 20)).toBeUndefined();
    expect(rectangularFootingPressure(36, 36, 0, 0, 0)).toBeUndefined();
    expect(rectangularFootingPressure(36, 36, -100, 0, 0)).toBeUndefined();
  });

  it('both ways off centre: a corner pyramid, worked in closed form', () => {
    // A load at a quarter of B from two edges bears on a right triangle with legs 4·(B/4) = B: volume q·B²/6 = P.
    const q = rectangularFootingPressure(36, 36, 9000, 9, 9)!;
    expect(q.qMax).toBeCloseTo((6 * 9000) / 9, 3);
    expect(q.contact).toBeCloseTo(0.5, 6);
  });

  it('is continuous across the kern and as one eccentricity fades', () => {
    for (const e of [6, 7, 10, 14]) {
      const one = rectangularFootingPressure(36, 48, 9000, e, 0)!.qMax;
      const nearly = rectangularFootingPressure(36, 48, 9000, e, 1e-7)!.qMax;
      expect(nearly / one).toBeCloseTo(1, 5);
    }
    const inside = rectangularFootingPressure(36, 36, 9000, 3, 2.9999)!.qMax;
    const outside = rectangularFootingPressure(36, 36, 9000, 3, 3.0001)!.qMax;
    expect(outside / inside).toBeCloseTo(1, 4);
  });

  it('any load within the base: pressure finite, at least that of linear theory’s mean, symmetric', () => {
    const part = fc.double({ min: -0.45, max: 0.45, noNaN: true });
    fc.assert(
      fc.property(
        part,
        part,
        fc.double({ min: 12, max: 72, noNaN: true }),
        fc.double({ min: 12, max: 72, noNaN: true }),
        (u, v, B, L) => {
          const P = 5000;
          const q = rectangularFootingPressure(B, L, P, u * B, v * L)!;
          const mean = (P / (B * L)) * 144;
          expect(Number.isFinite(q.qMax)).toBe(true);
          // A triangle or pyramid peaks at least at the mean over its own contact area.
          expect(q.qMax).toBeGreaterThanOrEqual((mean / q.contact) * (1 - 1e-9));
          // No-tension lifts the peak over plain superposition, never under it.
          expect(q.qMax).toBeGreaterThanOrEqual(mean * (1 + 6 * Math.abs(u) + 6 * Math.abs(v)) * (1 - 1e-6));
          expect(rectangularFootingPressure(L, B, P, v * L, u * B)!.qMax / q.qMax).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('round footing', () => {
  it('within its kern of D/8', () => {
    const q = roundFootingPressure(24, 3000, 3)!;
    const mean = 3000 / Math.PI;
    expect(q.qMax).toBeCloseTo(2 * mean, 9);
    expect(q.qMin).toBeCloseTo(0, 9);
  });

  it('half the base in contact: closed form of a half circle', () => {
    // Zero line through the centre: q = qmax·x/R on a half circle. P = qmax·(2/3)R², P·e = qmax·(π/8)R³, so e = 3πR/16.
    const R = 12;
    const q = roundFootingPressure(2 * R, 3000, (3 * Math.PI * R) / 16)!;
    expect(q.contact).toBeCloseTo(0.5, 2);
    expect(q.qMax / ((3000 / ((2 / 3) * R * R)) * 144)).toBeCloseTo(1, 2.7);
  });

  it('is continuous at the kern within the polygon’s thousandth, overturns at the rim', () => {
    const a = roundFootingPressure(24, 3000, 3)!.qMax;
    const b = roundFootingPressure(24, 3000, 3.001)!.qMax;
    expect(Math.abs(b / a - 1)).toBeLessThan(0.0015);
    expect(roundFootingPressure(24, 3000, 12)).toBeUndefined();
    expect(roundFootingPressure(24, -1, 0)).toBeUndefined();
  });
});

describe('polygon integrals', () => {
  it('of a rectangle off the origin', () => {
    const box = [
      { x: 1, y: 2 },
      { x: 4, y: 2 },
      { x: 4, y: 8 },
      { x: 1, y: 8 },
    ];
    const m = areaIntegrals(box);
    expect(m.A).toBeCloseTo(18, 12);
    expect(m.Sx).toBeCloseTo(45, 12);
    expect(m.Sy).toBeCloseTo(90, 12);
    expect(m.Sxx).toBeCloseTo((6 * (64 - 1)) / 3, 12);
    expect(m.Syy).toBeCloseTo((3 * (512 - 8)) / 3, 12);
    expect(m.Sxy).toBeCloseTo(7.5 * 30, 12);
    expect(areaIntegrals(clipPositive(box, -2.5, 1, 0)).A).toBeCloseTo(9, 12);
    expect(clipPositive(box, -10, 1, 0)).toEqual([]);
  });
});

describe('uplift and braces', () => {
  it('resists with six tenths of the weight', () => {
    const concrete = weightOf(footingVolume('square', 24, 12), 150);
    expect(concrete).toBeCloseTo(600, 9);
    expect(weightOf(footingVolume('round', 24, 12), 150)).toBeCloseTo(150 * Math.PI, 9);
    expect(upliftResistance(400, concrete, 200)).toBeCloseTo(720, 9);
    expect(upliftResistance(400, concrete, 200, 0.9)).toBeCloseTo(1080, 9);
  });

  it('knee brace in equilibrium', () => {
    const f = kneeBraceForces(100, 96, 24, Math.PI / 4);
    expect(f.horizontal).toBeCloseTo(400, 9);
    expect(f.axial).toBeCloseTo(400 * Math.SQRT2, 9);
    expect(f.postMoment).toBeCloseTo(7200, 9);
    // Sum of horizontal forces on the post.
    expect(100 - f.horizontal + f.topReaction).toBeCloseTo(0, 9);
  });
});

describe('at the limits', () => {
  it('no pull on the soil just past the kern', () => {
    expect(rectangularFootingPressure(36, 36, 9000, 6.1, 0)!.qMin).toBe(0);
    expect(rectangularFootingPressure(36, 36, 9000, 3.05, 3.05)!.qMin).toBe(0);
    expect(roundFootingPressure(24, 3000, 3.05)!.qMin).toBe(0);
  });

  it('still stands one percent inside the edge', () => {
    expect(rectangularFootingPressure(36, 36, 9000, 17.8, 0)!.qMax).toBeCloseTo((2 * 9000 * 144) / (36 * 0.6), 3);
    expect(rectangularFootingPressure(36, 36, 9000, 0, 17.8)!.qMax).toBeCloseTo((2 * 9000 * 144) / (36 * 0.6), 3);
    expect(roundFootingPressure(24, 3000, 11.85)!.contact).toBeLessThan(0.02);
  });

  it('factors of dead load', () => {
    expect(UPLIFT_DEAD_FACTOR).toEqual({ ASD: 0.6, LRFD: 0.9 });
  });
});
