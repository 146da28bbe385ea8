/** Clear height from every slab to the underside of beams and framing above it. */
import { contains } from '../../base/plane.js';
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Member, MemberRole, SlabPlaced, Structure } from '../../structure/model.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';

const CLAUSE = 'clear height as asked for';

/** Parts one could walk into, and how far below their axis the underside lies. A truss's axis is its bearing line. */
const BELOW: Readonly<Partial<Record<MemberRole, (m: Member) => number>>> = {
  beam: (m) => m.section.depth / 2,
  strut: (m) => m.section.depth / 2,
  rafter: (m) => m.section.depth / 2 / Math.max(Math.abs(m.up.z), 0.1),
  truss: () => 0,
  'gable-truss': () => 0,
  ledger: (m) => m.section.depth / 2,
  fascia: (m) => m.section.depth / 2,
};

export interface Lowest {
  readonly clear: number;
  readonly member: string;
  readonly slab: string;
  readonly at: Vec3;
}

/** Places along a→b (0…1) where it enters or leaves an outline, with both ends. */
function crossings(outline: readonly Vec2[], a: Vec3, b: Vec3): number[] {
  const ts = [0, 1];
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (let i = 0; i < outline.length; i++) {
    const p = outline[i]!;
    const q = outline[(i + 1) % outline.length]!;
    const ex = q.x - p.x;
    const ey = q.y - p.y;
    const det = dx * ey - dy * ex;
    if (det === 0) continue;
    const t = ((p.x - a.x) * ey - (p.y - a.y) * ex) / det;
    const s = ((p.x - a.x) * dy - (p.y - a.y) * dx) / det;
    if (t > 0 && t < 1 && s >= -1e-9 && s <= 1 + 1e-9) ts.push(t);
  }
  return ts.sort((x, y) => x - y);
}

const topOf = (slab: SlabPlaced, p: Vec2): number => slab.top.z0 + slab.top.gx * p.x + slab.top.gy * p.y;

/** Least clear height; undefined when nothing new is above a slab. Both undersides and slabs are straight: ends decide. */
export function lowestClear(structure: Structure): Lowest | undefined {
  let least: Lowest | undefined;
  const slabs = structure.slabs.filter((s) => s.state !== 'removed');
  for (const member of structure.members) {
    const below = BELOW[member.role];
    if (!below || member.state === 'removed') continue;
    const drop = below(member);
    const { start, end } = member;
    const at = (t: number): Vec3 => ({
      x: start.x + t * (end.x - start.x),
      y: start.y + t * (end.y - start.y),
      z: start.z + t * (end.z - start.z) - drop,
    });
    for (const slab of slabs) {
      const ts = crossings(slab.outline, start, end);
      for (let i = 0; i + 1 < ts.length; i++) {
        if (!contains(slab.outline, at((ts[i]! + ts[i + 1]!) / 2))) continue;
        for (const t of [ts[i]!, ts[i + 1]!]) {
          const p = at(t);
          const clear = p.z - topOf(slab, p);
          if (!least || clear < least.clear) least = { clear, member: member.id, slab: slab.mark, at: p };
        }
      }
    }
  }
  return least;
}

export const headroom: Check = {
  id: 'headroom',
  title: 'Clear height under the cover',
  subjects: () => [{ id: 'cover', path: '/basis/zoning/headroom' }],
  run(_subject, { structure, project }, rec) {
    const low = lowestClear(structure);
    if (!low) return notApplicable(CLAUSE, 'no slab lies under the new work');
    const need = project.basis.zoning.headroom;
    rec?.step({
      symbol: 'clear',
      meaning: `underside of ${low.member} above slab ${low.slab}, ${(low.at.y / 12).toFixed(2)} ft from the house line`,
      formula: 'z(underside) − z(slab)',
      substituted: `${low.at.z.toFixed(2)} − ${(low.at.z - low.clear).toFixed(2)}`,
      value: low.clear,
      unit: 'in',
      clause: CLAUSE,
      from: ['/basis/zoning/headroom', '/patio/slabs'],
    });
    return measured(
      {
        demand: need,
        capacity: low.clear,
        unit: 'in',
        clause: CLAUSE,
        formula: 'least clear height / clear height',
        remedy: `Only ${low.clear.toFixed(1)} in clear under ${low.member} where ${need.toFixed(0)} in is asked for: raise the bearing, or use a shallower beam.`,
      },
      rec,
    );
  },
};
