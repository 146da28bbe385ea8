import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Slenderness limits of a solid column: in service, and while under construction. NDS 2018 3.7.1.4. */
export const SLENDERNESS_LIMIT = 50;
export const SLENDERNESS_LIMIT_CONSTRUCTION = 75;

/** End conditions and the design value of Ke. NDS 2018 Appendix G Table G1 (recalled). */
export const KE = {
  'fixed-fixed': 0.65,
  'fixed-pinned': 0.8,
  'pinned-pinned': 1.0,
  'fixed-guided': 1.2,
  'fixed-free': 2.1,
  'pinned-guided': 2.4,
} as const;

/** Buckling length coefficient c of Eq. 3.7-1. */
export const C_SAWN = 0.8;
export const C_ROUND = 0.85;
export const C_GLULAM_SCL = 0.9;

/** Slenderness le/d = Ke·l/d of a column about one axis; l and d in inches. NDS 2018 3.7.1.2. */
export function columnSlenderness(Ke: number, l: number, d: number, rec?: Recorder): number {
  const value = (Ke * l) / d;
  rec?.step({
    symbol: 'le/d',
    meaning: 'column slenderness',
    formula: 'Ke·l / d',
    substituted: `${say(Ke)}·${say(l)} / ${say(d)}`,
    value,
    unit: '',
    clause: 'NDS 2018 3.7.1',
  });
  return value;
}

/** Critical buckling design value for compression, psi: 0.822·Emin' / (le/d)². NDS 2018 3.7.1.5. */
export function FcE(EminAdj: number, slenderness: number, rec?: Recorder): number {
  const value = (0.822 * EminAdj) / (slenderness * slenderness);
  rec?.step({
    symbol: 'FcE',
    meaning: 'critical buckling design value for compression',
    formula: "0.822·Emin' / (le/d)²",
    substituted: `0.822·${say(EminAdj)} / ${say(slenderness)}²`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 3.7.1.5',
  });
  return value;
}

/**
 * Column stability factor from FcE and Fc* (Fc with every factor but CP), psi. `Kf` is 1 but for built-up columns
 * (15.3). It is 1 where the column is held all along in every direction (3.7.1.1). NDS 2018 Eq. 3.7-1, 15.3-1.
 */
export function CP(FcEValue: number, FcStar: number, c: number, Kf = 1, rec?: Recorder): number {
  const alpha = FcEValue / FcStar;
  const a = (1 + alpha) / (2 * c);
  const value = Kf * (a - Math.sqrt(a * a - alpha / c));
  rec?.step({
    symbol: 'CP',
    meaning: 'column stability factor',
    formula: `${Kf === 1 ? '' : 'Kf·['}(1+α)/(2c) − √(((1+α)/(2c))² − α/c)${Kf === 1 ? '' : ']'}, α = FcE/Fc*`,
    substituted: `α = ${say(FcEValue)}/${say(FcStar)} = ${say(alpha)}, c = ${c}${Kf === 1 ? '' : `, Kf = ${Kf}`}`,
    value,
    unit: '',
    clause: Kf === 1 ? 'NDS 2018 Eq. 3.7-1' : 'NDS 2018 Eq. 15.3-1',
  });
  return value;
}

/** Axial stress P/A, psi, P in lb. NDS 2018 3.6.3 (compression), 3.8.1 (tension). */
export function axialStress(symbol: 'fc' | 'ft', P: number, A: number, rec?: Recorder): number {
  const value = Math.abs(P) / A;
  rec?.step({
    symbol,
    meaning: symbol === 'fc' ? 'compression stress parallel to grain' : 'tension stress parallel to grain',
    formula: 'P / A',
    substituted: `${say(Math.abs(P))} / ${say(A)}`,
    value,
    unit: 'psi',
    clause: symbol === 'fc' ? 'NDS 2018 3.6.3' : 'NDS 2018 3.8.1',
  });
  return value;
}
