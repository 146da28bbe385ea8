/**
 * Readings between named points as equations: a network in plan (two unknowns a point) or in height (one). Points of known
 * place are the datum: the house.
 */
import type { Equation, Fit } from './least-squares.js';
import { leastSquares } from './least-squares.js';

export interface NetReading {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly value: number;
  readonly sigma: number;
}

/** How a kind of reading depends on the coordinates of its two points. */
export interface Measure {
  /** Value from the coordinates of `from` and `to`, and its slope by each coordinate of `to`; by `from` it is the opposite. */
  of(from: readonly number[], to: readonly number[]): { readonly value: number; readonly slopes: readonly number[] };
}

/** Difference of one coordinate, counted positive the way `sign` points. */
export const difference = (axis: number, sign: 1 | -1 = 1): Measure => ({
  of: (a, b) => ({ value: sign * (b[axis]! - a[axis]!), slopes: a.map((_, i) => (i === axis ? sign : 0)) }),
});

/** Straight distance. */
export const distanceBetween: Measure = {
  of(a, b) {
    const d = b.map((v, i) => v - a[i]!);
    const value = Math.hypot(...d);
    // Two points on one another have no direction: any will do for the first step.
    return { value, slopes: value > 0 ? d.map((v) => v / value) : d.map((_, i) => (i === 0 ? 1 : 0)) };
  },
};

export interface Network {
  /** Coordinates of the datum. */
  readonly fixed: ReadonlyMap<string, readonly number[]>;
  /** Where the other points should be: the start of the iteration. */
  readonly free: ReadonlyMap<string, readonly number[]>;
  readonly readings: readonly (NetReading & { readonly measure: Measure })[];
}

export interface PlacedPoint {
  readonly name: string;
  readonly at: readonly number[];
  /** Standard deviation of each coordinate by the sigmas given. */
  readonly sigma: readonly number[];
}

export interface NetworkFit {
  readonly points: readonly PlacedPoint[];
  /** In the order of the readings used. */
  readonly used: readonly string[];
  readonly fit: Fit;
  /** Points that the readings do not fix: left out with their readings. */
  readonly loose: readonly string[];
}

/** Undefined when no point can be worked out. */
export function fitNetwork(net: Network): NetworkFit | undefined {
  const loose: string[] = [];
  for (;;) {
    const gone = new Set(loose);
    const readings = net.readings.filter((r) => !gone.has(r.from) && !gone.has(r.to));
    const seen = new Set(readings.flatMap((r) => [r.from, r.to]));
    const names = [...net.free.keys()].filter((n) => seen.has(n));
    if (names.length === 0) return undefined;
    const dims = net.free.get(names[0]!)!.length;
    const index = new Map(names.map((n, i) => [n, i * dims]));
    const start = Float64Array.from(names.flatMap((n) => net.free.get(n)!));
    const place = (name: string, x: Float64Array): readonly number[] => {
      const i = index.get(name);
      return i === undefined ? net.fixed.get(name)! : [...x.subarray(i, i + dims)];
    };
    const equations = readings.map(
      (r): Equation => ({
        value: r.value,
        sigma: r.sigma,
        at(x) {
          const { value, slopes } = r.measure.of(place(r.from, x), place(r.to, x));
          const out: [number, number][] = [];
          for (const [name, sign] of [
            [r.to, 1],
            [r.from, -1],
          ] as const) {
            const i = index.get(name);
            if (i === undefined) continue;
            slopes.forEach((s, k) => {
              if (s !== 0) out.push([i + k, sign * s]);
            });
          }
          return { value, slopes: out };
        },
      }),
    );
    const done = leastSquares(equations, start);
    if (!done.ok) {
      // An iteration that does not settle names no point: the last one goes, so that the loop ends.
      loose.push(names[done.loose < 0 ? names.length - 1 : Math.floor(done.loose / dims)]!);
      continue;
    }
    const { fit } = done;
    const n = fit.x.length;
    return {
      points: names.map((name, k) => ({
        name,
        at: place(name, fit.x),
        sigma: Array.from({ length: dims }, (_, d) => Math.sqrt(fit.covariance[(k * dims + d) * (n + 1)]!)),
      })),
      used: readings.map((r) => r.id),
      fit,
      loose,
    };
  }
}
