import { describe, expect, it } from 'vitest';
import {
  alongRidgeCN,
  alongRidgeFigure,
  attachedCanopyGCp,
  elevationKe,
  exposureCe,
  exposureKz,
  exposureKzTable,
  frameWidthKB,
  freeRoofComponentCN,
  freeRoofFigure,
  G_RIGID,
  GCPI,
  gableEdgeArea,
  isOutOfScope,
  KD_BUILDINGS,
  LO_ORDINARY_ROOF,
  NARROW_ROOF_W,
  PM_MAX_7_22,
  type RoofExposure,
  rainOnSnow,
  reductionR1,
  reductionR2,
  SEISMIC_SYSTEMS,
  SNOW_IMPORTANCE,
  type SnowTerrain,
  seismicSnow,
  slidingApplies,
  slopeCs,
  snowExempt,
  stepDrift,
  thermalCt,
} from './index.js';

/** Each printed limit from both sides, one percent off, and each small table cell by cell: a slip of 3 percent shows. */
const rad = (deg: number): number => (deg * Math.PI) / 180;
const FT = 12;
const off = isOutOfScope;

describe('wind', () => {
  it('constants', () => {
    expect([G_RIGID, KD_BUILDINGS]).toEqual([0.85, 0.85]);
    expect(GCPI).toEqual({ open: 0, partiallyOpen: 0.18, enclosed: 0.18, partiallyEnclosed: 0.55 });
    expect(elevationKe(5000 * FT, '7-16')).toBeCloseTo(0.834435, 5);
  });

  it('power law: the coefficient alone at the gradient height, and by hand at 15 and 60 ft', () => {
    for (const [edition, coefficient, zg] of [
      ['7-16', 2.01, { B: 1200, C: 900, D: 700 }],
      ['7-22', 2.41, { B: 3280, C: 2460, D: 1935 }],
    ] as const)
      for (const e of ['B', 'C', 'D'] as const) {
        expect(exposureKz(zg[e] * FT, e, edition)).toBeCloseTo(coefficient, 12);
        expect(off(exposureKz(zg[e] * 1.001 * FT, e, edition))).toBe(true);
      }
    // The 7-22 Exposure D cells are said to be those of 7-16, 1.03 at 15 ft and 1.31 at 60 ft; the law gives 1.317 there,
    // as far off as law and print lie apart elsewhere (0.8 percent).
    expect(Math.abs((exposureKz(15 * FT, 'D', '7-22') as number) - 1.03)).toBeLessThan(0.008 * 1.03);
    expect(Math.abs((exposureKz(60 * FT, 'D', '7-22') as number) - 1.31)).toBeLessThan(0.008 * 1.31);
    // Three percent on an exponent moves the value at 15 ft by 2 percent and more.
    expect(exposureKz(15 * FT, 'D', '7-22')).toBeCloseTo(2.41 * (15 / 1935) ** (1 / 5.75), 12);
    expect(exposureKz(15 * FT, 'D', '7-16')).toBeCloseTo(2.01 * (15 / 700) ** (1 / 5.75), 12);
  });

  it('printed Kz, row by row', () => {
    const rows = [15, 20, 25, 30, 40, 50, 60].map((z) =>
      (['B', 'C', 'D'] as const).map((e) => exposureKzTable(z * FT, e)),
    );
    expect(rows).toEqual([
      [0.57, 0.85, 1.03],
      [0.62, 0.9, 1.08],
      [0.66, 0.94, 1.12],
      [0.7, 0.98, 1.16],
      [0.76, 1.04, 1.22],
      [0.81, 1.09, 1.27],
      [0.85, 1.13, 1.31],
    ]);
    expect(exposureKzTable(16 * FT, 'C')).toBeCloseTo(0.86, 12);
    expect(exposureKzTable(45 * FT, 'C')).toBeCloseTo(1.065, 12);
    expect(exposureKzTable(55 * FT, 'C')).toBeCloseTo(1.11, 12);
  });

  it('free-roof figures: 5 and 45 degrees, h/L 0.05, 0.25 and 1', () => {
    const across = (deg: number, hL: number) => freeRoofFigure('monoslope', rad(deg), hL, 1, '7-16');
    expect(across(4.99, 0.2)).toBe('along-ridge-values');
    expect(off(across(5, 0.2))).toBe(true);
    expect(across(0, 0.05)).toBe('along-ridge-values');
    expect(off(across(0, 0.0495))).toBe(true);
    expect(across(0, 0.25)).toBe('across-ridge');
    expect(off(across(10, 0.2475))).toBe(true);
    const along = (deg: number, hL: number) => off(alongRidgeFigure('monoslope', rad(deg), hL, 1, '7-16'));
    expect(along(45, 0.5)).toBe(false);
    expect(along(45.1, 0.5)).toBe(true);
    expect(along(4.99, 0.2)).toBe(false);
    expect(along(5, 0.2)).toBe(true);
    expect(along(0, 0.05)).toBe(false);
    expect(along(0, 0.0495)).toBe(true);
    expect(along(20, 1)).toBe(false);
    expect(along(20, 1.01)).toBe(true);
    expect(off(alongRidgeFigure('pitched', rad(45.1), 1, 1, '7-22'))).toBe(true);
    expect([240, 241].map((d) => alongRidgeCN(d, 120, 'A', 'clear'))).toEqual([-0.6, -0.3]);
  });

  it('frames, components, canopies', () => {
    expect(frameWidthKB(101 * FT)).toBe(0.8);
    expect(gableEdgeArea(40, 100, rad(45))).toBeCloseTo(4800, 9);
    const component = (hL: number) =>
      off(freeRoofComponentCN('pitched', rad(20), hL, 1, 'plus', 1, 36, 'clear', '7-16'));
    expect([0.2475, 0.25, 1, 1.01].map(component)).toEqual([true, false, false, true]);
    const canopy = { slope: 0.02, hc: 5 * FT, he: 10 * FT, h: 60 * FT };
    const GCp = (x: Partial<typeof canopy>, sign: 'plus' | 'minus', ft2: number) =>
      attachedCanopyGCp({ ...canopy, ...x }, sign, ft2 * 144, '7-16');
    expect(GCp({}, 'minus', 10)).toBeCloseTo(-0.6, 12);
    expect(GCp({ hc: 5.05 * FT }, 'minus', 10)).toBeCloseTo(-0.9, 12);
    expect(GCp({}, 'plus', 100)).toBeCloseTo(0.65, 12);
    expect(off(GCp({ slope: 0.0201 }, 'plus', 10))).toBe(true);
    expect(off(GCp({ h: 60.1 * FT }, 'plus', 10))).toBe(true);
  });
});

