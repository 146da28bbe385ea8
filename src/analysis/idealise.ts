/**
 * Tier 2: beams on posts as a frame, the one place where structure meets solver.
 *
 * Posts are bars pinned at both ends: a wood joint passes no moment and a standoff base has none. Beams run on over
 * their posts and are pinned at splices and on the house. At each post top a notional restraint holds the beam
 * sideways in x and y (its reactions are the sway forces, reported and not lost) and keeps it from rolling about its
 * own axis. Framing reactions act on the beam's axis; eccentricities are the checks' affair.
 */
import { distance, type Vec3 } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import { bendingStiffness } from './framing.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import type { EndRelease, FrameElement, FrameModel, Support } from './solver/index.js';

/** Places nearer than this along a beam are one node, inches. */
const SAME = 1 / 16;
/** G of wood by the usual ratio E/G = 16 (common practice; used in torsion only, which carries no load here). */
const E_OVER_G = 16;

export interface BeamPiece {
  readonly element: number;
  /** Along the beam, inches. */
  readonly from: number;
  readonly to: number;
}

export interface BeamLineModel {
  readonly member: Member;
  readonly length: number;
  readonly pieces: readonly BeamPiece[];
  /** Where it is held: along, node, and the joint it is held by. */
  readonly held: readonly {
    readonly along: number;
    readonly node: number;
    readonly bearing: Bearing;
    readonly on: 'post' | 'house';
  }[];
  /** Framing joints above, with their places. */
  readonly loads: readonly Bearing[];
}

export interface PostModel {
  readonly member: Member;
  readonly element: number;
  readonly top: number;
  readonly base: number;
  readonly length: number;
  /** Joint to the footing. */
  readonly foot: Bearing;
}

export interface SupportFrame {
  readonly model: FrameModel;
  readonly beams: readonly BeamLineModel[];
  readonly posts: readonly PostModel[];
  /** Nodes with a notional restraint, the beam that stands on each, and all beams that meet there. */
  readonly restrained: readonly { readonly node: number; readonly beam: string; readonly beams: readonly string[] }[];
  readonly nodeNames: readonly string[];
  readonly failures: readonly string[];
}

/** Iy of plies side by side: they slip on each other, so each bends for itself sideways. */
function sidewaysInertia(m: Member): number {
  const { plies, plyWidth, b, d } = m.section;
  return plies > 1 ? (plies * d * plyWidth ** 3) / 12 : (d * b ** 3) / 12;
}

function elementOf(m: Member, start: number, end: number, up: Vec3): FrameElement {
  const { b, d, values } = m.section;
  const narrow = Math.min(b, d);
  return {
    start,
    end,
    up,
    E: values.E,
    G: values.E / E_OVER_G,
    A: b * d,
    Iz: bendingStiffness(m) / values.E,
    Iy: sidewaysInertia(m),
    J: (narrow ** 3 * Math.max(b, d)) / 3,
  };
}

const PIN: EndRelease = { my: true, mz: true };

/** Grows the frame's arrays; each beam and post writes its own part. */
class Draft {
  readonly nodes: Vec3[] = [];
  readonly names: string[] = [];
  readonly elements: FrameElement[] = [];
  readonly supports: Support[] = [];
  readonly postTop = new Map<string, number>();
  /** Beams that meet at each node. */
  readonly beamsAt = new Map<number, string[]>();

  node(at: Vec3, name: string): number {
    this.names.push(name);
    return this.nodes.push(at) - 1;
  }
}

interface Mark {
  along: number;
  node: number;
}

function markBeam(
  draft: Draft,
  beam: Member,
  length: number,
  held: readonly Bearing[],
  splices: readonly number[],
  posts: ReadonlySet<string>,
): Mark[] {
  const at = (along: number): Vec3 => ({
    x: beam.start.x + ((beam.end.x - beam.start.x) * along) / length,
    y: beam.start.y + ((beam.end.y - beam.start.y) * along) / length,
    z: beam.start.z + ((beam.end.z - beam.start.z) * along) / length,
  });
  const marks: Mark[] = [];
  const mark = (along: number, shared: string | undefined): void => {
    const standing = shared === undefined ? undefined : draft.postTop.get(shared);
    let known = marks.find((m) => Math.abs(m.along - along) < SAME);
    if (!known) {
      known = { along, node: standing ?? draft.node(at(along), `${beam.id} at ${along.toFixed(1)} in`) };
      marks.push(known);
    } else if (standing !== undefined) {
      // The end of this beam meets another beam on a post that already has its node.
      known.node = standing;
    }
    if (shared !== undefined && standing === undefined) draft.postTop.set(shared, known.node);
  };
  // Bearings on the house have a node each; a post's node is shared by the beams that end on it.
  const nearEnd = (along: number): number => (along < SAME ? 0 : length - along < SAME ? length : along);
  for (const b of held)
    mark(nearEnd(Math.min(Math.max(b.upperAlong, 0), length)), posts.has(b.lower) ? b.lower : undefined);
  for (const s of splices) mark(nearEnd(s), undefined);
  mark(0, undefined);
  mark(length, undefined);
  return marks.sort((p, q) => p.along - q.along);
}

