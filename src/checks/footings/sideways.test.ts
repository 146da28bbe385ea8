/** Footings under side force and moment, against hand calculations. Soil of the fixture: 1500 psf, 100 psf/ft, 100 pcf. */
import { describe, expect, it } from 'vitest';
import type { SlabPlaced } from '../../structure/model.js';
import { explained, stepValue } from '../explained.testing.js';
import { NONE, runFirst, v } from '../testing.js';
import { baseBearing } from './base-bearing.js';
import { embedment } from './embedment.js';
import { pierStrength } from './pier.js';
import { footingFlexure } from './plain-concrete.js';
import { PIER, said, under } from './pushed.testing.js';
import { soilBearing } from './soil-bearing.js';
import { footingOverturning, footingSliding } from './stability.js';

const SLAB: SlabPlaced = {
  mark: 'S1',
  state: 'existing',
  outline: [v(-60, -60, 0), v(60, -60, 0), v(60, 60, 0), v(-60, 60, 0)],
  top: { z0: -12, gx: 0, gy: 0 },
  thickness: 4,
  path: '/patio/slabs/0',
};

describe('soil pressure with moment', () => {
  it('both ways off centre: the corner pyramid in closed form', () => {
    // N = 5000 + 600 + 400 = 6000, e = 36 000/6000 = 6 = B/4 both ways: legs of the triangle 24, q = 6·6000/4 = 9000 psf,
    // less 800 lb of soil that lay there over 4 ft²: 8800.
    const ctx = under([v(0, 0, 5000), NONE, NONE], [v(36000, -36000, 0), NONE, NONE]);
    const f = runFirst(soilBearing, ctx);
    expect(f.demand).toBeCloseTo(8800, 1);
    // The printed pyramid gives back the load and its place.
    const lines = explained(soilBearing, ctx);
    expect(stepValue(lines, 'x0')).toBeCloseTo(24, 3);
    expect(stepValue(lines, 'ex')).toBeCloseTo(6, 4);
    expect(stepValue(lines, 'ey')).toBeCloseTo(6, 4);
  });
  it('one way beyond the kern, the other side lifted', () => {
    // N = 2000, e = 20 000/2000 = 10: 3·(12 − 10) = 6 in of contact, q = 2·2000/(2 ft · 0.5 ft) = 4000, less 200.
    expect(runFirst(soilBearing, under([v(0, 0, 1000), NONE, NONE], [v(0, 20000, 0), NONE, NONE])).demand).toBeCloseTo(
      3800,
      6,
    );
  });
  it('a shaft deep enough leaves the base its central load', () => {
    // π·36 in² = 0.7854 ft²; concrete typed in: 600 lb less 400: 200. (1000 + 200)/0.7854 = 1527.9 psf.
    const f = runFirst(soilBearing, under([v(20, 0, 1000), NONE, NONE], [v(0, 20 * 100, 0), NONE, NONE], PIER));
    expect(f.demand).toBeCloseTo(1200 / (Math.PI / 4), 3);
  });
});

describe('tipping over', () => {
  it('with six tenths of the weight', () => {
    // 0.6D + 0.6W: P = 600 − 300, W = 0.6·1000, N = 900; Mo = 9000; Mr = 900·12 = 10 800.
    const f = runFirst(footingOverturning, under([v(0, 0, 1000), NONE, v(0, 0, -500)], [NONE, NONE, v(0, 15000, 0)]));
    expect(f.combination).toBe('0.6D+0.6W');
    expect(f.demand).toBeCloseTo(9000, 6);
    expect(f.capacity).toBeCloseTo(10800, 6);
    expect(f.status).toBe('pass');
  });
  it('fails where nothing presses, and does not arise without side force', () => {
    const up = runFirst(footingOverturning, under([NONE, NONE, v(0, 0, -3000)], [NONE, NONE, v(0, 1000, 0)]));
    expect(up.status).toBe('fail');
    expect(runFirst(footingOverturning, under([v(0, 0, 1000), NONE, NONE])).status).toBe('not-applicable');
  });
});

