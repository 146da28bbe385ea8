/** Tier 2 solved: beams and posts case by case, their curves, and what they hand to posts, footings, house and sway. */
import { distance, type Vec3 } from '../base/vec.js';
import { beamEffects } from './beam-effects.js';
import { barEffects } from './bent-bars.js';
import type { Hold } from './bracing.js';
import type { BeamLineModel } from './frame-draft.js';
import { capsOf, driftOf, pressBar, pressCap } from './frame-joints.js';
import { type Place, placesOf } from './frame-loads.js';
import { type SolvedFrame, solveParts } from './frame-parts.js';
import { idealise } from './idealise.js';
import type { StructureIndex } from './index-structure.js';
import type { Drift, MemberEffects } from './model.js';
import { rollingCouples } from './rolling.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import { type DistributedLoad, type FactoredFrame, factorFrame } from './solver/index.js';
import type { Terms } from './terms.js';

export interface Supports {
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly joints: ReadonlyMap<string, Rows>;
  /** What each footing receives at its top, house axes, per case. */
  readonly footings: ReadonlyMap<string, Rows>;
  /** What each notional restraint holds, with the beam it belongs to. */
  readonly sway: readonly {
    readonly beam: string;
    readonly beams: readonly string[];
    readonly at: Vec3;
    readonly force: Rows;
  }[];
  /** Moment that a held foot hands to its footing by the post's joint, with the level (z) it is held at. */
  readonly feet: readonly {
    readonly footing: string;
    readonly joint: string;
    readonly level: number;
    readonly moment: Rows;
  }[];
  readonly drift: readonly Drift[];
  /** Own weight of beams and posts, per case. */
  readonly applied: Rows;
  readonly freedoms: number;
  readonly failures: readonly string[];
}

/** One end of an element, as its place in the end forces and in the axes. */
interface ElementEnd {
  readonly force: number;
  readonly axes: number;
}

/** What acts from a beam on one of its held nodes: the ends of its pieces there, and loads put right on the node. */
interface Contact {
  readonly node: number;
  readonly ends: readonly ElementEnd[];
  readonly loads: readonly Rows[];
}

function contactsOf(beam: BeamLineModel, frame: FactoredFrame, places: readonly Place[]): ReadonlyMap<number, Contact> {
  const out = new Map<number, { node: number; ends: ElementEnd[]; loads: Rows[] }>();
  for (const { node } of beam.held) out.set(node, { node, ends: [], loads: [] });
  for (const { element } of beam.pieces) {
    const { start, end } = frame.model.elements[element]!;
    out.get(start)?.ends.push({ force: 12 * element, axes: 9 * element });
    out.get(end)?.ends.push({ force: 12 * element + 6, axes: 9 * element });
  }
  for (const p of places) if ('node' in p && p.beam === beam.member.id) out.get(p.node)?.loads.push(p.rows);
  return out;
}

/** Vertical force of a beam on a post, added to the joint's row of every case. The restraint holds the rest. */
function pressOn(contact: Contact, { frame, results, at }: SolvedFrame, out: Rows): void {
  const { axes } = frame;
  at(contact.node).forEach((solve, c) => {
    const f = results[solve]!.endForces;
    for (const { force, axes: r } of contact.ends) {
      addTo(out, c, 0, 0, -(axes[r + 2]! * f[force]! + axes[r + 5]! * f[force + 1]! + axes[r + 8]! * f[force + 2]!));
    }
    for (const rows of contact.loads) addTo(out, c, 0, 0, rows[3 * c + 2]!);
  });
}

/** Adds what a support receives, case by case: forces, or moments from freedom 3 on; `vertical` 0 leaves out the third. */
function takeReactions(
  out: Rows,
  { results, at }: SolvedFrame,
  node: number,
  first: 0 | 3 = 0,
  vertical: 0 | 1 = 1,
): void {
  const i = 6 * node + first;
  at(node).forEach((solve, c) => {
    const r = results[solve]!.reactions;
    addTo(out, c, -r[i]!, -r[i + 1]!, -r[i + 2]! * vertical);
  });
}

