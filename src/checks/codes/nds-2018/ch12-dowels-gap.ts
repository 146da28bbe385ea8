import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import { type Dowel, type LateralValue, plasticMoment, Rd, YIELD_MODES, type YieldMode } from './ch12-dowels.js';

/** Coefficients of A·P² + B·P + C = 0, the equilibrium of one yield mode. */
interface Quadratic {
  readonly A: number;
  readonly B: number;
  readonly C: number;
}

const solve = ({ A, B, C }: Quadratic): number => (-B + Math.sqrt(B * B - 4 * A * C)) / (2 * A);

/** What each mode is in symbols. */
const FORMULA: Readonly<Record<YieldMode, string>> = {
  Im: 'qm·lm / Rd',
  Is: 'qs·ls / Rd',
  II: 'P of A = 1/(4qs)+1/(4qm), B = ls/2+g+lm/2, C = −qs·ls²/4 − qm·lm²/4; / Rd',
  IIIm: 'P of A = 1/(2qs)+1/(4qm), B = g+lm/2, C = −M − qm·lm²/4; / Rd',
  IIIs: 'P of A = 1/(4qs)+1/(2qm), B = ls/2+g, C = −qs·ls²/4 − M; / Rd',
  IV: 'P of A = 1/(2qs)+1/(2qm), B = g, C = −2M; / Rd',
};

/**
 * Yield limit values of one dowel in single shear with a gap `g` (in) between the members, lb: what lies in the gap is
 * taken as nothing. With g = 0 these are the values of NDS 2018 12.3.1. Source: AWC Technical Report 12, general dowel
 * equations for single shear (recalled; the tests find each mode anew from equilibrium).
 */
export function lateralValueGap(f: Dowel, g: number, rec?: Recorder): LateralValue {
  const { D, lm, ls } = f;
  const nominal = f.nominalD ?? D;
  const qm = f.Fem * D;
  const qs = f.Fes * D;
  const M = plasticMoment(f.Fyb, D);
  const quadratics: Readonly<Partial<Record<YieldMode, Quadratic>>> = {
    II: { A: 1 / (4 * qs) + 1 / (4 * qm), B: ls / 2 + g + lm / 2, C: -(qs * ls * ls) / 4 - (qm * lm * lm) / 4 },
    IIIm: { A: 1 / (2 * qs) + 1 / (4 * qm), B: g + lm / 2, C: -M - (qm * lm * lm) / 4 },
    IIIs: { A: 1 / (4 * qs) + 1 / (2 * qm), B: ls / 2 + g, C: -(qs * ls * ls) / 4 - M },
    IV: { A: 1 / (2 * qs) + 1 / (2 * qm), B: g, C: -2 * M },
  };
  const modes = { Im: 0, Is: 0, II: 0, IIIm: 0, IIIs: 0, IV: 0 };
  for (const mode of YIELD_MODES) {
    const q = quadratics[mode];
    const P = q ? solve(q) : mode === 'Im' ? qm * lm : qs * ls;
    modes[mode] = P / Rd(mode, D, nominal, f.thetaMax);
  }
  let mode: YieldMode = 'Im';
  for (const m of YIELD_MODES) if (modes[m] < modes[mode]) mode = m;
  const q = quadratics[mode];
  rec?.step({
    symbol: 'Z',
    meaning: `reference lateral design value across a gap of ${say(g)} in, mode ${mode} governs`,
    formula: q ? `P = (−B + √(B² − 4·A·C)) / (2·A), ${FORMULA[mode]}` : FORMULA[mode],
    substituted: q
      ? `A = ${q.A.toExponential(4)}, B = ${say(q.B)}, C = ${say(q.C)}, P = ${say(solve(q))}, Rd = ${say(Rd(mode, D, nominal, f.thetaMax))}`
      : `qm = ${say(qm)}, lm = ${say(lm)}, qs = ${say(qs)}, ls = ${say(ls)}, Rd = ${say(Rd(mode, D, nominal, f.thetaMax))}`,
    value: modes[mode],
    unit: 'lb',
    clause: 'AWC Technical Report 12, general dowel equations',
    note: `recalled from memory: confirm. D ${say(D)}, qs = Fes·D = ${say(qs)}, qm = Fem·D = ${say(qm)}, M = Fyb·D³/6 = ${say(M)}; others: ${YIELD_MODES.map((m) => `${m} ${say(modes[m])}`).join(', ')}`,
  });
  return { Z: modes[mode], mode, modes };
}
