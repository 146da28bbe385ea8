/**
 * One truss under a unit of one term: a rigid body on two bearings. Its own members are the truss plant's; only what it
 * hands to the beams is ours. Vertical reactions by the lever; the horizontal force goes half to each bearing.
 */
import { dot, sub, type Vec3 } from '../base/vec.js';

export interface TrussSeat {
  readonly first: Vec3;
  readonly second: Vec3;
}

export interface TrussUnit {
  /** What each bearing receives, and the whole load, house axes. */
  readonly first: Vec3;
  readonly second: Vec3;
  readonly total: Vec3;
}

/** Reactions to one force acting at `at` (any point of its line of action), in the plane of the truss. */
export function seatTruss(seat: TrussSeat, force: Vec3, at: Vec3): TrussUnit {
  const span = sub(seat.second, seat.first);
  const run = Math.hypot(span.x, span.y);
  const along = { x: span.x / run, y: span.y / run, z: 0 };
  const arm = sub(at, seat.first);
  const push = dot(force, along);
  const moment = force.z * dot(arm, along) - push * arm.z;
  const second = (moment + (push / 2) * span.z) / run;
  return {
    first: { x: force.x / 2, y: force.y / 2, z: force.z - second },
    second: { x: force.x / 2, y: force.y / 2, z: second },
    total: force,
  };
}
