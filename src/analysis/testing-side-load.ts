/** Runs of whole covers for the tests of side load. */
import { buildLoads } from '../loads/index.js';
import type { LoadCase, Loads } from '../loads/model.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import { place } from '../structure/place.js';
import { analyse, type Effects } from './index.js';

export interface Run {
  readonly project: Project;
  readonly structure: Structure;
  readonly loads: Loads;
  readonly effects: Effects;
}
export function run(project: Project, turn: (s: Structure) => Structure = (s) => s, given?: Loads): Run {
  const out = place(project);
  const fault = out.issues.find((i) => i.severity === 'error');
  if (fault) throw new Error(fault.message);
  const structure = turn(out.value!);
  const loads = given ?? buildLoads(project, structure).value!;
  return { project, structure, loads, effects: analyse(project, structure, loads).value! };
}

/** One level push at the bearing of the trusses, so that nothing overturns above the beams. */
export function push(axis: 'x' | 'y', lb: number): Loads {
  const c: LoadCase = {
    id: 'H',
    kind: 'W',
    title: '',
    areas: [],
    edges: [],
    plan: [],
    selfWeight: false,
    side: [{ roof: 'R1', at: { x: 0, y: 330, z: 100 }, force: { x: 0, y: 0, z: 0, [axis]: lb }, why: '' }],
    clause: '',
  };
  return { cases: [c], combinations: [], strength: [], basis: { rows: [] }, outside: [] };
}

export const most = (row: Float64Array): number => row.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
export const POSTS = ['P1', 'P2', 'P3', 'P4'];
export const footOf = (r: Run, post: string): string =>
  r.structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[0]!.part === post)!.ties[1]!.part;
export const shearOf = (r: Run, post: string, axis: 'x' | 'y', c: number): number =>
  r.effects.footings.get(footOf(r, post))!.force[c]![axis];
