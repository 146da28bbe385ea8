/**
 * A joint's force under one combination, by load case with its factor: what the analysis gave, so that a reader can redo
 * the sum. The forces of the second set, scissor trusses fastened at both bearings, are found the same way.
 */
import { thrustSet } from '../../analysis/index.js';
import type { Vec3 } from '../../base/vec.js';
import { componentCombinations } from '../cladding/combinations.js';
import { say } from '../codes/say.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';
import { componentUplifts } from './component-uplift.js';

const HELD = ', bearings held';

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(1, b);

/** Uplift of a tie under component wind: the frame's share of the other cases, and the wind by its own pressure. */
function componentParts(ctx: CheckContext, joint: string, combinationId: string, value: number): string {
  const lift = componentUplifts(ctx).byJoint.get(joint);
  const combination = componentCombinations(ctx.loads).find((c) => c.id === combinationId);
  const force = ctx.effects.joints.get(joint)?.force;
  if (!lift || !combination || !force || lift.combination !== combinationId || !near(lift.up, value)) return '';
  const others = combination.terms.map(
    (t) => `${say(t.factor)}·${say(force[t.case]!.z)} (${ctx.loads.cases[t.case]?.id ?? t.case})`,
  );
  return [...others, `${say(combination.wind)}·${say(lift.wind)} (component wind, ${say(lift.pressure)} psf)`].join(
    ' + ',
  );
}

/**
 * `1·1105 (D) + 1·518.6 (Lr)`: parts that add up to `value`, lb, whichever way `of` points; '' where they do not, such as
 * a force that wood in contact takes away. Component wind, which the frame does not carry, is named apart.
 */
export function forceParts(
  ctx: CheckContext,
  joint: string,
  combinationId: string,
  value: number,
  of: (force: Vec3) => number,
): string {
  const id = combinationId.endsWith(HELD) ? combinationId.slice(0, -HELD.length) : combinationId;
  const combination = ctx.loads.combinations.find((c) => c.id === id);
  if (!combination) return componentParts(ctx, joint, combinationId, value);
  const both = thrustSet(ctx)?.effects.joints.get(joint)?.force;
  for (const force of [ctx.effects.joints.get(joint)?.force, both]) {
    if (!force) continue;
    let sum = 0;
    for (const t of combination.terms) sum += t.factor * of(force[t.case]!);
    if (!near(Math.abs(sum), value)) continue;
    const sign = sum < 0 ? -1 : 1;
    return sumText(ctx, combination, (c) => sign * of(force[c]!));
  }
  return '';
}