describe('snow', () => {
  it('small tables', () => {
    expect(SNOW_IMPORTANCE).toEqual({ I: 0.8, II: 1, III: 1.1, IV: 1.2 });
    expect(PM_MAX_7_22).toEqual({ I: 25, II: 30, III: 35, IV: 40 });
    const exposures: RoofExposure[] = ['fully-exposed', 'partially-exposed', 'sheltered'];
    const terrains: SnowTerrain[] = ['B', 'C', 'D', 'above-treeline', 'alaska-no-trees'];
    const Ce = terrains.map((t) => exposures.map((e) => exposureCe(t, e, '7-16')).map((v) => (off(v) ? undefined : v)));
    expect(Ce).toEqual([
      [0.9, 1, 1.2],
      [0.9, 1, 1.1],
      [0.8, 0.9, 1],
      [0.7, 0.8, undefined],
      [0.7, 0.8, undefined],
    ]);
  });

  it('7-22 Ct of heated roofs, cell by cell and halfway between', () => {
    const pgs = [10, 20, 30, 40, 50, 60, 70];
    const table = [
      [1.2, 1.11, 1.05, 1.01, 1, 1, 1],
      [1.2, 1.17, 1.14, 1.13, 1.12, 1.11, 1.1],
      [1.2, 1.19, 1.17, 1.16, 1.16, 1.15, 1.15],
      [1.2, 1.2, 1.19, 1.19, 1.19, 1.18, 1.18],
    ];
    const Ct = (R: number, pg: number) => thermalCt('heated', '7-22', { R, pg }) as number;
    expect([20, 30, 40, 50].map((R) => pgs.map((pg) => Ct(R, pg)))).toEqual(table);
    pgs.slice(1).forEach((pg, i) => {
      expect(Ct(30, pg - 5)).toBeCloseTo((table[1]![i]! + table[1]![i + 1]!) / 2, 12);
    });
    expect(Ct(45, 40)).toBeCloseTo(1.175, 12);
  });

  it('limits from both sides', () => {
    expect([100, 101].map((ft) => snowExempt(10, ft * FT, '7-22'))).toEqual([true, false]);
    expect([5, 5.05].map((pg) => snowExempt(pg, 200 * FT, '7-22'))).toEqual([true, false]);
    expect(NARROW_ROOF_W).toBe(240);
    expect([0.3, 0.396, 0.404].map((deg) => rainOnSnow(20, 'II', rad(deg), 20 * FT, '7-16'))).toEqual([5, 5, 0]);
    const slope = (rise: number, slippery: boolean) => slidingApplies(Math.atan(rise / 12), slippery);
    expect([slope(0.25, true), slope(0.2525, true), slope(2, false), slope(2.02, false)]).toEqual([
      false,
      true,
      false,
      true,
    ]);
    // A factor just above 1.0 (7-16) or 1.1 (7-22) is a cooler roof.
    expect(slopeCs(rad(37), 1.01, false, true, '7-16')).toBe(1);
    expect(slopeCs(rad(37), 1.11, false, true, '7-22')).toBe(1);
    expect(slopeCs(rad(37), 1.1, false, true, '7-22')).toBeLessThan(1);
    const step = (ratio: number) =>
      stepDrift(
        'leeward',
        { pg: 30, Is: 1, W2: 0.5, lu: 1200, gamma: 17.9 },
        (1 + ratio) * (25 / 17.9) * FT,
        25,
        '7-16',
      );
    expect([step(0.198).required, step(0.202).required]).toEqual([false, true]);
  });
});

