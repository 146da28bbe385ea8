/**
 * What makes the posts hold side load: knee braces, struts, held feet, and the roof that moves beam lines together.
 * Idealise builds the frame from these; nothing here solves.
 */
import type { Vec3 } from '../base/vec.js';
import type { LateralSystem } from '../project/model.js';
import type { Joint, Member, Structure } from '../structure/model.js';
import type { StructureIndex } from './index-structure.js';

/** Directions in which a notional restraint stands for a system outside the posts. */
export interface Hold {
  readonly x: boolean;
  readonly y: boolean;
}

/** Whether anything of the system named for a direction is placed there at all. */
const PRESENT: Readonly<Record<LateralSystem, (structure: Structure, axis: 'x' | 'y') => boolean>> = {
  'knee-braces': ({ members }, axis) =>
    members.some((m) => {
      const [dx, dy] = [Math.abs(m.end.x - m.start.x), Math.abs(m.end.y - m.start.y)];
      return m.role === 'brace' && (axis === 'x' ? dx > dy : dy > dx);
    }),
  'fixed-posts': ({ members }) => members.some((m) => m.foot !== undefined && m.foot.kind !== 'pinned'),
  house: () => false,
  none: () => false,
  unknown: () => false,
};

/**
 * Where the posts hold the roof the restraint goes; where it is the house, or open, it stays. It also stays where nothing
 * of the named system is placed yet, so that gravity can be looked at meanwhile: the sway check fails that direction.
 */
export const holdOf = (
  lateral: { readonly x: LateralSystem; readonly y: LateralSystem },
  structure: Structure,
): Hold => ({
  x: !PRESENT[lateral.x](structure, 'x'),
  y: !PRESENT[lateral.y](structure, 'y'),
});

export interface Knee {
  readonly member: Member;
  /** Ties: the braced member and the brace; the brace and the post. */
  readonly top: Joint;
  readonly bottom: Joint;
}

export interface Bracing {
  readonly knees: readonly Knee[];
  readonly struts: readonly { readonly member: Member; readonly ends: readonly Joint[] }[];
  /** Places along beams and struts that need a node; along posts too, from their start. */
  readonly marks: ReadonlyMap<string, readonly number[]>;
}

const partOf = (joint: Joint, not: string) => joint.ties.find((t) => t.part !== not)!;
/** The part a brace or strut meets at this joint. */
export const metBy = (joint: Joint, brace: string): string => partOf(joint, brace).part;
export const alongMet = (joint: Joint, brace: string): number => partOf(joint, brace).along;

export function bracingOf(index: StructureIndex): Bracing {
  const at = new Map<string, Joint[]>();
  for (const joint of index.structure.joints) {
    if (joint.kind !== 'brace-to-beam' && joint.kind !== 'brace-to-post' && joint.kind !== 'strut-to-post') continue;
    for (const { part } of joint.ties) {
      const role = index.members.get(part)?.role;
      if (role !== 'brace' && role !== 'strut') continue;
      const list = at.get(part);
      if (list) list.push(joint);
      else at.set(part, [joint]);
    }
  }
  const marks = new Map<string, number[]>();
  const mark = (part: string, along: number): void => {
    const list = marks.get(part);
    if (list) list.push(along);
    else marks.set(part, [along]);
  };
  const knees: Knee[] = [];
  const struts: { member: Member; ends: Joint[] }[] = [];
  for (const member of index.structure.members) {
    const joints = at.get(member.id) ?? [];
    if (member.role === 'strut') {
      const ends = joints.filter((j) => j.kind === 'strut-to-post');
      struts.push({ member, ends });
      for (const j of ends) mark(metBy(j, member.id), alongMet(j, member.id));
    }
    if (member.role !== 'brace') continue;
    const top = joints.find((j) => j.kind === 'brace-to-beam');
    const bottom = joints.find((j) => j.kind === 'brace-to-post');
    if (!top || !bottom) continue;
    knees.push({ member, top, bottom });
    for (const j of [top, bottom]) mark(metBy(j, member.id), alongMet(j, member.id));
  }
  return { knees, struts, marks };
}

/**
 * Two beams that carry the same framing move together: at each post line a stiff pinned link stands for the framing
 * between them. Where the roof is sheathed and no end is held by a house, crossed links stand for the diaphragm, so that
 * lines of unequal stiffness share the side load and its twist.
 */
export interface Pair {
  readonly a: Member;
  readonly b: Member;
  readonly sheathed: boolean;
  /** Link lines: places along both, in order along `a`. */
  readonly lines: readonly (readonly [number, number])[];
}

const level = (m: Member): { readonly x: number; readonly y: number; readonly length: number } => {
  const length = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
  return { x: (m.end.x - m.start.x) / length, y: (m.end.y - m.start.y) / length, length };
};

/** Nearer than this two places along a beam are one, inches. */
const SAME = 1 / 16;

function linesOf(a: Member, b: Member, postsOf: (beam: string) => readonly Vec3[]): (readonly [number, number])[] {
  const along = (m: Member, p: Vec3): number => {
    const d = level(m);
    return (p.x - m.start.x) * d.x + (p.y - m.start.y) * d.y;
  };
  const lines: [number, number][] = [];
  for (const p of [...postsOf(a.id), ...postsOf(b.id)]) {
    const line: [number, number] = [along(a, p), along(b, p)];
    const inside = [a, b].every((m, i) => line[i]! > -SAME && line[i]! < level(m).length + SAME);
    if (!inside || lines.some((l) => Math.abs(l[0] - line[0]) < SAME)) continue;
    lines.push(line);
  }
  return lines.sort((p, q) => p[0] - q[0]);
}

/** Beams at a corner are held together by the post they share; across it there is no line to link. */
function parallel(a: Member, b: Member): boolean {
  const [p, q] = [level(a), level(b)];
  return Math.abs(p.x * q.y - p.y * q.x) < 1e-3;
}

export function pairsOf(index: StructureIndex): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  const postsOf = (beam: string): readonly Vec3[] =>
    (index.below.get(beam) ?? []).flatMap((b) => {
      const post = index.members.get(b.lower);
      return post?.role === 'post' ? [post.start] : [];
    });
  for (const member of index.structure.members) {
    if (member.strips.length === 0) continue;
    const beams = (index.below.get(member.id) ?? []).flatMap((b) => {
      const beam = index.members.get(b.lower);
      return beam?.role === 'beam' ? [beam] : [];
    });
    for (let i = 0; i + 1 < beams.length; i++) {
      const [a, b] = [beams[i]!, beams[i + 1]!];
      const key = a.id < b.id ? `${a.id}|${b.id}` : `${b.id}|${a.id}`;
      if (a === b || pairs.has(key) || !parallel(a, b)) continue;
      const sheathed = member.strips.every((s) => index.surfaces.get(s.surface)?.sheathed === true);
      pairs.set(key, { a, b, sheathed, lines: linesOf(a, b, postsOf) });
    }
  }
  return [...pairs.values()];
}

/** Anything that bends a post or shares its load sideways. */
export const isFramed = (index: StructureIndex, hold: Hold, bracing: Bracing): boolean =>
  !hold.x ||
  !hold.y ||
  bracing.knees.length > 0 ||
  bracing.struts.length > 0 ||
  index.structure.members.some((m) => m.foot !== undefined && m.foot.kind !== 'pinned');
