import { describe, expect, it } from 'vitest';
import { alikeBoards } from './boards.js';

const cut = (mark: string, length: number) => ({ id: mark, mark, what: '', length });
const len = (x: number): string => x.toFixed(2);

describe('boards that are alike', () => {
  it('are shown once, counted, with every mark', () => {
    const stock = { length: 192, cost: 1 };
    const rows = alikeBoards(
      [
        { stock, cuts: [cut('A', 100), cut('B', 80)], offcut: 11 },
        { stock, cuts: [cut('C', 100.001), cut('B', 80)], offcut: 11 },
        { stock, cuts: [cut('A', 101)], offcut: 90 },
        { stock: { length: 240, cost: 1 }, cuts: [cut('A', 100), cut('B', 80)], offcut: 59 },
      ],
      len,
    );
    expect(rows.map((r) => [r.length, r.count])).toEqual([
      [192, 2],
      [192, 1],
      [240, 1],
    ]);
    expect(rows[0]!.pieces.map((p) => p.marks)).toEqual([['A', 'C'], ['B']]);
  });
});
