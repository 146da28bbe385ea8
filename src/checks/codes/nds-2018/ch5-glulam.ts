import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import type { DesignValue } from './ch2-adjustment.js';

/**
 * Volume factor on Fb about x-x: (21/L)^(1/x)·(12/d)^(1/x)·(5.125/b)^(1/x) ≤ 1. `L` ft between points of zero moment,
 * `d` and `b` in. (b the widest piece of a lamination, at most 10.75); x = 10, or 20 for Southern Pine. CV and CL do not
 * both apply: the lesser does. NDS 2018 5.3.6, Eq. 5.3-1.
 */
export function CV(L: number, d: number, b: number, x: 10 | 20, rec?: Recorder): number {
  const value = Math.min(1, ((21 / L) * (12 / d) * (5.125 / Math.min(b, 10.75))) ** (1 / x));
  rec?.step({
    symbol: 'CV',
    meaning: 'volume factor',
    formula: '(21/L)^(1/x)·(12/d)^(1/x)·(5.125/b)^(1/x) ≤ 1',
    substituted: `(21/${say(L)}·12/${say(d)}·5.125/${say(b)})^(1/${x})`,
    value,
    unit: '',
    clause: 'NDS 2018 Eq. 5.3-1',
  });
  return value;
}

/** Wet service factor of glued-laminated timber (16 % moisture or more). NDS Supplement 2018 Table 5A. */
export function CMGlulam(value: DesignValue): number {
  switch (value) {
    case 'Fb':
    case 'Ft':
      return 0.8;
    case 'Fv':
      return 0.875;
    case 'FcPerp':
      return 0.53;
    case 'Fc':
      return 0.73;
    default:
      return 0.833;
  }
}

/**
 * Flat use factor on Fb about y-y: (12/d)^(1/9) where the side parallel to the wide faces of the laminations, d in,
 * is less than 12 in. NDS 2018 5.3.7 (recalled).
 */
export const CfuGlulam = (d: number): number => (d < 12 ? (12 / d) ** (1 / 9) : 1);

/** Shear reduction factor on Fv at notches, at connections and for non-prismatic members. NDS 2018 5.3.10 (recalled). */
export const CVR = 0.72;
