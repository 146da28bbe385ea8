/** The same thing bought for two roofs is one line: net quantities add up, and whole units are rounded once. */
import { marks, soldFor } from './line.js';
import type { Line } from './model.js';

const words = (a: string, b: string, between: string): string =>
  a === b || b === '' ? a : a === '' ? b : `${a}${between}${b}`;

function two(a: Line, b: Line): Line {
  const net = a.net + b.net;
  const gross = a.gross + b.gross;
  return {
    ...a,
    net,
    gross,
    waste: {
      fraction: net > 0 ? gross / net - 1 : 0,
      rule: words(a.waste.rule, b.waste.rule, '; '),
      source: words(a.waste.source, b.waste.source, '; '),
    },
    buy: {
      ...a.buy,
      quantity: soldFor(gross, a.buy.holds, a.buy.step),
      rule: words(a.buy.rule, b.buy.rule, '; '),
    },
    serves: marks([...a.serves, ...b.serves]),
    note: words(a.note, b.note, ' '),
  };
}

export function merged(lines: readonly Line[]): Line[] {
  const out = new Map<string, Line>();
  for (const l of lines) {
    const old = out.get(l.id);
    out.set(l.id, old ? two(old, l) : l);
  }
  return [...out.values()];
}
