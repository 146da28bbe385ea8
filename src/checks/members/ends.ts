/** Which end of a member its stations are measured from, in words a reader of the drawings can find. */
import type { Member } from '../../structure/model.js';

/** Rise over length under which a member counts as level. */
const LEVEL = 1e-3;

/** `bottom`, `low end`, `left end` (seen looking out of the house), `end nearer the house`. */
export function startName({ start, end }: Pick<Member, 'start' | 'end'>): string {
  const [dx, dy, dz] = [end.x - start.x, end.y - start.y, end.z - start.z];
  const plan = Math.hypot(dx, dy);
  if (plan < LEVEL * Math.abs(dz)) return dz > 0 ? 'bottom' : 'top';
  if (Math.abs(dz) > LEVEL * plan) return dz > 0 ? 'low end' : 'high end';
  if (Math.abs(dx) >= Math.abs(dy)) return dx > 0 ? 'left end' : 'right end';
  return dy > 0 ? 'end nearer the house' : 'end away from the house';
}

/** `14.50 ft from its left end`. */
export const place = (member: Pick<Member, 'start' | 'end'>, inches: number): string =>
  `${(inches / 12).toFixed(2)} ft from its ${startName(member)}`;

/** Parts of the space frame; all other framing is solved by itself on its bearings. */
const IN_FRAME: ReadonlySet<Member['role']> = new Set(['beam', 'post', 'strut', 'brace']);

/** Where a force along a member comes from: its parts by load case can be added up again, not worked out by hand. */
export const source = (member: Pick<Member, 'role'>): string =>
  IN_FRAME.has(member.role) ? 'from the frame' : 'from the analysis of the member on its bearings';
