/**
 * Continuous beams over equal spans L with uniform load w on the loaded spans (lb/in, in). The support moments come
 * from the three-moment equation, everything else from statics of each span, so that any pattern is exact.
 * Source: Clapeyron's three-moment equation, constant EI, level supports.
 */

/** Result per support (n + 1) and per span (n). Moments: sagging positive. */
export interface Continuous {
  /** Reactions, lb, left to right. */
  readonly reactions: readonly number[];
  /** Moments over the supports, lb·in; the ends are 0. */
  readonly supportMoments: readonly number[];
  /** Largest sagging moment in each span (0 when the span only hogs). */
  readonly spanMoments: readonly number[];
  /** Shear at the left and right end of each span, lb (magnitudes). */
  readonly shears: readonly (readonly [left: number, right: number])[];
  /** Largest downward deflection of each span times EI; divide by EI (lb·in²). */
  readonly deflectionsTimesEI: readonly number[];
}

/** `loads[i]` is w on span i, 0 where unloaded; 1 to 12 spans. Statics: three-moment equation. */
export function continuousUniform(loads: readonly number[], L: number): Continuous {
  const n = loads.length;
  const M = supportMoments(loads, L);
  const reactions = new Array<number>(n + 1).fill(0);
  const spanMoments: number[] = [];
  const shears: (readonly [number, number])[] = [];
  const deflections: number[] = [];
  for (let i = 0; i < n; i++) {
    const w = loads[i]!;
    const left = M[i]!;
    const right = M[i + 1]!;
    const Rl = (w * L) / 2 + (right - left) / L;
    const Rr = w * L - Rl;
    reactions[i]! += Rl;
    reactions[i + 1]! += Rr;
    shears.push([Math.abs(Rl), Math.abs(Rr)]);
    const x = w > 0 ? Rl / w : 0;
    spanMoments.push(w > 0 && x > 0 && x < L ? Math.max(0, left + (Rl * Rl) / (2 * w)) : Math.max(0, left, right));
    deflections.push(largestDeflection(w, L, left, right));
  }
  return { reactions, supportMoments: M, spanMoments, shears, deflectionsTimesEI: deflections };
}

/** Three-moment equations M[i−1] + 4·M[i] + M[i+1] = −(w[i−1] + w[i])·L²/4, solved by forward elimination. */
function supportMoments(loads: readonly number[], L: number): number[] {
  const n = loads.length;
  const M = new Array<number>(n + 1).fill(0);
  const c: number[] = [];
  const r: number[] = [];
  for (let i = 1; i < n; i++) {
    const rhs = (-(loads[i - 1]! + loads[i]!) * L * L) / 4;
    const pivot = 4 - (i > 1 ? c[i - 2]! : 0);
    c.push(1 / pivot);
    r.push((rhs - (i > 1 ? r[i - 2]! : 0)) / pivot);
  }
  for (let i = n - 1; i >= 1; i--) M[i] = r[i - 1]! - c[i - 1]! * M[i + 1]!;
  return M;
}

/** EI·y of a span under w and end moments, y downward: exact quartic, its maximum by ternary search. */
function largestDeflection(w: number, L: number, left: number, right: number): number {
  const y = (x: number): number =>
    (w * x * (L ** 3 - 2 * L * x * x + x ** 3)) / 24 +
    (left * x * (2 * L * L - 3 * L * x + x * x)) / (6 * L) +
    (right * x * (L * L - x * x)) / (6 * L);
  // The curve may have two humps (a span that hogs at one end only): coarse scan first, then refine the best interval.
  const N = 40;
  let best = 0;
  for (let i = 1; i < N; i++) if (y((i * L) / N) > y((best * L) / N)) best = i;
  if (best === 0) return 0;
  let a = ((best - 1) * L) / N;
  let b = ((best + 1) * L) / N;
  for (let k = 0; k < 60; k++) {
    const third = (b - a) / 3;
    if (y(a + third) < y(b - third)) a += third;
    else b -= third;
  }
  return y((a + b) / 2);
}

/** Coefficients of two equal spans, uniform load on both, as handbooks print them (times wL, wL² and wL⁴/EI). */
export const TWO_EQUAL_SPANS = { REnd: 0.375, RMiddle: 1.25, V: 0.625, MSupport: -0.125, MSpan: 9 / 128 } as const;
/** Coefficients of three equal spans, uniform load on all. */
export const THREE_EQUAL_SPANS = {
  REnd: 0.4,
  RInner: 1.1,
  V: 0.6,
  MSupport: -0.1,
  MEndSpan: 0.08,
  MMidSpan: 0.025,
} as const;
