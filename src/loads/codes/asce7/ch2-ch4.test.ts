import { describe, expect, it } from 'vitest';
import { COMBINATIONS, combine, LR_MIN, reductionR1, reductionR2, roofLiveLoad } from './index.js';

const texts = (edition: '7-16' | '7-22', method: 'ASD' | 'LRFD') => COMBINATIONS[edition][method].map((c) => c.text);
const find = (edition: '7-16' | '7-22', id: string) => {
  const method = id.startsWith('ASD') ? 'ASD' : 'LRFD';
  return COMBINATIONS[edition][method].find((c) => c.id === id)!;
};

describe('combinations', () => {
  it('writes out Lr or S or R as three combinations, ids unique', () => {
    for (const edition of ['7-16', '7-22'] as const)
      for (const method of ['ASD', 'LRFD'] as const) {
        const list = COMBINATIONS[edition][method];
        expect(new Set(list.map((c) => c.id)).size).toBe(list.length);
        expect(list.length).toBe(16);
      }
  });

  /** One line for each alternate, `~` standing for Lr, S or R with its own factor. */
  const each = (line: string, Lr: string, S: string, R: string): string[] => [
    line.replace('~', `${Lr}Lr`),
    line.replace('~', `${S}S`),
    line.replace('~', `${R}R`),
  ];

  it('reads as the standard does, allowable stress', () => {
    for (const [edition, full, part, quake] of [
      ['7-16', '', '0.75', '0.75'],
      ['7-22', '0.7', '0.525', '0.1'],
    ] as const)
      expect(texts(edition, 'ASD')).toEqual([
        'D',
        'D + L',
        ...each('D + ~', '', full, ''),
        ...each('D + 0.75L + ~', '0.75', part, '0.75'),
        'D + 0.6W',
        ...each('D + 0.75L + 0.45W + ~', '0.75', part, '0.75'),
        '0.6D + 0.6W',
        'D + 0.7Ev + 0.7Eh',
        `D + 0.525Ev + 0.525Eh + 0.75L + ${quake}S`,
        '0.6D − 0.7Ev + 0.7Eh',
      ]);
  });

  it('reads as the standard does, strength', () => {
    for (const [edition, full, part, quake] of [
      ['7-16', '1.6', '0.5', '0.2'],
      ['7-22', '', '0.3', '0.15'],
    ] as const)
      expect(texts(edition, 'LRFD')).toEqual([
        '1.4D',
        ...each('1.2D + 1.6L + ~', '0.5', part, '0.5'),
        ...each('1.2D + ~ + L', '1.6', full, '1.6'),
        ...each('1.2D + ~ + 0.5W', '1.6', full, '1.6'),
        ...each('1.2D + W + L + ~', '0.5', part, '0.5'),
        '0.9D + W',
        `1.2D + Ev + Eh + L + ${quake}S`,
        '0.9D − Ev + Eh',
      ]);
  });

  it('takes the snow factors of the edition and leaves the rest alone', () => {
    expect(find('7-16', 'ASD-3S').factors.S).toBe(1);
    expect(find('7-22', 'ASD-4S').factors.S).toBe(0.525);
    expect(find('7-22', 'LRFD-2S').factors.S).toBe(0.3);
    expect(find('7-22', 'LRFD-6').factors.S).toBe(0.15);
    expect(find('7-22', 'ASD-9').factors.S).toBe(0.1);
    expect(find('7-22', 'ASD-3Lr').factors).toEqual(find('7-16', 'ASD-3Lr').factors);
    expect(find('7-16', 'ASD-9').clause).toBe('ASCE 7-16 2.4.5 (9)');
    expect(find('7-16', 'LRFD-5').clause).toBe('ASCE 7-16 2.3.1 (5)');
  });

  it('combines nominal effects; uplift nets out as by hand', () => {
    expect(combine(find('7-16', 'ASD-7').factors, { D: 900, W: -2400 })).toBeCloseTo(-900, 9);
    expect(combine(find('7-16', 'LRFD-3S-W').factors, { D: 10, S: 20, W: 8 })).toBeCloseTo(48, 9);
    expect(combine({ D: 1, L: 1 }, { D: 5 })).toBe(5);
  });
});

describe('roof live load', () => {
  it('is continuous in area and slope and flat outside the bands', () => {
    for (const [ft2, R1] of [
      [0, 1],
      [200, 1],
      [400, 0.8],
      [600, 0.6],
      [900, 0.6],
    ] as const)
      expect(reductionR1(ft2 * 144, '7-16')).toBeCloseTo(R1, 12);
    expect(reductionR1(200.001 * 144, '7-16')).toBeCloseTo(1, 4);
    for (const [F, R2] of [
      [0, 1],
      [4, 1],
      [8, 0.8],
      [12, 0.6],
      [18, 0.6],
    ] as const)
      expect(reductionR2(F, '7-22')).toBeCloseTo(R2, 12);
  });

  it('never falls under 12 psf, nor rises over Lo', () => {
    expect(roofLiveLoad(20, 400 * 144, 4, '7-16')).toBeCloseTo(16, 12);
    expect(roofLiveLoad(20, 600 * 144, 12, '7-16')).toBe(LR_MIN);
    expect(roofLiveLoad(10, 600 * 144, 12, '7-16')).toBe(10);
  });
});