export function analyseSupports(
  index: StructureIndex,
  terms: Terms,
  framing: ReadonlyMap<string, Rows>,
  hold: Hold,
): Supports {
  const cases = terms.cases.length;
  const applied = makeRows(cases);
  const members = new Map<string, MemberEffects>();
  const joints = new Map<string, Rows>();
  const footings = new Map<string, Rows>();
  const support = idealise(index, hold);
  const failures = [...support.failures];
  const nothing: Supports = {
    members,
    joints,
    footings,
    sway: [],
    feet: [],
    drift: [],
    applied,
    freedoms: 0,
    failures,
  };
  if (support.beams.length === 0) return nothing;
  const factored = factorFrame(support.model);
  if (!factored.ok) {
    const { node, freedom } = factored.mechanism;
    failures.push(`the support frame can move freely: ${support.nodeNames[node] ?? 'a part'}, ${freedom}`);
    return nothing;
  }
  const { frame } = factored;
  const places = placesOf(support, frame.lengths, support.framed ? rollingCouples(index, framing) : framing);
  const weights: DistributedLoad[] = [];
  for (const { member, pieces } of support.beams) {
    for (const { element, from, to } of pieces) {
      // A node shared with another beam may stand a hair off this one: the weight stays that of the piece.
      const stretch = (to - from) / frame.lengths[element]!;
      weights.push({ element, startForce: { x: 0, y: 0, z: -member.section.weight * stretch } });
    }
  }
  for (const { member, pieces } of [...support.posts, ...support.bars]) {
    // The pieces run on to the axes of what they meet; the own weight stays that of the member's length.
    const long = pieces.reduce((sum, p) => sum + frame.lengths[p.element]!, 0);
    const w = (-member.section.weight * distance(member.start, member.end)) / long;
    for (const { element } of pieces) weights.push({ element, startForce: { x: 0, y: 0, z: w } });
  }
  const solved = solveParts(frame, places, weights, terms.cases);

  for (const beam of support.beams) {
    const arm = support.framed ? beam.member.section.depth / 2 : 0;
    members.set(beam.member.id, beamEffects(beam, arm, solved));
  }
  const contacts = new Map(support.beams.map((b) => [b, contactsOf(b, frame, places)]));
  const sway = support.restrained.map(({ node, beam, beams }) => ({
    node,
    beam,
    beams,
    at: support.model.nodes[node]!,
    force: makeRows(cases),
  }));
  const feet = support.posts.flatMap(({ member, base, foot }) =>
    member.foot === undefined || member.foot.kind === 'pinned'
      ? []
      : [{ base, footing: foot.lower, joint: foot.joint.id, level: member.foot.at, moment: makeRows(cases) }],
  );
  const caps = support.framed ? capsOf(support) : [];
  terms.cases.forEach((c, i) => {
    if (c.self === 0) return;
    for (const w of weights) addTo(applied, i, 0, 0, c.self * w.startForce.z * frame.lengths[w.element]!);
  });
  for (const s of sway) takeReactions(s.force, solved, s.node, 0, 0);
  for (const beam of support.beams) {
    for (const { node, bearing, on } of beam.held) {
      const rows = rowsOf(joints, bearing.joint.id, cases);
      if (on === 'house') takeReactions(rows, solved, node);
      else pressOn(contacts.get(beam)!.get(node)!, solved, rows);
    }
  }
  for (const cap of caps) pressCap(cap, solved, joints);
  for (const bar of support.bars) pressBar(bar, solved, joints);
  for (const f of feet) takeReactions(f.moment, solved, f.base, 3);
  for (const { base, foot } of support.posts) {
    takeReactions(rowsOf(joints, foot.joint.id, cases), solved, base);
    // A foot on the house's own foundation leaves the model there.
    if (index.footings.has(foot.lower)) takeReactions(rowsOf(footings, foot.lower, cases), solved, base);
  }
  for (const { member, pieces, length, foot } of support.posts) {
    const own = support.framed
      ? barEffects(member, pieces, solved)
      : postEffects(member.id, length, member.section.weight, joints.get(foot.joint.id)!, terms);
    members.set(member.id, own);
  }
  for (const { member, pieces } of support.bars) members.set(member.id, barEffects(member, pieces, solved));
  const drift = hold.x && hold.y ? [] : driftOf(support, solved);
  return { members, joints, footings, sway, feet, drift, applied, freedoms: frame.matrix.size, failures };
}

/** A bar in compression: axial force at its two ends, nothing else. */
function postEffects(id: string, length: number, weight: number, foot: Rows, terms: Terms): MemberEffects {
  const zero = new Float64Array(2);
  const zeros = terms.cases.map(() => zero);
  return {
    member: id,
    stations: Float64Array.of(0, length),
    spanOf: Int32Array.of(0, 0),
    spans: [{ from: 0, to: length, length, kind: 'span' }],
    m: zeros,
    v: zeros,
    n: terms.cases.map((c, i) => Float64Array.of(foot[3 * i + 2]!, foot[3 * i + 2]! + c.self * weight * length)),
    mWeak: zeros,
    vWeak: zeros,
    sag: zeros,
  };
}
