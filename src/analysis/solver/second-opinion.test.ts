/** The solver against a second opinion on random frames, and what must hold whatever the frame. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dot, type Vec3, v3 } from '../../base/vec.js';
import {
  appliedResultant,
  breakpoints,
  type FactoredFrame,
  type FrameCase,
  type FrameModel,
  factorFrame,
  reactionResultant,
  sampleElement,
  solveCase,
} from './index.js';
import { force, problem, real } from './random-frames.testing.js';
import { rotateCase, rotateFlat, rotateModel, rotationAbout } from './rotate.js';
import { secondOpinion } from './second-opinion.testing.js';

function factored(model: FrameModel): FactoredFrame {
  const r = factorFrame(model);
  if (!r.ok) throw new Error(`mechanism at node ${r.mechanism.node} ${r.mechanism.freedom}`);
  return r.frame;
}

function expectAlike(
  got: ArrayLike<number>,
  want: ArrayLike<number>,
  tolerance: number,
  kind: (i: number) => number,
): void {
  // Each kind (forces, moments, displacements, rotations) is held to its own largest value.
  const most = new Map<number, number>();
  for (let i = 0; i < want.length; i++) most.set(kind(i), Math.max(most.get(kind(i)) ?? 1e-12, Math.abs(want[i]!)));
  expect(got.length).toBe(want.length);
  for (let i = 0; i < want.length; i++)
    expect(Math.abs(got[i]! - want[i]!) / most.get(kind(i))!).toBeLessThan(tolerance);
}
const half = (i: number): number => Math.floor(i / 3) % 2;

describe('second opinion', () => {
  it('random frames with releases, springs, settlements and every load', () => {
    fc.assert(
      fc.property(problem(false), real(-1, 1), real(-1, 1), ({ model, c }, s1, s2) => {
        const last = model.nodes.length - 1;
        const full: FrameCase = {
          ...c,
          settlements: [
            { node: 0, freedom: 'dy', value: s1 },
            { node: 0, freedom: 'rx', value: s2 / 100 },
            { node: last, freedom: 'dx', value: s2 },
            { node: last, freedom: 'dz', value: s1 },
          ],
        };
        const got = solveCase(factored(model), full);
        const want = secondOpinion(model, full);
        expectAlike(got.displacements, want.displacements, 1e-7, half);
        expectAlike(got.reactions, want.reactions, 1e-7, half);
        expectAlike(got.endForces, want.endForces, 1e-7, half);
      }),
      { numRuns: 150 },
    );
  });
});

describe('properties', () => {
  it('every case is in equilibrium', () => {
    fc.assert(
      fc.property(problem(false), ({ model, c }) => {
        const frame = factored(model);
        const result = solveCase(frame, c);
        const a = appliedResultant(frame, c);
        const r = reactionResultant(frame, result);
        const size = result.reactions.reduce((s, v) => s + Math.abs(v), 1);
        for (let i = 0; i < 6; i++) expect(Math.abs(a[i]! + r[i]!) / (size * (i < 3 ? 1 : 300))).toBeLessThan(1e-9);
      }),
    );
  });

  it('a turned frame answers the same, turned', () => {
    fc.assert(
      fc.property(problem(true), force, real(0, 6), ({ model, c }, axis, angle) => {
        fc.pre(Math.hypot(axis.x, axis.y, axis.z) > 1);
        const turn = rotationAbout(axis, angle);
        const here = solveCase(factored(model), c);
        const there = solveCase(factored(rotateModel(model, turn)), rotateCase(c, turn));
        expectAlike(there.displacements, rotateFlat(here.displacements, turn), 1e-8, half);
        expectAlike(there.reactions, rotateFlat(here.reactions, turn), 1e-8, half);
        expectAlike(there.endForces, here.endForces, 1e-8, half);
      }),
    );
  });

  it('samples meet the end forces and the nodes, and the slope where nothing is released', () => {
    fc.assert(
      fc.property(problem(false), ({ model, c }) => {
        const frame = factored(model);
        const result = solveCase(frame, c);
        const fMost = result.endForces.reduce((s, v) => Math.max(s, Math.abs(v)), 1);
        const uMost = result.displacements.reduce((s, v) => Math.max(s, Math.abs(v)), 1e-9);
        model.elements.forEach((e, n) => {
          const l = frame.lengths[n]!;
          const s = sampleElement(frame, c, result, n, [0, l]);
          const rows = [s.n, s.vy, s.vz, s.t, s.my, s.mz];
          rows.forEach((row, i) => {
            expect(Math.abs(row[0]! + result.endForces[12 * n + i]!) / fMost).toBeLessThan(1e-9);
            expect(Math.abs(row[1]! - result.endForces[12 * n + 6 + i]!) / fMost).toBeLessThan(1e-7);
          });
          const axis = (k: number): Vec3 =>
            v3(frame.axes[9 * n + 3 * k]!, frame.axes[9 * n + 3 * k + 1]!, frame.axes[9 * n + 3 * k + 2]!);
          const u = (node: number, base: number, k: number): number =>
            dot(
              axis(k),
              v3(...([0, 1, 2].map((i) => result.displacements[6 * node + base + i]!) as [number, number, number])),
            );
          [s.dx, s.dy, s.dz].forEach((row, k) => {
            const open = k === 0 && e.releases?.start?.axial === true;
            if (!open) expect(Math.abs(row[0]! - u(e.start, 0, k)) / uMost).toBeLessThan(1e-7);
            expect(Math.abs(row[1]! - u(e.end, 0, k)) / uMost).toBeLessThan(1e-7);
          });
          if (e.releases) return;
          // v' = rz + Vy/GAs, w' = -ry + Vz/GAs; the slope by three points.
          const h = 1e-3 * l;
          if (breakpoints(frame, [c], n)[1]! < 3 * h) return; // three points would straddle a kink
          const near = sampleElement(frame, c, result, n, [0, h, 2 * h, 0.25 * l, 0.5 * l, 0.75 * l, l]);
          const slope = (row: Float64Array): number => (-3 * row[0]! + 4 * row[1]! - row[2]!) / (2 * h);
          const gy = e.Ay ? near.vy[0]! / (e.G * e.Ay) : 0;
          const gz = e.Az ? near.vz[0]! / (e.G * e.Az) : 0;
          const most = [...near.dy, ...near.dz].reduce((m, v) => Math.max(m, Math.abs(v)), uMost) / l;
          // Three points err by h²/3 of the third derivative, V/EI.
          const errY = (h * h * Math.abs(near.vy[0]!)) / (e.E * e.Iz);
          const errZ = (h * h * Math.abs(near.vz[0]!)) / (e.E * e.Iy);
          expect(Math.abs(slope(near.dy) - u(e.start, 3, 2) - gy)).toBeLessThan(1e-3 * most + errY);
          expect(Math.abs(slope(near.dz) + u(e.start, 3, 1) - gz)).toBeLessThan(1e-3 * most + errZ);
        });
      }),
    );
  });

  it('dividing an element changes nothing, also where a load stops', () => {
    const part = fc.constantFrom('all', 'before', 'after');
    fc.assert(
      fc.property(problem(false), real(0.1, 0.9), part, ({ model, c: given }, t, where) => {
        const e = model.elements[0]!;
        const a = model.nodes[e.start]!;
        const b = model.nodes[e.end]!;
        const [q1, q2, q3] = [v3(3, -7, -11), v3(-9, 20, 5), v3(6, 6, -30)];
        const tail = model.elements.length;
        const before = { element: 0, startForce: q1, endForce: q2 };
        const after = { element: 0, startForce: q2, endForce: q3 };
        const nodal = given.nodal ?? [];
        const [first, second] = [where !== 'after', where !== 'before'];
        const c: FrameCase = {
          nodal,
          distributed: [
            ...(first ? [{ ...before, measure: 'fraction' as const, to: t }] : []),
            ...(second ? [{ ...after, measure: 'fraction' as const, from: t }] : []),
          ],
        };
        const c2: FrameCase = {
          nodal,
          distributed: [...(first ? [before] : []), ...(second ? [{ ...after, element: tail }] : [])],
        };
        const whole = factored(model);
        const one = solveCase(whole, c);
        const split: FrameModel = {
          ...model,
          nodes: [...model.nodes, v3(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.z + t * (b.z - a.z))],
          elements: [
            { ...e, end: model.nodes.length },
            ...model.elements.slice(1),
            { ...e, start: model.nodes.length },
          ],
        };
        const parts = factored(split);
        const two = solveCase(parts, c2);
        expectAlike(two.displacements.subarray(0, one.displacements.length), one.displacements, 1e-7, half);
        const l = whole.lengths[0]!;
        const fMost = one.endForces.reduce((s, v) => Math.max(s, Math.abs(v)), 1);
        for (const x of [0.4 * t, t + 0.4 * (1 - t), t + 0.8 * (1 - t)]) {
          const s1 = sampleElement(whole, c, one, 0, [x * l]);
          const s2 = sampleElement(parts, c2, two, x < t ? 0 : tail, [(x < t ? x : x - t) * l]);
          for (const k of ['dx', 'dy', 'dz'] as const) {
            const bulge = sampleElement(whole, c, one, 0, [0, t * l, 0.5 * l, l])[k].reduce(
              (s, v) => Math.max(s, Math.abs(v)),
              0,
            );
            expect(Math.abs(s1[k][0]! - s2[k][0]!) / (bulge + 1e-6)).toBeLessThan(1e-6);
          }
          for (const k of ['n', 'vy', 'vz', 't', 'my', 'mz'] as const) {
            expect(Math.abs(s1[k][0]! - s2[k][0]!) / fMost).toBeLessThan(1e-7);
          }
        }
      }),
    );
  });
});

describe('faulty loads', () => {
  const model: FrameModel = {
    nodes: [v3(0, 0, 0), v3(100, 0, 0)],
    elements: [{ start: 0, end: 1, up: v3(0, 0, 1), E: 1e6, G: 1e5, A: 9, Iy: 9, Iz: 9, J: 9 }],
    supports: [{ node: 0, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed', ry: 'fixed', rz: 'fixed' }],
  };
  const f = v3(0, 0, -1);
  it.each<[string, FrameCase]>([
    ['no such element', { points: [{ element: 3, at: 0, force: f }] }],
    ['no such node', { nodal: [{ node: 7, force: f }] }],
    ['beyond the end', { points: [{ element: 0, at: 101, force: f }] }],
    ['end before start', { distributed: [{ element: 0, from: 50, to: 20, startForce: f }] }],
    ['not a number', { nodal: [{ node: 1, force: v3(0, Number.NaN, 0) }] }],
    ['settlement of a free node', { settlements: [{ node: 1, freedom: 'dz', value: -1 }] }],
  ])('throws on %s', (_, c) => {
    expect(() => solveCase(factored(model), c)).toThrow(RangeError);
  });

  it('takes a case with nothing in it, and a place a hair beyond the end', () => {
    expect([...solveCase(factored(model), {}).displacements].every((v) => v === 0)).toBe(true);
    const r = solveCase(factored(model), { points: [{ element: 0, at: 100.00000001, force: f }] });
    expect(r.reactions[2]).toBeCloseTo(1, 9);
  });
});
