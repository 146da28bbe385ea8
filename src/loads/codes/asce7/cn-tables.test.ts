import { describe, expect, it } from 'vitest';
import {
  ALONG_RIDGE,
  type CnTable,
  MONOSLOPE_GAMMA_0,
  MONOSLOPE_GAMMA_180,
  PITCHED,
  TROUGHED,
} from './ch27-cn-data.js';
import { CC_CN, type CcBlock } from './ch30-cn-data.js';

/**
 * Guards against a slip of the hand in the tables. The sums were added up from the transcriptions, not from this code;
 * the relations are visible in the printed figures.
 */
const sum = (xs: readonly number[]): number => Math.round(xs.reduce((s, x) => s + x, 0) * 1e6) / 1e6 + 0;
/** Position-weighted, so that two swapped cells show. */
const weighted = (xs: readonly number[]): number => sum(xs.map((x, i) => x * (i + 1)));
const rows = (t: CnTable): number[][] =>
  (['A', 'B'] as const).flatMap((c) =>
    (['clear', 'obstructed'] as const).flatMap((f) => [t[c][f].CNW, t[c][f].CNL].map((r) => [sum(r), weighted(r)])),
  );

const SUMS = {
  m0: [
    [-7, -39.7],
    [-9, -44.4],
    [-8.4, -37.4],
    [-11.3, -47.9],
    [-14, -62.2],
    [-2.2, -12.3],
    [-13.6, -58],
    [-6.3, -28.1],
  ],
  m180: [
    [11.5, 52.2],
    [12, 56.5],
    [2.3, 15.1],
    [-7.3, -27.6],
    [12.4, 63.7],
    [5, 26.5],
    [7.8, 43.4],
    [-0.4, 3],
  ],
  p: [
    [7, 24.9],
    [1.2, 8.8],
    [-5.8, -16.4],
    [-5, -15.4],
    [-0.4, -3.1],
    [-5.1, -15.4],
    [-3.1, -8.6],
    [-7.7, -23.1],
  ],
  t16: [
    [-7, -24.9],
    [-1.2, -8.8],
    [-8, -27.4],
    [-2.6, -8.2],
    [0.2, 2.1],
    [5.1, 15.4],
    [-3.1, -8.6],
    [-3.7, -11.2],
  ],
  t22: [
    [-7, -24.9],
    [-1.2, -8.8],
    [-8, -27.4],
    [-2.6, -8.2],
    [0.4, 2.9],
    [5.1, 15.4],
    [-3.1, -8.6],
    [-3.7, -11.2],
  ],
};

const CC_SUMS = [
  [-0.7, -6.2],
  [-0.5, -6.8],
  [-0.5, -9.9],
  [0.4, -10.3],
  [1.3, -7.1],
  [-4.3, -15.7],
  [-5.8, -21.6],
  [-4.1, -20],
  [-3.2, -18.6],
  [0.9, -6.3],
  [-0.7, -6.2],
  [-1.6, -8.8],
  [0, -5],
  [1.8, 0.5],
  [1.4, 0],
  [-4.3, -15.7],
  [-7.1, -24.9],
  [-4.9, -19.7],
  [-3.1, -13.3],
  [-3.1, -13.3],
  [-0.7, -6.2],
  [-0.7, -6.2],
  [0, -5],
  [-1.8, -10.5],
  [-1.4, -8.6],
  [-4.3, -15.7],
  [-6.5, -22.9],
  [-3.1, -13.3],
  [-4, -16.5],
  [-3.1, -13.3],
];

describe('CN tables', () => {
  it.each([
    ['monoslope 0', MONOSLOPE_GAMMA_0, SUMS.m0],
    ['monoslope 180', MONOSLOPE_GAMMA_180, SUMS.m180],
    ['pitched', PITCHED, SUMS.p],
    ['troughed 7-16', TROUGHED['7-16'], SUMS.t16],
    ['troughed 7-22', TROUGHED['7-22'], SUMS.t22],
  ] as const)('%s', (_, table, sums) => {
    expect(rows(table)).toEqual(sums);
  });

  it('along the ridge', () => {
    expect(ALONG_RIDGE.A.clear).toEqual([-0.8, -0.6, -0.3]);
    expect(ALONG_RIDGE.A.obstructed).toEqual([-1.2, -0.9, -0.6]);
    expect(ALONG_RIDGE.B.clear).toEqual([0.8, 0.5, 0.3]);
    expect(ALONG_RIDGE.B.obstructed).toEqual([0.5, 0.5, 0.3]);
  });

  it('clear flow on a trough mirrors the pitched roof, sign and all, but for one 7-16 cell', () => {
    for (const c of ['A', 'B'] as const) {
      expect(TROUGHED['7-22'][c].clear.CNL.map((x) => -x)).toEqual(PITCHED[c].clear.CNL.map((x) => x));
    }
    expect(TROUGHED['7-22'].A.clear.CNW.map((x) => -x)).toEqual(PITCHED.A.clear.CNW);
  });
});

describe('component tables', () => {
  const blocks = (['monoslope', 'pitched', 'troughed'] as const).flatMap((s) =>
    (['clear', 'obstructed'] as const).flatMap((f) => CC_CN[s][f]),
  );

  it('large areas lose their zones', () => {
    for (const [small, middle, large] of blocks as readonly CcBlock[]) {
      expect(large).toEqual([small[4], small[5], small[4], small[5], small[4], small[5]]);
      expect(middle).toEqual([small[2], small[3], small[2], small[3], small[4], small[5]]);
      // Zone 2 is one and a half times, zone 3 twice zone 1 where it presses down, within the printed tenth.
      expect(Math.abs(small[2] - 1.5 * small[4])).toBeLessThan(0.101);
      expect(Math.abs(small[0] - 2 * small[4])).toBeLessThan(0.101);
    }
  });

  it('sums', () => {
    expect(blocks.map((b) => [sum(b[0]), weighted(b[0])])).toEqual(CC_SUMS);
  });
});
