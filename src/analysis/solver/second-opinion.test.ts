/**
 * A second opinion on whole frames, sharing no formula with the solver: element stiffness from the flexibility of a
 * cantilever (unit-load method, integrated by Gauss points), releases as unknowns of their own instead of condensation,
 * supports as rows of a dense system, and Gauss elimination with pivoting.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memberAxes } from '../../base/geometry/index.js';
import { dot, type Vec3, v3 } from '../../base/vec.js';
import {
  appliedResultant,
  breakpoints,
  type DistributedLoad,
  type FactoredFrame,
  FREEDOMS,
  type FrameCase,
  type FrameElement,
  type FrameModel,
  factorFrame,
  type MemberPointLoad,
  reactionResultant,
  type Support,
  sampleElement,
  solveCase,
} from './index.js';
import { rotateCase, rotateFlat, rotateModel, rotationAbout } from './rotate.js';

type Matrix = number[][];
const zeros = (r: number, c: number): Matrix => Array.from({ length: r }, () => new Array<number>(c).fill(0));

/** Gauss elimination with partial pivoting. */
function denseSolve(a: Matrix, b: number[]): number[] {
  const n = b.length;
  const m = a.map((row, i) => [...row, b[i]!]);
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c; r < n; r++) if (Math.abs(m[r]![c]!) > Math.abs(m[p]![c]!)) p = r;
    [m[c], m[p]] = [m[p]!, m[c]!];
    for (let r = c + 1; r < n; r++) {
      const k = m[r]![c]! / m[c]![c]!;
      if (k !== 0) for (let j = c; j <= n; j++) m[r]![j]! -= k * m[c]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let s = m[r]![n]!;
    for (let j = r + 1; j < n; j++) s -= m[r]![j]! * x[j]!;
    x[r] = s / m[r]![r]!;
  }
  return x;
}

/** Five-point Gauss rule on [a, b]. */
function gauss(a: number, b: number, g: (x: number, w: number) => void): void {
  const p1 = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3;
  const p2 = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3;
  const w1 = (322 + 13 * Math.sqrt(70)) / 900;
  const w2 = (322 - 13 * Math.sqrt(70)) / 900;
  for (const [p, w] of [
    [0, 128 / 225],
    [p1, w1],
    [-p1, w1],
    [p2, w2],
    [-p2, w2],
  ] as const) {
    const x = (a + b) / 2 + (p * (b - a)) / 2;
    g(x, (w * (b - a)) / 2);
  }
}

/** Section forces [N Vy Vz T My Mz] at x from a force and couple at s ≥ x. */
const carried = (f: readonly number[], arm: number): number[] => [
  f[0]!,
  f[1]!,
  f[2]!,
  f[3]!,
  f[4]! - arm * f[2]!,
  f[5]! + arm * f[1]!,
];

const flexibility = (e: FrameElement): number[] => [
  1 / (e.E * e.A),
  e.Ay ? 1 / (e.G * e.Ay) : 0,
  e.Az ? 1 / (e.G * e.Az) : 0,
  1 / (e.G * e.J),
  1 / (e.E * e.Iy),
  1 / (e.E * e.Iz),
];

interface LocalLoads {
  readonly trapezoids: readonly { a: number; b: number; q1: number[]; q2: number[] }[];
  readonly points: readonly { a: number; f: number[] }[];
}

/** Stiffness and held end forces of an unreleased element. */
function dense(e: FrameElement, l: number, loads: LocalLoads): { k: Matrix; held: number[] } {
  const c = flexibility(e);
  const f22 = zeros(6, 6);
  const tip = new Array<number>(6).fill(0);
  const places = [0, l, ...loads.trapezoids.flatMap((t) => [t.a, t.b]), ...loads.points.map((p) => p.a)].sort(
    (x, y) => x - y,
  );
  const section = (x: number): number[] => {
    const sum = new Array<number>(6).fill(0);
    const put = (f: readonly number[], arm: number): void => {
      for (const [i, v] of carried(f, arm).entries()) sum[i]! += v;
    };
    for (const p of loads.points) if (p.a > x) put(p.f, p.a - x);
    for (const t of loads.trapezoids) {
      const from = Math.max(x, t.a);
      if (from >= t.b) continue;
      gauss(from, t.b, (s, w) => {
        const r = (s - t.a) / (t.b - t.a);
        put([...[0, 1, 2].map((i) => w * (t.q1[i]! + r * (t.q2[i]! - t.q1[i]!))), 0, 0, 0], s - x);
      });
    }
    return sum;
  };
  for (let i = 1; i < places.length; i++) {
    if (places[i]! - places[i - 1]! < 1e-12) continue;
    gauss(places[i - 1]!, places[i]!, (x, w) => {
      const loaded = section(x);
      const unit = Array.from({ length: 6 }, (_, j) =>
        carried(
          Array.from({ length: 6 }, (_, k) => (k === j ? 1 : 0)),
          l - x,
        ),
      );
      for (let j = 0; j < 6; j++) {
        for (let s = 0; s < 6; s++) {
          tip[j]! += w * unit[j]![s]! * c[s]! * loaded[s]!;
          for (let k = 0; k < 6; k++) f22[j]![k]! += w * unit[j]![s]! * c[s]! * unit[k]![s]!;
        }
      }
    });
  }
  // Columns of the inverse flexibility; the start balances what the end carries.
  const k = zeros(12, 12);
  const startFor = (end: readonly number[]): number[] => carried(end, l).map((v) => -v);
  const stiff = (d: readonly number[]): number[] => denseSolve(f22, [...d]);
  for (let j = 0; j < 12; j++) {
    const u = Array.from({ length: 12 }, (_, i) => (i === j ? 1 : 0));
    const relative = [
      u[6]! - u[0]!,
      u[7]! - u[1]! - l * u[5]!,
      u[8]! - u[2]! + l * u[4]!,
      u[9]! - u[3]!,
      u[10]! - u[4]!,
      u[11]! - u[5]!,
    ];
    const end = stiff(relative);
    for (const [i, v] of [...startFor(end), ...end].entries()) k[i]![j] = v;
  }
  const end = stiff(tip).map((v) => -v);
  const total = section(-1e-15 * l);
  const start = startFor(end).map((v, i) => v - total[i]!);
  return { k, held: [...start, ...end] };
}

