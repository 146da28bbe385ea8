/**
 * Second set of forces under scissor trusses: both bearings fastened to the beams, and the beams held sideways at their
 * post tops, so that every truss pushes its two beams apart. The push closes the gap between what the truss would open
 * with a bearing free and what the beams give sideways: (f + C)·H = Δ, f the truss's own flexibility, C the beams'. It goes
 * through the same beams on posts as everything else and is added to the first set, in which a bearing slides.
 */
import type { Vec3 } from '../base/vec.js';
import type { Loads } from '../loads/model.js';
import type { Member, Structure } from '../structure/model.js';
import { indexStructure, type StructureIndex } from './index-structure.js';
import type { Effects, JointForces, MemberEffects, Restraint } from './model.js';
import { addTo, makeRows, type Rows, toVectors } from './rows.js';
import { type Pair, sidewaysGive, solveDense } from './side-give.js';
import { analyseSupports } from './supports.js';
import { type TrussEffects, trussEffects } from './truss-set.js';

export interface ThrustSet {
  /** Members and joints of the first set with the push added. */
  readonly effects: Effects;
  /** Outward push of each truss on each of its beams, by its id, per case, lb. */
  readonly push: ReadonlyMap<string, Float64Array>;
  /** The push alone: sideways moments of the beams, and what each place where a beam is held sideways receives. */
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly restraints: readonly Restraint[];
}

interface Input {
  readonly structure: Structure;
  readonly loads: Loads;
  readonly effects: Effects;
}

const addRow = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, i) => x + b[i]!);
const addVectors = (a: readonly Vec3[], b: readonly Vec3[]): readonly Vec3[] =>
  a.map((v, i) => ({ x: v.x + b[i]!.x, y: v.y + b[i]!.y, z: v.z + b[i]!.z }));

/** H of each truss, per case; undefined when nothing pushes or the beams cannot be solved. */
function pushes(
  index: StructureIndex,
  pushing: readonly { readonly id: string; readonly truss: TrussEffects; readonly pair: Pair }[],
  cases: number,
): ReadonlyMap<string, Float64Array> | undefined {
  if (pushing.length === 0) return undefined;
  const give = sidewaysGive(
    index,
    pushing.map((p) => p.pair),
  );
  if (!give) return undefined;
  pushing.forEach(({ truss }, i) => {
    give[i]![i] = give[i]![i]! + truss.model.push.spread;
  });
  const rights = Array.from({ length: cases }, (_, c) => Float64Array.from(pushing, (p) => p.truss.spread[c]!));
  solveDense(give, rights);
  return new Map(pushing.map(({ id }, i) => [id, Float64Array.from(rights, (r) => r[i]!)]));
}

/** A scissor truss neither of whose bearings is ordered to slide. */
const pushesOutward = ({ truss }: Member): boolean =>
  truss !== undefined && truss.bottomPitch > 0 && truss.slides === undefined;

function solve({ structure, loads, effects }: Input): ThrustSet | undefined {
  if (!structure.members.some(pushesOutward)) return undefined;
  const index = indexStructure(structure);
  const cases = loads.cases.length;
  const pushing: { readonly id: string; readonly truss: TrussEffects; readonly pair: Pair }[] = [];
  for (const truss of trussEffects({ structure, loads, effects })) {
    if (!pushesOutward(truss.member)) continue;
    for (const id of truss.members) {
      const [first, second] = index.below.get(id)!;
      const dx = second!.joint.at.x - first!.joint.at.x;
      const dy = second!.joint.at.y - first!.joint.at.y;
      const run = Math.hypot(dx, dy);
      pushing.push({ id, truss, pair: { first: first!, second: second!, across: { x: dx / run, y: dy / run, z: 0 } } });
    }
  }
  const push = pushes(index, pushing, cases);
  if (!push) return undefined;
  const rows = new Map<string, Rows>();
  for (const { id, pair } of pushing) {
    const { across } = pair;
    for (const [bearing, sign] of [
      [pair.first, -1],
      [pair.second, 1],
    ] as const) {
      const out = makeRows(cases);
      push.get(id)!.forEach((h, c) => {
        addTo(out, c, sign * h * across.x, sign * h * across.y, 0);
      });
      rows.set(bearing.joint.id, out);
    }
  }
  if (rows.size === 0) return undefined;
  const weightless = { terms: [], onSurface: new Map(), cases: loads.cases.map(() => ({ ...NOTHING })) };
  const pushed = analyseSupports(index, weightless, rows, { x: true, y: true });
  if (pushed.failures.length > 0) return undefined;

  const members = new Map(effects.members);
  for (const [id, m] of pushed.members) {
    const first = members.get(id);
    if (!first || index.members.get(id)?.role !== 'beam') continue;
    const mWeak = first.mWeak.map((row, c) => addRow(row, m.mWeak[c]!));
    const vWeak = first.vWeak.map((row, c) => addRow(row, m.vWeak[c]!));
    members.set(id, { ...first, mWeak, vWeak });
  }
  const joints = new Map<string, JointForces>(effects.joints);
  const addJoint = (id: string, force: readonly Vec3[]): void => {
    const first = joints.get(id);
    if (first) joints.set(id, { joint: id, force: addVectors(first.force, force) });
  };
  for (const [id, r] of rows) addJoint(id, toVectors(r));
  for (const [id, r] of pushed.joints) addJoint(id, toVectors(r));
  const restraints = pushed.sway.map(({ beam, at, force }) => ({ beam, at, force: toVectors(force) }));
  for (const r of restraints) {
    // The beam hands what holds it sideways to the post under it.
    const on = (index.below.get(r.beam) ?? []).find(
      (b) => Math.hypot(b.joint.at.x - r.at.x, b.joint.at.y - r.at.y) < 1,
    );
    if (on) addJoint(on.joint.id, r.force);
  }
  return { effects: { ...effects, members, joints }, push, members: pushed.members, restraints };
}

const NOTHING = { term: new Int32Array(0), factor: new Float64Array(0), self: 0 };

const made = new WeakMap<Effects, { readonly set: ThrustSet | undefined }>();

/** Undefined where no truss pushes outward. Worked out once for the same effects. */
export function thrustSet(ctx: Input): ThrustSet | undefined {
  let known = made.get(ctx.effects);
  if (!known) {
    known = { set: solve(ctx) };
    made.set(ctx.effects, known);
  }
  return known.set;
}
