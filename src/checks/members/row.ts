/** Whether a framing member is one of a row that shares load through the sheathing. NDS 2018 4.3.9. */
import { membersOf } from '../../structure/lookup.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import type { Situation } from './design.js';

const rows = new WeakMap<CheckContext, Map<string, Situation['row'] | null>>();

/** Members of the row and their spacing (inches); undefined for beams and where no sheathing joins them. */
export function repetitiveRow(ctx: CheckContext, member: Member): Situation['row'] {
  if (member.roof === undefined || member.strips.length === 0) return undefined;
  let known = rows.get(ctx);
  if (!known) {
    known = new Map();
    rows.set(ctx, known);
  }
  const hit = known.get(member.mark);
  if (hit !== undefined) return hit ?? undefined;
  const roof = ctx.project.cover.roofs.find((r) => r.mark === member.roof);
  const joined = member.strips.every((s) => ctx.structure.surfaces.find((q) => q.id === s.surface)?.sheathed);
  const row =
    roof && joined ? { members: membersOf(ctx.structure, member.mark).length, spacing: roof.framing.spacing } : null;
  known.set(member.mark, row);
  return row ?? undefined;
}
