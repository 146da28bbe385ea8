import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/**
 * Bearing area factor for a bearing length lb (in, along the grain) no nearer than 3 in. to the member end; 1 for 6 in.
 * and longer and near the end. For a round washer lb is its diameter. NDS 2018 3.10.4, Eq. 3.10-2.
 */
export function Cb(lb: number, distanceToEnd: number, rec?: Recorder): number {
  const value = lb < 6 && distanceToEnd >= 3 ? (lb + 0.375) / lb : 1;
  rec?.step({
    symbol: 'Cb',
    meaning: 'bearing area factor',
    formula: value === 1 ? '1.0' : '(lb + 0.375) / lb',
    substituted:
      value === 1 ? `lb = ${say(lb)}, ${say(distanceToEnd)} from the end` : `(${say(lb)} + 0.375) / ${say(lb)}`,
    value,
    unit: '',
    clause: 'NDS 2018 3.10.4',
  });
  return value;
}

/** Bearing stress of a reaction R (lb) on b by lb (in), psi. NDS 2018 3.10.2. */
export function fcPerp(R: number, b: number, lb: number, rec?: Recorder): number {
  const value = Math.abs(R) / (b * lb);
  rec?.step({
    symbol: 'fc⊥',
    meaning: 'bearing stress perpendicular to grain',
    formula: 'R / (b·lb)',
    substituted: `${say(Math.abs(R))} / (${say(b)}·${say(lb)})`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 3.10.2',
  });
  return value;
}

/**
 * Bearing strength at an angle θ (radians) between load and grain, psi; FcStar is Fc with every factor but CP.
 * NDS 2018 3.10.3, Eq. 3.10-1 (Hankinson).
 */
export function hankinson(FcStar: number, FcPerpAdj: number, theta: number, rec?: Recorder): number {
  const s = Math.sin(theta) ** 2;
  const value = (FcStar * FcPerpAdj) / (FcStar * s + FcPerpAdj * (1 - s));
  rec?.step({
    symbol: "Fθ'",
    meaning: 'bearing strength at an angle to grain',
    formula: "Fc*·Fc⊥' / (Fc*·sin²θ + Fc⊥'·cos²θ)",
    substituted: `${say(FcStar)}·${say(FcPerpAdj)} / (${say(FcStar)}·${say(s)} + ${say(FcPerpAdj)}·${say(1 - s)})`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 Eq. 3.10-1',
    note: `θ = ${say((theta * 180) / Math.PI)}°`,
  });
  return value;
}

/** True when end-grain bearing needs a steel plate or other rigid insert: fc above 0.75·Fc*. NDS 2018 3.10.1.3. */
export const needsBearingPlate = (fc: number, FcStar: number): boolean => fc > 0.75 * FcStar;
