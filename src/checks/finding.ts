/** The few ways a check can end. Each keeps every number finite and, with a recorder, closes the trace with the ratio. */

import type { Recorder } from '../base/trace.js';
import { say } from './codes/say.js';
import type { Finding } from './contract.js';

/** Largest ratio ever reported; a capacity of nothing under a real demand gives this instead of infinity. */
export const RATIO_CAP = 99;

/** Rounding slack in `demand ≤ capacity`: a limit met exactly passes whatever the last bit says. */
const SLACK = 1e-9;

/** Demand over capacity; 0 when nothing is asked, capped where nothing is there to resist it. */
export function ratioOf(demand: number, capacity: number): number {
  if (demand <= 0) return 0;
  if (capacity <= 0) return RATIO_CAP;
  return Math.min(demand / capacity, RATIO_CAP);
}

export interface Measured {
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  readonly combination?: string;
  readonly clause: string;
  /** Formula of the last step in symbols: `fb / Fb'`. */
  readonly formula: string;
  /** Worth saying even when it passes. */
  readonly note?: string;
  /** Said when it fails: what is wrong and what would cure it. */
  readonly remedy: string;
  /** Overrides demand over capacity: an interaction of several ratios, or a limit that turns any ratio into a fail. */
  readonly ratio?: number;
  readonly mustFail?: boolean;
  /** See `Finding.prescriptive`. */
  readonly prescriptive?: true;
}

/** Pass or fail by demand over capacity, the ratio recorded as the last step. */
export function measured(m: Measured, rec?: Recorder): Finding {
  const ratio = Math.min(m.ratio ?? ratioOf(m.demand, m.capacity), RATIO_CAP);
  const passes = m.mustFail !== true && ratio <= 1 + SLACK;
  rec?.step({
    symbol: 'ratio',
    meaning: passes ? 'demand over capacity: passes' : 'demand over capacity: does not pass',
    formula: m.formula,
    substituted: m.ratio === undefined ? `${say(m.demand)} / ${say(m.capacity)}` : say(ratio),
    value: ratio,
    unit: '',
    clause: m.clause,
    ...(ratio === RATIO_CAP ? { note: `${RATIO_CAP} stands for any larger ratio` } : {}),
  });
  return {
    status: passes ? 'pass' : 'fail',
    demand: m.demand,
    capacity: m.capacity,
    ratio,
    unit: m.unit,
    combination: m.combination ?? '',
    clause: m.clause,
    ...(m.prescriptive ? { prescriptive: true as const } : {}),
    note: passes ? (m.note ?? '') : m.remedy,
  };
}

const without = (status: Finding['status'], clause: string, note: string): Finding => ({
  status,
  demand: 0,
  capacity: 0,
  ratio: 0,
  unit: '',
  combination: '',
  clause,
  note,
});

/** The question does not arise here, and why. */
export const notApplicable = (clause: string, note: string): Finding => without('not-applicable', clause, note);
/** The question arises and nobody has answered it yet. */
export const notEvaluated = (clause: string, note: string): Finding => without('not-evaluated', clause, note);
/** Beyond what this program may answer: needs a licensed professional. */
export const outsideScope = (clause: string, note: string): Finding => without('outside-scope', clause, note);
/** Fails for a reason that is no number. */
export const failed = (clause: string, note: string): Finding => ({
  ...without('fail', clause, note),
  ratio: RATIO_CAP,
});
