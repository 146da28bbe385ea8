/** Joints that press wood on wood one way: rafters lean on the ridge board, so only what pulls them off asks for a fastener. */
import type { ForceEnvelope } from '../../analysis/index.js';
import type { Combination } from '../../loads/model.js';
import type { Joint, Member } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

/** The envelope of a joint without the sideways force that presses its parts together. */
export function withoutContact(
  joint: Joint,
  e: ForceEnvelope | undefined,
  ctx: Pick<CheckContext, 'structure' | 'loads' | 'effects'>,
): ForceEnvelope | undefined {
  if (e === undefined || joint.kind !== 'rafter-to-ridge') return e;
  const rafter = ctx.structure.members.find((m) => m.id === joint.ties[0]!.part);
  const forces = ctx.effects.joints.get(joint.id)?.force;
  if (!rafter || !forces) return e;
  const axis = alongX(rafter) ? 'x' : 'y';
  // What the rafter exerts on the board presses it while it points uphill.
  const uphill = Math.sign(rafter.end[axis] - rafter.start[axis]);
  let pull = { value: 0, combination: -1 };
  ctx.loads.combinations.forEach((c: Combination, i) => {
    let f = 0;
    for (const t of c.terms) f += t.factor * (forces[t.case]?.[axis] ?? 0);
    if (-uphill * f > pull.value) pull = { value: -uphill * f, combination: i };
  });
  return { ...e, [axis]: pull };
}

const alongX = (m: Member): boolean => Math.abs(m.end.x - m.start.x) > Math.abs(m.end.y - m.start.y);
