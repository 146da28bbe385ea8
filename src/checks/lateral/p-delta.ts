/**
 * Second-order effect of the weight on a roof that has moved sideways: stability coefficient θ = P·Δ/(H·L), amplification
 * 1/(1 − θ), with L the height over which the posts lean (`leanOf`), which is less than the storey height of the clause and
 * so on the safe side. ASCE 7-16 12.8.7 leaves the effect out up to θ = 0.10; that bound, written for earthquakes, is taken as the limit
 * here, so the amplification left out of braces, joints and footings is never over 11 %. In the posts it is in Eq. 3.9-3.
 */

import { combineComponent } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { CheckContext } from '../contract.js';
import { leanOf } from './holding.js';
import { softest } from './roof-drift.js';
import type { Axis } from './system.js';

export const THETA_LIMIT = 0.1;
const CLAUSE = 'ASCE 7-16 12.8.7';
/** Cases that push less than this share of the greatest push tell little of the stiffness. */
const WORTH = 0.25;

export interface Overload {
  /** Greatest sum of what the posts carry down, lb, and the combination. */
  readonly P: number;
  readonly combination: string;
  /** Movement in inches per pound of side load, and the case it is read from. */
  readonly flexibility: number;
  readonly case: string;
  readonly height: number;
  readonly theta: number;
  readonly limit: number;
  readonly ratio: number;
  readonly clause: string;
}

/** How much one pound of side load moves the roof: the softest of the cases with a push worth reading. */
export function flexibilityOf(ctx: CheckContext, axis: Axis): { readonly value: number; readonly case: string } {
  const drift = ctx.effects.drift ?? [];
  const push = ctx.effects.cases.map((_, c) => {
    let sum = 0;
    for (const f of ctx.effects.footings.values()) sum += f.force[c]![axis];
    return Math.abs(sum);
  });
  const most = push.reduce((a, b) => Math.max(a, b), 0);
  let best = { value: 0, case: '' };
  push.forEach((H, c) => {
    if (H <= WORTH * most || most < 1) return;
    const move = drift.reduce((a, d) => Math.max(a, Math.abs(d.move[c]![axis])), 0);
    if (move / H > best.value) best = { value: move / H, case: ctx.effects.cases[c]! };
  });
  return best;
}

export function overloadOf(ctx: CheckContext, axis: Axis): Overload {
  let P = 0;
  let combination = '';
  for (const c of ctx.loads.combinations) {
    let sum = 0;
    for (const f of ctx.effects.footings.values()) sum += combineComponent(f.force, c, 'z');
    if (sum <= P) continue;
    P = sum;
    combination = c.id;
  }
  const height = leanOf(ctx, axis);
  const { value, case: from } = flexibilityOf(ctx, axis);
  const flexibility = softest(ctx) * value;
  const theta = (P * flexibility) / height;
  return {
    P,
    combination,
    flexibility,
    case: from,
    height,
    theta,
    limit: THETA_LIMIT,
    ratio: theta / THETA_LIMIT,
    clause: CLAUSE,
  };
}

export function recordOverload(o: Overload, rec?: Recorder): void {
  if (!rec) return;
  rec.heading('Weight on the leaning roof');
  rec.step({
    symbol: 'P',
    meaning: `greatest weight on all posts together, ${o.combination}`,
    formula: 'sum over the footings',
    substituted: o.combination,
    value: o.P,
    unit: 'lb',
    clause: 'statics',
  });
  rec.step({
    symbol: 'Δ/H',
    meaning: `movement for one pound of side load, from case ${o.case}`,
    formula: "greatest movement over side load on the posts, times E/E'",
    substituted: o.case,
    value: o.flexibility,
    unit: 'in/lb',
    clause: 'statics',
  });
  rec.step({
    symbol: 'θ',
    meaning: `stability coefficient, limit ${o.limit}`,
    formula: 'P·(Δ/H) / L, L from foot to knee brace, or to the top',
    substituted: `${o.P.toFixed(0)}·${o.flexibility.toExponential(3)} / ${o.height.toFixed(1)}`,
    value: o.theta,
    unit: '',
    clause: o.clause,
    note: 'written for earthquakes; taken here as the bound under which the second-order effect is left out',
  });
  rec.step({
    symbol: 'B2',
    meaning: 'amplification of side load by the weight',
    formula: '1 / (1 − θ)',
    substituted: `1 / (1 − ${o.theta.toFixed(4)})`,
    value: o.theta < 1 ? 1 / (1 - o.theta) : 99,
    unit: '',
    clause: o.clause,
    note: 'in the posts Eq. 3.9-3 amplifies with the length of a swaying post; elsewhere it is left out under the limit',
  });
}
