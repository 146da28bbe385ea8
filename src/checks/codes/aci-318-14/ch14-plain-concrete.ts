/**
 * ACI 318-14 chapter 14: structural plain concrete footings, strength design. psi, inches, pounds, pound-inches; loads
 * are factored (LRFD). Normal-weight concrete has lambda 1.
 */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';

/** Strength reduction factor of plain concrete (Table 21.2.1). */
export const PHI_PLAIN = 0.6;
/** Least specified strength, psi (Table 19.2.1.1), and least thickness of a plain footing, in (14.3.2.1). */
export const MIN_FC = 2500;
export const MIN_PLAIN_THICKNESS = 8;
/** Deducted from the thickness of concrete cast against soil, in (14.5.1.7). */
export const SOIL_FACE_DEDUCTION = 2;

/** Thickness that counts, inches. ACI 318-14 14.5.1.7. */
export const effectiveThickness = (thickness: number): number => Math.max(thickness - SOIL_FACE_DEDUCTION, 0);

/** Square root of f'c in psi, with the code's ceiling of 100 psi on its use in shear (22.5.3.1). */
const rootFc = (fc: number): number => Math.min(Math.sqrt(fc), 100);

/** Elastic section modulus of a rectangle `b` wide and `h` deep, in³. */
export const sectionModulus = (b: number, h: number): number => (b * h * h) / 6;

/** Design flexural strength φMn in lb·in of a section with modulus `Sm` (in³), tension side governing (14.5.2.1). */
export function plainFlexure(fc: number, Sm: number, lambda = 1, rec?: Recorder): number {
  const value = PHI_PLAIN * 5 * lambda * Math.sqrt(fc) * Sm;
  rec?.step({
    symbol: 'φMn',
    meaning: 'design flexural strength, plain concrete',
    formula: "φ·5·λ·√f'c·Sm",
    substituted: `${PHI_PLAIN} · 5 · ${say(lambda)} · √${say(fc)} · ${say(Sm)}`,
    value,
    unit: 'lb·in',
    clause: 'ACI 318-14 14.5.2.1',
  });
  return value;
}

/** Design one-way shear strength φVn in pounds of a section `b` by `h` (14.5.5.1). */
export function plainOneWayShear(fc: number, b: number, h: number, lambda = 1, rec?: Recorder): number {
  const value = PHI_PLAIN * (4 / 3) * lambda * rootFc(fc) * b * h;
  rec?.step({
    symbol: 'φVn',
    meaning: 'design one-way shear strength, plain concrete',
    formula: "φ·(4/3)·λ·√f'c·b·h",
    substituted: `${PHI_PLAIN} · 4/3 · ${say(lambda)} · √${say(fc)} · ${say(b)} · ${say(h)}`,
    value,
    unit: 'lb',
    clause: 'ACI 318-14 14.5.5.1',
  });
  return value;
}

/**
 * Design two-way (punching) shear strength φVn in pounds on the perimeter `bo` (in); `beta` long over short side of the
 * loaded area (14.5.5.1).
 */
export function plainTwoWayShear(fc: number, bo: number, h: number, beta: number, lambda = 1, rec?: Recorder): number {
  const coefficient = Math.min((4 / 3) * (1 + 2 / beta), 8 / 3);
  const value = PHI_PLAIN * coefficient * lambda * rootFc(fc) * bo * h;
  rec?.step({
    symbol: 'φVn',
    meaning: 'design two-way shear strength, plain concrete',
    formula: "φ·min((4/3)(1 + 2/β), 8/3)·λ·√f'c·bo·h",
    substituted: `${PHI_PLAIN} · ${say(coefficient)} · ${say(lambda)} · √${say(fc)} · ${say(bo)} · ${say(h)}`,
    value,
    unit: 'lb',
    clause: 'ACI 318-14 14.5.5.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/**
 * Design bearing strength φBn in pounds under a post base of area `A1` (in²) on a support of area `A2` (in², the base of
 * the widest frustum that fits), 14.5.6.1.
 */
export function plainBearing(fc: number, A1: number, A2: number, rec?: Recorder): number {
  const spread = Math.min(Math.sqrt(Math.max(A2 / A1, 1)), 2);
  const value = PHI_PLAIN * 0.85 * fc * A1 * spread;
  rec?.step({
    symbol: 'φBn',
    meaning: 'design bearing strength, plain concrete',
    formula: "φ·0.85·f'c·A1·min(√(A2/A1), 2)",
    substituted: `${PHI_PLAIN} · 0.85 · ${say(fc)} · ${say(A1)} · ${say(spread)}`,
    value,
    unit: 'lb',
    clause: 'ACI 318-14 14.5.6.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Factored actions in an isolated footing at the critical sections of 14.5.1 under uniform net pressure. */
export interface FootingActions {
  /** Moment at the face of the column over the full width, lb·in. */
  readonly Mu: number;
  /** One-way shear `h` from the face, lb. */
  readonly Vu1: number;
  /** Two-way shear outside the perimeter h/2 from the face, lb. */
  readonly Vu2: number;
  /** That perimeter, in. */
  readonly bo: number;
}

/**
 * Actions of a square footing of side `B` under a square column of side `c` with uniform factored net pressure `qu` (psf,
 * footing and soil weight left out), effective thickness `h`. Round shapes enter as squares of equal area. An eccentric
 * footing may be given its greatest pressure as uniform: never less than the truth.
 * ACI 318-14 13.2.7, 14.5 by statics.
 */
export function squareFootingActions(B: number, c: number, h: number, qu: number): FootingActions {
  const q = qu / 144;
  const arm = Math.max((B - c) / 2, 0);
  const punch = Math.min(c + h, B);
  return {
    Mu: (q * B * arm * arm) / 2,
    Vu1: q * B * Math.max(arm - h, 0),
    Vu2: q * (B * B - punch * punch),
    bo: 4 * punch,
  };
}

/** Side of the square with the area of a circle of diameter `D` (13.2.7.3 for columns; statics for footings). */
export const equivalentSquare = (D: number): number => (D * Math.sqrt(Math.PI)) / 2;
