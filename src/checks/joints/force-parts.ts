/**
 * A joint's force under one combination, by load case with its factor: what the analysis gave, so that a reader can redo
 * the sum. The forces of the second set, scissor trusses fastened at both bearings, are found the same way.
 */
import { thrustSet } from '../../analysis/index.js';
import type { Vec3 } from '../../base/vec.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';

const HELD = ', bearings held';

/**
 * `1·1105 (D) + 1·518.6 (Lr)`: parts that add up to `value`, lb, whichever way `of` points; '' where they do not, such as
 * component wind, which no frame carries, or a force that wood in contact takes away.
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
  if (!combination) return '';
  const both = thrustSet(ctx)?.effects.joints.get(joint)?.force;
  for (const force of [ctx.effects.joints.get(joint)?.force, both]) {
    if (!force) continue;
    let sum = 0;
    for (const t of combination.terms) sum += t.factor * of(force[t.case]!);
    if (Math.abs(Math.abs(sum) - value) > 1e-6 * Math.max(1, value)) continue;
    const sign = sum < 0 ? -1 : 1;
    return sumText(ctx, combination, (c) => sign * of(force[c]!));
  }
  return '';
}