describe('live and seismic', () => {
  it('reduction bands from both sides', () => {
    expect(LO_ORDINARY_ROOF).toBe(20);
    expect(reductionR1(202 * 144, '7-16')).toBeCloseTo(0.998, 12);
    expect(reductionR1(598 * 144, '7-16')).toBeCloseTo(0.602, 12);
    expect(reductionR1(606 * 144, '7-16')).toBe(0.6);
    expect(reductionR2(4.04, '7-16')).toBeCloseTo(0.998, 12);
    expect(reductionR2(11.96, '7-16')).toBeCloseTo(0.602, 12);
    expect(reductionR2(12.1, '7-16')).toBe(0.6);
  });

  it('systems and snow weight', () => {
    expect(SEISMIC_SYSTEMS).toEqual({
      timberCantileverColumns: { R: 1.5, Omega0: 1.5, Cd: 1.5 },
      steelOrdinaryCantileverColumns: { R: 1.25, Omega0: 1.25, Cd: 1.25 },
      lightFrameWoodPanelsBearing: { R: 6.5, Omega0: 3, Cd: 4 },
      lightFrameOtherPanels: { R: 2, Omega0: 2.5, Cd: 2 },
    });
    expect(seismicSnow(30.1, '7-16')).toBeCloseTo(6.02, 12);
    expect(seismicSnow(45.1, '7-22')).toBeCloseTo(6.765, 12);
  });
});
