import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Safety factors of tension members: yielding of the gross section and rupture of the net one. AISC 360-16 D2 (recalled). */
const OMEGA_YIELD = 1.67;
const OMEGA_RUPTURE = 2;

/** Diameter taken off for a standard hole: hole 1/16 in. over the bolt, and 1/16 in. of damage. AISC 360-16 B4.3b, J3.2 (recalled). */
export const holeWidth = (D: number): number => D + 1 / 8;

/**
 * Allowable tension of a flat steel piece, lb: the lesser of Fy·Ag/1.67 and Fu·Ae/2, with Ae = An (every part of a flat
 * piece is joined, U = 1). Thickness `t`, width `w`, `holes` side by side of width `hole`, inches; `Fy`, `Fu` psi.
 * AISC 360-16 D2, D3 (recalled).
 */
export function flatTension(
  p: {
    readonly t: number;
    readonly w: number;
    readonly holes: number;
    readonly hole: number;
    readonly Fy: number;
    readonly Fu: number;
  },
  rec?: Recorder,
): number {
  const Ag = p.t * p.w;
  const An = Math.max(0, p.t * (p.w - p.holes * p.hole));
  const value = Math.min((p.Fy * Ag) / OMEGA_YIELD, (p.Fu * An) / OMEGA_RUPTURE);
  rec?.step({
    symbol: 'Ta',
    meaning: 'allowable tension of one steel piece: yielding or rupture at the holes',
    formula: 'min(Fy·t·w / 1.67, Fu·t·(w − n·dh) / 2)',
    substituted: `min(${say(p.Fy)}·${say(p.t)}·${say(p.w)} / 1.67, ${say(p.Fu)}·${say(p.t)}·(${say(p.w)} − ${p.holes}·${say(p.hole)}) / 2)`,
    value,
    unit: 'lb',
    clause: 'AISC 360-16 D2',
    note: 'safety factors recalled from memory: confirm',
  });
  return value;
}
