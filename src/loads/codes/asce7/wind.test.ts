import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import {
  alongRidgeCN,
  alongRidgeFigure,
  alongRidgeZones,
  attachedCanopyGCp,
  attachedCanopyPressure,
  attachedCanopySurfaceGCp,
  edgeZoneWidth,
  elevationKe,
  exposureKz,
  exposureKzChapter28,
  exposureKzTable,
  type FreeRoofShape,
  fasciaPressure,
  frameWidthKB,
  freeRoofCN,
  freeRoofComponentCN,
  freeRoofComponentPressure,
  freeRoofFigure,
  freeRoofPressure,
  isOutOfScope,
  longitudinalWind,
  minimumOpenBuildingForce,
  shieldingKS,
  velocityPressure,
} from './index.js';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const FT = 12;

describe('velocity pressure', () => {
  it('has no Kz below that of 15 ft and none above the gradient height', () => {
    for (const e of ['B', 'C', 'D'] as const)
      for (const edition of ['7-16', '7-22'] as const) {
        expect(exposureKz(0, e, edition)).toBe(exposureKz(15 * FT, e, edition));
        expect(isOutOfScope(exposureKz(4000 * FT, e, edition))).toBe(true);
      }
    expect(isOutOfScope(exposureKzTable(61 * FT, 'C'))).toBe(true);
    expect(exposureKzTable(5 * FT, 'D')).toBe(1.03);
    expect(exposureKzTable(35 * FT, 'B')).toBeCloseTo(0.73, 12);
  });

  it('keeps table and power law of 7-16 within 1 percent of each other', () => {
    for (const e of ['B', 'C', 'D'] as const)
      for (const z of [15, 20, 25, 30, 40, 50, 60]) {
        const ratio = (exposureKz(z * FT, e, '7-16') as number) / (exposureKzTable(z * FT, e) as number);
        expect(Math.abs(ratio - 1), `${e} ${z}`).toBeLessThan(0.012);
      }
  });

  it('puts 0.70 under Exposure B below 30 ft in chapter 28 only', () => {
    expect(exposureKzChapter28(10 * FT, 'B', '7-16')).toBe(0.7);
    expect(exposureKzChapter28(30 * FT, 'B', '7-16')).toBe(exposureKz(30 * FT, 'B', '7-16'));
    expect(exposureKzChapter28(10 * FT, 'C', '7-16')).toBe(exposureKz(10 * FT, 'C', '7-16'));
  });

  it('follows the printed ground elevation table; at 4000 ft the print cuts 0.865 to 0.86', () => {
    [1, 0.96, 0.93, 0.9, 0.86, 0.83, 0.8].forEach((Ke, i) => {
      expect(Math.abs(elevationKe(i * 1000 * FT, '7-16') - Ke)).toBeLessThan(0.006);
    });
  });

  it('gives the same pressure in both editions, Kd once', () => {
    const x = { Kz: 0.9, Kzt: 1.1, Kd: 0.85, Ke: 0.95, V: 110 };
    const p16 = freeRoofPressure(velocityPressure(x, '7-16'), 0.85, -1.1, 0.85, '7-16');
    const p22 = freeRoofPressure(velocityPressure(x, '7-22'), 0.85, -1.1, 0.85, '7-22');
    expect(p22).toBeCloseTo(p16, 10);
  });
});

