/** Parts of a structure by id and mark, and the joints at a part: looked up once a structure, so that no check searches it. */
import type { Footing, Joint, Member, Structure } from './model.js';

/** What `find` makes of a structure, made once for each. */
function onceFor<T>(find: (structure: Structure) => T): (structure: Structure) => T {
  const made = new WeakMap<Structure, { readonly answer: T }>();
  return (structure) => {
    let known = made.get(structure);
    if (!known) {
      known = { answer: find(structure) };
      made.set(structure, known);
    }
    return known.answer;
  };
}

/** Parts by a name of theirs, in their order. */
export function groupBy<T>(parts: readonly T[], nameOf: (part: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const part of parts) {
    const name = nameOf(part);
    const group = groups.get(name);
    if (group) group.push(part);
    else groups.set(name, [part]);
  }
  return groups;
}

const membersById = onceFor((s) => new Map(s.members.map((m) => [m.id, m])));
const footingsById = onceFor((s) => new Map(s.footings.map((f) => [f.id, f])));
const membersByMark = onceFor((s) => groupBy(s.members, (m) => m.mark));
const footingsByMark = onceFor((s) => groupBy(s.footings, (f) => f.mark));
/** All joints by mark. */
export const jointMarks = onceFor((s) => groupBy(s.joints, (j) => j.mark));
const jointsByPart = onceFor((s) => {
  const at = new Map<string, Joint[]>();
  for (const joint of s.joints) {
    for (const part of new Set(joint.ties.map((t) => t.part))) {
      const list = at.get(part);
      if (list) list.push(joint);
      else at.set(part, [joint]);
    }
  }
  return at as ReadonlyMap<string, readonly Joint[]>;
});

export const memberOf = (s: Structure, id: string): Member | undefined => membersById(s).get(id);
export const footingOf = (s: Structure, id: string): Footing | undefined => footingsById(s).get(id);
/** Members of a mark, in the structure's order. */
export const membersOf = (s: Structure, mark: string): readonly Member[] => membersByMark(s).get(mark) ?? [];
/** Footings of a mark, in the structure's order. */
export const footingsOf = (s: Structure, mark: string): readonly Footing[] => footingsByMark(s).get(mark) ?? [];
/** Joints of a mark, in the structure's order. */
export const jointsOf = (s: Structure, mark: string): readonly Joint[] => jointMarks(s).get(mark) ?? [];
/** Joints that a member, footing or house wall is part of, in the structure's order. */
export const jointsAt = (s: Structure, part: string): readonly Joint[] => jointsByPart(s).get(part) ?? [];

/** The member that stands on a footing; undefined when nothing does. */
export function standsOn(s: Structure, footing: string): Member | undefined {
  const joint = jointsAt(s, footing)[0];
  for (const t of joint?.ties ?? []) {
    const member = memberOf(s, t.part);
    if (member) return member;
  }
  return undefined;
}

/** A post on its footing, with the joint between them. */
export interface Standing {
  readonly joint: Joint;
  readonly post: Member;
  readonly footing: Footing;
}

/** Every post that stands on a footing, in the order of the joints. */
export const standings = (s: Structure): Standing[] =>
  s.joints.flatMap((joint) => {
    if (joint.kind !== 'post-to-footing') return [];
    const post = memberOf(s, joint.ties[0]?.part ?? '');
    const footing = footingOf(s, joint.ties.at(-1)?.part ?? '');
    return post && footing ? [{ joint, post, footing }] : [];
  });
