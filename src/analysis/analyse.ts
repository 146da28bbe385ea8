/**
 * Structure and loads to effects, tier by tier: framing on its bearings, beams on posts, footings; then the balance of
 * every case and hand statics beside the frame. A part that cannot be worked out is named in `failure`, not thrown.
 */
import type { Issue, Outcome } from '../base/issue.js';
import type { Loads } from '../loads/model.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import { balanceIssues, balanceOf } from './balance.js';
import { holdOf } from './bracing.js';
import { footingForces } from './footings.js';
import { analyseFraming } from './framing.js';
import { handChecks } from './hand.js';
import { independentTotals } from './independent.js';
import { indexStructure, type StructureIndex } from './index-structure.js';
import { analyseLedgers } from './ledger.js';
import type { Effects, JointForces, SwayForce } from './model.js';
import { outlookerJoints } from './outlookers.js';
import { applyTrussPapers } from './papers.js';
import { addRows, makeRows, type Rows, rowAt, rowsOf, toVectors } from './rows.js';
import { applySideForces } from './side.js';
import { slideBearings } from './slide.js';
import { analyseSupports, type Supports } from './supports.js';
import { collectTerms } from './terms.js';

/** How hard each roof pushes sideways on the beams that meet at a restraint, per case. */
function pushByRoof(
  index: StructureIndex,
  beams: readonly string[],
  framing: ReadonlyMap<string, Rows>,
  cases: number,
): ReadonlyMap<string, Float64Array> {
  const push = new Map<string, Float64Array>();
  for (const b of beams.flatMap((beam) => index.above.get(beam) ?? [])) {
    const roof = index.members.get(b.upper)?.roof;
    const rows = framing.get(b.joint.id);
    if (roof === undefined || !rows) continue;
    const sum = push.get(roof) ?? new Float64Array(cases);
    for (let c = 0; c < cases; c++) sum[c] = sum[c]! + Math.hypot(rows[3 * c]!, rows[3 * c + 1]!);
    push.set(roof, sum);
  }
  return push;
}

/** Restraint forces gathered by roof; one under several roofs is split by what each pushes on its beams. */
function gatherSway(
  index: StructureIndex,
  supports: Supports,
  framing: ReadonlyMap<string, Rows>,
  cases: number,
): readonly SwayForce[] {
  const byRoof = new Map<string, Rows>();
  for (const roof of index.structure.roofs) rowsOf(byRoof, roof.mark, cases);
  const pushOn = new Map<string, ReadonlyMap<string, Float64Array>>();
  for (const { beams, force } of supports.sway) {
    const key = beams.join(' ');
    const push = pushOn.get(key) ?? pushByRoof(index, beams, framing, cases);
    pushOn.set(key, push);
    const roofs = [...push.keys()];
    if (roofs.length === 1) addRows(rowsOf(byRoof, roofs[0]!, cases), force);
    if (roofs.length < 2) continue;
    for (let c = 0; c < cases; c++) {
      let total = 0;
      for (const sum of push.values()) total += sum[c]!;
      for (const [roof, sum] of push) {
        const share = total > 0 ? sum[c]! / total : 1 / roofs.length;
        const rows = rowsOf(byRoof, roof, cases);
        for (let a = 3 * c; a < 3 * c + 3; a++) rows[a] = rows[a]! + share * force[a]!;
      }
    }
  }
  return [...byRoof].map(([roof, rows]) => ({ roof, force: toVectors(rows) }));
}

/** Everything that leaves the model: into footings, into the house, into the sway restraints. */
function sumReactions(
  index: StructureIndex,
  supports: Supports,
  joints: ReadonlyMap<string, Rows>,
  cases: number,
): Rows {
  const sum = makeRows(cases);
  for (const rows of supports.footings.values()) addRows(sum, rows);
  for (const s of supports.sway) addRows(sum, s.force);
  for (const joint of index.structure.joints) {
    const lower = joint.ties.at(-1);
    const rows = joints.get(joint.id);
    if (rows && lower && index.walls.has(lower.part)) addRows(sum, rows);
  }
  return sum;
}

export function analyse(project: Project, structure: Structure, loads: Loads): Outcome<Effects> {
  const index = indexStructure(structure);
  const cases = loads.cases.length;
  const terms = collectTerms(loads, index.surfaces);

  // 1. Framing on its bearings, ledgers on the house.
  const framing = analyseFraming(index, terms);
  const failures = [...framing.failures];
  const joints = new Map(framing.joints);
  const side = applySideForces(index, loads, joints, failures);
  const papers = applyTrussPapers(index, project, loads, joints);
  slideBearings(index, joints);
  for (const [id, rows] of outlookerJoints(index, terms)) joints.set(id, rows);
  const ledgers = analyseLedgers(index, terms, joints);

  // 2. Beams on posts.
  const supports = analyseSupports(index, terms, joints, holdOf(project.cover.lateral, structure));
  failures.push(...ledgers.failures, ...supports.failures);
  const framingJoints = new Map(joints);
  for (const [id, rows] of ledgers.joints) joints.set(id, rows);
  for (const [id, rows] of supports.joints) joints.set(id, rows);

  // 3. Footings.
  const footings = footingForces(index, supports.footings, supports.feet);

  const applied = makeRows(cases);
  for (const part of [framing.applied, side, papers, ledgers.applied, supports.applied]) addRows(applied, part);
  // Reactions copied from papers have no road through the roof; of their cases only the way down can be balanced.
  const integrals = independentTotals(project, structure, loads.cases).map((t, i) =>
    loads.cases[i]!.papers ? rowAt(papers, i) : t,
  );
  const reactions = sumReactions(index, supports, joints, cases);
  const balance = loads.cases.map((c, i) => balanceOf(c.id, rowAt(applied, i), integrals[i]!, rowAt(reactions, i)));
  const members = new Map([...framing.members, ...supports.members]);
  const jointForces = new Map<string, JointForces>();
  for (const [id, rows] of joints) jointForces.set(id, { joint: id, force: toVectors(rows) });
  for (const f of supports.feet)
    jointForces.set(f.joint, { ...jointForces.get(f.joint)!, moment: toVectors(f.moment) });
  const issues: readonly Issue[] = failures.length > 0 ? [] : balanceIssues(balance);
  return {
    value: {
      cases: loads.cases.map((c) => c.id),
      members,
      joints: jointForces,
      footings,
      sway: gatherSway(index, supports, framingJoints, cases),
      restraints: supports.sway.map(({ beam, at, force }) => ({ beam, at, force: toVectors(force) })),
      drift: supports.drift,
      hand: handChecks(index, loads, members, joints, footings),
      balance,
      size: { freedoms: supports.freedoms, cases },
      ...(failures.length > 0 ? { failure: failures.join('; ') } : {}),
    },
    issues,
  };
}
