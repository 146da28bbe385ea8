/** Tier 2 solved: beams and posts case by case, their curves, and what they hand to posts, footings, house and sway. */
import type { Vec3 } from '../base/vec.js';
import { type BeamLineModel, idealise, type SupportFrame } from './idealise.js';
import type { StructureIndex } from './index-structure.js';
import type { MemberEffects } from './model.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import {
  type CaseResult,
  type DistributedLoad,
  type FactoredFrame,
  type FrameCase,
  factorFrame,
  type MemberPointLoad,
  makeSamples,
  type NodalLoad,
  sampleElement,
  solveCase,
} from './solver/index.js';
import type { Terms } from './terms.js';
import { makeSpans } from './two-bearings.js';

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
  /** Own weight of beams and posts, per case. */
  readonly applied: Rows;
  readonly freedoms: number;
  readonly failures: readonly string[];
}

/** Where one framing joint acts: on an element, or right on a node. */
type Place = { readonly rows: Rows; readonly beam: string } & (
  | { readonly node: number }
  | { readonly element: number; readonly at: number }
);

/** Nearer than this to a node a load acts on the node, inches. */
const ON_NODE = 1e-6;

function placesOf(frame: SupportFrame, lengths: Float64Array, framing: ReadonlyMap<string, Rows>): Place[] {
  const places: Place[] = [];
  for (const beam of frame.beams) {
    for (const load of beam.loads) {
      const rows = framing.get(load.joint.id);
      if (!rows) continue;
      const along = Math.min(Math.max(load.lowerAlong, 0), beam.length);
      const piece = beam.pieces.find((p) => along <= p.to) ?? beam.pieces.at(-1)!;
      const { start, end } = frame.model.elements[piece.element]!;
      if (along - piece.from < ON_NODE) places.push({ rows, beam: beam.member.id, node: start });
      else if (piece.to - along < ON_NODE) places.push({ rows, beam: beam.member.id, node: end });
      else
        places.push({
          rows,
          beam: beam.member.id,
          element: piece.element,
          at: Math.min(along - piece.from, lengths[piece.element]!),
        });
    }
  }
  return places;
}

function frameCase(c: number, places: readonly Place[], weights: readonly DistributedLoad[], self: number): FrameCase {
  const points: MemberPointLoad[] = [];
  const nodal: NodalLoad[] = [];
  for (const p of places) {
    const x = p.rows[3 * c]!;
    const y = p.rows[3 * c + 1]!;
    const z = p.rows[3 * c + 2]!;
    if (x === 0 && y === 0 && z === 0) continue;
    if ('node' in p) nodal.push({ node: p.node, force: { x, y, z } });
    else points.push({ element: p.element, at: p.at, force: { x, y, z } });
  }
  if (self === 0) return { points, nodal };
  const distributed = weights.map((w) => ({ ...w, startForce: { x: 0, y: 0, z: w.startForce.z * self } }));
  return { points, nodal, distributed };
}

/** Stations of one piece: even divisions, both faces of every point load, and the ends. Distances from the piece's start. */
function pieceStations(length: number, loads: readonly number[]): number[] {
  const DIVISIONS = 12;
  const hair = 1e-9 * length;
  const at: number[] = [];
  for (let i = 0; i <= DIVISIONS; i++) at.push((length * i) / DIVISIONS);
  for (const x of loads) at.push(x, x + hair);
  at.sort((p, q) => p - q);
  return at.filter((x, i) => i === 0 || x - at[i - 1]! >= hair / 2);
}

