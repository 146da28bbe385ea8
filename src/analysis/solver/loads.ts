import type { Vec3 } from '../../base/vec.js';
import { releaseForces, shearRatio } from './element.js';
import type { FactoredFrame } from './factor.js';
import type { DistributedLoad, FrameCase, LoadIndex, Measure, MemberPointLoad } from './model.js';

/** A distributed load in local axes: from, to, force per length [x y z] at from and at to. */
export const DISTRIBUTED = 8;
/** A point load in local axes: place, force [x y z], moment [x y z]. */
export const POINT = 7;

export function indexLoads(frame: FactoredFrame, c: FrameCase): LoadIndex {
  const distributed = c.distributed ?? [];
  const points = c.points ?? [];
  const first = new Int32Array(frame.lengths.length).fill(-1);
  const next = new Int32Array(distributed.length + points.length);
  for (let i = next.length - 1; i >= 0; i--) {
    const e = (i < distributed.length ? distributed[i] : points[i - distributed.length])!.element;
    if (!(e in first)) throw new RangeError(`load on element ${e}, which does not exist`);
    next[i] = first[e]!;
    first[e] = i;
  }
  return { first, next };
}

export function localDistributed(frame: FactoredFrame, load: DistributedLoad, out: Float64Array): void {
  const l = frame.lengths[load.element]!;
  out[0] = load.from === undefined ? 0 : place(load.from, load.measure, l);
  out[1] = load.to === undefined ? l : place(load.to, load.measure, l);
  if (out[0]! > out[1]!) throw new RangeError(`load on element ${load.element} ends before it starts`);
  const turn = load.axes !== 'local';
  toLocal(frame, load.element, load.startForce, turn, out, 2);
  toLocal(frame, load.element, load.endForce ?? load.startForce, turn, out, 5);
}

export function localPoint(frame: FactoredFrame, load: MemberPointLoad, out: Float64Array): void {
  out.fill(0);
  out[0] = place(load.at, load.measure, frame.lengths[load.element]!);
  const turn = load.axes !== 'local';
  if (load.force) toLocal(frame, load.element, load.force, turn, out, 1);
  if (load.moment) toLocal(frame, load.element, load.moment, turn, out, 4);
}

/** Distance from the start; a hair beyond an end is taken as the end. */
function place(at: number, measure: Measure | undefined, l: number): number {
  const x = measure === 'fraction' ? at * l : at;
  if (!(x >= -1e-6 * l && x <= l * (1 + 1e-6))) throw new RangeError(`place ${at} is not on an element of length ${l}`);
  return Math.min(l, Math.max(0, x));
}

function toLocal(frame: FactoredFrame, element: number, v: Vec3, turn: boolean, out: Float64Array, at: number): void {
  if (!turn) {
    out[at] = v.x;
    out[at + 1] = v.y;
    out[at + 2] = v.z;
    return;
  }
  const { axes } = frame;
  const r = 9 * element;
  out[at] = axes[r]! * v.x + axes[r + 1]! * v.y + axes[r + 2]! * v.z;
  out[at + 1] = axes[r + 3]! * v.x + axes[r + 4]! * v.y + axes[r + 5]! * v.z;
  out[at + 2] = axes[r + 6]! * v.x + axes[r + 7]! * v.y + axes[r + 8]! * v.z;
}

/**
 * Moments about the start of the loads on one element, Σ F·sⁿ, n from 0 to 3, by direction. A couple m is the limit of
 * two forces, Σ F·sⁿ = m·n·sⁿ⁻¹. `force1` is n = 1 without the couples, which shear no slice.
 */
interface LoadMoments {
  /** n = 0, 1, 2, 3 along y, then `force1`. */
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** n = 0, 1 of forces along x and of couples about x. */
  readonly x: Float64Array;
  readonly twist: Float64Array;
}

/** Reusable room for one case. */
export interface LoadRoom {
  readonly moments: LoadMoments;
  readonly distributed: Float64Array;
  readonly point: Float64Array;
  readonly forces: Float64Array;
}

export const makeLoadRoom = (): LoadRoom => ({
  moments: { y: new Float64Array(5), z: new Float64Array(5), x: new Float64Array(2), twist: new Float64Array(2) },
  distributed: new Float64Array(DISTRIBUTED),
  point: new Float64Array(POINT),
  forces: new Float64Array(12),
});

