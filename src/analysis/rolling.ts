/**
 * Framing pushes across a beam at its top, the frame has the beam at its underside: the couple between the two would roll
 * the beam. What keeps it from rolling is the framing itself, which takes the couple as a pair of vertical forces at its two
 * seats. They are added to the framing's forces here, for the frame only.
 */
import type { StructureIndex } from './index-structure.js';
import { addTo, type Rows } from './rows.js';

export function rollingCouples(index: StructureIndex, framing: ReadonlyMap<string, Rows>): ReadonlyMap<string, Rows> {
  const out = new Map(framing);
  for (const member of index.structure.members) {
    if (member.strips.length === 0) continue;
    const seats = (index.below.get(member.id) ?? []).flatMap((b) => {
      const beam = index.members.get(b.lower);
      const rows = framing.get(b.joint.id);
      return beam?.role === 'beam' && rows ? [{ id: b.joint.id, at: b.joint.at, depth: beam.section.depth, rows }] : [];
    });
    const [a, b] = [seats[0], seats.at(-1)];
    if (!a || !b || a === b) continue;
    const span = Math.hypot(b.at.x - a.at.x, b.at.y - a.at.y);
    const dir = { x: (b.at.x - a.at.x) / span, y: (b.at.y - a.at.y) / span };
    const [low, high] = [Float64Array.from(a.rows), Float64Array.from(b.rows)];
    for (let c = 0; 3 * c < a.rows.length; c++) {
      let couple = 0;
      for (const s of [a, b]) couple += s.depth * (dir.x * s.rows[3 * c]! + dir.y * s.rows[3 * c + 1]!);
      addTo(low, c, 0, 0, couple / span);
      addTo(high, c, 0, 0, -couple / span);
    }
    out.set(a.id, low);
    out.set(b.id, high);
  }
  return out;
}
