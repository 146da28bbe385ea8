import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Fasteners with a withdrawal formula, and the power law each follows: W = k·G^g·D^d, lb per inch. */
export type WithdrawalKind = 'lag' | 'wood-screw' | 'smooth-nail' | 'deformed-nail';

const LAW: Readonly<Record<WithdrawalKind, { k: number; g: number; d: number; clause: string; note?: string }>> = {
  lag: { k: 1800, g: 1.5, d: 0.75, clause: 'NDS 2018 Eq. 12.2-1' },
  'wood-screw': { k: 2850, g: 2, d: 1, clause: 'NDS 2018 Eq. 12.2-2' },
  'smooth-nail': { k: 1380, g: 2.5, d: 1, clause: 'NDS 2018 Eq. 12.2-3' },
  'deformed-nail': {
    k: 1800,
    g: 2,
    d: 1,
    clause: 'NDS 2018 12.2.3',
    note: 'formula and its scope recalled from memory: confirm',
  },
};

/**
 * Reference withdrawal value from side grain, lb per inch of effective length: threads without the tapered tip for lag
 * screws, threads for wood screws, embedded length for nails. NDS 2018 12.2.
 */
export function W(kind: WithdrawalKind, G: number, D: number, rec?: Recorder): number {
  const law = LAW[kind];
  const value = law.k * G ** law.g * D ** law.d;
  rec?.step({
    symbol: 'W',
    meaning: 'reference withdrawal value',
    formula: `${law.k}·G^${law.g}·D${law.d === 1 ? '' : `^${law.d}`}`,
    substituted: `${law.k}·${say(G)}^${law.g}·${say(D)}${law.d === 1 ? '' : `^${law.d}`}`,
    value,
    unit: 'lb/in',
    clause: law.clause,
    ...(law.note === undefined ? {} : { note: law.note }),
  });
  return value;
}

/**
 * Reference head pull-through value of a round-headed fastener, lb: panel or side member of specific gravity `G` and
 * thickness `t`, head diameter `DH`, in. NDS 2018 12.2.5 (recalled).
 */
export function headPullThrough(G: number, DH: number, t: number, rec?: Recorder): number {
  const thin = t <= 2.5 * DH;
  const value = Math.PI * DH * G * G * (thin ? 690 * t : 1725 * DH);
  rec?.step({
    symbol: 'WH',
    meaning: 'reference head pull-through value',
    formula: thin ? '690·π·DH·G²·t for t ≤ 2.5·DH' : '1725·π·DH²·G² for t > 2.5·DH',
    substituted: thin ? `690·π·${say(DH)}·${say(G)}²·${say(t)}` : `1725·π·${say(DH)}²·${say(G)}²`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 12.2.5',
    note: 'formula recalled from memory: confirm',
  });
  return value;
}

/** Fasteners whose lateral value shrinks with short penetration. */
export type PenetrationKind = 'lag' | 'nail' | 'wood-screw';

/**
 * Factor for penetration p (in) into the main member: 1 from full depth (8D lag, 10D nail or wood screw), p/full down
 * to the least (4D, 6D), undefined below it: not permitted. NDS 2018 12.1.4.6, 12.1.5.6, 12.1.6.4 (numbers recalled).
 */
export function penetrationFactor(kind: PenetrationKind, p: number, D: number, rec?: Recorder): number | undefined {
  const full = (kind === 'lag' ? 8 : 10) * D;
  const least = (kind === 'lag' ? 4 : 6) * D;
  if (p < least - 1e-9) return undefined;
  const value = Math.min(1, p / full);
  rec?.step({
    symbol: 'p/full',
    meaning: 'penetration factor',
    formula: kind === 'lag' ? 'p / (8·D) ≤ 1' : 'p / (10·D) ≤ 1',
    substituted: `${say(p)} / ${say(full)}`,
    value,
    unit: '',
    clause: 'NDS 2018 12.1',
  });
  return value;
}

/** Toe-nail factor. Withdrawal also needs no wet service factor. NDS 2018 11.3.8, 12.5.4 (recalled). */
export const Ctn = (load: 'lateral' | 'withdrawal'): number => (load === 'lateral' ? 0.83 : 0.67);

/**
 * Lengths of a toe-nail driven at 30° to the member and started one third of its length from the end, in: `ls` in the
 * side member, `penetration` in the main one. NDS 2018 12.1.6.3 with commentary (recalled).
 */
export function toeNail(length: number): { readonly ls: number; readonly penetration: number } {
  const ls = length / 3;
  return { ls, penetration: length * Math.cos(Math.PI / 6) - ls };
}

/**
 * End grain factor; undefined where the standard permits no such load (nails and wood screws pulled from end grain).
 * NDS 2018 11.3.8, 12.5.2 (recalled).
 */
export function Ceg(kind: WithdrawalKind, load: 'lateral' | 'withdrawal'): number | undefined {
  if (load === 'lateral') return 0.67;
  return kind === 'lag' ? 0.75 : undefined;
}

/**
 * Capacity under lateral load and withdrawal together, lb, load at `alpha` radians to the wood surface. `Wp` = W'·p and
 * `ZAdj` = Z', lb. Lag and wood screws: Eq. 12.4-1; nails: Eq. 12.4-2. NDS 2018 12.4.
 */
export function combinedLateralWithdrawal(
  kind: WithdrawalKind,
  Wp: number,
  ZAdj: number,
  alpha: number,
  rec?: Recorder,
): number {
  const nail = kind === 'smooth-nail' || kind === 'deformed-nail';
  const c = Math.cos(alpha);
  const s = Math.sin(alpha);
  const value = (Wp * ZAdj) / (nail ? Wp * c + ZAdj * s : Wp * c * c + ZAdj * s * s);
  rec?.step({
    symbol: "Zα'",
    meaning: 'capacity under lateral load and withdrawal',
    formula: nail ? "W'p·Z' / (W'p·cosα + Z'·sinα)" : "W'p·Z' / (W'p·cos²α + Z'·sin²α)",
    substituted: `W'p = ${say(Wp)}, Z' = ${say(ZAdj)}, α = ${say((alpha * 180) / Math.PI)}°`,
    value,
    unit: 'lb',
    clause: nail ? 'NDS 2018 Eq. 12.4-2' : 'NDS 2018 Eq. 12.4-1',
  });
  return value;
}
