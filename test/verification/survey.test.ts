/** The adjustment of as-built readings against printed survey examples. */
import { describe, expect, it } from 'vitest';
import { difference, distanceBetween, fitNetwork, type Network } from '../../src/sitework/adjust/network.js';
import { chiSquareQuantile, normalTwoSided } from '../../src/sitework/adjust/quantiles.js';
import { globalTest } from '../../src/sitework/adjust/snoop.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('survey');
const KRUMM = {
  source: 'F. Krumm, Geodetic Network Adjustment Examples, Rev. 3.5, Universität Stuttgart 2020',
  where: 'input and printed results as quoted in a public repository that checks its own adjustment against them',
  provenance: 'read',
  clause: 'least squares, observation equations',
} as const;

describe('trilateration, two new points, five distances (Example 3.1.1, after Benning 2011, Ex. 8-2)', () => {
  const net: Network = {
    fixed: new Map([
      ['1', [0, 1000]],
      ['2', [1000, 1000]],
    ]),
    free: new Map([
      ['3', [0, 0]],
      ['4', [1000, 0]],
    ]),
    readings: (
      [
        ['1', '3', 1000.02],
        ['1', '4', 1414.2],
        ['2', '3', 1414.24],
        ['2', '4', 999.98],
        ['3', '4', 1000],
      ] as const
    ).map(([from, to, value]) => ({ id: `s${from}${to}`, from, to, value, sigma: 0.01, measure: distanceBetween })),
  };
  const r = fitNetwork(net)!;
  const s0 = globalTest(r).unitWeight;
  const at = (p: string, k: number) => r.points.find((q) => q.name === p)!.at[k]!;
  const sd = (p: string, k: number) => r.points.find((q) => q.name === p)!.sigma[k]! * s0 * 100;
  const of = (quantity: string, published: number, ours: number, decimals: number, unit: string) =>
    suite.compare({
      ...KRUMM,
      id: 'trilateration',
      quantity,
      published,
      ours,
      unit,
      tolerance: { abs: 0.5 * 10 ** -decimals + 1e-9, reason: `printed to ${decimals} decimals` },
    });

  it('coordinates', () => {
    of('x3', -0.0096, at('3', 0), 4, 'm');
    of('y3', -0.0226, at('3', 1), 4, 'm');
    of('x4', 999.993, at('4', 0), 4, 'm');
    of('y4', 0.0174, at('4', 1), 4, 'm');
  });
  it('standard deviation of unit weight and of the coordinates', () => {
    of('s0 (times the sigma of 10 mm)', 6.882, s0 * 10, 1, 'mm');
    of('sd x3', 0.901, sd('3', 0), 2, 'cm');
    of('sd y3', 0.637, sd('3', 1), 2, 'cm');
    of('sd x4', 0.901, sd('4', 0), 2, 'cm');
    of('sd y4', 0.637, sd('4', 1), 2, 'cm');
  });
  it('residuals', () => {
    [0.26, -0.368, -0.368, 0.26, 0.26].forEach((v, i) => {
      of(`v ${r.used[i]}`, v, r.fit.residuals[i]! * 100, 3, 'cm');
    });
    expect(r.fit.freedom).toBe(1);
  });
});

describe('level network, three new heights (Example 2.1, after Ghilani 2010, Ex. 12.6)', () => {
  const rows = [
    ['1', '2', 10.509, 0.006, 3.71],
    ['1', '3', 15.881, 0.012, -8.53],
    ['2', '3', 5.36, 0.004, -0.24],
    ['2', '4', -3.167, 0.004, 1.89],
    ['3', '4', -8.523, 0.005, -1.86],
    ['4', '1', -7.348, 0.003, 0.39],
  ] as const;
  const r = fitNetwork({
    fixed: new Map([['1', [437.596]]]),
    free: new Map([
      ['2', [448]],
      ['3', [453]],
      ['4', [445]],
    ]),
    readings: rows.map(([from, to, value, sigma]) => ({
      id: `h${from}${to}`,
      from,
      to,
      value,
      sigma,
      measure: difference(0),
    })),
  })!;
  const g = globalTest(r);
  const of = (quantity: string, published: number, ours: number, abs: number, unit: string) =>
    suite.compare({
      ...KRUMM,
      id: 'level-network',
      quantity,
      published,
      ours,
      unit,
      tolerance: { abs, reason: 'half of the last digit printed' },
    });
  it('heights and their standard deviations', () => {
    const heights = [448.10871, 453.46847, 444.94361];
    const deviations = [2.3, 2.64, 1.76];
    r.points.forEach((p, i) => {
      of(`H${p.name}`, heights[i]!, p.at[0]!, 0.000006, 'm');
      of(`sd H${p.name}`, deviations[i]!, p.sigma[0]! * g.unitWeight * 1000, 0.0051, 'mm');
    });
  });
  it('residuals, their weighted sum and unit weight', () => {
    rows.forEach(([from, to, , , v], i) => {
      of(`v ${from}${to}`, v, r.fit.residuals[i]! * 1000, 0.0051, 'mm');
    });
    of('vtPv', 1.27212, g.weightedSum, 0.000006, '');
    of('s0', 0.6512, g.unitWeight, 0.000051, '');
  });
});

