/** Which posts hold the roof sideways, and how. */
import type { Member } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import type { Axis } from './system.js';

/** A direction nearer than 45° to an axis holds in it. */
export const holdsIn = (axis: Axis, dx: number, dy: number): boolean =>
  axis === 'x' ? Math.abs(dx) > Math.abs(dy) : Math.abs(dy) > Math.abs(dx);

export const membersById = (ctx: CheckContext): ReadonlyMap<string, Member> =>
  new Map(ctx.structure.members.map((m) => [m.id, m]));

/** Posts that a knee brace keeps upright in this direction. */
export function bracedPosts(ctx: CheckContext, axis: Axis): ReadonlySet<string> {
  const members = membersById(ctx);
  const out = new Set<string>();
  for (const j of ctx.structure.joints) {
    const brace = j.kind === 'brace-to-post' ? members.get(j.ties[0]!.part) : undefined;
    const post = j.ties.at(-1)?.part;
    if (brace && post && holdsIn(axis, brace.end.x - brace.start.x, brace.end.y - brace.start.y)) out.add(post);
  }
  return out;
}

export const isHeld = (m: Member): boolean => m.foot !== undefined && m.foot.kind !== 'pinned';

/** Posts held at their feet. */
export const heldPosts = (ctx: CheckContext): ReadonlySet<string> =>
  new Set(ctx.structure.members.filter(isHeld).map((m) => m.id));

/** From where a post is held (or pinned) to its top, inches. */
export const heightOf = (m: Member): number => m.end.z - (isHeld(m) ? m.foot!.at : m.start.z);

/**
 * Height over which the posts lean, inches: from the foot to the lowest knee brace in this direction, or to the top; the
 * least of the posts that hold. Above its brace a post goes along with the beam and no longer leans, so the weight on it
 * turns with this arm against the side load, not with the whole height.
 */
export function leanOf(ctx: CheckContext, axis: Axis): number {
  const members = membersById(ctx);
  const arm = new Map<string, number>();
  for (const id of heldPosts(ctx)) arm.set(id, heightOf(members.get(id)!));
  for (const j of ctx.structure.joints) {
    const brace = j.kind === 'brace-to-post' ? members.get(j.ties[0]!.part) : undefined;
    const post = members.get(j.ties.at(-1)!.part);
    if (!brace || !post || !holdsIn(axis, brace.end.x - brace.start.x, brace.end.y - brace.start.y)) continue;
    const foot = post.end.z - heightOf(post);
    arm.set(post.id, Math.min(arm.get(post.id) ?? Number.MAX_VALUE, j.at.z - foot));
  }
  return [...arm.values()].reduce((least, h) => Math.min(least, h), Number.MAX_VALUE);
}
