/**
 * What each joint must be able to carry, so that a product or a calculated connection can be chosen: the largest force
 * down, up and sideways under the allowable-stress combinations, over all joints of one mark; where the house is met,
 * with the side load it takes there. The tie of a single framing
 * member must hold the worse of the main system's uplift and the component uplift (ASCE 7-16 30.7).
 */
import { envelopeOf, type ForceEnvelope, type Governing } from '../../analysis/index.js';
import type { Joint, JointKind } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { heldForces } from '../house/side.js';
import { thrustEnvelope } from '../trusses/thrust.js';
import { componentUplifts } from './component-uplift.js';
import { withoutContact } from './ridge-pull.js';

export interface Demand {
  /** Pounds; 0 when no combination asks for any. */
  readonly value: number;
  /** Joint and combination that ask for most; `` when none does. */
  readonly joint: string;
  readonly combination: string;
}

export interface JointDemand {
  readonly mark: string;
  readonly kind: JointKind;
  readonly path: string;
  readonly count: number;
  readonly down: Demand;
  readonly up: Demand;
  /** Sideways along the house wall (x) and square to it (y), whichever way. */
  readonly alongX: Demand;
  readonly alongY: Demand;
  /** False when a joint of this mark has forces, or component uplift, that are not known: its zeros mean unknown, not none. */
  readonly known: boolean;
}

const NOTHING: Demand = { value: 0, joint: '', combination: '' };
/** Forces under this are rounding, lb. */
export const TRACE = 0.5;

type Side = keyof ForceEnvelope;

function larger(best: Demand, g: Governing, joint: Joint, ctx: Source): Demand {
  if (g.value <= best.value || g.value < TRACE) return best;
  return { value: g.value, joint: joint.id, combination: ctx.loads.combinations[g.combination]?.id ?? '' };
}

/** What demands are worked out from. */
type Source = Pick<CheckContext, 'project' | 'structure' | 'loads' | 'effects'>;

const made = new WeakMap<CheckContext['effects'], readonly JointDemand[]>();

/** One row a mark. Worked out once for the same effects. */
export function jointDemands(ctx: Source): readonly JointDemand[] {
  const known = made.get(ctx.effects);
  if (known) return known;
  const demands = workOut(ctx);
  made.set(ctx.effects, demands);
  return demands;
}

const byMark = new WeakMap<readonly JointDemand[], ReadonlyMap<string, JointDemand>>();

/** What the joints of one mark must carry; undefined when no joint has it. */
export function jointDemand(ctx: Source, mark: string): JointDemand | undefined {
  const demands = jointDemands(ctx);
  let index = byMark.get(demands);
  if (!index) {
    index = new Map(demands.map((d) => [d.mark, d]));
    byMark.set(demands, index);
  }
  return index.get(mark);
}

function workOut(ctx: Source): readonly JointDemand[] {
  const groups = new Map<string, Joint[]>();
  for (const joint of ctx.structure.joints) {
    const group = groups.get(joint.mark);
    if (group) group.push(joint);
    else groups.set(joint.mark, [joint]);
  }
  const components = componentUplifts(ctx);
  return [...groups].map(([mark, joints]) => {
    const most: Record<Side, Demand> = { down: NOTHING, up: NOTHING, x: NOTHING, y: NOTHING };
    let known = true;
    for (const joint of joints) {
      const forces = heldForces(ctx, joint);
      const e = withoutContact(joint, forces && envelopeOf(forces, ctx.loads.combinations), ctx);
      if (!e) {
        known = false;
        continue;
      }
      for (const side of ['down', 'up', 'x', 'y'] as const) most[side] = larger(most[side], e[side], joint, ctx);
      const held = thrustEnvelope(ctx, joint.id);
      if (held) for (const side of ['x', 'y'] as const) most[side] = larger(most[side], held[side], joint, ctx);
      if (components.missing.has(joint.id)) known = false;
      const c = components.byJoint.get(joint.id);
      if (c && c.up > most.up.value && c.up >= TRACE) {
        most.up = { value: c.up, joint: joint.id, combination: c.combination };
      }
    }
    const { kind, path } = joints[0]!;
    return {
      mark,
      kind,
      path,
      count: joints.length,
      down: most.down,
      up: most.up,
      alongX: most.x,
      alongY: most.y,
      known,
    };
  });
}

const pounds = (d: Demand, way: string): string => (d.value > 0 ? `${Math.ceil(d.value)} lb ${way}` : `nothing ${way}`);

/** `must carry 812 lb down, 240 lb up, nothing along the house, 31 lb away from the house`. */
export const demandText = (d: JointDemand): string =>
  d.known
    ? `must carry ${pounds(d.down, 'down')}, ${pounds(d.up, 'up')}, ${pounds(d.alongX, 'along the house')}, ${pounds(d.alongY, 'square to the house')}`
    : 'carries forces that are not all known';