function secondOpinion(
  model: FrameModel,
  c: FrameCase,
): { displacements: number[]; reactions: number[]; endForces: number[] } {
  const nodes = 6 * model.nodes.length;
  const released: [element: number, freedom: number][] = [];
  model.elements.forEach((e, n) => {
    for (const [end, base] of [
      [e.releases?.start, 0],
      [e.releases?.end, 6],
    ] as const) {
      if (end?.axial) released.push([n, base]);
      if (end?.torsion) released.push([n, base + 3]);
      if (end?.my) released.push([n, base + 4]);
      if (end?.mz) released.push([n, base + 5]);
    }
  });
  const size = nodes + released.length;
  const big = zeros(size, size);
  const rhs = new Array<number>(size).fill(0);
  const parts = model.elements.map((e, n) => {
    const axes = memberAxes(model.nodes[e.start]!, model.nodes[e.end]!, e.up)!;
    const local = (v: Vec3 | undefined, l: boolean): number[] =>
      v ? (l ? [v.x, v.y, v.z] : [dot(axes.x, v), dot(axes.y, v), dot(axes.z, v)]) : [0, 0, 0];
    const l = axes.length;
    const x = (v: number, m: string | undefined): number => (m === 'fraction' ? v * l : v);
    const { k, held } = dense(e, l, {
      trapezoids: (c.distributed ?? [])
        .filter((d) => d.element === n)
        .map((d) => ({
          a: x(d.from ?? 0, d.measure),
          b: d.to === undefined ? l : x(d.to, d.measure),
          q1: local(d.startForce, d.axes === 'local'),
          q2: local(d.endForce ?? d.startForce, d.axes === 'local'),
        })),
      points: (c.points ?? [])
        .filter((p) => p.element === n)
        .map((p) => ({
          a: x(p.at, p.measure),
          f: [...local(p.force, p.axes === 'local'), ...local(p.moment, p.axes === 'local')],
        })),
    });
    // Row i of b: how local freedom i follows from the unknowns.
    const b = zeros(12, size);
    for (let i = 0; i < 12; i++) {
      const own = released.findIndex(([m, f]) => m === n && f === i);
      if (own >= 0) {
        b[i]![nodes + own] = 1;
        continue;
      }
      const base = 6 * (i < 6 ? e.start : e.end) + (i % 6 < 3 ? 0 : 3);
      const axis = [axes.x, axes.y, axes.z][i % 3]!;
      b[i]![base] = axis.x;
      b[i]![base + 1] = axis.y;
      b[i]![base + 2] = axis.z;
    }
    const kb = k.map((row) => Array.from({ length: size }, (_, j) => row.reduce((s, v, m) => s + v * b[m]![j]!, 0)));
    for (let i = 0; i < size; i++) {
      for (let m = 0; m < 12; m++) {
        const bmi = b[m]![i]!;
        if (bmi === 0) continue;
        rhs[i]! -= bmi * held[m]!;
        for (let j = 0; j < size; j++) big[i]![j]! += bmi * kb[m]![j]!;
      }
    }
    return { k, held, b };
  });
  for (const { node, force, moment } of c.nodal ?? []) {
    for (const [i, v] of [force?.x, force?.y, force?.z, moment?.x, moment?.y, moment?.z].entries())
      rhs[6 * node + i]! += v ?? 0;
  }
  const bare = big.map((r) => [...r]);
  const bareRhs = [...rhs];
  for (const s of model.supports) {
    FREEDOMS.forEach((name, f) => {
      const held = s[name];
      const i = 6 * s.node + f;
      const ground = (c.settlements ?? [])
        .filter((d) => d.node === s.node && d.freedom === name)
        .reduce((n, d) => n + d.value, 0);
      if (held === 'fixed') {
        big[i] = big[i]!.map((_, j) => (j === i ? 1 : 0));
        rhs[i] = ground;
      } else if (held !== undefined) {
        big[i]![i]! += held;
        rhs[i]! += held * ground;
      }
    });
  }
  const u = denseSolve(big, rhs);
  const reactions = bare.slice(0, nodes).map((row, i) => row.reduce((s, v, j) => s + v * u[j]!, 0) - bareRhs[i]!);
  const endForces = parts.flatMap(({ k, held, b }) => {
    const d = b.map((row) => row.reduce((s, v, j) => s + v * u[j]!, 0));
    return k.map((row, i) => held[i]! + row.reduce((s, v, j) => s + v * d[j]!, 0));
  });
  return { displacements: u.slice(0, nodes), reactions, endForces };
}

