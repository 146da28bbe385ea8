import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { v3 } from '../../base/vec.js';
import { type FrameElement, type FrameModel, factorFrame, type Support } from './index.js';
import { reverseCuthillMcKee } from './order.js';
import { addTerm, factorise, freeMotion, makeSkyline, type Skyline, solveSkyline } from './skyline.js';

const termAt = (m: Skyline, i: number, j: number): number => (i >= m.top[j]! ? m.terms[m.diagonal[j]! - (j - i)]! : 0);
const at = (m: Skyline, i: number, j: number): number => (i <= j ? termAt(m, i, j) : termAt(m, j, i));

/** Any skyline profile, and a matrix that is positive definite because its diagonal outweighs its rows. */
const matrices = fc.integer({ min: 1, max: 25 }).chain((n) =>
  fc
    .record({
      tops: fc.array(fc.nat(1000), { minLength: n, maxLength: n }),
      values: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n * n, maxLength: n * n }),
    })
    .map(({ tops, values }) => {
      const m = makeSkyline(Int32Array.from(tops, (t, j) => t % (j + 1)));
      for (let j = 0; j < n; j++) for (let i = m.top[j]!; i < j; i++) addTerm(m, i, j, values[i * n + j]!);
      for (let j = 0; j < n; j++) {
        let row = 1;
        for (let i = 0; i < n; i++) row += Math.abs(at(m, i, j));
        addTerm(m, j, j, row);
      }
      return m;
    }),
);
const copy = (m: Skyline): Skyline => ({ ...m, terms: m.terms.slice() });

describe('skyline', () => {
  it('solves: the matrix times the answer is the right side', () => {
    fc.assert(
      fc.property(matrices, fc.integer(), (m, seed) => {
        const b = Float64Array.from({ length: m.size }, (_, i) => Math.sin(seed + 7 * i));
        const x = b.slice();
        const f = copy(m);
        expect(factorise(f)).toBe(-1);
        solveSkyline(f, x);
        for (let i = 0; i < m.size; i++) {
          let sum = 0;
          for (let j = 0; j < m.size; j++) sum += at(m, i, j) * x[j]!;
          expect(Math.abs(sum - b[i]!)).toBeLessThan(1e-10);
        }
      }),
    );
  });

  it('stops at a singular column and tells the free motion', () => {
    // Springs in a row between three points, held nowhere: all three move alike.
    const m = makeSkyline(Int32Array.from([0, 0, 1]));
    for (const [i, j, v] of [
      [0, 0, 2],
      [0, 1, -2],
      [1, 1, 5],
      [1, 2, -3],
      [2, 2, 3],
    ] as const)
      addTerm(m, i, j, v);
    expect(factorise(m)).toBe(2);
    expect([...freeMotion(m, 2)]).toEqual([1, 1, 1]);
  });
});

describe('order', () => {
  it('is a permutation, for any graph', () => {
    const graphs = fc.integer({ min: 1, max: 30 }).chain((n) => {
      const v = fc.integer({ min: 0, max: n - 1 });
      return fc.tuple(fc.constant(n), fc.array(fc.tuple(v, v), { maxLength: 60 }));
    });
    fc.assert(
      fc.property(graphs, ([n, edges]) => {
        expect([...reverseCuthillMcKee(n, edges)].sort((a, b) => a - b)).toEqual(
          Array.from({ length: n }, (_, i) => i),
        );
      }),
    );
  });

  it('puts a shuffled chain back in a row', () => {
    const n = 200;
    const name = (i: number): number => (i * 77) % n; // 77 and 200 share no factor
    const edges = Array.from({ length: n - 1 }, (_, i): [number, number] => [name(i), name(i + 1)]);
    const place = new Int32Array(n);
    reverseCuthillMcKee(n, edges).forEach((v, i) => {
      place[v] = i;
    });
    for (const [a, b] of edges) expect(Math.abs(place[a]! - place[b]!)).toBe(1);
  });
});

describe('a row of posts', () => {
  /** Posts under a beam, nodes numbered in a scattered order. */
  function row(posts: number): FrameModel {
    const count = 2 * posts;
    let step = 7919;
    while (count % step === 0) step += 2;
    const name = (i: number): number => (i * step) % count;
    const nodes = new Array(count);
    for (let i = 0; i < posts; i++) {
      nodes[name(2 * i)] = v3(120 * i, 0, 0);
      nodes[name(2 * i + 1)] = v3(120 * i, 0, 96);
    }
    const section = { E: 1.6e6, G: 1e5, A: 30, Iy: 60, Iz: 80, J: 100 };
    const elements: FrameElement[] = [];
    const supports: Support[] = [];
    for (let i = 0; i < posts; i++) {
      elements.push({ start: name(2 * i), end: name(2 * i + 1), up: v3(1, 0, 0), ...section });
      if (i > 0) elements.push({ start: name(2 * i - 1), end: name(2 * i + 1), up: v3(0, 0, 1), ...section });
      supports.push({
        node: name(2 * i),
        dx: 'fixed',
        dy: 'fixed',
        dz: 'fixed',
        rx: 'fixed',
        ry: 'fixed',
        rz: 'fixed',
      });
    }
    return { nodes, elements, supports };
  }
  const stored = (posts: number): number => {
    const r = factorFrame(row(posts));
    if (!r.ok) throw new Error('mechanism');
    return r.frame.matrix.terms.length;
  };
  it('keeps the stored terms in proportion, 10 to 1000 posts', () => {
    const ten = stored(10);
    expect(stored(100) / ten).toBeLessThan(11);
    expect(stored(1000) / ten).toBeLessThan(110);
  });
});
