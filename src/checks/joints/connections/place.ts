/** Directions at a joint and what of a force each part of its connection takes. */
import { cross, dot, type Vec3 } from '../../../base/vec.js';
import type { ConnectionPart, ConnectionWay, FastenerAxis } from '../../../project/connections.js';
import type { Joint, Member } from '../../../structure/model.js';
import type { CheckContext } from '../../contract.js';
import { memberOf } from '../bearing.js';
import { type Place, UP } from './contract.js';

/** Level direction of a member in plan; of a plumb one, of its depth. */
function planOf(m: Member): Vec3 {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const plan = Math.hypot(dx, dy);
  const [x, y, size] = plan > 1e-3 * m.length ? [dx, dy, plan] : [m.up.x, m.up.y, Math.hypot(m.up.x, m.up.y)];
  return size > 0 ? { x: x / size, y: y / size, z: 0 } : { x: 1, y: 0, z: 0 };
}

/** The joint's own directions; undefined where it ends on something that is no member of the structure. */
export function placeOf(ctx: CheckContext, joint: Joint, madeDry: boolean): Place | undefined {
  const upper = memberOf(ctx.structure, joint.ties[0]?.part ?? '');
  const lower = memberOf(ctx.structure, joint.ties.at(-1)?.part ?? '');
  if (!upper || !lower) return undefined;
  const lengthwise = planOf(upper);
  return { ctx, joint, upper, lower, lengthwise, crosswise: cross(UP, lengthwise), madeDry };
}

export const axisOf = (place: Place, axis: FastenerAxis): Vec3 => (axis === 'plumb' ? UP : place[axis]);

/** Unit vector of a member's grain. */
export function grainOf(m: Member): Vec3 {
  const d = { x: m.end.x - m.start.x, y: m.end.y - m.start.y, z: m.end.z - m.start.z };
  const n = Math.hypot(d.x, d.y, d.z);
  return n > 0 ? { x: d.x / n, y: d.y / n, z: d.z / n } : UP;
}

/** A joint's force split into its own ways, lb; `down` and `up` are never both. */
export type Ways = Readonly<Record<ConnectionWay, number>>;

export const waysOf = (place: Place, force: Vec3): Ways => ({
  down: Math.max(0, -force.z),
  up: Math.max(0, force.z),
  lengthwise: dot(force, place.lengthwise),
  crosswise: dot(force, place.crosswise),
});

/** The force one part takes, house axes. */
export function takenBy(part: ConnectionPart, place: Place, ways: Ways): Vec3 {
  const has = (way: ConnectionWay): number => (part.takes.includes(way) ? ways[way] : 0);
  const l = has('lengthwise');
  const c = has('crosswise');
  return {
    x: l * place.lengthwise.x + c * place.crosswise.x,
    y: l * place.lengthwise.y + c * place.crosswise.y,
    z: has('up') - has('down'),
  };
}
