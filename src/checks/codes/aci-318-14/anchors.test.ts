import { describe, expect, it } from 'vitest';
import {
  anchorInteraction,
  BAR_AREAS,
  BAR_YIELD,
  BOLTS,
  barTension,
  basicBreakout,
  beta1,
  breakoutShear,
  breakoutTension,
  circleModulus,
  countedEmbedment,
  countedTensile,
  EARTH_COVER,
  edgeFactor,
  hookLength,
  hookShare,
  KC_CAST_IN,
  leastPedestalSteel,
  PEDESTAL_SLENDERNESS,
  PEDESTAL_STEEL,
  PHI_ANCHOR,
  PHI_TENSION,
  pierBending,
  plainAxial,
  plainCompressionFace,
  plainTensionFace,
  pryout,
  pullout,
  steelShear,
  steelTension,
  TIE,
  tensionWithBending,
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
    expect(barTension(0.8, 30000)).toBeCloseTo(21600, 6);
    expect(leastPedestalSteel(200)).toBeCloseTo(1, 9);
  });
});

describe('a ring of bars, by hand', () => {
  it('in bending', () => {
    // 12 in, (4) #4, 2500 psi: T = 0.4·60 000 = 24 000, ring 6 − 3 − 0.375 − 0.25 = 2.375; 24 000/2125 = 11.294 in² of
    // segment: α = 0.813, its centroid (2/3)·216·0.7264³/11.294 = 4.887; 0.9·24 000·(2·2.375/π + 4.887) = 138 220.
    expect(pierBending(2500, 12, 0.8, 0.5, 60000)! / 138220).toBeCloseTo(1, 3);
    // The neutral axis, 2.21 in, may lie 0.375·6 = 2.25 in deep: one size more is too much.
    expect(pierBending(2500, 12, 1.24, 0.625, 60000)).toBeUndefined();
    expect(pierBending(2500, 7, 0.8, 0.5, 60000)).toBeUndefined();
  });
  it('is a lower bound for four bars however the pier is turned', () => {
    // Full equilibrium of bars at yield (all but those in compression) about the same segment.
    const R = 12;
    const As = 1.24;
    const ours = pierBending(3000, 24, As, 0.625, 60000)!;
    const ring = R - 3 - 0.375 - 0.3125;
    for (let t = 0; t < Math.PI / 2; t += 0.05) {
      const y = [0, 1, 2, 3].map((k) => ring * Math.sin(t + (k * Math.PI) / 2));
      // Bars over 4 in below the compression edge yield in tension; the others are left out.
      const pulled = y.filter((d) => R + d > 4);
      const pull = pulled.length * (As / 4) * 60000;
      let angle = 0;
      while (R * R * (angle - Math.sin(angle) * Math.cos(angle)) < pull / (0.85 * 3000)) angle += 1e-4;
      const arm = ((2 / 3) * R ** 3 * Math.sin(angle) ** 3) / (pull / (0.85 * 3000));
      const full = 0.9 * pulled.reduce((sum, d) => sum + (As / 4) * 60000 * (d + arm), 0);
      expect(ours).toBeLessThanOrEqual(full * (1 + 1e-6));
    }
  });
  it('hooks and interaction', () => {
    expect(hookLength(2500, 0.5)).toBeCloseTo(8.4, 9);
    expect(hookLength(10000, 0.375)).toBe(6);
    expect(hookShare(2500, 0.625, 9)).toBeCloseTo(9 / 10.5, 9);
    expect(hookShare(2500, 0.5, 20)).toBe(1);
    expect(tensionWithBending(10, 20, 100, 50)).toBeCloseTo(0.5, 9);
    expect([EARTH_COVER, TIE]).toEqual([3, 0.375]);
    expect(beta1(2500)).toBe(0.85);
    expect(beta1(5000)).toBeCloseTo(0.8, 9);
    expect(beta1(10000)).toBe(0.65);
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
