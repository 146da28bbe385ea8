/**
 * Numbers in the substituted form of a formula: enough figures to recompute by hand, no more. Used only inside
 * `rec?.step({...})`, so that nothing is formatted when nobody asked.
 */
export function say(x: number): string {
  if (!Number.isFinite(x)) return Number.isNaN(x) ? '?' : x > 0 ? '∞' : '−∞';
  const a = Math.abs(x);
  // Rounding of the arithmetic: it says nothing and reads as if it did.
  if (a < 1e-9) return '0';
  if (a >= 1000) return Math.round(x).toString();
  return Number(x.toPrecision(4)).toString();
}

/** Result as printed after `≤`: `0.42 ≤ 1`. */
export const versus = (a: number, b: number): string => `${say(a)} ${a <= b ? '≤' : '>'} ${say(b)}`;
