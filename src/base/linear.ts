/** Small dense linear algebra: symmetric positive definite systems of a few dozen unknowns. Rows one after another. */

/** Lower triangle L with L·Lᵀ = A, or the row whose pivot vanished: it depends on those before it. */
export type Cholesky =
  | { readonly ok: true; readonly n: number; readonly lower: Float64Array }
  | { readonly ok: false; readonly row: number };

/** A pivot this small against its own diagonal counts as nothing. */
const VANISHED = 1e-10;

/** Factors a symmetric matrix of n rows; only its lower triangle is read. */
export function cholesky(a: Float64Array, n: number): Cholesky {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(sum > VANISHED * Math.abs(a[i * n + i]!))) return { ok: false, row: i };
        lower[i * n + i] = Math.sqrt(sum);
      } else lower[i * n + j] = sum / lower[j * n + j]!;
    }
  }
  return { ok: true, n, lower };
}

/** Solves A·x = b. */
export function solveCholesky({ n, lower }: Extract<Cholesky, { ok: true }>, b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - lower[i * n + k]! * x[k]!;
    x[i] = x[i]! / lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - lower[k * n + i]! * x[k]!;
    x[i] = x[i]! / lower[i * n + i]!;
  }
  return x;
}

/** Inverse of A. */
export function inverseCholesky(c: Extract<Cholesky, { ok: true }>): Float64Array {
  const { n } = c;
  const out = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const unit = new Float64Array(n);
    unit[j] = 1;
    const column = solveCholesky(c, unit);
    for (let i = 0; i < n; i++) out[i * n + j] = column[i]!;
  }
  return out;
}
