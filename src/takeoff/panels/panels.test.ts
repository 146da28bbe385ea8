import { describe, expect, it } from 'vitest';
import { rowBreaks } from './lay.js';
import type { PanelPiece } from './model.js';
import { packPieces } from './pack.js';

const frames = (from: number, spacing: number, to: number): number[] => {
  const out: number[] = [];
  for (let u = from; u <= to + 1e-9; u += spacing) out.push(u);
  return out;
};

describe('rowBreaks', () => {
  it('ends panels on frames, none longer than a panel', () => {
    const at = frames(6, 24, 174);
    const breaks = rowBreaks(0, 180, at, []);
    for (const b of breaks) expect(at).toContain(b);
    const ends = [0, ...breaks, 180];
    ends.slice(1).forEach((e, i) => {
      expect(e - ends[i]!).toBeLessThanOrEqual(96);
      expect(e - ends[i]!).toBeGreaterThanOrEqual(24);
    });
    // 15 ft of roof comes out of two sheets, though its rakes are no whole module.
    const short = ends.slice(1).map((e, i) => e - ends[i]!);
    expect(short.reduce((s, l) => s + l, 0)).toBe(180);
    expect(short.filter((l) => l === 96).length).toBe(1);
  });
  it('keeps off the ends of the row below', () => {
    const at = frames(0, 24, 240);
    const first = rowBreaks(0, 240, at, []);
    const second = rowBreaks(0, 240, at, first);
    expect(second.some((b) => first.includes(b))).toBe(false);
  });
  it('needs no break where one panel does', () => {
    expect(rowBreaks(0, 96, frames(0, 24, 96), [])).toEqual([]);
  });
});

describe('packPieces', () => {
  const piece = (id: string, w: number, h: number): PanelPiece => ({
    id,
    surface: 's',
    row: 1,
    u0: 0,
    u1: w,
    v0: 0,
    v1: h,
    parts: [],
    whole: false,
  });
  it('takes two halves from one sheet either way', () => {
    expect(packPieces([piece('a', 48, 48), piece('b', 48, 48)])).toHaveLength(1);
    expect(packPieces([piece('a', 96, 24), piece('b', 96, 24)])).toHaveLength(1);
  });
  it('does not turn a panel to make it fit: its strength axis counts', () => {
    expect(packPieces([piece('a', 48, 48), piece('b', 40, 30), piece('c', 60, 40)])).toHaveLength(2);
  });
});
