import { describe, expect, it } from 'vitest';
import { cross, dot, unit, type Vec3 } from '../../base/vec.js';
import { eaveHeight, matchEaves, ridgeHeight, slopeFor } from './eaves.js';
import { commonDifference, fillCuts, overlayShape, plateSetback, runAt } from './overlay-shape.js';

/** Line common to two planes n·p = d: a point with y = 0 chosen by hand in each test, and the direction. */
const direction = (a: Vec3, b: Vec3): Vec3 => unit(cross(a, b));
const deg = (r: number): number => (r * 180) / Math.PI;

const PAIRS = [
  [5 / 12, 5 / 12, 60],
  [4 / 12, 6 / 12, 54],
  [3.5 / 12, 4 / 12, 40],
  [8 / 12, 3 / 12, 30],
] as const;

describe('a new ridge up an old slope', () => {
  it.each(PAIRS)('old %f, new %f: valley by the planes themselves', (old, slope, rise) => {
    const s = overlayShape(old, slope, rise);
    // Old plane z = old·x; new plane on the side y > 0: z = rise − slope·y.
    const nOld: Vec3 = { x: -old, y: 0, z: 1 };
    const nNew: Vec3 = { x: 0, y: slope, z: 1 };
    const t = direction(nOld, nNew);
    const up = t.x > 0 ? t : { x: -t.x, y: -t.y, z: -t.z };
    // Foot: both planes at x = 0 is y = rise / slope; head: both at y = 0 is x = rise / old.
    expect(s.halfWidth).toBeCloseTo(rise / slope, 9);
    expect(s.run).toBeCloseTo(rise / old, 9);
    const steps = s.run / up.x;
    expect(s.valley).toBeCloseTo(steps, 9);
    expect(s.halfWidth + up.y * steps).toBeCloseTo(0, 9);
    expect(up.z * steps).toBeCloseTo(rise, 9);
    expect(s.planAngle).toBeCloseTo(Math.atan2(-up.y, up.x), 9);
    expect(s.valleySlope).toBeCloseTo(up.z / Math.hypot(up.x, up.y), 9);
    expect(s.between).toBeCloseTo(Math.acos(dot(unit(nOld), unit(nNew))), 9);
    // On the old slope: between the valley and the line of fall.
    expect(s.onOld).toBeCloseTo(Math.acos(dot(up, unit({ x: 1, y: 0, z: old }))), 9);
    for (const x of [0, 10, 30]) expect(rise - slope * runAt(s, x)).toBeCloseTo(old * x, 9);
    expect(runAt(s, s.run + 5)).toBe(0);
    expect(runAt(s, 7) - runAt(s, 31)).toBeCloseTo(commonDifference(s, 24), 9);
  });

  it('equal slopes: 45 degrees, half width equal to run', () => {
    const s = overlayShape(6 / 12, 6 / 12, 72);
    expect(deg(s.planAngle)).toBeCloseTo(45, 9);
    expect(s.halfWidth).toBeCloseTo(s.run, 9);
    // 144 along and 144 across and 72 up.
    expect(s.valley).toBeCloseTo(Math.hypot(144, 144, 72), 9);
  });

  it('by hand: 4 in 12 over 3-1/2 in 12, ridge 42 in over the start', () => {
    const s = overlayShape(3.5 / 12, 4 / 12, 42);
    expect(s.run).toBeCloseTo(144, 9);
    expect(s.halfWidth).toBeCloseTo(126, 9);
    expect(deg(s.planAngle)).toBeCloseTo(41.186, 3);
    expect(s.valley).toBeCloseTo(Math.hypot(144, 126, 42), 9);
    // Each step of 24 in shortens the run by 24 · 3.5 / 4 = 21 in.
    expect(commonDifference(s, 24)).toBeCloseTo(21, 9);
  });

  it('the seat is the trace of the old slope on the faces of the fill rafter', () => {
    const [old, slope] = [5 / 12, 7 / 12];
    const c = fillCuts({ old, slope });
    const along = unit({ x: 0, y: -1, z: slope });
    // Along the rafter's face (x constant) the old plane is level; across it, it rises at `old`.
    const level: Vec3 = { x: 0, y: -1, z: 0 };
    expect(c.seat).toBeCloseTo(Math.acos(dot(along, level)), 9);
    expect(c.plumb).toBeCloseTo(Math.PI / 2 - Math.acos(dot(along, { x: 0, y: 0, z: 1 })), 9);
    const nOld = unit({ x: -old, y: 0, z: 1 });
    expect(c.bevel).toBeCloseTo(Math.asin(Math.abs(dot(nOld, { x: 1, y: 0, z: 0 }))), 9);
  });

  it('plate: its outer edges touch the underside of the sheathing', () => {
    const { between } = overlayShape(5 / 12, 4 / 12, 50);
    const { low, high } = plateSetback(between, 1.5, 15 / 32);
    // Square to the valley, the old slope level: the underside stands d·tan − t/cos over it.
    const under = (d: number): number => d * Math.tan(between) - 15 / 32 / Math.cos(between);
    expect(under(low)).toBeCloseTo(0, 9);
    expect(under(high)).toBeCloseTo(1.5, 9);
  });
});

describe('eaves of unequal pitch', () => {
  it('overhang times slope and heel agree at the fascia', () => {
    // House: plate 97, heel 4, 5 in 12 over 18 in: 93-1/2. New: beam at 100, heel 5-1/2, 4 in 12 over 16 in: 100.17.
    const old = { over: 101, slope: 5 / 12, overhang: 18 };
    const now = { over: 105.5, slope: 4 / 12, overhang: 16 };
    expect(eaveHeight(old)).toBeCloseTo(93.5, 9);
    const m = matchEaves(old, now);
    expect(m.off).toBeCloseTo(105.5 - 16 / 3 - 93.5, 9);
    expect(eaveHeight({ ...now, overhang: m.overhang })).toBeCloseTo(93.5, 9);
    expect(eaveHeight({ ...now, over: now.over + m.bearing })).toBeCloseTo(93.5, 9);
  });
  it('ridge and slope undo each other', () => {
    expect(ridgeHeight(93.5, 5 / 12, 120)).toBeCloseTo(143.5, 9);
    expect(slopeFor(93.5, 143.5, 120)).toBeCloseTo(5 / 12, 9);
  });
});
