import type { FactoredFrame } from './factor.js';
import { DISTRIBUTED, localDistributed, localPoint, POINT } from './loads.js';
import type { CaseResult, FrameCase } from './model.js';

/** Inner forces and displacements at stations along one element, in its local axes (see the sign convention). */
export interface Samples {
  readonly n: Float64Array;
  readonly vy: Float64Array;
  readonly vz: Float64Array;
  readonly t: Float64Array;
  readonly my: Float64Array;
  readonly mz: Float64Array;
  /** Displacement from where the element was before loading. */
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly dz: Float64Array;
}

export function makeSamples(count: number): Samples {
  const row = () => new Float64Array(count);
  return { n: row(), vy: row(), vz: row(), t: row(), my: row(), mz: row(), dx: row(), dy: row(), dz: row() };
}

/**
 * Exact values at `stations` (distances from the start). At a point load the value is the one just before it; ask a
 * hair further on for the one after (see `breakpoints`). `out`, of as many stations, is written instead of new arrays.
 */
export function sampleElement(
  frame: FactoredFrame,
  c: FrameCase,
  result: CaseResult,
  element: number,
  stations: ArrayLike<number>,
  out: Samples = makeSamples(stations.length),
): Samples {
  const e = frame.model.elements[element]!;
  const l = frame.lengths[element]!;
  const f = result.endForces;
  const at = 12 * element;
  const flex: Flexibility = {
    axial: 1 / (e.E * e.A),
    bendY: 1 / (e.E * e.Iz),
    bendZ: 1 / (e.E * e.Iy),
    shearY: e.Ay ? 1 / (e.G * e.Ay) : 0,
    shearZ: e.Az ? 1 / (e.G * e.Az) : 0,
  };
  // Displacements are first found from a start that neither moves nor turns, then moved and turned to fit the nodes.
  // The turn takes up all that grows with x alone: also the shear strain of the end forces, left out here.
  const last = stations.length;
  const tip = [0, 0, 0] as [number, number, number];
  for (let i = 0; i <= last; i++) {
    const x = i < last ? stations[i]! : l;
    const half = (x * x) / 2;
    const dx = -f[at]! * x * flex.axial;
    const dy = (f[at + 1]! * half * (x / 3) - f[at + 5]! * half) * flex.bendY;
    const dz = (f[at + 2]! * half * (x / 3) + f[at + 4]! * half) * flex.bendZ;
    if (i === last) {
      tip[0] = dx;
      tip[1] = dy;
      tip[2] = dz;
      break;
    }
    out.n[i] = -f[at]!;
    out.vy[i] = -f[at + 1]!;
    out.vz[i] = -f[at + 2]!;
    out.t[i] = -f[at + 3]!;
    out.my[i] = -f[at + 4]! - x * f[at + 2]!;
    out.mz[i] = -f[at + 5]! + x * f[at + 1]!;
    out.dx[i] = dx;
    out.dy[i] = dy;
    out.dz[i] = dz;
  }

  const { first, next } = result.loadIndex;
  const distributed = c.distributed ?? [];
  for (let k = first[element]!; k >= 0; k = next[k]!) {
    if (k < distributed.length) {
      const load = new Float64Array(DISTRIBUTED);
      localDistributed(frame, distributed[k]!, load);
      for (let axis = 0; axis < 3; axis++) addDistributed(out, tip, load, axis, stations, l, flex);
    } else {
      const load = new Float64Array(POINT);
      localPoint(frame, c.points![k - distributed.length]!, load);
      addPoint(out, tip, load, stations, l, flex);
    }
  }
  fitToNodes(frame, result, element, stations, tip, out);
  return out;
}

/** Deflections per unit: 1/EA, 1/EI, 1/GAs. */
interface Flexibility {
  readonly axial: number;
  readonly bendY: number;
  readonly bendZ: number;
  readonly shearY: number;
  readonly shearZ: number;
}

/** Adds one direction of a distributed load: integrals of q, (x-s)·q and (x-s)³/6·q over the part before each station. */
function addDistributed(
  out: Samples,
  tip: [number, number, number],
  load: Float64Array,
  axis: number,
  stations: ArrayLike<number>,
  l: number,
  flex: Flexibility,
): void {
  const a = load[0]!;
  const b = load[1]!;
  const width = b - a;
  const q = load[2 + axis]!;
  if (!(width > 0) || (q === 0 && load[5 + axis] === 0)) return;
  const slope = (load[5 + axis]! - q) / width;
  // The same integrals at the far end of the load, and with (x-s)²/2; beyond it they are carried on as a polynomial.
  const r0 = width * (q + (slope * width) / 2);
  const r1 = width ** 2 * (q / 2 + (slope * width) / 6);
  const r2 = width ** 3 * (q / 6 + (slope * width) / 24);
  const r3 = width ** 4 * (q / 24 + (slope * width) / 120);
  const last = stations.length;
  for (let i = 0; i <= last; i++) {
    const x = i < last ? stations[i]! : l;
    if (x <= a) continue;
    let j0: number;
    let j1: number;
    let j3: number;
    if (x <= b) {
      const p = x - a;
      const pp = p * p;
      const sp = slope * p;
      j0 = p * (q + sp / 2);
      j1 = pp * (q / 2 + sp / 6);
      j3 = pp * pp * (q / 24 + sp / 120);
    } else {
      const p = x - b;
      j0 = r0;
      j1 = r1 + p * r0;
      j3 = r3 + p * (r2 + (p / 2) * (r1 + (p / 3) * r0));
    }
    if (axis === 0) {
      if (i < last) {
        out.n[i] = out.n[i]! - j0;
        out.dx[i] = out.dx[i]! - j1 * flex.axial;
      } else tip[0] -= j1 * flex.axial;
    } else if (axis === 1) {
      const d = j3 * flex.bendY - j1 * flex.shearY;
      if (i < last) {
        out.vy[i] = out.vy[i]! - j0;
        out.mz[i] = out.mz[i]! + j1;
        out.dy[i] = out.dy[i]! + d;
      } else tip[1] += d;
    } else {
      const d = j3 * flex.bendZ - j1 * flex.shearZ;
      if (i < last) {
        out.vz[i] = out.vz[i]! - j0;
        out.my[i] = out.my[i]! - j1;
        out.dz[i] = out.dz[i]! + d;
      } else tip[2] += d;
    }
  }
}

