/**
 * Closed-form statics of straight prismatic beams: w in lb/in, P in lb, lengths in inches, EI in lb·in². Reactions and
 * loads are positive as drawn (load down, reaction up); sagging moment is positive. Deflection is positive downward.
 * These are the hand statics that stand beside every analysed number.
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

const SIMPLE = 'statics: simple beam (AWC Design Aid 6)';

/** Simple span, uniform load. AWC Design Aid 6 Figure 1. */
export interface SimpleUniform {
  readonly R: number;
  readonly V: number;
  readonly M: number;
  readonly deflection: number;
}

/** Simple span, uniform load: w·L/2, w·L²/8, 5·w·L⁴/384EI. Statics, AWC Design Aid 6 Figure 1. */
export function simpleUniform(w: number, L: number, EI: number, rec?: Recorder): SimpleUniform {
  const R = (w * L) / 2;
  const M = (w * L * L) / 8;
  const deflection = (5 * w * L ** 4) / (384 * EI);
  if (rec !== undefined) {
    rec.step({
      symbol: 'R',
      meaning: 'reaction',
      formula: 'w·L/2',
      substituted: `${say(w)}·${say(L)}/2`,
      value: R,
      unit: 'lb',
      clause: SIMPLE,
    });
    rec.step({
      symbol: 'M',
      meaning: 'largest moment, at midspan',
      formula: 'w·L²/8',
      substituted: `${say(w)}·${say(L)}²/8`,
      value: M,
      unit: 'lb·in',
      clause: SIMPLE,
    });
    rec.step({
      symbol: 'Δ',
      meaning: 'deflection at midspan',
      formula: '5·w·L⁴/(384·E·I)',
      substituted: `5·${say(w)}·${say(L)}⁴/(384·${say(EI)})`,
      value: deflection,
      unit: 'in',
      clause: SIMPLE,
    });
  }
  return { R, V: R, M, deflection };
}

/** Simple span, one load at `a` from the left end. */
export interface SimplePoint {
  readonly R1: number;
  readonly R2: number;
  readonly V: number;
  /** Moment under the load, the largest. */
  readonly M: number;
  /** Largest deflection, which lies between the load and midspan. */
  readonly deflection: number;
}

/** AWC Design Aid 6 Figures 7 and 8: P·a·b/L; the deflection is exact for any `a`. Statics. */
export function simplePoint(P: number, L: number, a: number, EI: number, rec?: Recorder): SimplePoint {
  const b = L - a;
  const R1 = (P * b) / L;
  const R2 = (P * a) / L;
  const M = (P * a * b) / L;
  // Measured from the end farther from the load, where the largest deflection lies; x² = (L² − near²)/3.
  const near = Math.min(a, b);
  const deflection = (P * near * (L * L - near * near) ** 1.5) / (9 * Math.sqrt(3) * L * EI);
  rec?.step({
    symbol: 'M',
    meaning: 'largest moment, under the load',
    formula: 'P·a·b/L',
    substituted: `${say(P)}·${say(a)}·${say(b)}/${say(L)}`,
    value: M,
    unit: 'lb·in',
    clause: SIMPLE,
  });
  return { R1, R2, V: Math.max(Math.abs(R1), Math.abs(R2)), M, deflection };
}

/** Fixed-end cantilever of length `a`: moment and shear at the support, deflection at the tip. */
export interface Cantilever {
  readonly R: number;
  readonly M: number;
  readonly tip: number;
}

/** Cantilever, uniform load: w·a²/2, w·a⁴/8EI. AWC Design Aid 6 Figure 19 family. Statics. */
export const cantileverUniform = (w: number, a: number, EI: number): Cantilever => ({
  R: w * a,
  M: -(w * a * a) / 2,
  tip: (w * a ** 4) / (8 * EI),
});

/** Cantilever, load at the tip: P·a, P·a³/3EI. Statics. */
export const cantileverPoint = (P: number, a: number, EI: number): Cantilever => ({
  R: P,
  M: -P * a,
  tip: (P * a ** 3) / (3 * EI),
});

/** One span L and an overhang a beyond the right support, uniform load over both. */
export interface OverhangUniform {
  readonly R1: number;
  readonly R2: number;
  /** Shear beside the right support on its span side, and on its overhang side. */
  readonly VSpan: number;
  readonly VOverhang: number;
  /** Largest sagging moment in the span; 0 when the overhang lifts the whole span. */
  readonly MSpan: number;
  /** Hogging moment over the right support, negative. */
  readonly MSupport: number;
  /** Deflection of the tip, positive downward. */
  readonly tip: number;
}

/** AWC Design Aid 6 Figure 20 family (overhanging one support, uniform load); formulas recalled. Statics. */
export function overhangUniform(w: number, L: number, a: number, EI: number, rec?: Recorder): OverhangUniform {
  const R1 = (w * (L * L - a * a)) / (2 * L);
  const R2 = (w * (L + a) ** 2) / (2 * L);
  const MSpan = a < L ? (w * (L + a) ** 2 * (L - a) ** 2) / (8 * L * L) : 0;
  const MSupport = -(w * a * a) / 2;
  const tip = (w * a * (4 * a * a * L - L ** 3 + 3 * a ** 3)) / (24 * EI);
  rec?.step({
    symbol: 'R2',
    meaning: 'reaction at the support with the overhang',
    formula: 'w·(L+a)²/(2·L)',
    substituted: `${say(w)}·(${say(L)}+${say(a)})²/(2·${say(L)})`,
    value: R2,
    unit: 'lb',
    clause: 'statics: overhanging beam (AWC Design Aid 6)',
  });
  return { R1, R2, VSpan: (w * (L * L + a * a)) / (2 * L), VOverhang: w * a, MSpan, MSupport, tip };
}

/** Span L and overhang a, one load P at the tip: reactions, support moment, tip deflection. */
export interface OverhangPoint {
  readonly R1: number;
  readonly R2: number;
  readonly MSupport: number;
  readonly tip: number;
}

/** AWC Design Aid 6 (overhanging one support, load at the end of the overhang): tip P·a²(L+a)/3EI. Statics. */
export const overhangPoint = (P: number, L: number, a: number, EI: number): OverhangPoint => ({
  R1: (-P * a) / L,
  R2: (P * (L + a)) / L,
  MSupport: -P * a,
  tip: (P * a * a * (L + a)) / (3 * EI),
});
