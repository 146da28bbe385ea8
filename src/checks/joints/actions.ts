/**
 * Every set of forces one mark's joints must hold at the same time: each allowable-stress combination of the main
 * system, the same with the push of scissor trusses whose bearings are both fastened, and for the tie of a single framing
 * member also the component uplift alone (ASCE 7-16 30.7). Where the house is met, the side load it takes there counts.
 */

import { combineVector, distinctCombinations, thrustSet } from '../../analysis/index.js';
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

/** All actions of a mark; undefined when a joint's forces are not known. */
export function actionsOf(ctx: CheckContext, mark: string): readonly Action[] | undefined {
  const actions: Action[] = [];
  const components = componentUplifts(ctx);
  for (const joint of jointsOf(ctx.structure, mark)) {
    const forces = heldForces(ctx, joint);
    if (!forces) return undefined;
    const { force } = forces;
    const pair = `${joint.ties[0]?.part} on ${joint.ties.at(-1)?.part}`;
    const raise = raiseToStatics(ctx, (about) => about === pair);
    const pushed = thrustSet(ctx)?.effects.joints.get(joint.id)?.force;
    // Combinations alike for the first set may differ in the push.
    const all = pushed && pushed !== force;
    for (const combination of all ? ctx.loads.combinations : distinctCombinations(forces, ctx.loads.combinations)) {
      const under = (f: typeof force, cause: Cause): Action => {
        const { x, y, z } = combineVector(f, combination);
        return { joint, combination: cause, x, y, z, raise };
      };
      actions.push(under(force, combination));
      if (!pushed || pushed === force) continue;
      const { id, CD, clause } = combination;
      actions.push(under(pushed, { id: `${id}, bearings held`, CD, clause }));
    }
    const c = components.byJoint.get(joint.id);
    if (c && c.up >= TRACE) {
      const combination = { id: c.combination, CD: WIND, clause: 'ASCE 7-16 30.7' };
      actions.push({ joint, combination, x: 0, y: 0, z: c.up, raise: NO_RAISE });
    }
  }
  return actions;
}
