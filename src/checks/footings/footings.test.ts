/** Footings against hand calculations. Soil of the fixture project: 1500 psf, 100 pcf, frost 12 in. */
import { describe, expect, it } from 'vitest';
import { bar, contextFor, joint, NONE, pad, postBar, runFirst, v } from '../testing.js';
import { footingFlexure, footingShear } from './plain-concrete.js';
import { footingSize, frostDepth, postFoot } from './sizes.js';
import { soilBearing } from './soil-bearing.js';
import { footingUplift } from './uplift.js';

const foot = joint({
  id: 'J2',
  mark: 'J2',
  kind: 'post-to-footing',
  ties: [
    { part: 'P1', along: 0 },
    { part: 'F1', along: 0 },
  ],
});
const under = (
  force: readonly ReturnType<typeof v>[],
  moment = [NONE, NONE, NONE],
  change: Parameters<typeof pad>[0] = {},
) =>
  contextFor({
    structure: { footings: [pad(change)], members: [bar(), postBar()], joints: [foot] },
    footings: { F1: { force, moment } },
  });

describe('soil pressure', () => {
  it('adds the concrete less the soil it displaces', () => {
    // 24 in square: 4 ft². Concrete 6912 in³ = 4 ft³: 600 lb, displacing 400 lb of soil: 200 net.
    // D+S: 2000 + 3000 + 200 = 5200 lb; 5200/4 = 1300 psf; ratio 1300/1500 = 0.86667.
    const f = runFirst(soilBearing, under([v(0, 0, 2000), v(0, 0, 3000), NONE]));
    expect(f.demand).toBeCloseTo(1300, 6);
    expect(f.ratio).toBeCloseTo(0.866667, 6);
    expect(f.combination).toBe('D+S');
  });

  it('adds an off-centre load inside the kern', () => {
    // M = 5200·2 = 10 400 lb·in in case S gives e = 2 in: 1300·(1 + 6·2/24) = 1950 psf: fails.
    const f = runFirst(soilBearing, under([v(0, 0, 2000), v(0, 0, 3000), NONE], [NONE, v(0, 10400, 0), NONE]));
    expect(f.demand).toBeCloseTo(1950, 4);
    expect(f.status).toBe('fail');
  });

  it('fails a footing that tips', () => {
    // 1000 + 600 + 400 lb, 26 000 lb·in: 13 in off centre of a base 24 in wide.
    const f = runFirst(soilBearing, under([v(0, 0, 1000), NONE, NONE], [v(0, 26000, 0), NONE, NONE]));
    expect(f.status).toBe('fail');
    expect(f.note).toContain('tip');
  });
});

describe('uplift', () => {
  it('holds with 0.6 of concrete and soil over the pad', () => {
    // 0.6·1000 − 0.6·2000 = −600 up... resistance 0.6·(600 + 6912/1728·100 = 400) = 600: exactly met.
    const f = runFirst(footingUplift, under([v(0, 0, 1000), NONE, v(0, 0, -2000)]));
    expect(f.demand).toBeCloseTo(600, 9);
    expect(f.capacity).toBeCloseTo(600, 9);
    expect(f.status).toBe('pass');
    expect(runFirst(footingUplift, under([v(0, 0, 1000), NONE, v(0, 0, -2001)])).status).toBe('fail');
  });
  it('does not arise where nothing lifts', () => {
    expect(runFirst(footingUplift, under([v(0, 0, 1000), NONE, NONE])).status).toBe('not-applicable');
  });
});

describe('pad as plain concrete', () => {
  const ctx = under([v(0, 0, 2000), v(0, 0, 3000), NONE]);
  it('bends at the face of the post', () => {
    // Pu = 1.2·2000 + 1.6·3000 = 7200; q = 7200/576 = 12.5 psi; arm (24 − 5.5)/2 = 9.25;
    // Mu = 12.5·24·9.25²/2 = 12 834; φMn = 0.6·5·√2500·24·10²/6 = 60 000; ratio 0.21391.
    const f = runFirst(footingFlexure, ctx);
    expect(f.demand).toBeCloseTo(12834.4, 1);
    expect(f.capacity).toBeCloseTo(60000, 6);
    expect(f.combination).toBe('1.2D+1.6S');
  });
  it('punches half a thickness from the face', () => {
    // Vu = 12.5·(576 − 15.5²) = 4196.9; φVn = 0.6·(8/3)·50·4·15.5·10 = 49 600.
    const f = runFirst(footingShear, ctx);
    expect(f.demand).toBeCloseTo(4196.9, 1);
    expect(f.capacity).toBeCloseTo(49600, 6);
  });
  it('does not arise for a straight pier', () => {
    const pier = under([v(0, 0, 2000), NONE, NONE], undefined, { round: true, pierDiameter: 24, padThickness: 0 });
    expect(runFirst(footingFlexure, pier).status).toBe('not-applicable');
  });
});

describe('sizes', () => {
  it('reaches below frost', () => {
    // −12 − (−36) = 24 in against 12.
    const f = runFirst(frostDepth, under([]));
    expect(f.capacity).toBe(24);
    expect(f.ratio).toBeCloseTo(0.5, 9);
    expect(runFirst(frostDepth, under([], undefined, { bottom: -23 })).status).toBe('fail');
  });
  it('keeps the least width, thickness and strength', () => {
    // Pier 8 in in a 36 in pad 12 thick: projection 14 in needs 14 in.
    const f = runFirst(footingSize, under([], undefined, { size: 36, pierDiameter: 8 }));
    expect(f.status).toBe('fail');
    expect(f.demand).toBe(14);
    expect(runFirst(footingSize, under([], undefined, { size: 10 })).status).toBe('fail');
    expect(runFirst(footingSize, under([], undefined, { fc: 2400 })).status).toBe('fail');
    const met = runFirst(footingSize, under([]));
    expect(met).toMatchObject({ status: 'pass', ratio: 1, prescriptive: true });
  });
  it('keeps an untreated post out of the wet', () => {
    // Foot at 0, surface at −12: 12 in over earth, 6 needed. At −8: 4 in.
    expect(runFirst(postFoot, under([])).ratio).toBeCloseTo(0.5, 9);
    const low = contextFor({
      structure: { footings: [pad()], members: [postBar({ start: { x: 0, y: 0, z: -8 } })], joints: [foot] },
    });
    expect(runFirst(postFoot, low).status).toBe('fail');
  });
});
