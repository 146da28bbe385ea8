/**
 * A second opinion on whole frames, sharing no formula with the solver: element stiffness from the flexibility of a
 * cantilever (unit-load method, integrated by Gauss points), releases as unknowns of their own instead of condensation,
 * supports as rows of a dense system, and Gauss elimination with pivoting.
 */
import { memberAxes } from '../../base/geometry/index.js';
import { dot, type Vec3 } from '../../base/vec.js';
import { FREEDOMS, type FrameCase, type FrameElement, type FrameModel } from './index.js';

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

export function secondOpinion(
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
