/**
 * Side load that the house takes beyond what the joints at the house receive straight from the framing: the forces of
 * the sway restraints, in each direction whose system is the house, brought to the house by the roof as a rigid plate.
 * A roof with a tie of its own (`cover.houseTies`) hands its side load to that tie, not to ledgers or beam ends.
 */
import type { JointForces } from '../../analysis/model.js';
import type { Vec3 } from '../../base/vec.js';
import type { Joint, JointKind } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

type Source = Pick<CheckContext, 'project' | 'structure' | 'effects'>;

/** Joints by which the house can hold the cover sideways. */
const TIES: ReadonlySet<JointKind> = new Set<JointKind>(['ledger-to-house', 'beam-to-wall', 'beam-to-wall-post']);

const made = new WeakMap<CheckContext['effects'], ReadonlyMap<string, readonly Vec3[]>>();

/** Added side force at a joint of the house, per load case, lb, house axes; zeros when none comes to it. */
export function sideDemand(ctx: Source, joint: string): readonly Vec3[] {
  let known = made.get(ctx.effects);
  if (!known) {
    known = workOut(ctx);
    made.set(ctx.effects, known);
  }
  return known.get(joint) ?? ctx.effects.cases.map(() => ({ x: 0, y: 0, z: 0 }));
}

const withSide = new WeakMap<JointForces, JointForces>();

/** Forces of a joint with the side load the house takes there; the very same object where none comes to it. */
export function heldForces(ctx: Source, joint: Pick<Joint, 'id' | 'kind'>): JointForces | undefined {
  const own = ctx.effects.joints.get(joint.id);
  if (!own || !TIES.has(joint.kind)) return own;
  const known = withSide.get(own);
  if (known) return known;
  const side = sideDemand(ctx, joint.id);
  const some = side.some((f) => f.x !== 0 || f.y !== 0);
  const force = own.force.map((f, c) => ({ x: f.x + (side[c]?.x ?? 0), y: f.y + (side[c]?.y ?? 0), z: f.z }));
  const held = some ? { ...own, force } : own;
  withSide.set(own, held);
  return held;
}

/** Beams whose roofs all have a tie to the house of their own. */
function tiedBeams({ project, structure }: Source): ReadonlySet<string> {
  const tied = new Set((project.cover.houseTies ?? []).map((t) => t.roof));
  const roofs = new Map<string, Set<string>>();
  const roofOf = new Map(structure.members.map((m) => [m.id, m.roof]));
  for (const j of structure.joints) {
    const roof = roofOf.get(j.ties[0]?.part ?? '');
    const lower = j.ties.at(-1)?.part;
    if (roof === undefined || lower === undefined) continue;
    roofs.set(lower, (roofs.get(lower) ?? new Set()).add(roof));
  }
  return new Set([...roofs].filter(([, on]) => [...on].every((r) => tied.has(r))).map(([beam]) => beam));
}

/** Equal shares along the wall; square to it the lever round the middle of the ties takes the twist. */
function workOut(ctx: Source): ReadonlyMap<string, readonly Vec3[]> {
  const { project, structure, effects } = ctx;
  const tied = tiedBeams(ctx);
  const { lateral } = project.cover;
  // A beam or ledger whose roofs have a tie of their own is no part of the plate that the others' side load turns.
  const all = structure.joints.filter((j) => TIES.has(j.kind));
  const free = all.filter((j) => !tied.has(j.ties[0]?.part ?? ''));
  const ties: readonly Joint[] = free.length > 0 ? free : all;
  const out = new Map<string, Vec3[]>();
  const n = ties.length;
  if (n === 0 || (lateral.x !== 'house' && lateral.y !== 'house')) return out;
  const x0 = ties.reduce((s, j) => s + j.at.x, 0) / n;
  const y0 = ties.reduce((s, j) => s + j.at.y, 0) / n;
  const spread = ties.reduce((s, j) => s + (j.at.x - x0) ** 2, 0);
  for (const j of ties) out.set(j.id, []);
  for (let c = 0; c < effects.cases.length; c++) {
    let fx = 0;
    let fy = 0;
    let twist = 0;
    for (const r of effects.restraints) {
      const f = r.force[c];
      if (!f || tied.has(r.beam)) continue;
      const x = lateral.x === 'house' ? f.x : 0;
      const y = lateral.y === 'house' ? f.y : 0;
      fx += x;
      fy += y;
      twist += (r.at.x - x0) * y - (r.at.y - y0) * x;
    }
    for (const j of ties) {
      const lever = spread > 0 ? (twist * (j.at.x - x0)) / spread : 0;
      out.get(j.id)!.push({ x: fx / n, y: fy / n + lever, z: 0 });
    }
  }
  return out;
}
