/** Members against hand calculations; the arithmetic is written out beside each number. */
import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { SectionChoice } from '../../project/model.js';
import { change, gableProject } from '../../structure/testing.js';
import { bar, contextFor, forcesOf, joist, LOADS, postBar, runFirst, timber, VALUES } from '../testing.js';
import { bendingCheck } from './bending.js';
import { combinedCheck } from './combined.js';
import { deflectionCheck } from './deflection.js';
import { designValue } from './design.js';
import { postBearing, postSlenderness, postStability, postTension } from './posts.js';
import { notchCheck, shearCheck } from './shear.js';

const bending = bendingCheck('beam', 'Beam bending');
const shear = shearCheck('beam', 'Beam shear');
const stations = [0, 72, 144];

const beamWith = (f: Partial<Parameters<typeof forcesOf>[2]>, change: Parameters<typeof bar>[0] = {}) =>
  contextFor({ structure: { members: [bar(change)] }, members: [forcesOf('B1', 3, { stations, ...f })] });

describe('beam bending', () => {
  it('takes the worst combination with its own load duration', () => {
    // D 60 000, S 90 000 lb·in. D+S: M = 150 000, fb = 6·150000/(5.5·9.5²) = 1813.1 psi.
    // lu/d = 24/9.5 < 7: le = 2.06·24 = 49.44; RB = √(49.44·9.5)/5.5 = 3.940; FbE = 1.2·580000/3.940² = 44826.
    // Fb* = 1350·1.15 = 1552.5; CL = 0.99821; Fb' = 1549.7. Ratio 1813.1/1549.7 = 1.170: fails.
    const f = runFirst(
      bending,
      beamWith({
        m: [
          [0, 60000, 0],
          [0, 90000, 0],
        ],
      }),
    );
    expect(f.status).toBe('fail');
    expect(f.combination).toBe('D+S');
    expect(f.demand).toBeCloseTo(1813.1, 1);
    expect(f.capacity).toBeCloseTo(1549.7, 1);
    expect(f.ratio).toBeCloseTo(1.16998, 4);
    expect(f.note).toContain('deeper');
  });

  it('judges uplift with the unheld bottom edge in compression', () => {
    // D +20 000, W −100 000. 0.6D+0.6W: 12 000 − 60 000 = −48 000; fb = 6·48000/(5.5·9.5²) = 580.2 psi.
    // lu = 144, lu/d = 15.2 > 14.3: le = 1.84·144 = 264.96; RB = √(264.96·9.5)/5.5 = 9.122; FbE = 696000/83.21 = 8364.
    // Fb* = 1350·1.6 = 2160; CL = 0.98327; Fb' = 2123.9. Ratio 0.2732.
    const f = runFirst(
      bending,
      beamWith({
        m: [
          [0, 20000, 0],
          [0, 0, 0],
          [0, -100000, 0],
        ],
      }),
    );
    expect(f.combination).toBe('0.6D+0.6W');
    expect(f.capacity).toBeCloseTo(2123.9, 1);
    expect(f.ratio).toBeCloseTo(0.27319, 4);
  });

  it('lets dead load alone govern when its short duration factor makes it worst', () => {
    // D 100 000, S 1 000: D alone 100000/(1350·0.9) against 101000/(1350·1.15).
    const f = runFirst(
      bending,
      beamWith({
        m: [
          [0, 100000, 0],
          [0, 1000, 0],
        ],
      }),
    );
    expect(f.combination).toBe('D');
  });

  it('counts structural plies only', () => {
    // (3) 2x10 with two 1/2 in strips: 5.5 wide, 4.5 counts.
    const plies = joist({ plies: 3, b: 4.5, width: 5.5 });
    const f = runFirst(
      bending,
      beamWith({ m: [[0, 50000, 0]] }, { section: plies, unbraced: { top: 0, bottom: 144 } }),
    );
    // fb = 6·50000/(4.5·9.25²) = 779.2
    expect(f.demand).toBeCloseTo(779.2, 1);
    // Fb' = 900·0.9·1.1 = 891 (CF 1.1 for 10 in; no repetitive factor for a beam)
    expect(f.capacity).toBeCloseTo(891, 6);
  });

  it('takes the compression-face value of a glulam for negative moment, and the lesser of CL and CV', () => {
    const glulam = timber({
      family: 'glulam',
      sizeClass: 'glulam',
      b: 5.5,
      d: 18,
      width: 5.5,
      depth: 18,
      values: { ...VALUES, Fb: 2400, FbNeg: 1850, Emin: 0.95e6, EminY: 0.85e6 },
    });
    const at = { section: glulam, unbraced: { top: 0, bottom: 0 } };
    // L = 12 ft: CV = (21/12·12/18·5.125/5.5)^(1/10) = (1.0871)^(0.1) > 1: 1. Fb' = 2400·0.9.
    expect(runFirst(bending, beamWith({ m: [[0, 1000, 0]] }, at)).capacity).toBeCloseTo(2160, 6);
    expect(runFirst(bending, beamWith({ m: [[0, -1000, 0]] }, at)).capacity).toBeCloseTo(1665, 6);
  });

  it('is not applicable without moment and not evaluated without forces', () => {
    expect(runFirst(bending, beamWith({})).status).toBe('not-applicable');
    expect(runFirst(bending, contextFor({ structure: { members: [bar()] } })).status).toBe('not-evaluated');
  });

  it('raises the demand to hand statics where that governs', () => {
    const base = beamWith({ m: [[0, 60000, 0]] });
    const hand = [
      {
        about: 'B1 moment, span at 0.00 ft',
        case: 'D',
        statics: 90000,
        analysed: 60000,
        unit: 'lb·in',
        reason: '',
        governs: 'statics' as const,
      },
    ];
    const plain = runFirst(bending, base);
    const more = runFirst(bending, { ...base, effects: { ...base.effects, hand } });
    expect(more.demand / plain.demand).toBeCloseTo(1.5, 9);
  });

  it('fails a member too slender sideways, with a finite ratio', () => {
    const thin = joist({ b: 1.5, d: 23.25 });
    // lu = 300: le = 1.63·300 + 3·23.25 = 558.75; RB = √(558.75·23.25)/1.5 = 75.98 > 50.
    const f = runFirst(
      bending,
      beamWith({ m: [[0, 1000, 0]] }, { section: thin, unbraced: { top: 300, bottom: 300 } }),
    );
    expect(f.status).toBe('fail');
    expect(Number.isFinite(f.ratio)).toBe(true);
    expect(f.note).toContain('slender');
  });
});

