/**
 * A dowel in single shear across a gap between side and main member (wall sheathing, packing that is not counted on).
 * NDS 2018 12.3.1 is for members in contact and sends others to mechanics: AWC Technical Report 12, general dowel
 * equations (recalled); with no gap they are those of Table 12.3.1A.
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import { type Dowel, type LateralValue, plasticMoment, Rd, YIELD_MODES, type YieldMode } from './ch12-dowels.js';

/** Positive root of A·P² + B·P + C = 0, C below zero. */
const root = (A: number, B: number, C: number): number => (-B + Math.sqrt(B * B - 4 * A * C)) / (2 * A);

/** Reference lateral value across `gap` inches, lb, each mode divided by its reduction term. */
export function lateralValueAcrossGap(f: Dowel, gap: number, rec?: Recorder): LateralValue {
  const { D, lm, ls, Fem, Fes, Fyb } = f;
  const nominal = f.nominalD ?? D;
  const qm = Fem * D;
  const qs = Fes * D;
  const M = plasticMoment(Fyb, D);
  const strengths: Record<YieldMode, number> = {
    Im: qm * lm,
    Is: qs * ls,
    II: root(1 / (4 * qs) + 1 / (4 * qm), ls / 2 + gap + lm / 2, -(qs * ls * ls) / 4 - (qm * lm * lm) / 4),
    IIIm: root(1 / (2 * qs) + 1 / (4 * qm), gap + lm / 2, -M - (qm * lm * lm) / 4),
    IIIs: root(1 / (4 * qs) + 1 / (2 * qm), ls / 2 + gap, -(qs * ls * ls) / 4 - M),
    IV: root(1 / (2 * qs) + 1 / (2 * qm), gap, -2 * M),
  };
  const modes = { ...strengths };
  let mode: YieldMode = 'Im';
  for (const m of YIELD_MODES) {
    modes[m] = strengths[m] / Rd(m, D, nominal, f.thetaMax);
    if (modes[m] < modes[mode]) mode = m;
  }
  const Z = modes[mode];
  rec?.step({
    symbol: 'Z',
    meaning: `reference lateral design value across a gap, mode ${mode} governs`,
    formula: FORMULAS[mode],
    substituted: YIELD_MODES.map((m) => `${m} ${say(modes[m])}`).join(', '),
    value: Z,
    unit: 'lb',
    clause: 'AWC Technical Report 12',
    note: `qm = Fem·D = ${say(qm)}, qs = Fes·D = ${say(qs)} lb/in, M = Fyb·D³/6 = ${say(M)} lb·in, lm ${say(lm)}, ls ${say(ls)}, g ${say(gap)}, Rd ${say(Rd(mode, D, nominal, f.thetaMax))}; equations recalled from memory: confirm`,
  });
  return { Z, mode, modes };
}

const QUADRATIC = '[−B + √(B² − 4·A·C)] / (2·A·Rd)';
const FORMULAS: Readonly<Record<YieldMode, string>> = {
  Im: 'qm·lm/Rd',
  Is: 'qs·ls/Rd',
  II: `${QUADRATIC}, A = 1/(4qs) + 1/(4qm), B = ls/2 + g + lm/2, C = −qs·ls²/4 − qm·lm²/4`,
  IIIm: `${QUADRATIC}, A = 1/(2qs) + 1/(4qm), B = g + lm/2, C = −M − qm·lm²/4`,
  IIIs: `${QUADRATIC}, A = 1/(4qs) + 1/(2qm), B = ls/2 + g, C = −qs·ls²/4 − M`,
  IV: `${QUADRATIC}, A = 1/(2qs) + 1/(2qm), B = g, C = −2·M`,
};
