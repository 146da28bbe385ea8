/** Directions at a joint and what of a force each part of its connection takes. */

import { cross, distance, dot, scale, sub, type Vec3 } from '../../../base/vec.js';
import type { ConnectionPart, ConnectionWay, FastenerAxis } from '../../../project/connections.js';
import { memberOf } from '../../../structure/lookup.js';
import type { Joint, Member } from '../../../structure/model.js';
import type { CheckContext } from '../../contract.js';
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
  const crosswise = cross(UP, lengthwise);
  return { ctx, joint, upper, lower, lengthwise, crosswise, inward: inward(joint, upper, lower), madeDry };
}

export const axisOf = (place: Place, axis: FastenerAxis): Vec3 => (axis === 'plumb' ? UP : place[axis]);

/** Unit vector of a member's grain. */
export function grainOf(m: Member): Vec3 {
  const d = { x: m.end.x - m.start.x, y: m.end.y - m.start.y, z: m.end.z - m.start.z };
  const n = Math.hypot(d.x, d.y, d.z);
  return n > 0 ? { x: d.x / n, y: d.y / n, z: d.z / n } : UP;
}

/**
 * The way the carried part pushes, unit vector: along it toward the joint. Where a brace carries a beam or strut, push and
 * pull are along the brace, and the beam presses on it against the way the brace points.
 */
function inward(joint: Joint, upper: Member, lower: Member): Vec3 {
  const carries = lower.role === 'brace' && upper.role !== 'brace';
  const m = carries ? lower : upper;
  const at = joint.ties.find((t) => t.part === m.id)?.along ?? 0;
  const g = grainOf(m);
  return at > distance(m.start, m.end) / 2 !== carries ? g : scale(g, -1);
}

/** A joint's force split into its own ways, lb; of `down` and `up`, `push` and `pull` one is nothing. */
export type Ways = Readonly<Record<ConnectionWay, number>>;

/** `axial`: the connection names push or pull, which then come first. */
export function waysOf(place: Place, force: Vec3, axial: boolean): Ways {
  const along = axial ? dot(force, place.inward) : 0;
  const rest = axial ? sub(force, scale(place.inward, along)) : force;
  return {
    push: Math.max(0, along),
    pull: Math.max(0, -along),
    down: Math.max(0, -rest.z),
    up: Math.max(0, rest.z),
    lengthwise: dot(rest, place.lengthwise),
    crosswise: dot(rest, place.crosswise),
  };
}

/** 1 for each way that a part takes. */
export type Takes = Readonly<Record<ConnectionWay, 0 | 1>>;

export function takesOf({ takes }: ConnectionPart): Takes {
  const one = (way: ConnectionWay): 0 | 1 => (takes.includes(way) ? 1 : 0);
  return {
    push: one('push'),
    pull: one('pull'),
    down: one('down'),
    up: one('up'),
    lengthwise: one('lengthwise'),
    crosswise: one('crosswise'),
  };
}

/** The force one part takes, house axes. */
export function takenBy(takes: Takes, place: Place, ways: Ways): Vec3 {
  const l = takes.lengthwise * ways.lengthwise;
  const c = takes.crosswise * ways.crosswise;
  const a = takes.push * ways.push - takes.pull * ways.pull;
  const toward = a === 0 ? UP : place.inward;
  return {
    x: l * place.lengthwise.x + c * place.crosswise.x + a * toward.x,
    y: l * place.lengthwise.y + c * place.crosswise.y + a * toward.y,
    z: takes.up * ways.up - takes.down * ways.down + a * toward.z,
  };
}