describe('sliding', () => {
  const pushed = [v(0, 0, 1000), NONE, v(1000, 0, 0)];
  it('on the face of the pad alone when no friction is given', () => {
    // 600 lb against 100·2 ft·(2² − 1²)/2 = 300.
    const f = runFirst(footingSliding, under(pushed));
    expect(f.demand).toBeCloseTo(600, 9);
    expect(f.capacity).toBeCloseTo(300, 9);
    expect(f.status).toBe('fail');
  });
  it('adds friction only when it has a source', () => {
    // Dead 0.6·(1000 + 1000) = 1200, by 0.25: 300 more.
    expect(
      runFirst(footingSliding, under(pushed, undefined, {}, { soil: { friction: said(0.25) } })).capacity,
    ).toBeCloseTo(600, 9);
    expect(
      runFirst(footingSliding, under(pushed, undefined, {}, { soil: { friction: said(0.25, '') } })).capacity,
    ).toBeCloseTo(300, 9);
  });
  it('cohesion stops at half the dead load', () => {
    expect(
      runFirst(footingSliding, under(pushed, undefined, {}, { soil: { cohesion: said(130) } })).capacity,
    ).toBeCloseTo(300 + 520, 9);
    expect(
      runFirst(footingSliding, under(pushed, undefined, {}, { soil: { cohesion: said(900) } })).capacity,
    ).toBeCloseTo(300 + 600, 9);
  });
  it('snow that may be gone rubs nothing', () => {
    const f = runFirst(
      footingSliding,
      under([v(0, 0, 1000), v(400, 0, 4000), NONE], undefined, {}, { soil: { friction: said(0.25) } }),
    );
    // D+S: dead 1000 + 1000, not 6000.
    expect(f.capacity).toBeCloseTo(300 + 500, 9);
  });
});

describe('embedment', () => {
  // 500 lb at 8 ft above ground, turning about the underside with 96 + 90 in.
  const force = [v(500, 0, 2000), NONE, NONE];
  const moment = [v(0, 500 * 186, 0), NONE, NONE];
  /** Root of Eq. 18-1 by plain repetition, averaged. */
  const root = (P: number, h: number, b: number, s: number): number => {
    let d = 5;
    for (let i = 0; i < 200; i++) {
      const A = (2.34 * P) / (((s * d) / 3) * b);
      d = (d + 0.5 * A * (1 + Math.sqrt(1 + (4.36 * h) / A))) / 2;
    }
    return d * 12;
  };
  it('asks for the depth of Eq. 18-1', () => {
    const f = runFirst(embedment, under(force, moment, PIER, { soil: { lateral: said(150) } }));
    expect(f.demand).toBeCloseTo(root(500, 8, 1, 150), 3);
    expect(f.capacity).toBe(90);
    expect(f.status).toBe('pass');
    expect(runFirst(embedment, under(force, moment, PIER)).status).toBe('fail');
  });
  it('its printed last trial asks for itself', () => {
    const lines = explained(embedment, under(force, moment, PIER, { soil: { lateral: said(150) } }));
    expect(stepValue(lines, 'Mg')).toBeCloseTo(500 * 96, 6);
    expect(stepValue(lines, 'd') * 12).toBeCloseTo(root(500, 8, 1, 150), 3);
  });
  it('uses the slab only where it lies and the owner says it holds', () => {
    // d³ = 4.25·500·8/(150·1): d = 4.839 ft.
    const soil = { lateral: said(150) };
    const held = runFirst(embedment, under(force, moment, { ...PIER, slabHolds: true }, { soil, slabs: [SLAB] }));
    expect(held.demand).toBeCloseTo(12 * Math.cbrt((4.25 * 500 * 8) / 150), 6);
    // P + 4·Mg/(3·d) = 500 + 4·48 000/270 = 1211.1.
    expect(held.note).toContain('1212 lb');
    const free = runFirst(embedment, under(force, moment, { ...PIER, slabHolds: true }, { soil }));
    expect(free.demand).toBeCloseTo(root(500, 8, 1, 150), 3);
    expect(runFirst(embedment, under(force, moment, PIER, { soil, slabs: [SLAB] })).demand).toBeCloseTo(free.demand, 9);
  });
  it('doubles the soil for wind only, with a source, on a cover that stands free', () => {
    const wind = [v(0, 0, 2000), NONE, v(500 / 0.6, 0, 0)];
    const turn = [NONE, NONE, v(0, (500 * 186) / 0.6, 0)];
    const soil = { lateral: said(75), halfInchMotion: said(true) };
    expect(runFirst(embedment, under(wind, turn, PIER, { soil })).demand).toBeCloseTo(root(500, 8, 1, 150), 3);
    expect(runFirst(embedment, under(force, moment, PIER, { soil })).demand).toBeCloseTo(root(500, 8, 1, 75), 3);
    const held = under(wind, turn, { ...PIER, slabHolds: true }, { soil, slabs: [SLAB] });
    expect(runFirst(embedment, held).demand).toBeCloseTo(12 * Math.cbrt((4.25 * 500 * 8) / 75), 6);
    const bare = { lateral: said(75), halfInchMotion: said(true, '') };
    expect(runFirst(embedment, under(wind, turn, PIER, { soil: bare })).demand).toBeCloseTo(root(500, 8, 1, 75), 3);
  });
  it('a pier too shallow hands over to its pad', () => {
    const onPad = { pierDiameter: 8 };
    const ctx = under([v(300, 0, 2000), NONE, NONE], [v(0, 9000, 0), NONE, NONE], onPad);
    expect(runFirst(embedment, ctx).status).toBe('not-applicable');
    expect(runFirst(embedment, ctx).note).toContain('base');
    expect(runFirst(footingOverturning, ctx).demand).toBeCloseTo(9000, 6);
  });
  it('wants the hole 4 in wider than the post for concrete round it', () => {
    const embedded = { foot: -94, width: 12, diagonal: 7.78, cast: true, backfill: 'concrete' } as const;
    expect(runFirst(embedment, under([v(0, 0, 100), NONE, NONE], undefined, { ...PIER, embedded })).status).toBe(
      'not-applicable',
    );
    const tight = { ...embedded, diagonal: 8.5 };
    expect(runFirst(embedment, under([v(0, 0, 100), NONE, NONE], undefined, { ...PIER, embedded: tight })).status).toBe(
      'fail',
    );
  });
});

