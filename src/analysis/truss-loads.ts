/** What the roof puts on one truss, in the truss's own plane: units of load on its chords. */
import { sub, type Vec3 } from '../base/vec.js';
import type { Surface } from '../structure/model.js';
import type { Bearing } from './index-structure.js';
import type { Profile } from './profile.js';
import type { FrameCase } from './solver/index.js';
import type { Term } from './terms.js';
import { onChord, pointOnChord, type RunLoad, type TrussModel } from './truss-frame.js';

/** Where the plane of a truss lies: x along it from the outer face of the first beam. */
export interface Plane {
  readonly origin: Vec3;
  readonly along: Vec3;
}

export function planeOf(a: Bearing, b: Bearing, width: number): Plane {
  const dx = b.joint.at.x - a.joint.at.x;
  const dy = b.joint.at.y - a.joint.at.y;
  const run = Math.hypot(dx, dy);
  const along = { x: dx / run, y: dy / run, z: 0 };
  const { x, y, z } = a.joint.at;
  return { along, origin: { x: x - (along.x * width) / 2, y: y - (along.y * width) / 2, z } };
}

const inPlane = (p: Plane, v: Vec3): number => v.x * p.along.x + v.y * p.along.y;

/** A unit of one term on a chord, the top one but for ceilings: a surface's loads keep their line of action. */
export function termLoad(
  truss: TrussModel,
  p: Plane,
  term: Term,
  surface: Surface,
  caught: Profile | number,
  chord: 'top' | 'bottom' = 'top',
): FrameCase {
  const o = sub(surface.origin, p.origin);
  let x0 = inPlane(p, o);
  const kx = inPlane(p, surface.v);
  if (typeof caught === 'number') return pointOnChord(truss, x0 + kx * term.v, caught);
  let direction = { x: 0, z: -1 };
  if (term.kind === 'normal') {
    // Along the normal down to the chord's centre line, which runs through the apex with the surface's slope.
    const n = { x: inPlane(p, surface.n), z: surface.n.z };
    const slope = surface.v.z / kx;
    const apex = truss.layout.joints[truss.layout.apex]!;
    const reach = (apex.z + slope * (x0 - apex.x) - o.z) / (n.z - slope * n.x);
    x0 += reach * n.x;
    direction = { x: -n.x, z: -n.z };
  }
  const runs = caught.map((q): RunLoad => {
    const [a, b] = [x0 + kx * q.a, x0 + kx * q.b];
    const [wa, wb] = [q.wa / Math.abs(kx), q.wb / Math.abs(kx)];
    return a < b ? { from: a, to: b, atFrom: wa, atTo: wb } : { from: b, to: a, atFrom: wb, atTo: wa };
  });
  return onChord(truss, chord, runs, direction);
}

/** Own weight: half along each chord. */
export function ownWeight(truss: TrussModel, weight: number): FrameCase {
  const half = (role: 'top' | 'bottom'): FrameCase => {
    const bars = truss.bars.filter((b) => b.role === role);
    const from = truss.layout.joints[bars[0]!.from]!.x;
    const to = truss.layout.joints[bars.at(-1)!.to]!.x;
    const q = weight / 2 / (to - from);
    return onChord(truss, role, [{ from, to, atFrom: q, atTo: q }], { x: 0, z: -1 });
  };
  return { distributed: [...half('top').distributed!, ...half('bottom').distributed!] };
}
