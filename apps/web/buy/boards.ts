/** Boards cut to the same lengths, shown once with their count. */
import type { Board } from '../../../src/index.js';

export interface Alike {
  readonly length: number;
  readonly count: number;
  readonly offcut: number;
  readonly pieces: readonly { readonly length: number; readonly marks: readonly string[]; readonly what: string }[];
}

/** @param len writes a length; boards are alike when all their lengths are written alike */
export function alikeBoards(boards: readonly Board[], len: (inches: number) => string): Alike[] {
  const groups = new Map<string, Board[]>();
  for (const b of boards) {
    const key = [b.stock.length, ...b.cuts.map((c) => len(c.length))].join('|');
    groups.set(key, [...(groups.get(key) ?? []), b]);
  }
  return [...groups.values()].map((list) => ({
    length: list[0]!.stock.length,
    count: list.length,
    offcut: list[0]!.offcut,
    pieces: list[0]!.cuts.map((c, i) => ({
      length: c.length,
      marks: [...new Set(list.map((b) => b.cuts[i]!.mark))],
      what: [...new Set(list.map((b) => b.cuts[i]!.what))].filter((w) => w !== '').join(', '),
    })),
  }));
}
