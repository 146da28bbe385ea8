/**
 * Least-squares adjustment of readings (Gauss–Newton): positions that fit all readings best, how sure they are, and how far
 * each reading is from the others. Knows nothing of building. What the formulas are: any textbook of adjustment
 * computations; checked against printed examples in test/verification/survey.test.ts.
 */
import { cholesky, inverseCholesky, solveCholesky } from '../../base/linear.js';

/** One reading as a function of the unknowns. */
export interface Equation {
  readonly value: number;
  /** Standard deviation before the adjustment, same unit. */
  readonly sigma: number;
  /** What the reading would be at x, and its slope by each unknown it depends on. */
  at(x: Float64Array): {
    readonly value: number;
    readonly slopes: readonly (readonly [unknown: number, slope: number])[];
  };
}

export interface Fit {
  readonly x: Float64Array;
  /** Covariance of x by the sigmas given, n by n, not scaled by what the residuals say. */
  readonly covariance: Float64Array;
  /** Adjusted less observed, each in its own unit. */
  readonly residuals: readonly number[];
  /** Share of an error of the reading that shows in its own residual: 0 none (nothing checks it), 1 all. */
  readonly redundancy: readonly number[];
  /** Residual over its own standard deviation; 0 where nothing checks the reading. */
  readonly normalized: readonly number[];
  /** Readings less unknowns. */
  readonly freedom: number;
  /** Sum of squared residuals, each over its sigma: chi-square of `freedom` degrees when nothing is wrong. */
  readonly weightedSum: number;
}

export type Fitted =
  | { readonly ok: true; readonly fit: Fit }
  /** The readings leave an unknown loose, or the iteration does not settle (then `loose` is -1). */
  | { readonly ok: false; readonly loose: number };

const ROUNDS = 50;
const SETTLED = 1e-9;
/** Below this a reading counts as checked by nothing. */
export const UNCHECKED = 1e-6;

/** @throws RangeError for a sigma that is not positive. */
export function leastSquares(equations: readonly Equation[], start: Float64Array): Fitted {
  const n = start.length;
  if (equations.some((e) => !(e.sigma > 0 && e.sigma < Infinity)))
    throw new RangeError('a reading needs a sigma above 0');
  let x = Float64Array.from(start);
  for (let round = 0; round < ROUNDS; round++) {
    const normal = new Float64Array(n * n);
    const right = new Float64Array(n);
    for (const e of equations) {
      const { value, slopes } = e.at(x);
      const weight = 1 / e.sigma ** 2;
      for (const [i, a] of slopes) {
        right[i] = right[i]! + weight * a * (e.value - value);
        for (const [j, b] of slopes) normal[i * n + j] = normal[i * n + j]! + weight * a * b;
      }
    }
    const factored = cholesky(normal, n);
    if (!factored.ok) return { ok: false, loose: factored.row };
    const step = solveCholesky(factored, right);
    x = x.map((v, i) => v + step[i]!);
    if (step.some((s) => !Number.isFinite(s))) return { ok: false, loose: -1 };
    if (step.every((s, i) => Math.abs(s) <= SETTLED * (1 + Math.abs(x[i]!))))
      return { ok: true, fit: judged(equations, x, inverseCholesky(factored)) };
  }
  return { ok: false, loose: -1 };
}

function judged(equations: readonly Equation[], x: Float64Array, covariance: Float64Array): Fit {
  const n = x.length;
  const residuals: number[] = [];
  const redundancy: number[] = [];
  const normalized: number[] = [];
  let weightedSum = 0;
  for (const e of equations) {
    const { value, slopes } = e.at(x);
    const v = value - e.value;
    let spread = 0;
    for (const [i, a] of slopes) for (const [j, b] of slopes) spread += a * b * covariance[i * n + j]!;
    const r = Math.min(1, Math.max(0, 1 - spread / e.sigma ** 2));
    residuals.push(v);
    redundancy.push(r);
    normalized.push(r > UNCHECKED ? v / (e.sigma * Math.sqrt(r)) : 0);
    weightedSum += (v / e.sigma) ** 2;
  }
  return { x, covariance, residuals, redundancy, normalized, freedom: equations.length - n, weightedSum };
}
