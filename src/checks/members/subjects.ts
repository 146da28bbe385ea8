/** Members as subjects of checks: equal members of a row share a mark, and the mark is checked by its worst member. */

import type { MemberEffects } from '../../analysis/model.js';
import { membersOf } from '../../structure/lookup.js';
import type { Member, MemberRole } from '../../structure/model.js';
import type { CheckContext, Finding, Subject } from '../contract.js';
import { notEvaluated } from '../finding.js';

export function memberSubjects(ctx: CheckContext, role: MemberRole): readonly Subject[] {
  const seen = new Map<string, Subject>();
  for (const m of ctx.structure.members) {
    if (m.role === role && m.state === 'new' && !seen.has(m.mark)) seen.set(m.mark, { id: m.mark, path: m.path });
  }
  return [...seen.values()];
}

export interface Loaded {
  readonly member: Member;
  readonly effects: MemberEffects;
}

/** Curves nearer than this share of their size are the same curve. */
const SAME = 1e-9;

function sameRow(a: Float64Array, b: Float64Array): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    const x = a[i]!;
    const y = b[i]!;
    if (Math.abs(x - y) > SAME * Math.max(1, Math.abs(x), Math.abs(y))) return false;
  }
  return true;
}

const sameRows = (a: readonly Float64Array[], b: readonly Float64Array[]): boolean =>
  a === b || (a.length === b.length && a.every((row, c) => sameRow(row, b[c]!)));

/** Equal members of a row under equal loads, such as the rafters between the end ones, need looking at once. */
const alike = (a: Loaded, b: Loaded): boolean =>
  a.member.section === b.member.section &&
  a.member.notch === b.member.notch &&
  a.member.unbraced.top === b.member.unbraced.top &&
  a.member.unbraced.bottom === b.member.unbraced.bottom &&
  sameRow(a.effects.stations, b.effects.stations) &&
  sameRows(a.effects.m, b.effects.m) &&
  sameRows(a.effects.v, b.effects.v) &&
  sameRows(a.effects.n, b.effects.n) &&
  sameRows(a.effects.sag, b.effects.sag);

function workOut(ctx: CheckContext, mark: string): readonly Loaded[] | undefined {
  const out: Loaded[] = [];
  for (const member of membersOf(ctx.structure, mark)) {
    const effects = ctx.effects.members.get(member.id);
    if (!effects || effects.stations.length === 0) return undefined;
    const one = { member, effects };
    if (!out.some((known) => alike(known, one))) out.push(one);
  }
  return out.length > 0 ? out : undefined;
}

const made = new WeakMap<CheckContext, Map<string, readonly Loaded[] | undefined>>();

/**
 * Members of a mark with their forces, alike ones once. Undefined when any of them has no forces: a worst case over a
 * part of the row would be no worst case.
 */
export function loadedMembers(ctx: CheckContext, mark: string): readonly Loaded[] | undefined {
  let marks = made.get(ctx);
  if (!marks) {
    marks = new Map();
    made.set(ctx, marks);
  }
  if (!marks.has(mark)) marks.set(mark, workOut(ctx, mark));
  return marks.get(mark);
}

/** Said where forces are missing. */
export const noForces = (clause: string): Finding =>
  notEvaluated(clause, 'no forces were worked out for this part, see the frame check');
