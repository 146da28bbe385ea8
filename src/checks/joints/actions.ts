/**
 * Every set of forces one mark's joints must hold at the same time: each allowable-stress combination of the main
 * system, the same with the push of scissor trusses whose bearings are both fastened, and for the tie of a single framing
 * member also the component uplift alone (ASCE 7-16 30.7). Where the house is met, the side load it takes there counts.
 */

import { distinctCombinations, thrustSet } from '../../analysis/index.js';
import type { Vec3 } from '../../base/vec.js';
import type { Combination } from '../../loads/model.js';
import { jointsOf } from '../../structure/lookup.js';
import type { Joint } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { type Raise, raiseToStatics } from '../hand.js';
import { heldForces } from '../house/side.js';
import { componentUplifts } from './component-uplift.js';
import { TRACE } from './demands.js';

/** Name, load duration and clause of what makes the forces. */
export type Cause = Pick<Combination, 'id' | 'CD' | 'clause'>;

export interface Action {
  readonly joint: Joint;
  readonly combination: Cause;
  /** Force of the upper part on the lower, house axes, lb, as analysed. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Applies to the vertical force. */
  readonly raise: Raise;
}

/** Load duration of component wind (NDS 2018 Table 2.3.2). */
const WIND = 1.6;
const NO_RAISE: Raise = { factor: 1 };

type Visit = (joint: Joint, combination: Cause, x: number, y: number, z: number, raise: Raise) => void;

/** Force of a combination, told to `visit` without an object of its own. Hot: every joint, every combination. */
function tell(
  visit: Visit,
  joint: Joint,
  force: readonly Vec3[],
  terms: Combination['terms'],
  cause: Cause,
  raise: Raise,
): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let t = 0; t < terms.length; t++) {
    const { factor } = terms[t]!;
    const f = force[terms[t]!.case]!;
    x += factor * f.x;
    y += factor * f.y;
    z += factor * f.z;
  }
  visit(joint, cause, x, y, z, raise);
}

/** Tells every action of a mark, joint by joint; false when a joint's forces are not known. */
export function eachAction(ctx: CheckContext, mark: string, visit: Visit): boolean {
  const components = componentUplifts(ctx);
  for (const joint of jointsOf(ctx.structure, mark)) {
    const forces = heldForces(ctx, joint);
    if (!forces) return false;
    const { force } = forces;
    const pair = `${joint.ties[0]?.part} on ${joint.ties.at(-1)?.part}`;
    const raise = raiseToStatics(ctx, (about) => about === pair);
    const other = thrustSet(ctx)?.effects.joints.get(joint.id)?.force;
    const pushed = other === force ? undefined : other;
    // Combinations alike for the first set may differ in the push.
    for (const combination of pushed ? ctx.loads.combinations : distinctCombinations(forces, ctx.loads.combinations)) {
      tell(visit, joint, force, combination.terms, combination, raise);
      if (!pushed) continue;
      const { id, CD, clause } = combination;
      tell(visit, joint, pushed, combination.terms, { id: `${id}, bearings held`, CD, clause }, raise);
    }
    const c = components.byJoint.get(joint.id);
    if (c && c.up >= TRACE) {
      visit(joint, { id: c.combination, CD: WIND, clause: 'ASCE 7-16 30.7' }, 0, 0, c.up, NO_RAISE);
    }
  }
  return true;
}

/** All actions of a mark; undefined when a joint's forces are not known. */
export function actionsOf(ctx: CheckContext, mark: string): readonly Action[] | undefined {
  const actions: Action[] = [];
  const known = eachAction(ctx, mark, (joint, combination, x, y, z, raise) => {
    actions.push({ joint, combination, x, y, z, raise });
  });
  return known ? actions : undefined;
}