/** End forces, in `room.forces`, of one element under its loads with both ends held, its releases let go. */
export function heldEndForces(
  frame: FactoredFrame,
  c: FrameCase,
  index: LoadIndex,
  element: number,
  room: LoadRoom,
): void {
  const { moments, forces } = room;
  moments.x.fill(0);
  moments.y.fill(0);
  moments.z.fill(0);
  moments.twist.fill(0);
  const distributed = c.distributed ?? [];
  for (let i = index.first[element]!; i >= 0; i = index.next[i]!) {
    if (i < distributed.length) {
      localDistributed(frame, distributed[i]!, room.distributed);
      addDistributed(moments, room.distributed);
    } else {
      localPoint(frame, c.points![i - distributed.length]!, room.point);
      addPoint(moments, room.point);
    }
  }
  const e = frame.model.elements[element]!;
  const l = frame.lengths[element]!;
  forces[6] = -moments.x[1]! / l;
  forces[0] = -moments.x[0]! - forces[6]!;
  forces[9] = -moments.twist[1]! / l;
  forces[3] = -moments.twist[0]! - forces[9]!;
  holdBending(moments.y, e.E * e.Iz, e.G, e.Ay, l, forces, 1, 5, 1);
  // In the x-z plane the slope is -ry, so its couples change sign.
  holdBending(moments.z, e.E * e.Iy, e.G, e.Az, l, forces, 2, 4, -1);
  releaseForces(frame.eliminations[element]!, forces);
}

/** Three Gauss points integrate a straight-line load times s³ exactly. */
const GAUSS_AT = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)] as const;
const GAUSS_WEIGHT = [5 / 18, 8 / 18, 5 / 18] as const;

function addDistributed(m: LoadMoments, d: Float64Array): void {
  const width = d[1]! - d[0]!;
  for (let g = 0; g < 3; g++) {
    const t = GAUSS_AT[g]!;
    const s = d[0]! + t * width;
    const w = GAUSS_WEIGHT[g]! * width;
    const fx = w * (d[2]! + t * (d[5]! - d[2]!));
    m.x[0] = m.x[0]! + fx;
    m.x[1] = m.x[1]! + fx * s;
    addForce(m.y, w * (d[3]! + t * (d[6]! - d[3]!)), s);
    addForce(m.z, w * (d[4]! + t * (d[7]! - d[4]!)), s);
  }
}

function addPoint(m: LoadMoments, p: Float64Array): void {
  const s = p[0]!;
  m.x[0] = m.x[0]! + p[1]!;
  m.x[1] = m.x[1]! + p[1]! * s;
  m.twist[0] = m.twist[0]! + p[4]!;
  m.twist[1] = m.twist[1]! + p[4]! * s;
  addForce(m.y, p[2]!, s);
  addForce(m.z, p[3]!, s);
  addCouple(m.y, p[6]!, s);
  addCouple(m.z, -p[5]!, s);
}

function addForce(m: Float64Array, f: number, s: number): void {
  m[0] = m[0]! + f;
  m[1] = m[1]! + f * s;
  m[2] = m[2]! + f * s * s;
  m[3] = m[3]! + f * s * s * s;
  m[4] = m[4]! + f * s;
}

function addCouple(m: Float64Array, couple: number, s: number): void {
  m[1] = m[1]! + couple;
  m[2] = m[2]! + 2 * couple * s;
  m[3] = m[3]! + 3 * couple * s * s;
}

/**
 * Held end forces in one plane of bending. The element as a cantilever from its start droops and turns at its free end
 * (v, θ) under the loads; the end forces that push it back follow from its own stiffness, those at the start from
 * equilibrium.
 */
function holdBending(
  m: Float64Array,
  ei: number,
  g: number,
  shearArea: number | undefined,
  l: number,
  f: Float64Array,
  v: number,
  r: number,
  turn: 1 | -1,
): void {
  const phi = shearRatio(ei, g, shearArea, l);
  const c = 1 / (l * (1 + phi));
  // Both droops are multiplied by EI, which the stiffness c leaves out.
  const droop = (3 * l * m[2]! - m[3]!) / 6 + (shearArea ? (ei * m[4]!) / (g * shearArea) : 0);
  const slope = m[2]! / 2;
  const force = -((12 * c) / (l * l)) * droop + ((6 * c) / l) * slope;
  const couple = ((6 * c) / l) * droop - (4 + phi) * c * slope;
  f[v + 6] = force;
  f[r + 6] = turn * couple;
  f[v] = -m[0]! - force;
  f[r] = turn * (-m[1]! - couple - l * force);
}
