/** The two distributions that a least-squares adjustment is judged by. */

/** Logarithm of the gamma function for x > 0 (Lanczos, coefficients of the usual g = 7, n = 9 set, recalled). */
function logGamma(x: number): number {
  const c = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const y = x - 1;
  const t = y + 7.5;
  let sum = c[0]!;
  for (let i = 1; i < 9; i++) sum += c[i]! / (y + i);
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Regularised lower incomplete gamma function P(a, x), by its power series. */
function lowerGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 2000 && term > sum * 1e-16; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return Math.min(1, sum * Math.exp(a * Math.log(x) - x - logGamma(a)));
}

/** Probability that a chi-square variable of `freedom` degrees is at most x. */
export const chiSquareBelow = (x: number, freedom: number): number => lowerGamma(freedom / 2, x / 2);

/** Value that a chi-square variable stays under with probability p, 0 < p < 1. */
export function chiSquareQuantile(p: number, freedom: number): number {
  let low = 0;
  let high = freedom + 10;
  while (chiSquareBelow(high, freedom) < p) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-12 * high; i++) {
    const mid = (low + high) / 2;
    if (chiSquareBelow(mid, freedom) < p) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/** Size that a standard normal variable exceeds, on either side, with probability `significance`: 3.29 for 0.001. */
export const normalTwoSided = (significance: number): number => Math.sqrt(chiSquareQuantile(1 - significance, 1));
