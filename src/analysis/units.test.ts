import { describe, expect, it } from 'vitest';
import { beamShares, evenShares, leverShares, tributaryWidths } from './ledger.js';
import { edgeWidth, profileArea, profileMoment, stripProfile } from './profile.js';
import { rigidShare } from './side.js';
import { seatTruss } from './truss.js';
import { beamCurves, bearingForces, makeSpans, makeStations } from './two-bearings.js';

const rectangle = (x0: number, x1: number, y0: number, y1: number) => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

describe('width profile of a strip', () => {
  it('is one even piece on rectangles, cut by the region', () => {
    expect(stripProfile(rectangle(0, 100, 0, 50), rectangle(10, 60, 20, 50), 0, 16)).toEqual([
      { a: 20, b: 50, wa: 6, wb: 6 },
    ]);
    expect(stripProfile(rectangle(0, 100, 0, 50), rectangle(20, 60, 0, 50), 0, 16)).toEqual([]);
  });

  it('follows a sloping edge exactly: a triangle has half the area and its centroid at a third', () => {
    const triangle = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 0, y: 30 },
    ];
    const p = stripProfile(triangle, undefined, -5, 80);
    expect(profileArea(p)).toBeCloseTo(900, 9);
    expect(profileMoment(p) / profileArea(p)).toBeCloseTo(10, 9);
    expect(edgeWidth(triangle, 0, 10, 80)).toBeCloseTo(50, 9);
  });

  it('adds up over strips of any outline, whatever the cuts', () => {
    const trapezoid = [
      { x: 0, y: 0 },
      { x: 90, y: 0 },
      { x: 70, y: 40 },
      { x: 10, y: 40 },
    ];
    let sum = 0;
    for (const [a, b] of [
      [0, 7],
      [7, 33],
      [33, 80],
      [80, 90],
    ] as const)
      sum += profileArea(stripProfile(trapezoid, undefined, a, b));
    expect(sum).toBeCloseTo(((90 + 60) / 2) * 40, 9);
  });
});

describe('beam on two bearings against closed forms', () => {
  const L = 120;
  const EI = 2e8;
  const at = (x: number[], first: number, second: number, length: number) => ({
    beam: { length, first, second, EI },
    stations: { x: Float64Array.from(x), side: new Int8Array(x.length).fill(1), spanOf: new Int32Array(x.length) },
  });

  it('simple span, uniform load: wL/2, wL²/8, 5wL⁴/384EI', () => {
    const w = 3;
    const { beam, stations } = at([0, 60], 0, L, L);
    const lines = [{ a: 0, b: L, qa: w, qb: w }];
    const r = bearingForces(beam, lines, []);
    const c = beamCurves(beam, lines, [], r, stations);
    expect(r[0]).toBeCloseTo((w * L) / 2, 9);
    expect(c.v[0]).toBeCloseTo((w * L) / 2, 9);
    expect(c.m[1]).toBeCloseTo((w * L * L) / 8, 8);
    expect(c.sag[1]).toBeCloseTo((5 * w * L ** 4) / (384 * EI), 12);
  });

  it('point load off the middle: Pab/L and Pa²b²/3EIL under it', () => {
    const { beam, stations } = at([40], 0, L, L);
    const points = [{ at: 40, p: 500 }];
    const c = beamCurves(beam, [], points, bearingForces(beam, [], points), stations);
    expect(c.m[0]).toBeCloseTo((500 * 40 * 80) / L, 8);
    expect(c.sag[0]).toBeCloseTo((500 * 40 ** 2 * 80 ** 2) / (3 * EI * L), 12);
  });

  it('triangular load: wL/6 and wL/3, greatest moment wL²/(9√3)', () => {
    const w = 6;
    const { beam, stations } = at([L / Math.sqrt(3)], 0, L, L);
    const lines = [{ a: 0, b: L, qa: 0, qb: w }];
    const r = bearingForces(beam, lines, []);
    expect(r[0]).toBeCloseTo((w * L) / 6, 9);
    expect(r[1]).toBeCloseTo((w * L) / 3, 9);
    expect(beamCurves(beam, lines, [], r, stations).m[0]).toBeCloseTo((w * L * L) / (9 * Math.sqrt(3)), 8);
  });

  it('overhang with a load at its tip: −Pa at the bearing, tip sag Pa²(L+a)/3EI', () => {
    const a = 24;
    const { beam, stations } = at([L, L + a], 0, L, L + a);
    const points = [{ at: L + a, p: 100 }];
    // The tip value is taken just left of the load, where the curve still runs.
    stations.side[1] = -1;
    const c = beamCurves(beam, [], points, bearingForces(beam, [], points), stations);
    expect(c.m[0]).toBeCloseTo(-100 * a, 8);
    expect(c.v[1]).toBeCloseTo(100, 9);
    expect(c.sag[1]).toBeCloseTo((100 * a * a * (L + a)) / (3 * EI), 12);
  });

  it('has both faces of every bearing among its stations', () => {
    const s = makeStations(150, [12, 140]);
    expect([...s.x].filter((x) => x === 12).length).toBe(2);
    expect(makeSpans(150, [12, 140]).map((p) => p.kind)).toEqual(['overhang', 'span', 'overhang']);
    expect(makeSpans(140, [12, 140]).map((p) => p.kind)).toEqual(['overhang', 'span']);
    expect(Math.max(...s.spanOf)).toBe(2);
  });
});

