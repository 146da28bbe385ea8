/** Patterns: how many of each kind one board gives. */
import { holds, type Ticked } from './ticks.js';

export interface Pattern {
  /** Index into `Ticked.stock`. */
  readonly stock: number;
  /** Pieces of each kind. */
  readonly counts: readonly number[];
}

export const usedBy = (counts: readonly number[], t: Ticked): number =>
  counts.reduce((sum, n, i) => sum + n * t.kinds[i]!.size, 0);

/** The cheapest board that holds these pieces; undefined when none does. */
export function cheapestFor(counts: readonly number[], t: Ticked): number | undefined {
  const used = usedBy(counts, t);
  const pieces = counts.reduce((sum, n) => sum + n, 0);
  let best: number | undefined;
  t.stock.forEach((s, i) => {
    if (holds(s, used, pieces) && (best === undefined || s.stock.cost < t.stock[best]!.stock.cost - 1e-9)) best = i;
  });
  return best;
}

export const patternKey = (p: Pattern): string => `${p.stock}|${p.counts.join(',')}`;

/**
 * Most valuable filling of each stock length, at most `limits` of a kind: a bounded knapsack by dynamic programming over
 * ticks. One table answers all stock lengths.
 */
export function bestFills(
  t: Ticked,
  values: readonly number[],
  limits: readonly number[],
): { value: number; counts: number[] }[] {
  const cap = Math.max(0, ...t.stock.map((s) => s.capacity));
  // A kind wanted n times becomes lots of 1, 2, 4 … and the rest: any number up to n is a sum of some of them.
  const lots: { kind: number; n: number; size: number; value: number }[] = [];
  t.kinds.forEach((k, kind) => {
    let left = Math.min(limits[kind]!, Math.floor(cap / k.size));
    for (let n = 1; left > 0; n *= 2) {
      const take = Math.min(n, left);
      left -= take;
      if (values[kind]! > 0) lots.push({ kind, n: take, size: take * k.size, value: take * values[kind]! });
    }
  });
  const best = new Float64Array(cap + 1);
  const taken = lots.map(() => new Uint8Array(cap + 1));
  lots.forEach((lot, i) => {
    const mine = taken[i]!;
    for (let c = cap; c >= lot.size; c--) {
      const v = best[c - lot.size]! + lot.value;
      if (v > best[c]! + 1e-12) {
        best[c] = v;
        mine[c] = 1;
      }
    }
  });
  return t.stock.map(({ capacity, whole }) => {
    const counts = t.kinds.map(() => 0);
    let c = capacity;
    for (let i = lots.length - 1; i >= 0; i--) {
      if (taken[i]![c] === 0) continue;
      counts[lots[i]!.kind]! += lots[i]!.n;
      c -= lots[i]!.size;
    }
    const alone = onlyAlone(t, capacity, whole).find((k) => limits[k]! > 0 && values[k]! > best[capacity]! + 1e-12);
    return alone === undefined
      ? { value: best[capacity]!, counts }
      : { value: values[alone]!, counts: t.kinds.map((_, k) => (k === alone ? 1 : 0)) };
  });
}

/** Kinds that fit a board only when it is not trimmed, the most valuable use being longest first. */
const onlyAlone = (t: Ticked, capacity: number, whole: number): number[] =>
  t.kinds.flatMap((k, i) => (k.size > capacity && k.size <= whole ? [i] : []));

/** Every pattern to which no further wanted piece can be added, or undefined when there are more than `limit`. */
export function allPatterns(t: Ticked, limit: number): Pattern[] | undefined {
  const wanted = t.kinds.map((k) => k.cuts.length);
  const out: Pattern[] = [];
  for (const [stock, { capacity, whole }] of t.stock.entries()) {
    for (const alone of onlyAlone(t, capacity, whole))
      out.push({ stock, counts: t.kinds.map((_, k) => (k === alone ? 1 : 0)) });
    const counts: number[] = [];
    const walk = (kind: number, room: number): boolean => {
      if (kind === t.kinds.length) {
        const full = t.kinds.every((k, i) => counts[i]! >= wanted[i]! || k.size > room);
        if (full && out.push({ stock, counts: [...counts] }) > limit) return false;
        return true;
      }
      const size = t.kinds[kind]!.size;
      for (let n = Math.min(wanted[kind]!, Math.floor(room / size)); n >= 0; n--) {
        counts[kind] = n;
        if (!walk(kind + 1, room - n * size)) return false;
      }
      return true;
    };
    if (!walk(0, capacity)) return undefined;
  }
  return out;
}
