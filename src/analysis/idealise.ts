/**
 * Tier 2: beams on posts as a frame, the one place where structure meets solver.
 *
 * Posts are pinned at both ends: a wood joint passes no moment and a standoff base has none; a foot that is held is held
 * at the level its post names. Beams run on over their posts and are pinned at splices and on the house. At each post
 * top a notional restraint holds the beam sideways (its reactions are the sway forces, reported and not lost), but not in
 * a direction that the posts are to hold themselves; and the beam is kept from rolling about its own axis. Framing
 * reactions act on the beam's axis; eccentricities are the checks' affair.
 *
 * Where posts bend (`framed`), posts run in pieces between the feet of braces and the ends of struts, braces and struts are
 * pinned bars, and beams lie at the level of their underside, where posts and braces meet them: the heights that turn side
 * load into moment are then those that are built. Beams under one roof are linked (`pairsOf`). A beam that ends on the
 * house is held there across its length, and along it only where the posts are not to do that.
 */
import { distance, type Vec3 } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import { bracingOf, type Hold, isFramed, pairsOf } from './bracing.js';
import {
  type BarModel,
  type BeamLineModel,
  type BeamPiece,
  Draft,
  elementOf,
  type Mark,
  PIN,
  type PostModel,
  SAME,
} from './frame-draft.js';
import { bentPost, kneeBar, linkBeams, NodesOnParts, pinnedPost, strutBar } from './frame-posts.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import type { FrameModel } from './solver/index.js';

export interface SupportFrame {
  readonly model: FrameModel;
  readonly beams: readonly BeamLineModel[];
  readonly posts: readonly PostModel[];
  readonly bars: readonly BarModel[];
  /** Posts bend, and beams lie at the level of their underside. */
  readonly framed: boolean;
  /** Nodes with a notional restraint, the beam that stands on each, and all beams that meet there. */
  readonly restrained: readonly { readonly node: number; readonly beam: string; readonly beams: readonly string[] }[];
  readonly nodeNames: readonly string[];
  readonly failures: readonly string[];
}