function addPoint(
  out: Samples,
  tip: [number, number, number],
  load: Float64Array,
  stations: ArrayLike<number>,
  l: number,
  flex: Flexibility,
): void {
  const a = load[0]!;
  const fx = load[1]!;
  const fy = load[2]!;
  const fz = load[3]!;
  const mx = load[4]!;
  const my = load[5]!;
  const mz = load[6]!;
  const last = stations.length;
  for (let i = 0; i <= last; i++) {
    const x = i < last ? stations[i]! : l;
    if (x <= a) continue;
    const p = x - a;
    const half = (p * p) / 2;
    const dx = -fx * p * flex.axial;
    const dy = (fy * half * (p / 3) - mz * half) * flex.bendY - fy * p * flex.shearY;
    const dz = (fz * half * (p / 3) + my * half) * flex.bendZ - fz * p * flex.shearZ;
    if (i === last) {
      tip[0] += dx;
      tip[1] += dy;
      tip[2] += dz;
      break;
    }
    out.n[i] = out.n[i]! - fx;
    out.vy[i] = out.vy[i]! - fy;
    out.vz[i] = out.vz[i]! - fz;
    out.t[i] = out.t[i]! - mx;
    out.my[i] = out.my[i]! - p * fz - my;
    out.mz[i] = out.mz[i]! + p * fy - mz;
    out.dx[i] = out.dx[i]! + dx;
    out.dy[i] = out.dy[i]! + dy;
    out.dz[i] = out.dz[i]! + dz;
  }
}

/**
 * Moves and turns the displaced shape so that its ends lie where the nodes went. The slope at the start is found this
 * way and not from the node's rotation, which a released end does not follow.
 */
function fitToNodes(
  frame: FactoredFrame,
  result: CaseResult,
  element: number,
  stations: ArrayLike<number>,
  tip: readonly [number, number, number],
  out: Samples,
): void {
  const { start, end, releases } = frame.model.elements[element]!;
  const l = frame.lengths[element]!;
  const u = result.displacements;
  const local = (node: number, axis: number): number => {
    const a = 9 * element + 3 * axis;
    return (
      frame.axes[a]! * u[6 * node]! + frame.axes[a + 1]! * u[6 * node + 1]! + frame.axes[a + 2]! * u[6 * node + 2]!
    );
  };
  const fromEnd = releases?.start?.axial === true;
  const x0 = fromEnd ? local(end, 0) - tip[0] : local(start, 0);
  const y0 = local(start, 1);
  const z0 = local(start, 2);
  const turnY = (local(end, 1) - y0 - tip[1]) / l;
  const turnZ = (local(end, 2) - z0 - tip[2]) / l;
  for (let i = 0; i < stations.length; i++) {
    const x = stations[i]!;
    out.dx[i] = out.dx[i]! + x0;
    out.dy[i] = out.dy[i]! + y0 + turnY * x;
    out.dz[i] = out.dz[i]! + z0 + turnZ * x;
  }
}

/**
 * Places along an element where loads of these cases start, stop or act, its ends included, in order. A point load
 * gives two: at it, where samples hold the value before, and a hair beyond, where they hold the value after.
 */
export function breakpoints(frame: FactoredFrame, cases: readonly FrameCase[], element: number): number[] {
  const l = frame.lengths[element]!;
  const hair = 1e-9 * l;
  const places = [0, l];
  const load = new Float64Array(DISTRIBUTED);
  const point = new Float64Array(POINT);
  for (const c of cases) {
    for (const d of c.distributed ?? []) {
      if (d.element !== element) continue;
      localDistributed(frame, d, load);
      places.push(load[0]!, load[1]!);
    }
    for (const p of c.points ?? []) {
      if (p.element !== element) continue;
      localPoint(frame, p, point);
      places.push(point[0]!, Math.min(l, point[0]! + hair));
    }
  }
  places.sort((a, b) => a - b);
  return places.filter((x, i) => i === 0 || x > places[i - 1]!);
}
