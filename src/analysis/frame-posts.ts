/** Posts, struts and knee braces as elements of the frame, and the links between beam lines. */
import { distance, type Vec3 } from '../base/vec.js';
import type { Joint, Member } from '../structure/model.js';
import { alongMet, type Bracing, type Knee, metBy, type Pair } from './bracing.js';
import {
  type BarModel,
  type BeamLineModel,
  type BeamPiece,
  type Draft,
  elementOf,
  type Mark,
  PIN,
  type PostModel,
  SAME,
} from './frame-draft.js';
import type { Bearing } from './index-structure.js';

/** Ends that turn freely; the second end of a pinned bar gives up twist too, or nothing would hold it. */
const FREE = { ...PIN, torsion: true } as const;

/** Finds the node that stands at a place of a part. */
export class NodesOnParts {
  constructor(
    private readonly draft: Draft,
    private readonly marks: Map<string, readonly Mark[]>,
  ) {}

  set(part: string, marks: readonly Mark[]): void {
    this.marks.set(part, marks);
  }

  /** The nearest node of the part, when it stands there. */
  find(part: string, along: number): number | undefined {
    let best: Mark | undefined;
    for (const m of this.marks.get(part) ?? [])
      if (!best || Math.abs(m.along - along) < Math.abs(best.along - along)) best = m;
    return best && Math.abs(best.along - along) <= 2 * SAME ? best.node : undefined;
  }

  point(node: number): Vec3 {
    return this.draft.nodes[node]!;
  }
}

/** A bar in compression and nothing else. */
export function pinnedPost(draft: Draft, post: Member, top: number, foot: Bearing): PostModel {
  const t = draft.nodes[top]!;
  const base = draft.node({ x: t.x, y: t.y, z: post.start.z }, `${post.id} base`);
  const bar = elementOf(post, base, top, { x: 1, y: 0, z: 0 });
  draft.elements.push({ ...bar, releases: { end: FREE } });
  draft.supports.push({ node: base, dx: 'fixed', dy: 'fixed', dz: 'fixed', rz: 'fixed' });
  const length = distance(post.start, post.end);
  const pieces = [{ element: draft.elements.length - 1, from: 0, to: t.z - post.start.z }];
  return { member: post, pieces, top, base, length, foot };
}

/** Elements between nodes in a row; `from` is the first node's distance from the member's start. */
function chain(
  draft: Draft,
  member: Member,
  nodes: readonly number[],
  from: number,
  pinnedStart: boolean,
): BeamPiece[] {
  const pieces: BeamPiece[] = [];
  let at = from;
  for (let k = 0; k + 1 < nodes.length; k++) {
    const to = at + distance(draft.nodes[nodes[k]!]!, draft.nodes[nodes[k + 1]!]!);
    const start = k === 0 && pinnedStart ? { start: PIN } : {};
    const end = k + 2 === nodes.length ? { end: FREE } : {};
    draft.elements.push({ ...elementOf(member, nodes[k]!, nodes[k + 1]!, member.up), releases: { ...start, ...end } });
    pieces.push({ element: draft.elements.length - 1, from: at, to });
    at = to;
  }
  return pieces;
}

/** A post that bends: continuous from its foot past braces and struts to the pin under the beam. */
export function bentPost(
  draft: Draft,
  post: Member,
  top: number,
  foot: Bearing,
  bracing: Bracing,
  nodes: NodesOnParts,
): PostModel {
  const t = draft.nodes[top]!;
  const held = post.foot !== undefined && post.foot.kind !== 'pinned';
  const low = held ? post.foot.at : post.start.z;
  const base = draft.node({ x: t.x, y: t.y, z: low }, `${post.id} base`);
  const marks: Mark[] = [{ along: low - post.start.z, node: base }];
  for (const along of [...(bracing.marks.get(post.id) ?? [])].sort((a, b) => a - b)) {
    const z = post.start.z + along;
    if (along - marks.at(-1)!.along < SAME || t.z - z < SAME) continue;
    marks.push({ along, node: draft.node({ x: t.x, y: t.y, z }, `${post.id} at ${along.toFixed(1)} in`) });
  }
  marks.push({ along: t.z - post.start.z, node: top });
  nodes.set(post.id, marks);
  const pieces = chain(
    draft,
    post,
    marks.map((m) => m.node),
    marks[0]!.along,
    false,
  );
  const turn = held ? ({ rx: 'fixed', ry: 'fixed' } as const) : {};
  draft.supports.push({ node: base, dx: 'fixed', dy: 'fixed', dz: 'fixed', rz: 'fixed', ...turn });
  return { member: post, pieces, top, base, length: distance(post.start, post.end), foot };
}

