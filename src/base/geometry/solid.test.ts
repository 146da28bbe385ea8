import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, dot, length, sub, type Vec3, v2, v3 } from '../vec.js';
import {
  barBetween,
  bounds,
  box,
  cutByPlane,
  faceNormal,
  heightAbove,
  memberAxes,
  middle,
  planeThrough,
  prism,
  type Solid,
  translate,
  volume,
} from './index.js';

const cube = box(v3(0, 0, 0), v3(2, 2, 2));
const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const vec = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const direction = vec.filter((v) => length(v) > 1);

/** Every corner is behind every face, and each edge is run once each way: closed, convex, facing outward. */
function expectSound(s: Solid): void {
  const edges = new Map<string, number>();
  for (const face of s.faces) {
    expect(face.length).toBeGreaterThanOrEqual(3);
    const p = planeThrough(s.vertices[face[0]!]!, faceNormal(s, face));
    for (const v of s.vertices) expect(heightAbove(p, v)).toBeLessThan(1e-5);
    face.forEach((i, k) => {
      const j = face[(k + 1) % face.length]!;
      edges.set(`${i}>${j}`, (edges.get(`${i}>${j}`) ?? 0) + 1);
    });
  }
  for (const [edge, count] of edges) {
    const [i, j] = edge.split('>');
    expect(count).toBe(1);
    expect(edges.get(`${j}>${i}`)).toBe(1);
  }
}

describe('solids', () => {
  it('box', () => {
    expect(volume(cube)).toBeCloseTo(8, 12);
    expectSound(cube);
    expect(bounds(translate(cube, v3(1, 2, 3)))).toEqual({ min: v3(1, 2, 3), max: v3(3, 4, 5) });
    expect(volume(translate(cube, v3(1e6, 0, 0)))).toBeCloseTo(8, 6);
  });

  it('prism faces outward whichever way the profile turns or runs', () => {
    const triangle = [v2(0, 0), v2(3, 0), v2(0, 4)];
    for (const profile of [triangle, [...triangle].reverse()]) {
      for (const run of [5, -5]) {
        const s = prism(profile, v3(1, 1, 1), v3(0, 1, 0), v3(0, 0, 1), v3(run, 0, 0));
        expectSound(s);
        expect(volume(s)).toBeCloseTo(30, 12);
      }
    }
  });

  it('bar: depth along up, line at the centre, shifts and extensions', () => {
    const s = barBetween(v3(0, 0, 100), v3(120, 0, 100), v3(0, 0, 1), 3, 11);
    expectSound(s);
    expect(bounds(s)).toEqual({ min: v3(0, -1.5, 94.5), max: v3(120, 1.5, 105.5) });
    const hung = barBetween(v3(0, 0, 100), v3(120, 0, 100), v3(0, 0, 1), 3, 11, {
      rise: -5.5,
      aside: 2,
      extendStart: 6,
      extendEnd: -1,
    });
    // Local z = x × y = (1,0,0) × (0,0,1) = (0,-1,0): aside goes to -y.
    expect(bounds(hung)).toEqual({ min: v3(-6, -3.5, 89), max: v3(119, -0.5, 100) });
    expect(() => barBetween(v3(0, 0, 0), v3(0, 0, 9), v3(0, 0, 1), 1, 1)).toThrow(RangeError);
  });

  it('bar on a slope keeps its section square to the line', () => {
    fc.assert(
      fc.property(vec, direction, direction, (a, run, up) => {
        fc.pre(memberAxes(a, add(a, run), up) !== undefined);
        const s = barBetween(a, add(a, run), up, 3, 7);
        expectSound(s);
        expect(volume(s) / (21 * length(run))).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('cutByPlane', () => {
  it('halves a cube, level and on the diagonal', () => {
    expect(volume(cutByPlane(cube, planeThrough(v3(1, 1, 1), v3(0, 0, 1)))!)).toBeCloseTo(4, 12);
    const wedge = cutByPlane(cube, planeThrough(v3(0, 0, 0), v3(1, 0, -1)))!;
    expect(volume(wedge)).toBeCloseTo(4, 12);
    expect(wedge.vertices).toHaveLength(6);
    expectSound(wedge);
  });

  it('cuts the regular hexagon out of a cube', () => {
    const half = cutByPlane(cube, planeThrough(v3(1, 1, 1), v3(1, 1, 1)))!;
    expect(half.faces.at(-1)).toHaveLength(6);
    expect(volume(half)).toBeCloseTo(4, 12);
    expectSound(half);
  });

  it('takes a corner off: a tetrahedron of volume 1/6', () => {
    const rest = cutByPlane(cube, planeThrough(v3(1, 0, 0), v3(-1, -1, -1)))!;
    expect(volume(rest)).toBeCloseTo(8 - 1 / 6, 12);
    expectSound(rest);
  });

  it('says all, or nothing', () => {
    expect(cutByPlane(cube, planeThrough(v3(0, 0, 2), v3(0, 0, 1)))).toBe(cube);
    expect(cutByPlane(cube, planeThrough(v3(0, 0, 0), v3(0, 0, 1)))).toBeUndefined();
    expect(cutByPlane(cube, planeThrough(v3(0, 0, -5), v3(0, 0, 1)))).toBeUndefined();
  });

  it('two sides of any cut add up, stay sound, and lie on their own sides', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(vec, direction), { minLength: 1, maxLength: 6 }), (planes) => {
        let s: Solid = box(v3(-40, -30, -20), v3(40, 30, 20));
        for (const [p, n] of planes) {
          const at: Vec3 = { x: p.x / 3, y: p.y / 3, z: p.z / 3 };
          const plane = planeThrough(at, n);
          const below = cutByPlane(s, plane);
          const above = cutByPlane(s, planeThrough(at, sub(v3(0, 0, 0), n)));
          const whole = volume(s);
          expect((below ? volume(below) : 0) + (above ? volume(above) : 0)).toBeCloseTo(whole, 4);
          for (const v of below?.vertices ?? []) expect(heightAbove(plane, v)).toBeLessThan(1e-6);
          if (!below || volume(below) < 1) return;
          expectSound(below);
          expect(heightAbove(plane, middle(below))).toBeLessThan(0);
          s = below;
        }
      }),
    );
  });
});

describe('memberAxes', () => {
  it('is right-handed and keeps y near up', () => {
    const a = memberAxes(v3(0, 0, 0), v3(12, 0, 7), v3(0, 0, 1))!;
    expect(a.y.z).toBeGreaterThan(0);
    expect(dot(a.x, a.y)).toBeCloseTo(0, 15);
    expect(length(sub(a.z, v3(0, -1, 0)))).toBeLessThan(1e-14);
    expect(memberAxes(v3(1, 1, 1), v3(1, 1, 1), v3(0, 0, 1))).toBeUndefined();
  });
});