describe('level circuit with four benchmarks, feet (a surveying teacher’s open lecture, Least Squares, chapter D)', () => {
  // Benchmarks from the printed adjusted readings and heights: 815.418 - 8.898, 815.418 + 2.902, + 4.702, + 8.622.
  const fixed = new Map([
    ['A', [806.52]],
    ['B', [818.32]],
    ['C', [820.12]],
    ['D', [824.04]],
  ]);
  const rows = [
    ['A', 'Q', 8.91],
    ['B', 'Q', -2.92],
    ['C', 'Q', -4.67],
    ['D', 'Q', -8.66],
    ['A', 'R', -3.56],
    ['C', 'R', -17.12],
    ['D', 'R', -21.1],
    ['Q', 'R', -12.47],
  ] as const;
  const r = fitNetwork({
    fixed,
    free: new Map([
      ['Q', [815]],
      ['R', [803]],
    ]),
    readings: rows.map(([from, to, value]) => ({ id: from + to, from, to, value, sigma: 1, measure: difference(0) })),
  })!;
  const LECTURE = {
    clause: 'least squares, observation equations',
    source: 'J. Mahun, open lecture “Least Squares Lite”, chapter D example',
  };
  it('heights of the two points', () => {
    const of = (quantity: string, published: number, ours: number) =>
      suite.compare({
        ...LECTURE,
        id: 'level-circuit',
        quantity,
        where: 'jerrymahun.com, page of chapter D; its matrices are pictures and were not read',
        provenance: 'read',
        published,
        ours,
        unit: 'ft',
        tolerance: { abs: 0.00051, reason: 'printed to 0.001 ft' },
      });
    of('Q', 815.418, r.points[0]!.at[0]!);
    of('R', 802.962, r.points[1]!.at[0]!);
  });
  it('leaves out what the lecture lost in rounding', () => {
    const reason =
      'the normal equations of the printed readings, solved by hand, give another last digit than is printed: ';
    // 20.Q - 4.R and -Q + 4.R solved exactly: squared residuals 0.005063 over 6 degrees of freedom.
    suite.leaveOut({ ...LECTURE, id: 'level-circuit-so', reason: `${reason}0.0290 for the printed 0.028` });
    suite.leaveOut({ ...LECTURE, id: 'level-circuit-weighted', reason: `${reason}Q 815.4252 for the printed 815.424` });
  });
});

describe('levels run both ways between four points, with a normalized residual printed', () => {
  const rows = [
    ['1a', '4', -1.225],
    ['4', '3', -0.848],
    ['3', '2', 1.342],
    ['2', '1a', 0.72],
    ['1a', '2', -0.724],
    ['2', '3', -1.335],
    ['3', '4', 0.842],
    ['4', '1a', 1.231],
  ] as const;
  const r = fitNetwork({
    fixed: new Map([['1a', [1000]]]),
    free: new Map([
      ['4', [998]],
      ['3', [997]],
      ['2', [999]],
    ]),
    // Millimetres throughout: the printed a priori standard deviation is 5.00 mm for each height difference.
    readings: rows.map(([from, to, value]) => ({
      id: from + to,
      from,
      to,
      value,
      sigma: 0.005,
      measure: difference(0),
    })),
  })!;
  it('heights, their standard deviations and the largest normalized residual', () => {
    const of = (quantity: string, published: number, ours: number, abs: number, unit: string) =>
      suite.compare({
        id: 'levels-both-ways',
        quantity,
        clause: 'least squares; data snooping',
        source: 'output file of a general network adjustment program, sample with eight height differences',
        where: 'a mapping program’s web page of sample outputs',
        provenance: 'read',
        published,
        ours,
        unit,
        tolerance: { abs, reason: 'half of the last digit printed' },
      });
    const heights = { 4: 998.77513, 3: 997.93325, 2: 999.27487 } as const;
    const deviations = { 4: 3.1, 3: 3.5, 2: 3.1 } as const;
    for (const p of r.points) {
      const name = p.name as unknown as keyof typeof heights;
      of(`H${p.name}`, heights[name], p.at[0]!, 0.0000051, 'm');
      of(`sd H${p.name}`, deviations[name], p.sigma[0]! * 1000, 0.051, 'mm');
    }
    of('[pvv], weights 25 over sigma squared in mm', 146.625, r.fit.weightedSum * 25, 0.00051, 'mm²');
    const worst = r.fit.normalized.reduce((m, w, i) => (Math.abs(w) > Math.abs(r.fit.normalized[m]!) ? i : m), 0);
    expect(worst + 1).toBe(6);
    of('largest normalized residual', 1.68, Math.abs(r.fit.normalized[worst]!), 0.0051, '');
  });
});

describe('the limits of the tests', () => {
  it('chi-square and normal quantiles', () => {
    const of = (quantity: string, published: number, ours: number, abs: number) =>
      suite.compare({
        id: 'quantiles',
        quantity,
        clause: 'statistical tables',
        source: 'any table of the chi-square and normal distributions',
        where: 'recalled',
        provenance: 'memory',
        published,
        ours,
        unit: '',
        tolerance: { abs, reason: 'tables print this many digits' },
      });
    of('chi-square 0.95, 1', 3.841, chiSquareQuantile(0.95, 1), 0.00051);
    of('chi-square 0.95, 10', 18.307, chiSquareQuantile(0.95, 10), 0.00051);
    of('chi-square 0.95, 30', 43.773, chiSquareQuantile(0.95, 30), 0.00051);
    of('chi-square 0.05, 10', 3.94, chiSquareQuantile(0.05, 10), 0.00051);
    of('normal, two-sided 0.001', 3.291, normalTwoSided(0.001), 0.00051);
    of('normal, two-sided 0.05', 1.96, normalTwoSided(0.05), 0.00051);
  });
});