function markBeam(
  draft: Draft,
  beam: Member,
  length: number,
  held: readonly Bearing[],
  splices: readonly number[],
  posts: ReadonlySet<string>,
  extra: readonly number[],
  drop: number,
): Mark[] {
  const at = (along: number): Vec3 => ({
    x: beam.start.x + ((beam.end.x - beam.start.x) * along) / length,
    y: beam.start.y + ((beam.end.y - beam.start.y) * along) / length,
    z: beam.start.z + ((beam.end.z - beam.start.z) * along) / length - drop,
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
  for (const e of extra) mark(nearEnd(e), undefined);
  mark(0, undefined);
  mark(length, undefined);
  return marks.sort((p, q) => p.along - q.along);
}

const HELD: Hold = { x: true, y: true };

export function idealise(index: StructureIndex, hold: Hold = HELD): SupportFrame {
  const draft = new Draft();
  const bracing = bracingOf(index);
  const framed = isFramed(index, hold, bracing);
  const pairs = hold.x && hold.y ? [] : pairsOf(index);
  const extra = (beam: string): readonly number[] => [
    ...(bracing.marks.get(beam) ?? []),
    ...pairs.flatMap((p) =>
      p.a.id === beam ? p.lines.map((l) => l[0]) : p.b.id === beam ? p.lines.map((l) => l[1]) : [],
    ),
  ];
  const beamMarks = new Map<string, readonly Mark[]>();
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
    const drop = framed ? beam.section.depth / 2 : 0;
    const marks = markBeam(draft, beam, length, held, splices, postIds, extra(beam.id), drop);
    beamMarks.set(beam.id, marks);
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

  const restrained = holdBeams(draft, beams, hold);
  const nodes = new NodesOnParts(draft, beamMarks);
  for (const post of index.structure.members) {
    if (post.role !== 'post') continue;
    const top = draft.postTop.get(post.id);
    const foot = (index.below.get(post.id) ?? []).find((b) => index.footings.has(b.lower) || index.walls.has(b.lower));
    if (top === undefined || !foot) {
      failures.push(
        top === undefined ? `${post.id} carries no beam` : `${post.id} stands on no footing and no foundation`,
      );
      continue;
    }
    posts.push(framed ? bentPost(draft, post, top, foot, bracing, nodes) : pinnedPost(draft, post, top, foot));
  }
  const bars: BarModel[] = [];
  const keep = (bar: BarModel | string): void => {
    if (typeof bar === 'string') failures.push(bar);
    else bars.push(bar);
  };
  // Struts first: their braces stand on their nodes.
  for (const strut of bracing.struts) keep(strutBar(draft, strut, bracing, nodes));
  for (const knee of bracing.knees) keep(kneeBar(draft, knee, nodes));
  linkBeams(draft, pairs, beams, nodes);
  return {
    model: { nodes: draft.nodes, elements: draft.elements, supports: draft.supports },
    beams,
    posts,
    bars,
    framed,
    restrained,
    nodeNames: draft.names,
    failures,
  };
}

/** Longest bit of a beam past the last post that counts as no cantilever, inches: half a corner post. */
const STUB = 6;

/**
 * End of a beam that runs on over a corner post to its outer face. Pinned there like the rest it could turn freely; it stays on
 * the node, which does not turn, and its moment, of a few inches of its own weight, is not carried into the span.
 */
function isStub(piece: BeamPiece, pieces: readonly BeamPiece[], held: BeamLineModel['held']): boolean {
  const outer = piece === pieces[0] ? piece.from : piece === pieces.at(-1) ? piece.to : undefined;
  return (
    outer !== undefined &&
    pieces.length > 1 &&
    piece.to - piece.from <= STUB &&
    !held.some((h) => Math.abs(h.along - outer) < SAME)
  );
}

/** Supports at the beams' bearings, and pins where several beams meet on one post. */
function holdBeams(draft: Draft, beams: readonly BeamLineModel[], hold: Hold): SupportFrame['restrained'] {
  const restrained: { node: number; beam: string; beams: readonly string[] }[] = [];
  const done = new Set<number>();
  for (const { member, held, pieces } of beams) {
    const alongX = Math.abs(member.end.x - member.start.x);
    const alongY = Math.abs(member.end.y - member.start.y);
    for (const { node, on } of held) {
      const shared = draft.beamsAt.get(node)!.length > 1;
      if (shared) {
        // Every beam that ends here is pinned, so the node itself need not turn.
        for (const piece of pieces) {
          if (isStub(piece, pieces, held)) continue;
          const { element } = piece;
          const e = draft.elements[element]!;
          if (e.start === node) draft.elements[element] = { ...e, releases: { ...e.releases, start: PIN } };
          if (e.end === node) draft.elements[element] = { ...e, releases: { ...e.releases, end: PIN } };
        }
      }
      if (done.has(node)) continue;
      done.add(node);
      if (on === 'post') restrained.push({ node, beam: member.id, beams: draft.beamsAt.get(node)! });
      const house = on === 'house' ? ({ dz: 'fixed' } as const) : {};
      const dx = hold.x || (on === 'house' && alongX < alongY) ? ({ dx: 'fixed' } as const) : {};
      const dy = hold.y || (on === 'house' && alongY <= alongX) ? ({ dy: 'fixed' } as const) : {};
      // A beam askew is kept from rolling by springs too weak to matter in bending.
      const weak = 1;
      const roll = shared
        ? ({ rx: 'fixed', ry: 'fixed', rz: 'fixed' } as const)
        : alongY < SAME
          ? ({ rx: 'fixed' } as const)
          : alongX < SAME
            ? ({ ry: 'fixed' } as const)
            : { rx: weak, ry: weak };
      draft.supports.push({ node, ...dx, ...dy, ...house, ...roll });
    }
  }
  return restrained;
}
