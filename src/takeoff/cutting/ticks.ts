/** Lengths as whole ticks of 1/16 in, so that sums are exact: pieces are rounded up, boards down. */
import type { Cut, CuttingProblem, Stock } from './model.js';

export const TICKS_PER_INCH = 16;
const up = (inches: number): number => Math.ceil(inches * TICKS_PER_INCH - 1e-6);
const down = (inches: number): number => Math.floor(inches * TICKS_PER_INCH + 1e-6);

/** Equal pieces together: their size includes one kerf, and every capacity one kerf more, since the last needs none. */
export interface Kind {
  readonly size: number;
  readonly cuts: readonly Cut[];
}

/** A piece that takes a whole board needs no trim: `whole` is what one piece alone may measure, `capacity` what several may. */
export interface StockTicks {
  readonly stock: Stock;
  readonly capacity: number;
  readonly whole: number;
}

export interface Ticked {
  readonly kinds: readonly Kind[];
  readonly stock: readonly StockTicks[];
  readonly tooLong: readonly Cut[];
  /** Every cost is a whole multiple of this, so bounds may be rounded up to it; 0 when they share none. */
  readonly grain: number;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Greatest common step of the costs, to a hundredth. */
function grainOf(costs: readonly number[]): number {
  const whole = costs.map((c) => Math.round(c * 100));
  if (whole.some((w, i) => Math.abs(w - costs[i]! * 100) > 1e-6)) return 0;
  return whole.reduce(gcd, 0) / 100;
}

const byId = (a: Cut, b: Cut): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

export function ticked(p: CuttingProblem): Ticked {
  const kerf = up(p.kerf);
  const stock = p.stock
    .map((s) => ({ stock: s, capacity: down(s.length - p.trim) + kerf, whole: down(s.length) + kerf }))
    .filter((s) => s.capacity > kerf)
    .sort((a, b) => a.capacity - b.capacity);
  const most = Math.max(0, ...stock.map((s) => s.whole));
  const groups = new Map<number, Cut[]>();
  const tooLong: Cut[] = [];
  for (const c of p.cuts) {
    const size = up(c.length) + kerf;
    if (size > most) tooLong.push(c);
    else groups.set(size, [...(groups.get(size) ?? []), c]);
  }
  const kinds = [...groups].map(([size, cuts]) => ({ size, cuts: cuts.sort(byId) })).sort((a, b) => b.size - a.size);
  return { kinds, stock, tooLong, grain: grainOf(p.stock.map((s) => s.cost)) };
}

/** A bound rounded up to what a whole number of boards can cost. */
export const roundBound = (bound: number, grain: number): number =>
  grain > 0 ? Math.ceil(bound / grain - 1e-6) * grain : bound;

/** Whether a board holds this many pieces of this many ticks together. */
export const holds = (s: StockTicks, used: number, pieces: number): boolean =>
  s.capacity >= used || (pieces === 1 && s.whole >= used);
