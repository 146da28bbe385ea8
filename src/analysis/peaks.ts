/** Bounds of per-case curves, so that a search need not form combinations that cannot matter. */
import type { Combination } from '../loads/model.js';

const made = new WeakMap<readonly Float64Array[], Float64Array>();

/** Largest size of each case's curve over all stations. Worked out once for the same curves. */
function peaksOf(curves: readonly Float64Array[]): Float64Array {
  let peaks = made.get(curves);
  if (!peaks) {
    const seen = new Map<Float64Array, number>();
    peaks = Float64Array.from(curves, (row) => {
      const known = seen.get(row);
      if (known !== undefined) return known;
      let most = 0;
      for (let i = 0; i < row.length; i++) most = Math.max(most, Math.abs(row[i]!));
      seen.set(row, most);
      return most;
    });
    made.set(curves, peaks);
  }
  return peaks;
}

/** Keeps rounding from putting a bound below what it bounds. */
export const OVER = 1 + 1e-9;

/** No station of these curves is larger than this under the combination, either way. */
export function mostOf(curves: readonly Float64Array[], { terms }: Pick<Combination, 'terms'>): number {
  const peaks = peaksOf(curves);
  let most = 0;
  for (const t of terms) most += Math.abs(t.factor) * peaks[t.case]!;
  return most * OVER;
}
