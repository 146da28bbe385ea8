/** Where hand statics asks for more than the frame shows and nothing explains it, the demand is raised to statics. */
import type { HandCheck } from '../analysis/model.js';
import type { Recorder } from '../base/trace.js';
import { say } from './codes/say.js';
import type { CheckContext } from './contract.js';
import { RATIO_CAP } from './finding.js';

export interface Raise {
  /** 1 or more. */
  readonly factor: number;
  readonly because?: HandCheck;
}

const NONE: Raise = { factor: 1 };

/** The hand checks that ask for more than the frame shows; few or none. */
const governing = new WeakMap<readonly HandCheck[], readonly HandCheck[]>();

function governedByStatics(hand: readonly HandCheck[]): readonly HandCheck[] {
  let list = governing.get(hand);
  if (!list) {
    list = hand.filter((h) => h.governs === 'statics' && h.statics > 0);
    governing.set(hand, list);
  }
  return list;
}

/** Largest factor asked for by the hand checks that `concerns` picks, by what they are about: `B1 on P1`. */
export function raiseToStatics(ctx: CheckContext, concerns: (about: string) => boolean): Raise {
  let raise = NONE;
  for (const h of governedByStatics(ctx.effects.hand)) {
    if (!concerns(h.about)) continue;
    const factor = h.analysed > 0 ? Math.min(h.statics / h.analysed, RATIO_CAP) : RATIO_CAP;
    if (factor > raise.factor) raise = { factor, because: h };
  }
  return raise;
}

/** The raised value, with its step when it was raised. */
export function raised(value: number, symbol: string, unit: string, raise: Raise, rec?: Recorder): number {
  if (!raise.because) return value;
  const out = value * raise.factor;
  const { about, statics, analysed } = raise.because;
  rec?.step({
    symbol,
    meaning: `raised to hand statics (${about}, case ${raise.because.case})`,
    formula: `${symbol} · statics / analysed`,
    substituted: `${say(value)} · ${say(statics)} / ${say(analysed)}`,
    value: out,
    unit,
    clause: 'statics',
  });
  return out;
}
