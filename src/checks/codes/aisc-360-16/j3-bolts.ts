import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Nominal tensile stress of A307 bolts on the full-body area, psi, and its safety factor. AISC 360-16 Table J3.2, J3.6 (recalled). */
const FNT_A307 = 45_000;
const OMEGA = 2;

/** Allowable tension of one A307 bolt of diameter D (in), lb. AISC 360-16 J3.6 (recalled). */
export function boltTension(D: number, rec?: Recorder): number {
  const value = (FNT_A307 * (Math.PI / 4) * D * D) / OMEGA;
  rec?.step({
    symbol: 'Tb',
    meaning: 'allowable tension of one bolt',
    formula: 'Fnt·(π/4)·D² / 2',
    substituted: `45000·(π/4)·${say(D)}² / 2`,
    value,
    unit: 'lb',
    clause: 'AISC 360-16 J3.6',
    note: 'A307 bolt; stress and safety factor recalled from memory: confirm',
  });
  return value;
}
