/** Trusses whose bearing slides on one beam: what acts along the truss there goes to the other bearing, at the same level. */
import type { StructureIndex } from './index-structure.js';
import { addTo, type Rows } from './rows.js';

export function slideBearings(index: StructureIndex, joints: Map<string, Rows>): void {
  for (const member of index.structure.members) {
    const slides = member.truss?.slides;
    const bearings = index.below.get(member.id) ?? [];
    if (slides === undefined || bearings.length !== 2) continue;
    const free = bearings[slides]!;
    const held = bearings[1 - slides]!;
    const from = joints.get(free.joint.id);
    const to = joints.get(held.joint.id);
    if (!from || !to) continue;
    const dx = held.joint.at.x - free.joint.at.x;
    const dy = held.joint.at.y - free.joint.at.y;
    const run = Math.hypot(dx, dy);
    for (let c = 0; c < from.length / 3; c++) {
      const along = (from[3 * c]! * dx + from[3 * c + 1]! * dy) / run;
      addTo(from, c, dx / run, dy / run, 0, -along);
      addTo(to, c, dx / run, dy / run, 0, along);
    }
  }
}
