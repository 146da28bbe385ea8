import { describe, expect, it } from 'vitest';
import {
  effectiveThickness,
  equivalentSquare,
  MIN_FC,
  MIN_PLAIN_THICKNESS,
  PHI_PLAIN,
  plainBearing,
  plainFlexure,
  plainOneWayShear,
  plainTwoWayShear,
  SOIL_FACE_DEDUCTION,
  sectionModulus,
  squareFootingActions,
} from './index.js';

describe('plain concrete strength', () => {
  it('24 in wide, 12 in thick less 2, 2500 psi, by hand', () => {
    const h = effectiveThickness(12);
    expect(sectionModulus(24, h)).toBe(400);
    expect(plainFlexure(2500, 400)).toBeCloseTo(0.6 * 5 * 50 * 400, 6);
    expect(plainFlexure(2500, 400) / 12).toBeCloseTo(5000, 6);
    expect(plainOneWayShear(2500, 24, h)).toBeCloseTo(9600, 6);
    expect(plainFlexure(2500, 400, 0.75)).toBeCloseTo(45000, 6);
  });

  it('two-way shear is twice the one-way stress up to a square column, less for long ones', () => {
    expect(plainTwoWayShear(2500, 60, 10, 1)).toBeCloseTo(0.6 * (8 / 3) * 50 * 600, 6);
    expect(plainTwoWayShear(2500, 60, 10, 2)).toBeCloseTo(0.6 * (8 / 3) * 50 * 600, 6);
    expect(plainTwoWayShear(2500, 60, 10, 4)).toBeCloseTo(0.6 * 2 * 50 * 600, 6);
    expect(plainTwoWayShear(2500, 60, 10, 1e9)).toBeCloseTo(0.6 * (4 / 3) * 50 * 600, 2);
  });

  it('root f’c in shear stops at 100 psi', () => {
    expect(plainOneWayShear(20000, 24, 10)).toBe(plainOneWayShear(10000, 24, 10));
  });

  it('bearing spreads at most twofold', () => {
    expect(plainBearing(2500, 30, 30)).toBeCloseTo(0.6 * 0.85 * 2500 * 30, 6);
    expect(plainBearing(2500, 30, 120)).toBeCloseTo(2 * plainBearing(2500, 30, 30), 6);
    expect(plainBearing(2500, 30, 900)).toBeCloseTo(2 * plainBearing(2500, 30, 30), 6);
    expect(plainBearing(2500, 30, 10)).toBeCloseTo(plainBearing(2500, 30, 30), 6);
  });
});

describe('footing actions', () => {
  it('by statics', () => {
    const a = squareFootingActions(36, 6, 10, 1440);
    expect(a.Mu).toBeCloseTo((10 * 36 * 15 * 15) / 2, 9);
    expect(a.Vu1).toBeCloseTo(10 * 36 * 5, 9);
    expect(a.Vu2).toBeCloseTo(10 * (36 * 36 - 16 * 16), 9);
    expect(a.bo).toBe(64);
  });

  it('a footing thicker than its overhang has no shear section', () => {
    const a = squareFootingActions(20, 6, 16, 1440);
    expect(a.Vu1).toBe(0);
    expect(a.Vu2).toBe(0);
    expect(squareFootingActions(6, 8, 10, 1440).Mu).toBe(0);
  });

  it('equal areas', () => {
    expect(equivalentSquare(24) ** 2).toBeCloseTo(Math.PI * 144, 9);
    expect(effectiveThickness(1)).toBe(0);
  });
});

describe('printed limits', () => {
  it('as printed', () => {
    expect([PHI_PLAIN, MIN_FC, MIN_PLAIN_THICKNESS, SOIL_FACE_DEDUCTION]).toEqual([0.6, 2500, 8, 2]);
  });
});
