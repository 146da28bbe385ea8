/**
 * Value of a table at `x`: straight lines between its points, the end values beyond its ends. `xs` ascends strictly and
 * is as long as `ys`; an empty table or a NaN is a fault of the caller.
 */
export function lerpTable(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const last = xs.length - 1;
  if (last < 0 || ys.length !== xs.length) throw new RangeError('a table needs as many values as places, at least one');
  if (Number.isNaN(x)) throw new RangeError('cannot look up NaN');
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle;
  }
  const t = (x - xs[low]!) / (xs[high]! - xs[low]!);
  return ys[low]! + t * (ys[high]! - ys[low]!);
}