describe('free roof figures', () => {
  it('hits the printed columns and runs straight between them', () => {
    const at = (deg: number) => freeRoofCN('pitched', rad(deg), 0, 'A', 'obstructed', '7-16');
    expect(at(22.5)).toEqual({ CNW: -1.2, CNL: -1.2 });
    expect(at(26.25).CNW).toBeCloseTo(-0.95, 9);
    expect(freeRoofCN('monoslope', rad(45), 180, 'A', 'clear', '7-16')).toEqual({ CNW: 2.2, CNL: 2.5 });
  });

  it('is continuous from 7.5 to 45 degrees for every shape, case and flow', () => {
    for (const shape of ['monoslope', 'pitched', 'troughed'] as FreeRoofShape[])
      for (const c of ['A', 'B'] as const)
        for (const flow of ['clear', 'obstructed'] as const)
          for (let deg = 7.5; deg < 45; deg += 0.25) {
            const a = freeRoofCN(shape, rad(deg), 0, c, flow, '7-22');
            const b = freeRoofCN(shape, rad(deg + 1e-4), 0, c, flow, '7-22');
            expect(Math.abs(a.CNW - b.CNW) + Math.abs(a.CNL - b.CNL)).toBeLessThan(1e-4);
          }
  });

  it('takes the flat monoslope column under 7.5 degrees whatever the shape', () => {
    const flat = freeRoofCN('monoslope', 0, 0, 'A', 'clear', '7-16');
    for (const shape of ['monoslope', 'pitched', 'troughed'] as const)
      for (const gamma of [0, 180] as const)
        expect(freeRoofCN(shape, rad(7.49), gamma, 'A', 'clear', '7-16')).toEqual(flat);
    // 7.5 degrees reached through radians belongs to its own column.
    expect(freeRoofCN('pitched', rad(7.5), 0, 'A', 'clear', '7-16').CNL).toBe(-0.3);
  });

  it('knows its range', () => {
    expect(freeRoofFigure('pitched', rad(45), 10, 40, '7-16')).toBe('across-ridge');
    expect(isOutOfScope(freeRoofFigure('pitched', rad(45.1), 10, 20, '7-16'))).toBe(true);
    expect(isOutOfScope(freeRoofFigure('pitched', rad(20), 10, 41, '7-16'))).toBe(true);
    expect(isOutOfScope(freeRoofFigure('monoslope', rad(20), 10.1, 10, '7-16'))).toBe(true);
    expect(freeRoofFigure('monoslope', rad(4), 10, 41, '7-16')).toBe('along-ridge-values');
    expect(isOutOfScope(freeRoofFigure('monoslope', rad(4), 1, 41, '7-16'))).toBe(true);
  });

  it('limits h/L along the ridge in 7-16 but not in 7-22', () => {
    expect(isOutOfScope(alongRidgeFigure('pitched', rad(20), 9, 40, '7-16'))).toBe(true);
    expect(alongRidgeFigure('pitched', rad(20), 9, 40, '7-22')).toBeUndefined();
    expect(alongRidgeFigure('monoslope', rad(3), 9, 40, '7-16')).toBeUndefined();
    expect(alongRidgeFigure('pitched', rad(20), 10, 40, '7-16')).toBeUndefined();
  });

  it('cuts the roof into strips that cover it once', () => {
    const zones = alongRidgeZones(500, 120, 'A', 'obstructed', '7-16');
    expect(zones.map((z) => [z.from, z.to, z.CN])).toEqual([
      [0, 120, -1.2],
      [120, 240, -0.9],
      [240, 500, -0.6],
    ]);
    expect(alongRidgeZones(100, 120, 'A', 'clear', '7-16')).toEqual([{ from: 0, to: 100, CN: -0.8 }]);
    expect(alongRidgeZones(240, 120, 'A', 'clear', '7-16')).toHaveLength(2);
    expect(alongRidgeCN(120, 120, 'B', 'clear')).toBe(0.8);
    expect(alongRidgeCN(121, 120, 'B', 'clear')).toBe(0.5);
  });

  it('minimum force, fascia', () => {
    expect(minimumOpenBuildingForce(100 * 144, '7-16')).toBe(1600);
    expect(fasciaPressure(20, rad(5), 'windward', 0.85, '7-16')).toBe(30);
    expect(fasciaPressure(20, rad(5), 'leeward', 0.85, '7-22')).toBeCloseTo(-17, 12);
    expect(fasciaPressure(20, rad(5.1), 'windward', 0.85, '7-16')).toBeUndefined();
  });
});

describe('wind along the ridge', () => {
  it('factors at their ends', () => {
    expect(frameWidthKB(40 * FT)).toBeCloseTo(1.4, 12);
    expect(frameWidthKB(100 * FT)).toBe(0.8);
    expect(frameWidthKB(99.999 * FT)).toBeCloseTo(0.8, 4);
    expect(shieldingKS(3, 0)).toBeCloseTo(0.6, 12);
    expect(shieldingKS(2, 0)).toBe(shieldingKS(3, 0));
    expect(shieldingKS(5, 1)).toBeCloseTo(1.996, 12);
    expect(edgeZoneWidth(20 * FT, 10 * FT)).toBe(36);
    expect(edgeZoneWidth(100 * FT, 10 * FT)).toBe(48);
    expect(edgeZoneWidth(60 * FT, 40 * FT)).toBeCloseTo(72, 9);
  });

  it('refuses steep roofs and records each step', () => {
    const x = {
      qh: 20,
      Kd: 0.85,
      theta: rad(20),
      B: 240,
      leastDimension: 240,
      h: 120,
      eaveHeight: 96,
      n: 3,
      AS: 2000,
      AE: 28800,
    };
    expect(isOutOfScope(longitudinalWind({ ...x, theta: rad(46) }, '7-16'))).toBe(true);
    const rec = makeRecorder();
    longitudinalWind(x, '7-16', rec);
    expect(rec.lines.map((l) => l.kind === 'step' && l.symbol)).toEqual(['a', 'KB', 'KS', 'p', 'F']);
  });
});

