import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import { type Dowel, type LateralValue, plasticMoment, Rd, YIELD_MODES, type YieldMode } from './ch12-dowels.js';

/**
 * Single shear of one dowel with a gap `g` (in) between the members, lb: what lies between them (a plywood strip, a
 * shim) is taken to hold nothing. With no gap these are the yield limits of NDS 12.3.1. AWC TR12 Table 1-1.
 */
export function lateralValueWithGap(f: Dowel, g: number, rec?: Recorder): LateralValue {
  const { D, lm, ls } = f;
  const nominal = f.nominalD ?? D;
  const qm = f.Fem * D;
  const qs = f.Fes * D;
  const M = plasticMoment(f.Fyb, D);
  /** Positive root of A·P² + B·P + C = 0. */
  const root = (A: number, B: number, C: number): number => (-B + Math.sqrt(B * B - 4 * A * C)) / (2 * A);
  const yields: Record<YieldMode, number> = {
    Im: qm * lm,
    Is: qs * ls,
    II: root(1 / (4 * qs) + 1 / (4 * qm), ls / 2 + g + lm / 2, -(qs * ls * ls) / 4 - (qm * lm * lm) / 4),
    IIIm: root(1 / (2 * qs) + 1 / (4 * qm), g + lm / 2, -M - (qm * lm * lm) / 4),
    IIIs: root(1 / (4 * qs) + 1 / (2 * qm), ls / 2 + g, -(qs * ls * ls) / 4 - M),
    IV: root(1 / (2 * qs) + 1 / (2 * qm), g, -2 * M),
  };
  let mode: YieldMode = 'Im';
  const modes = { ...yields };
  for (const m of YIELD_MODES) {
    modes[m] = yields[m] / Rd(m, D, nominal, f.thetaMax);
    if (modes[m] < modes[mode]) mode = m;
  }
  rec?.step({
    symbol: 'Z',
    meaning: `reference lateral design value across a gap, mode ${mode} governs`,
    formula: '(−B + √(B² − 4·A·C)) / (2·A) / Rd',
    substituted: YIELD_MODES.map((m) => `${m} ${say(modes[m])}`).join(', '),
    value: modes[mode],
    unit: 'lb',
    clause: 'AWC TR12 Table 1-1',
    note: `D ${say(D)}, lm ${say(lm)}, ls ${say(ls)}, g ${say(g)}, Fem ${say(f.Fem)}, Fes ${say(f.Fes)}, Fyb ${say(f.Fyb)}; equations recalled from memory: confirm`,
  });
  return { Z: modes[mode], mode, modes };
}
