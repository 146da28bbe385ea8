/** A floor high above the ground has a guard along its open edges; this program draws none. IRC 2018 R312.1.1. */
import type { Vec2 } from '../../base/vec.js';
import type { SlabPlaced, Structure } from '../../structure/model.js';
import { GUARD_DROP, GUARD_REACH } from '../codes/irc-2018/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable, outsideScope } from '../finding.js';

const CLAUSE = 'IRC 2018 R312.1.1';

/** Greatest height of a slab's edge above the ground within 36 in of it, inches. Both are planes: corners decide. */
export function dropOf({ grade }: Structure, slab: SlabPlaced): number {
  // The ground is a plane: within reach it is lowest straight down its fall.
  const lower = GUARD_REACH * Math.hypot(grade.gx, grade.gy);
  const top = (p: Vec2): number => slab.top.z0 + slab.top.gx * p.x + slab.top.gy * p.y;
  const ground = (p: Vec2): number => grade.z0 + grade.gx * p.x + grade.gy * p.y - lower;
  return Math.max(...slab.outline.map((p) => top(p) - ground(p)));
}

export const guard: Check = {
  id: 'guard',
  title: 'Guard at the edge of the patio',
  subjects: ({ structure }) => {
    const kept = structure.slabs.filter((s) => s.state !== 'removed');
    return kept.length === 0 ? [{ id: 'patio', path: '/patio' }] : kept.map((s) => ({ id: s.mark, path: s.path }));
  },
  run(subject, { structure }, rec) {
    const slab = structure.slabs.find((s) => s.mark === subject.id);
    if (!slab) return notApplicable(CLAUSE, 'there is no slab under this roof');
    const drop = dropOf(structure, slab);
    rec?.step({
      symbol: 'drop',
      meaning: `highest edge of ${slab.mark} above the ground within 36 in of it`,
      formula: 'z(slab) − z(ground)',
      substituted: `${drop.toFixed(2)} in`,
      value: drop,
      unit: 'in',
      clause: CLAUSE,
      from: [slab.path, '/patio/grade'],
    });
    if (drop > GUARD_DROP)
      return outsideScope(
        CLAUSE,
        `An edge of ${slab.mark} stands ${drop.toFixed(0)} in above the ground: over 30 in it needs a guard, which this program does not design.`,
      );
    return measured(
      {
        demand: Math.max(0, drop),
        capacity: GUARD_DROP,
        unit: 'in',
        clause: CLAUSE,
        formula: 'drop / 30 in',
        prescriptive: true,
        note: 'no guard is needed',
        remedy: '',
      },
      rec,
    );
  },
};