describe('design values', () => {
  it('multiplies the factors of dimension lumber', () => {
    const row = { members: 12, spacing: 16 };
    // 900·1.15 (CD)·1.1 (CF)·1.15 (Cr) = 1309.3; incised 0.8 more.
    expect(designValue('Fb', joist(), { CD: 1.15, row })).toBeCloseTo(1309.275, 6);
    expect(designValue('Fb', joist({ incised: true }), { CD: 1.15, row })).toBeCloseTo(1047.42, 6);
    // Two members are no row, and beyond 24 in neither.
    expect(designValue('Fb', joist(), { CD: 1.15, row: { members: 2, spacing: 16 } })).toBeCloseTo(1138.5, 6);
    expect(designValue('Fb', joist(), { CD: 1.15, row: { members: 9, spacing: 32 } })).toBeCloseTo(1138.5, 6);
  });

  it('knows wet service: Fv 0.97, Fc⊥ 0.67, E 0.9; Fb·CF ≤ 1150 keeps 1', () => {
    const wet = joist({ wet: true });
    expect(designValue('Fv', wet, { CD: 1 })).toBeCloseTo(180 * 0.97, 9);
    expect(designValue('FcPerp', wet, {})).toBeCloseTo(625 * 0.67, 9);
    expect(designValue('E', wet, {})).toBeCloseTo(1.6e6 * 0.9, 3);
    expect(designValue('Fb', wet, { CD: 1 })).toBeCloseTo(990, 9);
  });

  it('refuses veneer lumber in wet service', () => {
    expect(designValue('Fb', timber({ family: 'lvl', wet: true }), { CD: 1 })).toBeUndefined();
    const f = runFirst(bending, beamWith({ m: [[0, 100, 0]] }, { section: timber({ family: 'lvl', wet: true }) }));
    expect(f.status).toBe('outside-scope');
  });
});

