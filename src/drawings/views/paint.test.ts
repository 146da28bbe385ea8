/** The order is right wherever one looks: at any point the facet painted last is the nearest one there. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { box } from '../../base/geometry/index.js';
import type { Vec3 } from '../../base/vec.js';
import { type Facet, paintOrder } from './paint.js';

/** Height of a facet's plane over a point of the picture, when the point is inside it; clear of its edges. */
function over(f: Facet<unknown>, x: number, y: number): number | undefined {
  const p = f.points;
  let inside = true;
  for (let i = 0; i < p.length; i++) {
    const [a, b] = [p[i]!, p[(i + 1) % p.length]!];
    if ((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) < 1e-6) inside = false;
  }
  if (!inside) return undefined;
  const [a, b, c] = [p[0]!, p[1]!, p[2]!];
  const u = { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z };
  const v = { x: c.x - a.x, y: c.y - a.y, z: c.z - a.z };
  const n = { x: u.y * v.z - u.z * v.y, y: u.z * v.x - u.x * v.z, z: u.x * v.y - u.y * v.x };
  return a.z - (n.x * (x - a.x) + n.y * (y - a.y)) / n.z;
}

function check(facets: readonly Facet<number>[], points: readonly (readonly [number, number])[]): void {
  const painted = paintOrder(facets);
  for (const [x, y] of points) {
    const last = painted.filter((f) => over(f, x, y) !== undefined).at(-1);
    const heights = facets.map((f) => over(f, x, y) ?? Number.NEGATIVE_INFINITY);
    const nearest = Math.max(...heights);
    if (last === undefined) continue;
    expect(over(last, x, y)!).toBeCloseTo(nearest, 4);
  }
}

const SIZE = 20;
const grid = Array.from({ length: SIZE * SIZE }, (_, i) => [0.503 + (i % SIZE), 0.507 + Math.floor(i / SIZE)] as const);

it('paints three bars that lie over one another in a ring', () => {
  const bar = (of: number, points: readonly (readonly [number, number, number])[]): Facet<number> => ({
    of,
    points: points.map(([x, y, z]): Vec3 => ({ x, y, z })),
  });
  const ring = [
    bar(0, [
      [1, 4, 0],
      [19, 4, 8],
      [19, 7, 8],
      [1, 7, 0],
    ]),
    bar(1, [
      [15, 1, 0],
      [18, 1, 0],
      [9, 19, 8],
      [6, 19, 8],
    ]),
    bar(2, [
      [2, 1, 8],
      [5, 1, 8],
      [14, 19, 0],
      [11, 19, 0],
    ]),
  ];
  check(ring, grid);
  // No order of the whole bars is right, so at least one was cut.
  expect(paintOrder(ring).length).toBeGreaterThan(3);
});

it('paints random boxes, also ones that run through each other', () => {
  const one = fc.record({
    x: fc.integer({ min: 0, max: 14 }),
    y: fc.integer({ min: 0, max: 14 }),
    z: fc.integer({ min: 0, max: 14 }),
    w: fc.integer({ min: 1, max: 6 }),
    h: fc.integer({ min: 1, max: 6 }),
    d: fc.integer({ min: 1, max: 6 }),
    lean: fc.integer({ min: -4, max: 4 }),
  });
  fc.assert(
    fc.property(fc.array(one, { minLength: 1, maxLength: 12 }), (boxes) => {
      const facets = boxes.flatMap((b, of) => {
        const s = box({ x: b.x, y: b.y, z: b.z }, { x: b.x + b.w, y: b.y + b.h, z: b.z + b.d });
        // Leaning boxes have faces that are square to nothing.
        const v = s.vertices.map((p) => ({ x: p.x + 0.13 * b.lean * p.z, y: p.y, z: p.z + 0.11 * b.lean * p.y }));
        return s.faces.map((f): Facet<number> => ({ of, points: f.map((k) => v[k]!) }));
      });
      const facing = facets.filter((f) => {
        const p = f.points;
        return p.reduce((sum, a, i) => sum + a.x * p[(i + 1) % p.length]!.y - a.y * p[(i + 1) % p.length]!.x, 0) > 1e-6;
      });
      check(facing, grid);
    }),
    { seed: 20_261_125, numRuns: 60 },
  );
});
