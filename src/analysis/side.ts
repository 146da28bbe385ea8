/**
 * A horizontal force at a point of a roof, brought to the framing's bearings: the push in equal parts, the overturning
 * it makes about their common centre as vertical forces growing straight with the distance (rigid roof).
 */
import type { Vec3 } from '../base/vec.js';
import type { Loads } from '../loads/model.js';
import { isFraming } from './framing.js';
import type { StructureIndex } from './index-structure.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';

/** Forces at `points` that together equal `force` acting at `at` (the twist about the vertical is left out). */
export function rigidShare(points: readonly Vec3[], at: Vec3, force: Vec3): readonly Vec3[] {
  const n = points.length;
  const c = { x: 0, y: 0, z: 0 };
  for (const p of points) {
    c.x += p.x / n;
    c.y += p.y / n;
    c.z += p.z / n;
  }
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (const p of points) {
    xx += (p.x - c.x) ** 2;
    yy += (p.y - c.y) ** 2;
    xy += (p.x - c.x) * (p.y - c.y);
  }
  // Moments about the centre: V·y = mx and −V·x = my, with V = a·x + b·y.
  const mx = (at.y - c.y) * force.z - (at.z - c.z) * force.y;
  const my = (at.z - c.z) * force.x - (at.x - c.x) * force.z;
  const det = xx * yy - xy * xy;
  let a = 0;
  let b = 0;
  if (det > 1e-9 * Math.max(xx, yy) ** 2) {
    a = (-my * yy - mx * xy) / det;
    b = (mx * xx + my * xy) / det;
  } else if (xx + yy > 0) {
    // Bearings in one line resist only the moment that tips that line.
    const size = Math.sqrt(xx + yy);
    const dx = Math.sqrt(xx) / size;
    const dy = (Math.sqrt(yy) / size) * (xy < 0 ? -1 : 1);
    const tip = (mx * dy - my * dx) / (xx + yy);
    a = tip * dx;
    b = tip * dy;
  }
  return points.map((p) => ({
    x: force.x / n,
    y: force.y / n,
    z: force.z / n + a * (p.x - c.x) + b * (p.y - c.y),
  }));
}

/** Adds every side force to the joints of its roof; returns the sum put on. */
export function applySideForces(
  index: StructureIndex,
  loads: Loads,
  joints: Map<string, Rows>,
  failures: string[],
): Rows {
  const cases = loads.cases.length;
  const applied = makeRows(cases);
  if (loads.cases.every((c) => c.side.length === 0)) return applied;
  const seats = new Map<string, { id: string; at: Vec3 }[]>();
  for (const member of index.structure.members) {
    if (!isFraming(member) || member.roof === undefined) continue;
    const list = seats.get(member.roof) ?? [];
    // A joint on another part of the roof (a jack on its hip) hands nothing to the supports.
    for (const b of index.below.get(member.id) ?? [])
      if (index.members.get(b.lower)?.roof === undefined) list.push({ id: b.joint.id, at: b.joint.at });
    seats.set(member.roof, list);
  }
  loads.cases.forEach((c, k) => {
    for (const side of c.side) {
      const list = seats.get(side.roof) ?? [];
      if (list.length === 0) {
        failures.push(`the side force on ${side.roof} finds no framing to act on`);
        continue;
      }
      const shares = rigidShare(
        list.map((s) => s.at),
        side.at,
        side.force,
      );
      shares.forEach((f, i) => {
        addTo(rowsOf(joints, list[i]!.id, cases), k, f.x, f.y, f.z);
      });
      addTo(applied, k, side.force.x, side.force.y, side.force.z);
    }
  });
  return applied;
}
