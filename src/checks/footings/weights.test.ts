/** Soil pressure of piers on pads that come up through a slab, whole footings worked by hand. */
import { describe, expect, it } from 'vitest';
import type { SlabPlaced } from '../../structure/model.js';
import { explained, stepValue } from '../explained.testing.js';
import { NONE, runFirst, v } from '../testing.js';
import { footingFlexure, footingShear } from './plain-concrete.js';
import { under } from './pushed.testing.js';
import { soilBearing } from './soil-bearing.js';

/** A pier on a pad; `out` is how far it stands over the surface, z in inches with the surface at −12. */
const pierOnPad = (size: number, pier: number, bottom: number, out: number) => {
  const area = (Math.PI / 4) * pier ** 2;
  return {
    kind: 'pier-on-pad',
    size,
    bearingArea: size ** 2,
    pierDiameter: pier,
    padThickness: 12,
    top: -12 + out,
    bottom: -12 - bottom,
    concrete: size ** 2 * 12 + area * (bottom + out - 12),
    soilOver: (size ** 2 - area) * (bottom - 12),
    steel: '(4) #5 vertical',
  } as const;
};
const slabAt = (top: number): SlabPlaced => ({
  mark: 'S1',
  state: 'existing',
  outline: [v(-60, -60, 0), v(60, -60, 0), v(60, 60, 0), v(-60, 60, 0)],
  top: { z0: top, gx: 0, gy: 0 },
  thickness: 4,
  path: '/patio/slabs/0',
});
const load = (P: number) => [v(0, 0, P), NONE, NONE];

describe('soil displaced by a pier through a slab', () => {
  // 30 in pad and 16 in pier, 30 in in all: Wc = (10 800 + 201.06·18)/1728·150 = 1251.66 lb. Soil reaches 14 in over the pad,
  // the slab above displaced none: Wd = (10 800 + 201.06·14)/17.28 = 787.90, (2747.71 + 1251.66 − 787.90)/6.25 ft² = 513.84.
  const small = pierOnPad(30, 16, 30, 0);
  it.each([
    ['over the grade', { grade: { z0: -16, gx: 0, gy: 0 } }],
    ['flush with the grade', { slabs: [slabAt(-12)] }],
    ['over the grade, its underside on it', { slabs: [slabAt(-12)], grade: { z0: -16, gx: 0, gy: 0 } }],
  ])('%s', (_name, more) => {
    const ctx = under(load(2747.71), undefined, small, more);
    expect(runFirst(soilBearing, ctx).demand).toBeCloseTo(513.84, 1);
    const lines = explained(soilBearing, ctx);
    expect(stepValue(lines, 'Wc')).toBeCloseTo(1251.66, 1);
    expect(stepValue(lines, 'Wd')).toBeCloseTo(787.9, 1);
    // The same 14 in: (900 − 201.06)·14/17.28.
    expect(stepValue(lines, 'Ws')).toBeCloseTo(566.27, 1);
    expect(JSON.stringify(lines)).toContain('π/4 · 16² · 14)/1728');
  });
  it('a removed slab is no slab', () => {
    const gone: SlabPlaced = { ...slabAt(-12), state: 'removed' };
    // Wd = (10 800 + 201.06·18)/17.28 = 834.44: (2747.71 + 417.22)/6.25 = 506.39.
    expect(runFirst(soilBearing, under(load(2747.71), undefined, small, { slabs: [gone] })).demand).toBeCloseTo(
      506.39,
      1,
    );
  });
  it('36 in pad, pier 2 in over a 4 in slab, soil of 105 pcf', () => {
    // Wc = (15 552 + 113.10·38)/1728·150 = 1723.06; Wd = (15 552 + 113.10·32)/1728·105 = 1164.91;
    // (4401.31 + 558.15)/9 ft² = 551.05.
    const large = pierOnPad(36, 12, 48, 2);
    const more = { grade: { z0: -16, gx: 0, gy: 0 }, soil: { density: 105 } };
    expect(runFirst(soilBearing, under(load(4401.31), undefined, large, more)).demand).toBeCloseTo(551.05, 1);
  });
});

describe('a pad under a shaft that the soil holds', () => {
  // 42 in pad, 18 in pier, 44 in of soil; 6468.92 lb factored, 29 lb of side force: 6468.92/12.25 ft² = 528.08 psf and no
  // moment; c = 18·√π/2 = 15.952, Mu = 528.08/144·42·13.024²/2 = 13 063 lb·in.
  const shape = pierOnPad(42, 18, 48, 0);
  const force = [NONE, v(-18.16, 1.41, 6468.92 / 1.6), NONE];
  const moment = [NONE, v(-67.5, -871.7, 0), NONE];
  const more = { grade: { z0: -16, gx: 0, gy: 0 } };
  it('bears its central load, and prints the depth that stands for it', () => {
    const ctx = under(force, moment, shape, more);
    expect(runFirst(footingFlexure, ctx).demand).toBeCloseTo(13063, 0);
    for (const check of [footingFlexure, footingShear, soilBearing]) {
      const lines = explained(check, ctx);
      expect(stepValue(lines, 'd'), check.id).toBe(44);
      expect(JSON.stringify(lines)).toContain('takes V and M of every combination');
      expect(stepValue(lines, 'Vx')).toBeLessThan(0);
      expect(stepValue(lines, 'My')).toBeLessThan(0);
    }
    expect(stepValue(explained(footingShear, ctx), 'qmax')).toBeCloseTo(528.08, 1);
  });
  it('takes the moment through its base where the shaft does not reach', () => {
    // In 12 in of soil Eq. 18-1 asks for more than there is: Wc = (21 168 + 254.47·4)/1728·150 = 1925.86, N = 5925.86,
    // e = 14 400/N = 2.430: N/12.25·(1 + 6·2.430/42) = 651.7, less Wd = 21 168/17.28 = 1225 lb over 12.25 ft²: 551.7.
    const shallow = under(
      [NONE, v(-300, 0, 4000), NONE],
      [NONE, v(0, -14400, 0), NONE],
      pierOnPad(42, 18, 16, 0),
      more,
    );
    expect(runFirst(soilBearing, shallow).demand).toBeCloseTo(551.68, 1);
    const lines = explained(soilBearing, shallow);
    expect(JSON.stringify(lines)).not.toContain('takes V and M of every combination');
  });
});
