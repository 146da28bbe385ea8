import type { Buying } from '../model/buying.js';
import type { WrittenBuying } from '../schema/buying.js';

/** Left out, every list is empty and the figures are the usual ones of a small job; each is printed where it is used. */
export const completeBuying = (w: WrittenBuying): Buying => ({
  stock: w.stock ?? [],
  kerf: w.kerf ?? 1 / 8,
  trim: w.trim ?? 1,
  concrete: {
    by: w.concrete?.by ?? 'bags',
    bag: w.concrete?.bag ?? 80,
    leastLoad: w.concrete?.leastLoad,
    shortLoad: w.concrete?.shortLoad,
  },
  waste: (w.waste ?? []).map((x) => ({ of: x.of, fraction: x.percent, from: x.from })),
  work: (w.work ?? []).map((x) => ({ phase: x.phase, by: x.by, price: x.price, from: x.from ?? '' })),
  extras: w.extras ?? [],
  delivery: {
    date: w.delivery?.date ?? '',
    access: w.delivery?.access ?? '',
    contact: w.delivery?.contact ?? '',
  },
  bids: (w.bids ?? []).map((b, i) => ({
    ...b,
    deposit: b.deposit ?? 0,
    lines: (b.lines ?? []).map((l) => ({ line: l.line, says: l.says, price: l.price, note: l.note ?? '' })),
    path: `/buying/bids/${i}`,
  })),
});

export const USUAL_BUYING: Buying = completeBuying({});