export function idealise(index: StructureIndex): SupportFrame {
  const draft = new Draft();
  const failures: string[] = [];
  const beams: BeamLineModel[] = [];
  const posts: PostModel[] = [];
  const spliced = (id: string): number[] =>
    index.structure.joints.flatMap((j) =>
      j.kind === 'beam-splice' ? j.ties.filter((t) => t.part === id && t.along > SAME).map((t) => t.along) : [],
    );

  const postIds = new Set(index.structure.members.filter((m) => m.role === 'post').map((m) => m.id));

  for (const beam of index.structure.members) {
    if (beam.role !== 'beam') continue;
    const length = distance(beam.start, beam.end);
    const below = index.below.get(beam.id) ?? [];
    const held = below.filter((b) => index.members.get(b.lower)?.role === 'post' || index.walls.has(b.lower));
    for (const b of below)
      if (!held.includes(b)) failures.push(`${beam.id} bears on ${b.lower}, which is neither a post nor the house`);
    if (held.length === 0) {
      failures.push(`${beam.id} stands on nothing`);
      continue;
    }
    const splices = spliced(beam.id).filter((s) => s < length - SAME);
    const marks = markBeam(draft, beam, length, held, splices, postIds);
    const isSplice = (along: number): boolean => splices.some((s) => Math.abs(s - along) < SAME);
    const pieces: BeamPiece[] = [];
    for (let k = 0; k + 1 < marks.length; k++) {
      const a = marks[k]!;
      const b = marks[k + 1]!;
      const element = elementOf(beam, a.node, b.node, beam.up);
      draft.elements.push(isSplice(b.along) ? { ...element, releases: { end: PIN } } : element);
      pieces.push({ element: draft.elements.length - 1, from: a.along, to: b.along });
    }
    for (const m of marks) draft.beamsAt.set(m.node, [...(draft.beamsAt.get(m.node) ?? []), beam.id]);
    beams.push({
      member: beam,
      length,
      pieces,
      held: held.map((bearing) => ({
        along: bearing.upperAlong,
        node: marks.find((m) => Math.abs(m.along - bearing.upperAlong) < SAME)!.node,
        bearing,
        on: index.walls.has(bearing.lower) ? 'house' : 'post',
      })),
      loads: (index.above.get(beam.id) ?? []).filter((b) => index.members.get(b.upper)?.role !== 'beam'),
    });
  }

  const restrained = holdBeams(draft, beams);
  for (const post of index.structure.members) {
    if (post.role !== 'post') continue;
    const top = draft.postTop.get(post.id);
    const foot = (index.below.get(post.id) ?? []).find((b) => index.footings.has(b.lower));
    if (top === undefined || !foot) {
      failures.push(top === undefined ? `${post.id} carries no beam` : `${post.id} stands on no footing`);
      continue;
    }
    const t = draft.nodes[top]!;
    const base = draft.node({ x: t.x, y: t.y, z: post.start.z }, `${post.id} base`);
    const bar = elementOf(post, base, top, { x: 1, y: 0, z: 0 });
    draft.elements.push({ ...bar, releases: { end: { ...PIN, torsion: true } } });
    draft.supports.push({ node: base, dx: 'fixed', dy: 'fixed', dz: 'fixed', rz: 'fixed' });
    posts.push({
      member: post,
      element: draft.elements.length - 1,
      top,
      base,
      length: distance(post.start, post.end),
      foot,
    });
  }
  return {
    model: { nodes: draft.nodes, elements: draft.elements, supports: draft.supports },
    beams,
    posts,
    restrained,
    nodeNames: draft.names,
    failures,
  };
}

/** Supports at the beams' bearings, and pins where several beams meet on one post. */
function holdBeams(draft: Draft, beams: readonly BeamLineModel[]): SupportFrame['restrained'] {
  const restrained: { node: number; beam: string; beams: readonly string[] }[] = [];
  const done = new Set<number>();
  for (const { member, held, pieces } of beams) {
    const alongX = Math.abs(member.end.x - member.start.x);
    const alongY = Math.abs(member.end.y - member.start.y);
    for (const { node, on } of held) {
      const shared = draft.beamsAt.get(node)!.length > 1;
      if (shared) {
        // Every beam that ends here is pinned, so the node itself need not turn.
        for (const { element } of pieces) {
          const e = draft.elements[element]!;
          if (e.start === node) draft.elements[element] = { ...e, releases: { ...e.releases, start: PIN } };
          if (e.end === node) draft.elements[element] = { ...e, releases: { ...e.releases, end: PIN } };
        }
      }
      if (done.has(node)) continue;
      done.add(node);
      if (on === 'post') restrained.push({ node, beam: member.id, beams: draft.beamsAt.get(node)! });
      const house = on === 'house' ? ({ dz: 'fixed' } as const) : {};
      // A beam askew is kept from rolling by springs too weak to matter in bending.
      const weak = 1;
      const roll = shared
        ? ({ rx: 'fixed', ry: 'fixed', rz: 'fixed' } as const)
        : alongY < SAME
          ? ({ rx: 'fixed' } as const)
          : alongX < SAME
            ? ({ ry: 'fixed' } as const)
            : { rx: weak, ry: weak };
      draft.supports.push({ node, dx: 'fixed', dy: 'fixed', ...house, ...roll });
    }
  }
  return restrained;
}
