import { describe, expect, it } from 'vitest';
import {
  anchorInteraction,
  BAR_AREAS,
  BAR_YIELD,
  BOLTS,
  barTension,
  basicBreakout,
  breakoutShear,
  breakoutTension,
  circleModulus,
  countedEmbedment,
  countedTensile,
  edgeFactor,
  KC_CAST_IN,
  leastPedestalSteel,
  PEDESTAL_SLENDERNESS,
  PEDESTAL_STEEL,
  PHI_ANCHOR,
  PHI_TENSION,
  plainAxial,
  plainCompressionFace,
  plainTensionFace,
  pryout,
  pullout,
  steelShear,
  steelTension,
} from './index.js';

describe('one headed bolt, by hand', () => {
  it('far from edges', () => {
    // 24·√2500·8^1.5 = 24·50·22.627 = 27 153; φ 0.7.
    expect(basicBreakout(KC_CAST_IN, 2500, 8)).toBeCloseTo(27152.9, 1);
    expect(breakoutTension(2500, 8, 100)).toBeCloseTo(0.7 * 27152.9, 0);
  });
  it('at edges nearer than 1.5·hef on all sides the embedment shrinks to c/1.5', () => {
    // c = 6: hef = 4, ANc/ANco = 12²/(9·16) = 1, ψ = 1: 0.7·24·50·8 = 6720.
    expect(countedEmbedment(8, 6)).toBe(4);
    expect(breakoutTension(2500, 8, 6)).toBeCloseTo(6720, 6);
    expect(edgeFactor(6, 8)).toBeCloseTo(0.85, 9);
  });
  it('steel, pullout, shear, pryout', () => {
    expect(countedTensile(58000, 36000)).toBe(58000);
    expect(countedTensile(90000, 36000)).toBe(68400);
    expect(countedTensile(150000, 130000)).toBe(125000);
    expect(steelTension(0.226, 58000)).toBeCloseTo(0.75 * 13108, 6);
    expect(steelShear(0.226, 58000)).toBeCloseTo(0.65 * 0.6 * 13108, 6);
    expect(pullout(2500, 0.454)).toBeCloseTo(0.7 * 9080, 6);
    expect(pryout(6720, 4)).toBe(13440);
    expect(pryout(6720, 2)).toBe(6720);
    // d = 5/8, le = 5: 7·8^0.2·√0.625 = 8.388 < 9; ·50·6^1.5 = 6164.0; ·0.7·(2/3)·0.9 = 2588.9.
    expect(breakoutShear(2500, 0.625, 8, 6)).toBeCloseTo(0.42 * 7 * 8 ** 0.2 * Math.sqrt(0.625) * 50 * 6 ** 1.5, 6);
  });
  it('pulled and pushed at once', () => {
    expect(anchorInteraction(0.9, 0.2)).toBe(0.9);
    expect(anchorInteraction(0.2, 0.95)).toBe(0.95);
    expect(anchorInteraction(0.6, 0.6)).toBeCloseTo(1, 9);
  });
});

describe('plain pedestals, by hand', () => {
  it('axial load and both edges', () => {
    // 12 in round, 36 tall: 0.6·0.6·2500·113.10·(1 − (36/384)²).
    const Ag = Math.PI * 36;
    const Sm = circleModulus(12);
    expect(Sm).toBeCloseTo(169.646, 3);
    const axial = plainAxial(2500, Ag, 36, 12);
    expect(axial).toBeCloseTo(0.36 * 2500 * Ag * (1 - 0.09375 ** 2), 6);
    expect(plainTensionFace(2500, Ag, Sm, 1131, 16964.6)).toBeCloseTo((100 - 10) / 150, 3);
    expect(plainTensionFace(2500, Ag, Sm, 50000, 100)).toBe(0);
    expect(plainCompressionFace(2500, Sm, axial, axial / 2, 0.3 * 0.85 * 2500 * Sm)).toBeCloseTo(1, 9);
    expect(plainAxial(2500, Ag, 1000, 12)).toBe(0);
  });
  it('bars', () => {
    expect(barTension(0.8)).toBeCloseTo(43200, 6);
    expect(leastPedestalSteel(200)).toBeCloseTo(1, 9);
  });
});

describe('printed limits', () => {
  it('as printed', () => {
    expect([PEDESTAL_SLENDERNESS, PEDESTAL_STEEL, PHI_TENSION, BAR_YIELD, KC_CAST_IN]).toEqual([
      3, 0.005, 0.9, 60000, 24,
    ]);
    expect(PHI_ANCHOR).toEqual({ steelTension: 0.75, steelShear: 0.65, concrete: 0.7 });
    expect([3, 4, 5, 6, 7, 8].map((n) => BAR_AREAS[n])).toEqual([0.11, 0.2, 0.31, 0.44, 0.6, 0.79]);
    // UNC threads: π/4·(d − 0.9743/n)², 13, 11, 10, 9, 8 to the inch.
    const threads = [13, 11, 10, 9, 8];
    BOLTS.forEach((b, i) => {
      expect(b.Ase).toBeCloseTo((Math.PI / 4) * (b.d - 0.9743 / threads[i]!) ** 2, 2);
      // Hexagon 1.5·d across flats less the bolt.
      expect(b.head / ((Math.sqrt(3) / 2) * (1.5 * b.d) ** 2 - (Math.PI / 4) * b.d ** 2)).toBeCloseTo(1, 1);
    });
  });
});
