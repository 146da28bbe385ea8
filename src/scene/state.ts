import type { Effects } from '../analysis/model.js';
import type { Vec3 } from '../base/vec.js';
import type { Combination, Loads } from '../loads/model.js';
import type { Structure } from '../structure/model.js';
import type { Flow, MemberState, SceneState } from './model.js';

const triple = (v: Vec3): readonly [number, number, number] => [v.x, v.y, v.z];

function combined(curves: readonly Float64Array[], c: Combination, length: number): Float32Array {
  const out = new Float32Array(length);
  for (const { case: k, factor } of c.terms) {
    const curve = curves[k];
    if (curve) for (let i = 0; i < length; i++) out[i] = out[i]! + factor * curve[i]!;
  }
  return out;
}

function vector(forces: readonly Vec3[], c: Combination): Vec3 {
  let out: Vec3 = { x: 0, y: 0, z: 0 };
  for (const { case: k, factor } of c.terms) {
    const f = forces[k];
    if (f) out = { x: out.x + factor * f.x, y: out.y + factor * f.y, z: out.z + factor * f.z };
  }
  return out;
}

/** Forces and deflections of every member, and what passes every joint, under one combination; undefined when it is not there. */
export function sceneState(
  structure: Structure,
  loads: Loads,
  effects: Effects,
  combination: string,
): SceneState | undefined {
  const c = loads.combinations.find((x) => x.id === combination);
  if (!c) return undefined;
  const members = structure.members.flatMap((m): MemberState[] => {
    const e = effects.members.get(m.id);
    if (!e) return [];
    const length = e.stations.length;
    return [
      {
        part: m.id,
        mark: m.mark,
        start: triple(m.start),
        end: triple(m.end),
        up: triple(m.up),
        at: Float32Array.from(e.stations),
        m: combined(e.m, c, length),
        v: combined(e.v, c, length),
        n: combined(e.n, c, length),
        sag: combined(e.sag, c, length),
      },
    ];
  });
  const flows = structure.joints.flatMap((j): Flow[] => {
    const f = effects.joints.get(j.id);
    const [from, to] = [j.ties[0]?.part, j.ties.at(-1)?.part];
    if (!f || from === undefined || to === undefined) return [];
    return [{ mark: j.mark, at: triple(j.at), force: triple(vector(f.force, c)), from, to }];
  });
  const soil = structure.footings.flatMap((f): Flow[] => {
    const e = effects.footings.get(f.id);
    if (!e) return [];
    // Footing forces count down as positive.
    const v = vector(e.force, c);
    return [{ mark: f.mark, at: [f.at.x, f.at.y, f.bottom], force: [v.x, v.y, 0 - v.z], from: f.id, to: 'soil' }];
  });
  return { combination, members, flows: [...flows, ...soil] };
}