// ---- random problems

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const force = fc.record({ x: real(-500, 500), y: real(-500, 500), z: real(-500, 500) });
const flag = fc.boolean();

const element = (start: number, end: number): fc.Arbitrary<FrameElement> =>
  fc.record(
    {
      start: fc.constant(start),
      end: fc.constant(end),
      up: fc.constantFrom(v3(0, 0, 1), v3(0.31, 0.87, -0.2), v3(-0.7, 0.1, 0.4)),
      E: real(8e5, 2e6),
      G: real(5e4, 2e5),
      A: real(5, 60),
      Iy: real(5, 300),
      Iz: real(5, 900),
      J: real(5, 300),
      Ay: real(4, 40),
      Az: real(4, 40),
    },
    { requiredKeys: ['start', 'end', 'up', 'E', 'G', 'A', 'Iy', 'Iz', 'J'] },
  );
const releases = fc.record({
  start: fc.record({ axial: flag, torsion: flag, my: flag, mz: flag }),
  end: fc.record({ my: flag, mz: flag }),
});

/** A chain of nodes off a grid point each, stiffly joined in a row, and bars with releases between others. */
const frames = (isotropic: boolean): fc.Arbitrary<FrameModel> =>
  fc.integer({ min: 2, max: 6 }).chain((count) => {
    const shift = fc.record({ x: real(-20, 20), y: real(-20, 20), z: real(-20, 20) });
    const nodes = fc
      .array(shift, { minLength: count, maxLength: count })
      .map((s) => s.map((d, i) => v3(100 * (i % 3) + d.x, 90 * (i % 2) + d.y, 80 * Math.floor(i / 2) + d.z)));
    const chain = fc.tuple(...Array.from({ length: count - 1 }, (_, i) => element(i, i + 1)));
    const bars = fc.array(
      fc
        .uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 2, maxLength: 2 })
        .chain(([a, b]) => fc.tuple(element(a!, b!), releases).map(([e, r]) => ({ ...e, releases: r }))),
      { maxLength: 4 },
    );
    const foot: Support = { node: 0, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed', ry: 'fixed', rz: 'fixed' };
    const last = count - 1;
    const other: fc.Arbitrary<Support> = isotropic
      ? real(100, 1e5).map((k) => ({ node: last, dx: k, dy: k, dz: k }))
      : fc.record({
          node: fc.constant(last),
          dx: fc.constant('fixed' as const),
          dz: real(100, 1e5),
          ry: real(1e4, 1e7),
        });
    return fc.record({ nodes, chain, bars, other }).map((r) => ({
      nodes: r.nodes,
      elements: [...r.chain, ...r.bars],
      supports: [foot, r.other],
    }));
  });

const loadsOn = (m: FrameModel): fc.Arbitrary<FrameCase> => {
  const e = fc.integer({ min: 0, max: m.elements.length - 1 });
  const n = fc.integer({ min: 0, max: m.nodes.length - 1 });
  const axes = fc.constantFrom('global' as const, 'local' as const);
  const distributed: fc.Arbitrary<DistributedLoad> = fc
    .tuple(e, axes, real(0, 1), real(0, 1), force, force, flag)
    .filter(([, , a, b]) => Math.abs(a - b) > 1e-3)
    .map(([el, ax, a, b, p, q, part]) => ({
      element: el,
      axes: ax,
      measure: 'fraction' as const,
      ...(part && { from: Math.min(a, b), to: Math.max(a, b) }),
      startForce: p,
      endForce: q,
    }));
  const points: fc.Arbitrary<MemberPointLoad> = fc.record({
    element: e,
    axes,
    measure: fc.constant('fraction' as const),
    at: real(0.01, 0.99),
    force,
    moment: force,
  });
  return fc.record({
    nodal: fc.array(fc.record({ node: n, force, moment: force }), { maxLength: 3 }),
    distributed: fc.array(distributed, { maxLength: 4 }),
    points: fc.array(points, { maxLength: 3 }),
  });
};
/** One load is always there, so that results are compared against their own size and not against round-off. */
const problem = (isotropic: boolean) =>
  frames(isotropic).chain((model) => {
    const base = { node: model.nodes.length - 1, force: v3(200, -300, -400), moment: v3(3000, 5000, -4000) };
    return loadsOn(model).map((c) => ({ model, c: { ...c, nodal: [...(c.nodal ?? []), base] } }));
  });

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