describe('shear', () => {
  it('weighs each combination by its load duration', () => {
    // D 1000, S 2000: fv = 1.5·3000/(5.5·9.5) = 86.12; Fv' = 170·1.15 = 195.5; ratio 0.44053.
    const f = runFirst(
      shear,
      beamWith({
        v: [
          [1000, 0, -1000],
          [2000, 0, -2000],
        ],
      }),
    );
    expect(f.demand).toBeCloseTo(86.124, 3);
    expect(f.capacity).toBeCloseTo(195.5, 9);
    expect(f.ratio).toBeCloseTo(0.440534, 5);
  });

  it('lowers the strength at a seat cut and refuses one over a quarter deep', () => {
    const notch = notchCheck('rafter', 'Rafter seat cut');
    const at = (depth: number) =>
      contextFor({
        structure: { members: [bar({ role: 'rafter', section: joist(), notch: depth })] },
        members: [
          forcesOf('B1', 3, {
            stations,
            v: [
              [100, 0, -100],
              [300, 0, -300],
            ],
          }),
        ],
      });
    // dn = 7.75: Vr' = 2/3·(180·1.15)·1.5·7.75·(7.75/9.25)² = 1126.1; ratio 400/1126.1 = 0.3552.
    const f = runFirst(notch, at(1.5));
    expect(f.capacity).toBeCloseTo(1126.14, 2);
    expect(f.ratio).toBeCloseTo(0.355196, 5);
    // 2.4 > 9.25/4 = 2.3125
    expect(runFirst(notch, at(2.4)).status).toBe('fail');
    expect(runFirst(notch, at(0)).status).toBe('not-applicable');
  });
});

describe('deflection', () => {
  const project = { ...gableProject, choices: { ...gableProject.choices, deflection: { live: 360, total: 240 } } };
  const spans = [
    { from: 0, to: 120, length: 120, kind: 'span' as const },
    { from: 120, to: 144, length: 24, kind: 'overhang' as const },
  ];
  const at = (sag: readonly (readonly number[])[], wet = false) =>
    contextFor({
      project,
      structure: { members: [bar({ section: timber({ wet }) })] },
      members: [forcesOf('B1', 3, { stations: [0, 60, 120, 144], spans, spanOf: [0, 0, 1, 1], sag })],
    });

  it('compares live load alone with L/360', () => {
    // S sags 0.2 in over 120: limit 0.3333; ratio 0.6.
    const f = runFirst(
      deflectionCheck('beam', 'Beam', 'live'),
      at([
        [0, 0.3, 0, 0],
        [0, 0.2, 0, 0],
      ]),
    );
    expect(f.ratio).toBeCloseTo(0.6, 9);
    expect(f.combination).toBe('S');
  });

  it('adds dead load, and its creep: 1.5 dry, 2.0 wet', () => {
    const sag = [
      [0, 0.1, 0, 0],
      [0, 0.2, 0, 0],
    ];
    // limit 120/240 = 0.5: (0.1 + 0.2)/0.5; (0.15 + 0.2)/0.5; (0.2 + 0.2)/0.5
    expect(runFirst(deflectionCheck('beam', 'Beam', 'total'), at(sag)).ratio).toBeCloseTo(0.6, 9);
    expect(runFirst(deflectionCheck('beam', 'Beam', 'long-term'), at(sag)).ratio).toBeCloseTo(0.7, 9);
    expect(runFirst(deflectionCheck('beam', 'Beam', 'long-term'), at(sag, true)).ratio).toBeCloseTo(0.8, 9);
  });

  it('gives an overhang twice its length', () => {
    // Tip 0.1 in: limit 2·24/360 = 0.13333; ratio 0.75.
    const f = runFirst(
      deflectionCheck('beam', 'Beam', 'live'),
      at([
        [0, 0, 0, 0],
        [0, 0, 0, 0.1],
      ]),
    );
    expect(f.ratio).toBeCloseTo(0.75, 9);
  });

  it('counts wind with 0.42', () => {
    const f = runFirst(deflectionCheck('beam', 'Beam', 'live'), at([[], [], [0, -0.4, 0, 0]]));
    expect(f.ratio).toBeCloseTo((0.42 * 0.4) / (120 / 360), 9);
  });
});

