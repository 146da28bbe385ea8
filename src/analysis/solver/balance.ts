import type { Vec3 } from '../../base/vec.js';
import type { FactoredFrame } from './factor.js';
import { DISTRIBUTED, localDistributed, localPoint, POINT } from './loads.js';
import type { CaseResult, FrameCase } from './model.js';

/** Force [x y z] and moment about the origin [x y z], global axes. */
export type Resultant = Float64Array;

/** Resultant of every load of a case, from the loads alone: a second road to what the reactions must sum to. */
export function appliedResultant(frame: FactoredFrame, c: FrameCase): Resultant {
  const sum = new Float64Array(6);
  for (const { node, force, moment } of c.nodal ?? []) {
    const at = frame.model.nodes[node]!;
    if (force) addForce(sum, at, force.x, force.y, force.z);
    if (moment) addMoment(sum, moment.x, moment.y, moment.z);
  }
  const d = new Float64Array(DISTRIBUTED);
  for (const load of c.distributed ?? []) {
    localDistributed(frame, load, d);
    const width = d[1]! - d[0]!;
    // A trapezoid is two triangles, each resting at its third.
    for (const [first, place] of [
      [2, d[0]! + width / 3],
      [5, d[0]! + (2 * width) / 3],
    ] as const) {
      const g = toGlobal(frame, load.element, d, first);
      addForce(sum, pointAlong(frame, load.element, place), (g.x * width) / 2, (g.y * width) / 2, (g.z * width) / 2);
    }
  }
  const p = new Float64Array(POINT);
  for (const load of c.points ?? []) {
    localPoint(frame, load, p);
    const f = toGlobal(frame, load.element, p, 1);
    const m = toGlobal(frame, load.element, p, 4);
    addForce(sum, pointAlong(frame, load.element, p[0]!), f.x, f.y, f.z);
    addMoment(sum, m.x, m.y, m.z);
  }
  return sum;
}

/** Resultant of all reactions of a case. With `appliedResultant` it sums to nothing. */
export function reactionResultant(frame: FactoredFrame, result: CaseResult): Resultant {
  const sum = new Float64Array(6);
  const r = result.reactions;
  frame.model.nodes.forEach((at, n) => {
    addForce(sum, at, r[6 * n]!, r[6 * n + 1]!, r[6 * n + 2]!);
    addMoment(sum, r[6 * n + 3]!, r[6 * n + 4]!, r[6 * n + 5]!);
  });
  return sum;
}

function addForce(sum: Float64Array, at: Vec3, x: number, y: number, z: number): void {
  sum[0] = sum[0]! + x;
  sum[1] = sum[1]! + y;
  sum[2] = sum[2]! + z;
  addMoment(sum, at.y * z - at.z * y, at.z * x - at.x * z, at.x * y - at.y * x);
}

function addMoment(sum: Float64Array, x: number, y: number, z: number): void {
  sum[3] = sum[3]! + x;
  sum[4] = sum[4]! + y;
  sum[5] = sum[5]! + z;
}

function pointAlong(frame: FactoredFrame, element: number, x: number): Vec3 {
  const a = frame.model.nodes[frame.model.elements[element]!.start]!;
  const r = 9 * element;
  return { x: a.x + frame.axes[r]! * x, y: a.y + frame.axes[r + 1]! * x, z: a.z + frame.axes[r + 2]! * x };
}

function toGlobal(frame: FactoredFrame, element: number, v: Float64Array, i: number): Vec3 {
  const { axes } = frame;
  const r = 9 * element;
  return {
    x: axes[r]! * v[i]! + axes[r + 3]! * v[i + 1]! + axes[r + 6]! * v[i + 2]!,
    y: axes[r + 1]! * v[i]! + axes[r + 4]! * v[i + 1]! + axes[r + 7]! * v[i + 2]!,
    z: axes[r + 2]! * v[i]! + axes[r + 5]! * v[i + 1]! + axes[r + 8]! * v[i + 2]!,
  };
}
