import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Area b·d, in². NDS 2018 3.1. */
export const area = (b: number, d: number): number => b * d;
/** Section modulus of a rectangle about the axis normal to `d`, in³: b·d²/6. NDS 2018 3.3.2.2. */
export const sectionModulus = (b: number, d: number): number => (b * d * d) / 6;
/** Moment of inertia of a rectangle about the axis normal to `d`, in⁴: b·d³/12. NDS 2018 3.3.2.2. */
export const momentOfInertia = (b: number, d: number): number => (b * d * d * d) / 12;

/** Bending stress of a rectangle b by d (in) under M (lb·in), psi. NDS 2018 3.3.2, Eq. 3.3-2. */
export function fb(M: number, b: number, d: number, rec?: Recorder): number {
  const value = (6 * Math.abs(M)) / (b * d * d);
  rec?.step({
    symbol: 'fb',
    meaning: 'bending stress',
    formula: '6·M / (b·d²)',
    substituted: `6·${say(Math.abs(M))} / (${say(b)}·${say(d)}²)`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 Eq. 3.3-2',
  });
  return value;
}

/** Loading rows of Table 3.3.3. The braced rows have lateral support at each load point. */
export type BendingLoading =
  | 'cantilever-uniform'
  | 'cantilever-end-point'
  | 'simple-uniform'
  | 'simple-center-point'
  | 'center-point-braced'
  | 'two-points-braced'
  | 'three-points-braced'
  | 'four-points-braced'
  | 'five-points-braced'
  | 'six-points-braced'
  | 'seven-or-more-points-braced'
  | 'equal-end-moments'
  | 'other';

/** `le = deep·lu` where lu/d < 7, else `slender·lu + 3d`; one number where the table has one only. */
const LE: Readonly<Record<Exclude<BendingLoading, 'other'>, number | readonly [deep: number, slender: number]>> = {
  'cantilever-uniform': [1.33, 0.9],
  'cantilever-end-point': [1.87, 1.44],
  'simple-uniform': [2.06, 1.63],
  'simple-center-point': [1.8, 1.37],
  'center-point-braced': 1.11,
  'two-points-braced': 1.68,
  'three-points-braced': 1.54,
  'four-points-braced': 1.68,
  'five-points-braced': 1.73,
  'six-points-braced': 1.78,
  'seven-or-more-points-braced': 1.84,
  'equal-end-moments': 1.84,
};

/**
 * Effective length le of a bending member for lateral stability, in, from its unsupported length lu (in), its depth
 * d (in) and its loading. `other` is the table's footnote for loadings it does not list. NDS 2018 Table 3.3.3.
 */
export function effectiveLength(loading: BendingLoading, lu: number, d: number, rec?: Recorder): number {
  const ratio = lu / d;
  let factor: number;
  let plus3d = false;
  if (loading === 'other') {
    factor = ratio < 7 ? 2.06 : ratio <= 14.3 ? 1.63 : 1.84;
    plus3d = ratio >= 7 && ratio <= 14.3;
  } else {
    const row = LE[loading];
    factor = typeof row === 'number' ? row : ratio < 7 ? row[0] : row[1];
    plus3d = typeof row !== 'number' && ratio >= 7;
  }
  const value = factor * lu + (plus3d ? 3 * d : 0);
  rec?.step({
    symbol: 'le',
    meaning: 'effective length for lateral stability',
    formula: plus3d ? `${factor}·lu + 3·d` : `${factor}·lu`,
    substituted: plus3d ? `${factor}·${say(lu)} + 3·${say(d)}` : `${factor}·${say(lu)}`,
    value,
    unit: 'in',
    clause: 'NDS 2018 Table 3.3.3',
    note: `loading: ${loading}; lu/d = ${say(ratio)}`,
  });
  return value;
}

/** Slenderness ratio beyond which a bending member is not permitted. NDS 2018 3.3.3.7. */
export const RB_LIMIT = 50;

/** Slenderness ratio of a bending member: sqrt(le·d / b²), not to exceed 50. NDS 2018 Eq. 3.3-5. */
export function RB(le: number, b: number, d: number, rec?: Recorder): number {
  const value = Math.sqrt(le * d) / b;
  rec?.step({
    symbol: 'RB',
    meaning: 'slenderness ratio of a bending member',
    formula: '√(le·d / b²)',
    substituted: `√(${say(le)}·${say(d)} / ${say(b)}²)`,
    value,
    unit: '',
    clause: 'NDS 2018 Eq. 3.3-5',
  });
  return value;
}

/** Critical buckling design value for bending, psi: 1.20·Emin' / RB². NDS 2018 3.3.3.8. */
export function FbE(EminAdj: number, slenderness: number, rec?: Recorder): number {
  const value = (1.2 * EminAdj) / (slenderness * slenderness);
  rec?.step({
    symbol: 'FbE',
    meaning: 'critical buckling design value for bending',
    formula: "1.20·Emin' / RB²",
    substituted: `1.20·${say(EminAdj)} / ${say(slenderness)}²`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 3.3.3.8',
  });
  return value;
}

/**
 * Beam stability factor from FbE and Fb* (Fb with every factor but Cfu, CV and CL), psi. It is 1 where d ≤ b (3.3.3.1)
 * or where the compression edge is held all along and the ends cannot rotate (3.3.3.3). NDS 2018 Eq. 3.3-6.
 */
export function CL(FbEValue: number, FbStar: number, rec?: Recorder): number {
  const F = FbEValue / FbStar;
  const a = (1 + F) / 1.9;
  const value = a - Math.sqrt(a * a - F / 0.95);
  rec?.step({
    symbol: 'CL',
    meaning: 'beam stability factor',
    formula: '(1+F)/1.9 − √(((1+F)/1.9)² − F/0.95), F = FbE/Fb*',
    substituted: `F = ${say(FbEValue)}/${say(FbStar)} = ${say(F)}`,
    value,
    unit: '',
    clause: 'NDS 2018 Eq. 3.3-6',
  });
  return value;
}
