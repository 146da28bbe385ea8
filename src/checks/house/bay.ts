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
/** Part of the moment over the first place that an endless row of equal bays adds to the bay's own shear: 3 − √3. */
const CARRIED = 1.268;
/**
 * Greatest shear inside the first place, in the bay s, of loads 1 at spacing r that run past the place by up to a: those
 * inside as on a simple span, those beyond by the moment they bring over the place. A pure number.
 */
export function endBayShear(r: number, s: number, a: number): number {
  // It grows as the row moves outward until a rafter crosses the place: right before that, and with one at the tip.
  const most = [a];
  for (let u = 0; u <= a; u += r) most.push(u);
  return Math.max(...most.map((u) => shearWithTip(r, s, u)));
}

/** The same with the outermost load at u past the place; one right on it counts as inside. */
function shearWithTip(r: number, s: number, u: number): number {
  let v = 0;
  let x = u;
  for (; x > 1e-9; x -= r) v += (CARRIED * x) / s;
  for (let inside = -x; inside < s; inside += r) v += 1 - inside / s;
  return v;
}
