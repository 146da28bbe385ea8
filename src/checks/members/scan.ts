/** Sums load cases into combinations. Hot: called for every member, combination and station. */

import type { Combination } from '../../loads/model.js';
import { say } from '../codes/say.js';
import type { CheckContext } from '../contract.js';

/** `out[i] = Σ factor · rows[case][i]`. */
export function combineInto(
  out: Float64Array,
  rows: readonly Float64Array[],
  combination: Pick<Combination, 'terms'>,
): void {
  const { terms } = combination;
  const first = terms[0];
  if (!first) {
    out.fill(0);
    return;
  }
  const a = rows[first.case]!;
  const fa = first.factor;
  for (let i = 0; i < out.length; i++) out[i] = fa * a[i]!;
  for (let t = 1; t < terms.length; t++) {
    const row = rows[terms[t]!.case]!;
    const f = terms[t]!.factor;
    for (let i = 0; i < out.length; i++) out[i] = out[i]! + f * row[i]!;
  }
}

/** Largest size of either sign in one combination; station −1 when all is zero. */
export function extreme(values: Float64Array, sign: 1 | -1): number {
  let at = -1;
  let best = 0;
  for (let i = 0; i < values.length; i++) {
    const x = sign * values[i]!;
    if (x > best) {
      best = x;
      at = i;
    }
  }
  return at;
}

export const feetText = (inches: number): string => `${(inches / 12).toFixed(2)} ft`;

/** A combination with the numbers of its cases: `1·2310 (D) + 1·6198 (S)`. */
export const sumText = (ctx: CheckContext, combination: Combination, value: (loadCase: number) => number): string =>
  combination.terms
    .map((t) => `${Number(t.factor.toPrecision(4))}·${say(value(t.case))} (${ctx.loads.cases[t.case]?.id ?? t.case})`)
    .join(' + ');

/** The same for a step that prints a size: signs turned where the sum is negative, so that it gives what is printed. */
export function sizeText(ctx: CheckContext, combination: Combination, value: (loadCase: number) => number): string {
  let sum = 0;
  for (const t of combination.terms) sum += t.factor * value(t.case);
  return sumText(ctx, combination, sum < 0 ? (c) => -value(c) : value);
}