describe('posts', () => {
  const post = (n: readonly (readonly number[])[], change = {}) =>
    contextFor({ structure: { members: [postBar(change)] }, members: [forcesOf('P1', 3, { stations: [0, 96], n })] });

  it('is slender by its length over its least side', () => {
    // 96/5.5 = 17.4545
    const f = runFirst(postSlenderness, post([]));
    expect(f.demand).toBeCloseTo(17.4545, 4);
    expect(f.ratio).toBeCloseTo(0.349091, 5);
    expect(runFirst(postSlenderness, post([], { end: { x: 72, y: 0, z: 300 } })).status).toBe('fail');
  });

  it('carries its load a sixth off centre', () => {
    // P = 12000 (D 4000, S 8000). FcE = 0.822·580000/17.4545² = 1564.9; Fc* = 1150; α = 1.36077;
    // CP = 0.785494; Fc' = 903.32; fc = 12000/30.25 = 396.69; Fb' = 1200·1.15 = 1380;
    // (396.69/903.32)² + 396.69·(1 + 0.234·396.69/1564.9)/(1380·(1 − 396.69/1564.9)) = 0.19286 + 0.40791 = 0.60077.
    const f = runFirst(
      postStability,
      post([
        [-4000, -4000],
        [-8000, -8000],
      ]),
    );
    expect(f.capacity).toBeCloseTo(903.32, 2);
    expect(f.ratio).toBeCloseTo(0.600772, 5);
    expect(f.combination).toBe('D+S');
  });

  it('is never used less than fc over Fc’: the lightly loaded one', () => {
    // P = 3000: fc = 99.17, 99.17/903.32 = 0.10979; with the load off centre (0.10979)² + 99.17·1.0148/(1380·0.93663) = 0.0899.
    const f = runFirst(
      postStability,
      post([
        [-1000, -1000],
        [-2000, -2000],
      ]),
    );
    expect(f.ratio).toBeCloseTo(0.10979, 4);
  });

  it('bears on its end without the column factor', () => {
    const f = runFirst(
      postBearing,
      post([
        [-4000, -4000],
        [-8000, -8000],
      ]),
    );
    // 396.69/1150
    expect(f.ratio).toBeCloseTo(0.344952, 5);
  });

  it('is stretched by wind', () => {
    // 0.6·1000 − 0.6·3000 = −1200 lb lifting; ft = 1200/30.25 = 39.67; Ft' = 825·1.6 = 1320.
    const f = runFirst(
      postTension,
      post([
        [-1000, -1000],
        [0, 0],
        [3000, 3000],
      ]),
    );
    expect(f.demand).toBeCloseTo(39.669, 3);
    expect(f.ratio).toBeCloseTo(0.0300526, 6);
    expect(runFirst(postTension, post([[-1000, -1000]])).status).toBe('not-applicable');
  });

  it('has a finite answer far past buckling', () => {
    const f = runFirst(postStability, post([[-1e6, -1e6]]));
    expect(f.status).toBe('fail');
    expect(Number.isFinite(f.ratio)).toBe(true);
  });

  it('wants the plies of a built-up post fastened first', () => {
    const f = runFirst(postStability, post([[-100, -100]], { section: timber({ plies: 2 }) }));
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain('plyFastening');
  });

  it('lowers CP of a nailed built-up post across its plies', () => {
    // (2) 2x6 DF-L No. 2, 96 in: across the plies le/d = 96/3, FcE = 0.822·580000/1024 = 465.6; Fc* = 1350·0.9·1.1 = 1336.5,
    // α 0.3484, c 0.8: 0.3186 · 0.6 = 0.1911; along them 96/5.5, FcE 1564.9, 0.7425: the lesser governs.
    const section = joist({
      choice: 'post',
      plies: 2,
      b: 3,
      width: 3,
      depth: 5.5,
      d: 5.5,
      nominal: { thickness: 2, width: 6 },
    });
    const made: SectionChoice = {
      kind: 'built-up',
      plies: 2,
      ply: '2x6',
      spacers: 0,
      spacerThickness: 0,
      fastening: 'nailed',
      species: 'Douglas Fir-Larch',
      grade: 'No. 2',
      treatment: 'none',
      incised: false,
      service: 'dry',
      plyFastening: { fastener: 'common-10d', rows: 2, spacing: 8, edge: 1.25, end: 2.5 },
    };
    const sections = { ...gableProject.choices.sections, post: made };
    const project = change(gableProject, { choices: { ...gableProject.choices, sections } });
    const ctx = { ...post([[-1000, -1000]], { section }), project };
    const rec = makeRecorder();
    const f = postStability.run(postStability.subjects(ctx)[0]!, ctx, rec);
    const cps = rec.lines.flatMap((l) => (l.kind === 'step' && l.symbol === 'CP' ? [l.value] : []));
    expect(cps).toHaveLength(2);
    expect(Math.min(...cps)).toBeCloseTo(0.1911, 4);
    expect(f.status).toBe('pass');
  });
});