describe('rigid shares', () => {
  it('gives a truss its lever and half the push to each seat', () => {
    const u = seatTruss(
      { first: { x: -100, y: 0, z: 90 }, second: { x: 100, y: 0, z: 90 } },
      { x: 50, y: 0, z: -400 },
      { x: -50, y: 3, z: 120 },
    );
    // Moment about the first seat: 400·50 gravity + 50·30 push, over 200.
    expect(u.second.z).toBeCloseTo(-(400 * 50 + 50 * 30) / 200, 9);
    expect(u.first.z + u.second.z).toBeCloseTo(-400, 9);
    expect([u.first.x, u.second.x]).toEqual([25, 25]);
  });

  it('keeps force and overturning of a side force', () => {
    const points = [
      { x: -90, y: 0, z: 95 },
      { x: 90, y: 0, z: 95 },
      { x: -90, y: 150, z: 95 },
      { x: 95, y: 160, z: 95 },
    ];
    const at = { x: 3, y: 70, z: 130 };
    const force = { x: 300, y: -120, z: 0 };
    const shares = rigidShare(points, at, force);
    let fx = 0;
    let fy = 0;
    let fz = 0;
    let mx = 0;
    let my = 0;
    shares.forEach((f, i) => {
      const p = points[i]!;
      fx += f.x;
      fy += f.y;
      fz += f.z;
      mx += (p.y - at.y) * f.z - (p.z - at.z) * f.y;
      my += (p.z - at.z) * f.x - (p.x - at.x) * f.z;
    });
    expect([fx, fy]).toEqual([300, -120]);
    expect(fz).toBeCloseTo(0, 9);
    expect(mx).toBeCloseTo(0, 6);
    expect(my).toBeCloseTo(0, 6);
  });

  it('bearings in one line tip only along it', () => {
    const points = [
      { x: 0, y: 0, z: 90 },
      { x: 0, y: 100, z: 90 },
    ];
    const shares = rigidShare(points, { x: 0, y: 50, z: 120 }, { x: 0, y: 200, z: 0 });
    expect(shares[0]!.z).toBeCloseTo(60, 9);
    expect(shares[1]!.z).toBeCloseTo(-60, 9);
  });

  it('splits a load between two fasteners and tiles a ledger', () => {
    expect(leverShares([8, 24, 40], 12)).toEqual([
      { index: 0, share: 0.75 },
      { index: 1, share: 0.25 },
    ]);
    expect(leverShares([8, 24], 2)).toEqual([{ index: 0, share: 1 }]);
    expect(tributaryWidths([8, 24, 40], 50)).toEqual([16, 16, 18]);
  });

  it('carries a ledger on its places as a continuous beam', () => {
    const close = (found: readonly number[], want: readonly number[]): void => {
      expect(found).toHaveLength(want.length);
      found.forEach((f, i) => {
        expect(f).toBeCloseTo(want[i]!, 9);
      });
    };
    // Two equal spans, load in the middle of one, and even: 13/32, 11/16, −3/32; 3/8, 10/8, 3/8 (common beam tables).
    close(beamShares([0, 10, 20], 5), [13 / 32, 11 / 16, -3 / 32]);
    close(evenShares([0, 10, 20], 20), [3.75, 12.5, 3.75]);
    // Beyond the last of two: the lever. On one: all.
    close(beamShares([8, 24], 2), [1 + 6 / 16, -6 / 16]);
    close(beamShares([8, 24], 30), [-6 / 16, 1 + 6 / 16]);
    close(beamShares([8], 30), [1]);
    // One span with unlike overhangs, even load 1: about the right support (8·20 − …): R1 = 40·(24 − 20)/16.
    close(evenShares([8, 24], 40), [10, 30]);
    // Rafter 5-1/4 in past the last of twenty places at 12 in; over many spans the end moment dies by 0.268 a span.
    const at = Array.from({ length: 20 }, (_, i) => 6 + 12 * i);
    const end = beamShares(at, 239.25);
    expect(end.at(-1)).toBeCloseTo(1 + ((3 - Math.sqrt(3)) * 5.25) / 12, 6);
    for (const x of [0, 3, 6, 11, 100.5, 233, 234, 239.25, 240]) {
      const s = beamShares(at, x);
      expect(s.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
      expect(s.reduce((a, b, i) => a + b * at[i]!, 0)).toBeCloseTo(x, 8);
    }
    expect(evenShares(at, 240).reduce((a, b) => a + b, 0)).toBeCloseTo(240, 8);
  });
});
