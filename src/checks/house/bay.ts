/** Equal rafters on a ledger between its fasteners: the worst of every place they may stand in. Statics. */

/**
 * Greatest moment of equal loads 1 at spacing r anywhere on a simple span s, as a length, in: one load at mid-span, or
 * several as an even load with the bulge of a single one (an upper bound). Statics.
 */
export const bayMoment = (r: number, s: number): number => (r >= s ? s / 4 : (s * s) / (8 * r) + r / 8);
/** Greatest shear of the same, one load right beside the support; a pure number. Statics. */
export function bayShear(r: number, s: number): number {
  let v = 0;
  for (let at = 0; at < s; at += r) v += 1 - at / s;
  return v;
}
/** Moment and shear over the first place of loads 1 at spacing r on an end that runs past it by a, the first at the tip. */
export function tipMoment(r: number, a: number): number {
  let m = 0;
  for (let at = a; at > 0; at -= r) m += at;
  return m;
}
export const tipShear = (r: number, a: number): number => (a > 0 ? Math.ceil(a / r) : 0);
