/** Members as subjects of checks: equal members of a row share a mark, and the mark is checked by its worst member. */
import type { MemberEffects } from '../../analysis/model.js';
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

/**
 * Members of a mark with their forces. Members of a row that share the very same arrays are kept once.
 * Undefined when any of them has no forces: a worst case over a part of the row would be no worst case.
 */
export function loadedMembers(ctx: CheckContext, mark: string): readonly Loaded[] | undefined {
  const out: Loaded[] = [];
  const known = new Set<unknown>();
  for (const member of ctx.structure.members) {
    if (member.mark !== mark) continue;
    const effects = ctx.effects.members.get(member.id);
    if (!effects || effects.stations.length === 0) return undefined;
    if (known.has(effects)) continue;
    known.add(effects);
    out.push({ member, effects });
  }
  return out.length > 0 ? out : undefined;
}

/** Said where forces are missing. */
export const noForces = (clause: string): Finding =>
  notEvaluated(clause, 'no forces were worked out for this part, see the frame check');