describe('pad under eccentric pressure', () => {
  it('takes the greatest pressure over the whole pad', () => {
    // 1.4D: P = 2800, N = 2800 + 1.4·1000 = 4200, e = 1.4·4000/4200 = 4/3: q = 4200/4·(1 + 8/24) = 1400 psf,
    // less 1.4·1000/4 = 350: 1050 psf = 7.2917 psi. Mu = 7.2917·24·9.25²/2 = 7486.7.
    const f = runFirst(footingFlexure, under([v(0, 0, 2000), NONE, NONE], [v(0, 4000, 0), NONE, NONE]));
    expect(f.combination).toBe('1.4D');
    expect(f.demand).toBeCloseTo((1050 / 144) * 24 * (9.25 ** 2 / 2), 3);
  });
  it('hangs from a lifted pier', () => {
    // Strength combinations of the fixture hold no wind: a dead case that lifts stands in. 1.4·300 = 420 lb on 576 in².
    const f = runFirst(footingFlexure, under([v(0, 0, -300), NONE, NONE]));
    expect(f.demand).toBeCloseTo((420 / 576) * 24 * (9.25 ** 2 / 2), 6);
  });
});

describe('pier', () => {
  const stub = { pierDiameter: 12, top: -6, steel: '(4) #4 vertical in pier' };
  it('bends as plain concrete', () => {
    // 1.4D, the base takes it: V = 140, M at the underside 14 000·1.4 = 19 600, at the pad's top 19 600 − 12·140 = 17 920.
    // Sm = π·12³/32 = 169.65, Ag = 113.1: 105.63 − 2800/113.1 = 80.87 psi against 0.6·5·50 = 150.
    const ctx = under([v(100, 0, 2000), NONE, NONE], [v(0, 14000, 0), NONE, NONE], stub);
    const f = runFirst(pierStrength, ctx);
    expect(f.demand).toBeCloseTo((17920 / ((Math.PI * 1728) / 32) - 2800 / (Math.PI * 36)) / 150, 6);
    expect(f.status).toBe('pass');
  });
  it('hangs on bars, and those are a two-hundredth of it', () => {
    // 0.8 in² of bars; least 0.005·113.1 = 0.5655; 420/(0.9·0.8·60 000 = 43 200).
    const f = runFirst(pierStrength, under([v(0, 0, -300), NONE, NONE], undefined, stub));
    expect(f.demand).toBeCloseTo(0.005 * Math.PI * 36, 6);
    expect(f.capacity).toBeCloseTo(0.8, 9);
    expect(
      runFirst(pierStrength, under([v(0, 0, -300), NONE, NONE], undefined, { ...stub, steel: 'none' })).status,
    ).toBe('fail');
  });
  it('prints the hardest pull, not the first, and the concrete by a combination of its own', () => {
    // 1.4D pulls 1.4·100 = 140 lb, 1.2D+1.6S 120 + 1.6·300 = 600: both ask for the same least steel.
    const ctx = under([v(0, 0, -100), v(0, 0, -300), NONE], undefined, stub);
    const f = runFirst(pierStrength, ctx);
    expect(f.demand).toBeCloseTo(0.005 * Math.PI * 36, 6);
    expect(f.combination).toBe('1.2D+1.6S');
    expect(stepValue(explained(pierStrength, ctx), 'P')).toBeCloseTo(-600, 6);
    // Dead load presses, snow as negative lifts: 1.4·1000 presses, 1200 − 1.6·2000 = −2000 pulls.
    const lines = explained(pierStrength, under([v(0, 0, 1000), v(0, 0, -2000), NONE], undefined, stub));
    const loads = lines.flatMap((l) => (l.kind === 'step' && l.symbol === 'P' ? [Math.round(l.value)] : []));
    expect(loads).toEqual([1400, -2000]);
  });
  it('stands no higher than three times its width', () => {
    const f = runFirst(pierStrength, under([v(0, 0, 10), NONE, NONE], undefined, { ...stub, top: 25 }));
    expect(f.demand).toBe(37);
    expect(f.capacity).toBe(36);
    expect(f.status).toBe('fail');
  });
  it('shears as a square of its area', () => {
    // Moments 1800 − 12·100 at the pad's top and 1800 − 24·100 at its own: 600 each way, small beside 1.4·100 against
    // 0.6·(4/3)·50·113.1 = 4523.9 lb.
    const level = { ...stub, top: -12 };
    const f = runFirst(pierStrength, under([v(100, 0, 1000), NONE, NONE], [v(0, 1800, 0), NONE, NONE], level));
    expect(f.demand).toBeCloseTo(140, 9);
    expect(f.capacity).toBeCloseTo(0.8 * 50 * Math.PI * 36, 6);
  });
  it('lifted and bent at once: on the line between both strengths of its bars', () => {
    // T = 420, M = 1.4·(9000 − 12·100) = 10 920; φTn = 43 200, φMn = 138 220 (its own test): 0.00972 + 0.0790.
    const ctx = under([v(100, 0, -300), NONE, NONE], [v(0, 9000, 0), NONE, NONE], stub);
    expect(stepValue(explained(pierStrength, ctx), 'i')).toBeCloseTo(420 / 43200 + 10920 / 138220, 4);
    expect(runFirst(pierStrength, ctx).status).toBe('pass');
    const bare = under([v(100, 0, -300), NONE, NONE], [v(0, 9000, 0), NONE, NONE], { ...stub, steel: 'none' });
    expect(runFirst(pierStrength, bare).status).toBe('fail');
    const crowded = under([v(100, 0, -300), NONE, NONE], [v(0, 9000, 0), NONE, NONE], {
      ...stub,
      steel: '(4) #6 vertical',
    });
    expect(runFirst(pierStrength, crowded).status).toBe('outside-scope');
  });
  it('cracked, stands by its bars', () => {
    // 1.4·(25 000 − 12·100) = 33 320: 196 psi less 1 of the load, against 150; on bars 33 320/138 220.
    const load = [v(100, 0, 100), NONE, NONE];
    const turn = [v(0, 25000, 0), NONE, NONE];
    expect(runFirst(pierStrength, under(load, turn, { ...stub, steel: 'none' })).status).toBe('fail');
    const ctx = under(load, turn, stub);
    expect(stepValue(explained(pierStrength, ctx), 'i')).toBeCloseTo((1.4 * 23800) / 138220, 3);
  });
  it('hooks that do not reach their yield hold their share', () => {
    // #5 in a 12 in pad: 9 in of 0.7·60 000·0.625/2500 = 10.5 in.
    const five = under([v(0, 0, -300), NONE, NONE], undefined, { ...stub, steel: '(4) #5 vertical' });
    expect(stepValue(explained(pierStrength, five), 'φTn')).toBeCloseTo(0.9 * 1.24 * 60000 * (9 / 10.5), 6);
  });
});

describe('post base on concrete', () => {
  it('spreads to the square that fits', () => {
    // 5.5² = 30.25 in² on a 24 in pad: spread 2. 0.6·0.85·2500·30.25·2 = 77 137; 1.2·2000 + 1.6·3000 = 7200.
    const f = runFirst(baseBearing, under([v(0, 0, 2000), v(0, 0, 3000), NONE]));
    expect(f.demand).toBeCloseTo(7200, 6);
    expect(f.capacity).toBeCloseTo(0.6 * 0.85 * 2500 * 30.25 * 2, 3);
  });
});