describe('components and cladding', () => {
  const cn = (
    shape: FreeRoofShape,
    deg: number,
    zone: 1 | 2 | 3,
    sign: 'plus' | 'minus',
    ft2: number,
    edition: '7-16' | '7-22' = '7-16',
  ) => freeRoofComponentCN(shape, rad(deg), 0.5, zone, sign, ft2 * 144, 36, 'clear', edition) as number;

  it('changes row at a² and 4a²', () => {
    expect(cn('monoslope', 0, 3, 'minus', 9)).toBe(-3.3);
    expect(cn('monoslope', 0, 3, 'minus', 9.1)).toBe(-1.7);
    expect(cn('monoslope', 0, 3, 'minus', 36)).toBe(-1.7);
    expect(cn('monoslope', 0, 3, 'minus', 36.1)).toBe(-1.1);
  });

  it('interpolates from flat on and is exact at the printed slopes', () => {
    expect(cn('pitched', 7.5, 3, 'minus', 1)).toBeCloseTo(-3.6, 9);
    expect(cn('pitched', 3.75, 3, 'minus', 1)).toBeCloseTo(-3.45, 9);
    expect(cn('troughed', 37.5, 3, 'plus', 1)).toBeCloseTo(1.7, 9);
    expect(cn('monoslope', 45, 1, 'minus', 1)).toBe(-2.3);
  });

  it('zone 3 envelopes zone 2, and zone 2 zone 1', () => {
    for (const shape of ['monoslope', 'pitched', 'troughed'] as const)
      for (let deg = 0; deg <= 45; deg += 2.5)
        for (const ft2 of [1, 20, 100])
          for (const sign of ['plus', 'minus'] as const) {
            const size = ([1, 2, 3] as const).map((z) => Math.abs(cn(shape, deg, z, sign, ft2)));
            expect(size[2]).toBeGreaterThanOrEqual(size[1]!);
            expect(size[1]).toBeGreaterThanOrEqual(size[0]!);
          }
  });

  it('presses at least 16 psf either way and keeps to its range', () => {
    expect(freeRoofComponentPressure(10, 0.85, 0.5, 0.85, '7-16')).toBe(16);
    expect(freeRoofComponentPressure(10, 0.85, -1.1, 0.85, '7-16')).toBe(-16);
    expect(freeRoofComponentPressure(30, 0.85, -2, 0.85, '7-16')).toBeCloseTo(-51, 9);
    expect(isOutOfScope(freeRoofComponentCN('pitched', rad(20), 0.2, 1, 'plus', 1, 36, 'clear', '7-16'))).toBe(true);
    expect(isOutOfScope(freeRoofComponentCN('pitched', rad(46), 0.5, 1, 'plus', 1, 36, 'clear', '7-16'))).toBe(true);
  });
});

describe('attached canopies', () => {
  const canopy = { slope: 0.01, hc: 10 * FT, he: 10 * FT, h: 12 * FT };
  const net = (ratio: number, sign: 'plus' | 'minus', ft2: number) =>
    attachedCanopyGCp({ ...canopy, hc: ratio * canopy.he }, sign, ft2 * 144, '7-16') as number;

  it('runs in the logarithm of area between 10 and 100 ft², flat outside', () => {
    expect(net(1, 'minus', 1)).toBeCloseTo(-1.4, 12);
    expect(net(1, 'minus', 10)).toBeCloseTo(-1.4, 12);
    expect(net(1, 'minus', Math.sqrt(1000))).toBeCloseTo(-1.25, 12);
    expect(net(1, 'minus', 100)).toBeCloseTo(-1.1, 12);
    expect(net(1, 'minus', 400)).toBeCloseTo(-1.1, 12);
    expect(net(0.5, 'plus', 10)).toBeCloseTo(0.9, 12);
    // The commentary’s equation for the same line, to its printed figures.
    expect(net(0.9, 'minus', 40)).toBeCloseTo(-1.7 + 0.1303 * Math.log(40), 3);
    expect(net(0.89, 'minus', 40)).toBeCloseTo(-1.15 + 0.1086 * Math.log(40), 3);
    expect(net(0.5, 'minus', 40)).toBeCloseTo(-0.7 + 0.0434 * Math.log(40), 3);
  });

  it('surfaces on their own', () => {
    expect(attachedCanopySurfaceGCp(canopy, 'upperMinus', 40 * 144, '7-22')).toBeCloseTo(
      -1.55 + 0.1737 * Math.log(40),
      3,
    );
    expect(attachedCanopySurfaceGCp(canopy, 'lowerMinus', 40 * 144, '7-22')).toBeCloseTo(
      -0.95 + 0.0651 * Math.log(40),
      3,
    );
    expect(attachedCanopySurfaceGCp(canopy, 'plus', 40 * 144, '7-22')).toBeCloseTo(1 - 0.0869 * Math.log(40), 3);
  });

  it('ends at 2 percent, 60 ft and the eave', () => {
    const answer = (x: Partial<typeof canopy>) =>
      isOutOfScope(attachedCanopyGCp({ ...canopy, ...x }, 'plus', 1440, '7-16'));
    expect(answer({})).toBe(false);
    expect(answer({ slope: 0.25 / 12 })).toBe(true);
    expect(answer({ h: 61 * FT })).toBe(true);
    expect(answer({ hc: 10.1 * FT })).toBe(true);
  });

  it('pressure with and without Kd', () => {
    expect(attachedCanopyPressure(30, -1.2, 0.85, '7-16')).toBeCloseTo(-36, 12);
    expect(attachedCanopyPressure(30, -1.2, 0.85, '7-22')).toBeCloseTo(-30.6, 12);
    expect(attachedCanopyPressure(10, 0.6, 0.85, '7-16')).toBe(16);
  });
});