const endOf = (joint: Joint, bar: string, element: number, at: 'start' | 'end'): BarModel['ends'][number] => ({
  joint: joint.id,
  element,
  at,
  sense: joint.ties[0]!.part === bar ? 1 : -1,
});

/** A strut pinned between two posts, running on over the ends of its braces. */
export function strutBar(
  draft: Draft,
  { member, ends }: Bracing['struts'][number],
  bracing: Bracing,
  nodes: NodesOnParts,
): BarModel | string {
  const [first, last] = [...ends].sort((p, q) => ownAlong(p, member.id) - ownAlong(q, member.id));
  const a = first && nodes.find(metBy(first, member.id), alongMet(first, member.id));
  const b = last && nodes.find(metBy(last, member.id), alongMet(last, member.id));
  if (!first || !last || first === last || a === undefined || b === undefined)
    return `${member.id} does not reach two posts`;
  const long = distance(member.start, member.end);
  const marks: Mark[] = [{ along: -distance(draft.nodes[a]!, member.start), node: a }];
  for (const along of [...(bracing.marks.get(member.id) ?? [])].sort((p, q) => p - q)) {
    if (along - marks.at(-1)!.along < SAME || long - along < SAME) continue;
    const t = along / long;
    const at = (k: 'x' | 'y' | 'z'): number => member.start[k] + t * (member.end[k] - member.start[k]);
    marks.push({
      along,
      node: draft.node({ x: at('x'), y: at('y'), z: at('z') }, `${member.id} at ${along.toFixed(1)} in`),
    });
  }
  marks.push({ along: long + distance(draft.nodes[b]!, member.end), node: b });
  nodes.set(member.id, marks);
  const pieces = chain(
    draft,
    member,
    marks.map((m) => m.node),
    marks[0]!.along,
    true,
  );
  return {
    member,
    pieces,
    ends: [endOf(first, member.id, pieces[0]!.element, 'start'), endOf(last, member.id, pieces.at(-1)!.element, 'end')],
  };
}

const ownAlong = (joint: Joint, part: string): number => joint.ties.find((t) => t.part === part)?.along ?? 0;

/** A knee brace between its working points. */
export function kneeBar(draft: Draft, { member, top, bottom }: Knee, nodes: NodesOnParts): BarModel | string {
  const low = nodes.find(metBy(bottom, member.id), alongMet(bottom, member.id));
  const high = nodes.find(metBy(top, member.id), alongMet(top, member.id));
  if (low === undefined || high === undefined) return `${member.id} does not reach both a post and what it braces`;
  const pieces = chain(draft, member, [low, high], -distance(draft.nodes[low]!, member.start), true);
  const element = pieces[0]!.element;
  return { member, pieces, ends: [endOf(bottom, member.id, element, 'start'), endOf(top, member.id, element, 'end')] };
}

/**
 * A link is as stiff as a square inch of steel: a hundred times and more what a frame of wood posts is sideways, so that
 * it hardly gives, and little enough for the arithmetic.
 */
const LINK = { E: 29e6, G: 11e6, A: 1, Iy: 1, Iz: 1, J: 1, up: { x: 0, y: 0, z: 1 } } as const;

export function linkBeams(
  draft: Draft,
  pairs: readonly Pair[],
  beams: readonly BeamLineModel[],
  nodes: NodesOnParts,
): void {
  const onHouse = (id: string): boolean =>
    beams.find((b) => b.member.id === id)?.held.some((h) => h.on === 'house') === true;
  const link = (start: number | undefined, end: number | undefined): void => {
    if (start === undefined || end === undefined || start === end) return;
    draft.elements.push({ ...LINK, start, end, releases: { start: PIN, end: FREE } });
  };
  for (const { a, b, sheathed, lines } of pairs) {
    const ends = lines.map(([x, y]) => [nodes.find(a.id, x), nodes.find(b.id, y)] as const);
    for (const [p, q] of ends) link(p, q);
    if (!sheathed || onHouse(a.id) || onHouse(b.id)) continue;
    for (let k = 0; k + 1 < ends.length; k++) {
      link(ends[k]![0], ends[k + 1]![1]);
      link(ends[k + 1]![0], ends[k]![1]);
    }
  }
}