function beamEffects(
  beam: BeamLineModel,
  frame: FactoredFrame,
  cases: readonly FrameCase[],
  results: readonly CaseResult[],
): MemberEffects {
  const supports = [...beam.held].sort((p, q) => p.along - q.along);
  const spans = makeSpans(
    beam.length,
    supports.map((s) => s.along),
  );
  const spanAt = (x: number): number => {
    const i = spans.findIndex((s) => x < s.to);
    return i < 0 ? spans.length - 1 : i;
  };
  const parts = beam.pieces.map((piece) => {
    const loads = beam.loads
      .map((l) => l.lowerAlong - piece.from)
      .filter((x) => x > ON_NODE && x < piece.to - piece.from - ON_NODE);
    return { piece, x: pieceStations(piece.to - piece.from, loads), samples: makeSamples(0) };
  });
  for (const part of parts) part.samples = makeSamples(part.x.length);
  const count = parts.reduce((n, p) => n + p.x.length, 0);
  const stations = new Float64Array(count);
  const spanOf = new Int32Array(count);
  let k = 0;
  for (const { piece, x } of parts) {
    const span = spanAt((piece.from + piece.to) / 2);
    for (const at of x) {
      stations[k] = piece.from + at;
      spanOf[k++] = span;
    }
  }
  const row = (): Float64Array[] => cases.map(() => new Float64Array(count));
  const out = { m: row(), v: row(), n: row(), mWeak: row(), vWeak: row(), sag: row() };
  const up = beam.member.up;
  cases.forEach((c, i) => {
    const result = results[i]!;
    let at = 0;
    for (const { piece, x, samples: s } of parts) {
      sampleElement(frame, c, result, piece.element, x, s);
      for (let j = 0; j < x.length; j++, at++) {
        out.m[i]![at] = s.mz[j]!;
        out.v[i]![at] = -s.vy[j]!;
        out.n[i]![at] = s.n[j]!;
        out.mWeak[i]![at] = s.my[j]!;
        out.vWeak[i]![at] = s.vz[j]!;
        out.sag[i]![at] = -s.dy[j]!;
      }
    }
    // Sag counts from the line through the supports of its span; past the ends that line runs on.
    const sunk = supports.map(({ node }) => {
      const u = result.displacements;
      return -(u[6 * node]! * up.x + u[6 * node + 1]! * up.y + u[6 * node + 2]! * up.z);
    });
    const sag = out.sag[i]!;
    // Stations come in order, so the next support is found once.
    let b = 0;
    for (let j = 0; j < count; j++) {
      const x = stations[j]!;
      while (b < supports.length - 1 && x > supports[b]!.along) b++;
      const a = Math.max(0, b - 1);
      const hi = supports.length > 1 ? Math.max(b, 1) : 0;
      const run = supports[hi]!.along - supports[a]!.along;
      const t = run > 0 ? (x - supports[a]!.along) / run : 0;
      sag[j] = sag[j]! - (sunk[a]! + t * (sunk[hi]! - sunk[a]!));
    }
  });
  return { member: beam.member.id, stations, spanOf, spans, ...out };
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

/** Vertical force of a beam on a post, added to the joint's row of case `c`. The restraint holds the rest. */
function pressOn(contact: Contact, frame: FactoredFrame, result: CaseResult, c: number, out: Rows): void {
  const { axes } = frame;
  const f = result.endForces;
  for (const { force, axes: r } of contact.ends) {
    addTo(out, c, 0, 0, -(axes[r + 2]! * f[force]! + axes[r + 5]! * f[force + 1]! + axes[r + 8]! * f[force + 2]!));
  }
  for (const rows of contact.loads) addTo(out, c, 0, 0, rows[3 * c + 2]!);
}

export function analyseSupports(index: StructureIndex, terms: Terms, framing: ReadonlyMap<string, Rows>): Supports {
  const cases = terms.cases.length;
  const applied = makeRows(cases);
  const members = new Map<string, MemberEffects>();
  const joints = new Map<string, Rows>();
  const footings = new Map<string, Rows>();
  const support = idealise(index);
  const failures = [...support.failures];
  const nothing: Supports = { members, joints, footings, sway: [], applied, freedoms: 0, failures };
  if (support.beams.length === 0) return nothing;
  const factored = factorFrame(support.model);
  if (!factored.ok) {
    const { node, freedom } = factored.mechanism;
    failures.push(`the support frame can move freely: ${support.nodeNames[node] ?? 'a part'}, ${freedom}`);
    return nothing;
  }
  const { frame } = factored;
  const places = placesOf(support, frame.lengths, framing);
  const weights: DistributedLoad[] = [];
  for (const { member, pieces } of support.beams) {
    for (const { element, from, to } of pieces) {
      // A node shared with another beam may stand a hair off this one: the weight stays that of the piece.
      const stretch = (to - from) / frame.lengths[element]!;
      weights.push({ element, startForce: { x: 0, y: 0, z: -member.section.weight * stretch } });
    }
  }
  for (const { member, element, length } of support.posts) {
    // The bar runs on to the beam's axis; the post's own weight stays that of its own length.
    weights.push({
      element,
      startForce: { x: 0, y: 0, z: (-member.section.weight * length) / frame.lengths[element]! },
    });
  }
  const frameCases = terms.cases.map((c, i) => frameCase(i, places, weights, c.self));
  const results = frameCases.map((c) => solveCase(frame, c));

  for (const beam of support.beams) members.set(beam.member.id, beamEffects(beam, frame, frameCases, results));
  const contacts = new Map(support.beams.map((b) => [b, contactsOf(b, frame, places)]));
  const sway = support.restrained.map(({ node, beam, beams }) => ({
    node,
    beam,
    beams,
    at: support.model.nodes[node]!,
    force: makeRows(cases),
  }));
  terms.cases.forEach((c, i) => {
    const result = results[i]!;
    const r = result.reactions;
    for (const w of weights) addTo(applied, i, 0, 0, c.self * w.startForce.z * frame.lengths[w.element]!);
    for (const s of sway) addTo(s.force, i, -r[6 * s.node]!, -r[6 * s.node + 1]!, 0);
    for (const beam of support.beams) {
      for (const { node, bearing, on } of beam.held) {
        const rows = rowsOf(joints, bearing.joint.id, cases);
        if (on === 'house') addTo(rows, i, -r[6 * node]!, -r[6 * node + 1]!, -r[6 * node + 2]!);
        else pressOn(contacts.get(beam)!.get(node)!, frame, result, i, rows);
      }
    }
    for (const { base, foot } of support.posts) {
      const b = 6 * base;
      addTo(rowsOf(joints, foot.joint.id, cases), i, -r[b]!, -r[b + 1]!, -r[b + 2]!);
      addTo(rowsOf(footings, foot.lower, cases), i, -r[b]!, -r[b + 1]!, -r[b + 2]!);
    }
  });
  for (const post of support.posts)
    members.set(
      post.member.id,
      postEffects(post.member.id, post.length, post.member.section.weight, joints.get(post.foot.joint.id)!, terms),
    );
  return { members, joints, footings, sway, applied, freedoms: frame.matrix.size, failures };
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