describe('rafters in bending with axial force', () => {
  const combined = combinedCheck('rafter', 'Rafter bending with axial force');
  const at = (m: number, n: number) =>
    contextFor({
      structure: { members: [bar({ role: 'rafter', section: joist(), unbraced: { top: 0, bottom: 0 } })] },
      members: [forcesOf('B1', 3, { stations, m: [[], [0, m, 0]], n: [[], [n, n, n]] })],
    });

  it('follows 3.9.1 in tension', () => {
    // fb = 6·10000/(1.5·9.25²) = 467.49; Fb' = 900·1.15·1.1 = 1138.5; ft = 1000/13.875 = 72.07; Ft' = 575·1.15·1.1 = 727.4
    // 72.07/727.375 + 467.49/1138.5 = 0.09909 + 0.41062 = 0.50971
    expect(runFirst(combined, at(10000, 1000)).ratio).toBeCloseTo(0.50971, 4);
  });

  it('follows 3.9.2 in compression', () => {
    // le/d = 144/9.25 = 15.5676; FcE1 = 0.822·580000/242.35 = 1967.2; Fc* = 1350·1.15·1.0 = 1552.5 (CF 1.0 on Fc at 10 in)
    // α = 1.26713; (1+α)/1.6 = 1.41695; CP = 1.41695 − √(2.00776 − 1.58391) = 0.76591; Fc' = 1189.1; fc = 72.07
    // (72.07/1189.1)² + 467.49/(1138.5·(1 − 72.07/1967.2)) = 0.00367 + 0.42624 = 0.42991
    expect(runFirst(combined, at(10000, -1000)).ratio).toBeCloseTo(0.42991, 4);
  });
});

describe('beams pushed sideways', () => {
  const both = combinedCheck('beam', 'Beam both ways');
  const at = (m: number, w: number, n: number, change = {}) =>
    beamWith({ m: [[], [0, m, 0]], mWeak: [[], [0, w, 0]], n: [[], [n, n, n]] }, change);

  it('adds the weak axis with its own modulus and value', () => {
    // S case, CD 1.15. fb1 = 6·30000/(5.5·9.5²) = 362.63, Fb1' = 1549.7 (CL as above), FbE = 44826.
    // S2 = 9.5·5.5²/6 = 47.896; fb2 = 5000/47.896 = 104.39; Fb2' = 1350·0.74·1.15 = 1148.9.
    // fc = 2000/52.25 = 38.28; FcE1 = 0.822·580000/(144/9.5)² = 2075.0; FcE2 = 0.822·580000/(24/5.5)² = 25038.
    // Fc* = 925·1.15 = 1063.8; CP = 0.86304; Fc' = 918.05.
    // (38.28/918.05)² + 362.63/(1549.7·0.98155) + 104.39/(1148.9·0.99841) = 0.00174 + 0.23840 + 0.09101 = 0.33114.
    expect(runFirst(both, at(30000, 5000, -2000)).ratio).toBeCloseTo(0.331144, 5);
  });

  it('lets plies bend sideways each for itself', () => {
    const plies = joist({ plies: 3, b: 4.5, width: 4.5 });
    const held = { section: plies, unbraced: { top: 0, bottom: 0 } };
    // S2 = 3·9.25·1.5²/6 = 10.406: fb2 = 1000/10.406 = 96.10 over 900·1.15·1.1 = 1138.5: 0.08441; no other force.
    expect(runFirst(both, at(0, 1000, 0, held)).ratio).toBeCloseTo(0.08441, 4);
  });

  it('does not arise without force along or sideways', () => {
    expect(runFirst(both, at(30000, 0, 0)).status).toBe('not-applicable');
  });

  it('has a finite answer for a member too slender sideways', () => {
    const thin = { section: joist({ d: 23.25 }), unbraced: { top: 300, bottom: 300 } };
    const f = runFirst(both, at(1000, 100, -500, thin));
    expect(f.status).toBe('fail');
    expect(f.ratio).toBe(99);
  });
});

describe('traces', () => {
  it('end in the ratio of the result', () => {
    const ctx = beamWith({ m: [[0, 60000, 0]] });
    const rec = makeRecorder();
    const f = bending.run(bending.subjects(ctx)[0]!, ctx, rec);
    const last = rec.lines.at(-1)!;
    expect(last).toMatchObject({ kind: 'step', symbol: 'ratio', value: f.ratio });
    expect(rec.lines.some((l) => l.kind === 'step' && l.symbol === 'CL')).toBe(true);
    expect(LOADS.combinations.length).toBe(4);
  });
});
