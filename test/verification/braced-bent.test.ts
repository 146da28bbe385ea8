/**
 * The braced bents of a whole free-standing cover, example 04, against portal statics with a pocket calculator. All feet are
 * pins and a knee brace is a strut, so that of a post h high, L of it below its brace, with a shear V at the foot and at the
 * top: brace force Hb·√2 with Hb·(h' − L) = V·h, moment V·L. h' is the level of the bar that the brace runs to.
 */
import { readFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import { analyse } from '../../src/analysis/index.js';
import { buildLoads } from '../../src/loads/index.js';
import { read } from '../../src/project/index.js';
import { place } from '../../src/structure/place.js';
import { verificationSuite } from './record.js';

const file = new URL('../../examples/04-free-gable-knee-braces/project.json', import.meta.url);
const project = read(readFileSync(file, 'utf8')).value!;
const structure = place(project).value!;
const loads = buildLoads(project, structure).value!;
const effects = analyse(project, structure, loads).value!;

const suite = verificationSuite('braced-bent');
const HAND = {
  source: 'Statics worked by hand from the measures and loads of example 04, formulas and numbers in the test',
  where: 'test/verification/braced-bent.test.ts',
  provenance: 'read',
} as const;
const TOLERANCE = {
  rel: 0.1,
  reason: 'hand statics: the roof turns a little, and beams are taken as fixed at the middle post',
};

const most = (row: Float64Array): number => row.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
const at = (name: string): number => effects.cases.indexOf(name);
const foot = (id: string, c: number) => effects.footings.get(id)!.force[c]!;
const brace = (joint: string, c: number): number => {
  const id = structure.members.find((m) => m.role === 'brace' && m.path === joint)!.id;
  return most(effects.members.get(id)!.n[c]!);
};

// Levels, in: feet of the three rows of posts (the slab falls), top of the posts under the beam, axis of the cross members.
const FEET = [-11.75, -14, -16.25] as const;
const TOP = 101.5;
const STRUT = 97.75;
/** Where the axis of a brace meets the axis of the post: along the beam, and below a cross member. */
const BRACE_Y = 71.5;
const BRACE_X = 64;

describe('across the beams: bents of two posts, a cross member and two knee braces', () => {
  // q = 0.00256·0.849·0.85·150² = 41.5 psf (Exposure C below 15 ft, Ke 1); G 0.85; windward and leeward halves 1.1 and 0.1
  // (ASCE 7-16 Fig. 27.3-5, clear flow, case A, 22.5°). Both halves rise 5/12·(8 ft + 2-3/4 in + 12 in) = 3.846 ft and are
  // 19.5 ft + 2·6 in + 1-1/2 in = 20.625 ft long: 79.3 ft² upright.
  const H = 41.5 * 0.85 * (1.1 - 0.1) * 79.3;
  const c = at('W+x·A·clear');
  const V = H / 6;
  const base = { ...HAND, id: 'braced-bent-x', tolerance: TOLERANCE };
  it('base shear: a sixth of the wind on each foot', () => {
    suite.compare({
      ...base,
      quantity: 'wind across the cover',
      clause: 'ASCE 7-16 27.3.2',
      published: H,
      ours: effects.balance[c]!.applied.x,
      unit: 'lb',
    });
    for (const id of ['F1', 'F2', 'F3'])
      suite.compare({
        ...base,
        quantity: `base shear ${id}`,
        clause: 'statics',
        published: V,
        ours: foot(id, c).x,
        unit: 'lb',
      });
  });
  it('brace force and post moment', () => {
    FEET.forEach((z0, i) => {
      const P = `P${i + 1}`;
      suite.compare({
        ...base,
        quantity: `knee brace of ${P}: V·h/a·√2`,
        clause: 'statics',
        published: ((V * (TOP - z0)) / (STRUT - BRACE_X)) * Math.SQRT2,
        ours: brace(`/cover/struts/${i}/braces`, c),
        unit: 'lb',
      });
      suite.compare({
        ...base,
        quantity: `moment of ${P}: V·L`,
        clause: 'statics',
        published: V * (BRACE_X - z0),
        ours: most(effects.members.get(P)!.m[c]!),
        unit: 'lb·in',
      });
    });
  });
  it('footing reaction: the overturning of the least wind on two rows 16 ft apart', () => {
    const k = at('W+x·least');
    const side = loads.cases[k]!.side[0]!;
    suite.compare({
      ...base,
      quantity: 'uplift of a row of feet: H·(z − z0)/16 ft',
      clause: 'statics',
      published: (side.force.x * (side.at.z - FEET[1])) / 192,
      ours: -['F1', 'F2', 'F3'].reduce((sum, id) => sum + foot(id, k).z, 0),
      unit: 'lb',
    });
  });
});

describe('along the beams: three posts with one, two and one knee brace', () => {
  const c = at('W+y·least');
  const side = loads.cases[c]!.side[0]!;
  // Half the push on each beam. 8x8 posts E 1.5e6 psi, I 263.7 in⁴; beam E 1.8e6 psi, I 530.6 in⁴; 6x6 braces 30.25 in².
  const half = side.force.y / 2;
  const [EIp, EIb, EAb] = [1.5e6 * 263.7, 1.8e6 * 530.6, 1.5e6 * 30.25];
  const [a, span] = [TOP - BRACE_Y, 108];
  // Pinned at the end post, and level at the middle one where both halves turn it alike; load F = V·h/a on the brace's place,
  // deflection F·a²·b³·(3l + a)/(12·EI·l³).
  const beam = (a ** 2 * (span - a) ** 3 * (3 * span + a)) / (12 * EIb * span ** 3);
  const flex = FEET.map((z0, i) => {
    const [h, L] = [TOP - z0, BRACE_Y - z0];
    const middle = i === 1;
    // The post bends over its brace, the brace shortens, the beam gives under it.
    const short = (2 * a * Math.SQRT2) / EAb / (middle ? 2 : 1);
    return (L ** 2 * h) / (3 * EIp) + (h / a) ** 2 * (short + (middle ? 0 : beam));
  });
  const stiffness = flex.reduce((sum, f) => sum + 1 / f, 0);
  const V = flex.map((f) => half / f / stiffness);
  const base = { ...HAND, id: 'braced-bent-y', tolerance: TOLERANCE };

  it('base shear: shared as the posts are stiff', () => {
    for (const [i, id] of ['F1', 'F2', 'F3'].entries())
      suite.compare({
        ...base,
        quantity: `base shear ${id}`,
        clause: 'statics; beam deflection as AISC Manual Table 3-23 case 14 (recalled)',
        published: V[i]!,
        ours: foot(id, c).y,
        unit: 'lb',
      });
  });
  it('brace force and post moment', () => {
    FEET.forEach((z0, i) => {
      const P = `P${i + 1}`;
      suite.compare({
        ...base,
        quantity: `moment of ${P}: V·L`,
        clause: 'statics',
        published: V[i]! * (BRACE_Y - z0),
        ours: most(effects.members.get(P)!.mWeak[c]!),
        unit: 'lb·in',
      });
      const braces = i === 1 ? [0, 1] : [0];
      suite.compare({
        ...base,
        quantity: `knee braces of ${P} together: V·h/a·√2`,
        clause: 'statics',
        published: ((V[i]! * (TOP - z0)) / a) * Math.SQRT2,
        ours: braces.reduce((sum, k) => sum + brace(`/cover/beams/0/posts/${i}/braces/${k}`, c), 0),
        unit: 'lb',
      });
    });
  });
  it('footing reaction: overturning taken by the end posts, 18 ft apart', () => {
    const tip = FEET.reduce((sum, z0, i) => sum + V[i]! * (side.at.z - z0), 0);
    for (const [id, sense] of [
      ['F1', -1],
      ['F3', 1],
    ] as const)
      suite.compare({
        ...base,
        quantity: `vertical reaction ${id}: ΣV·(z − z0)/18 ft`,
        clause: 'statics',
        published: (sense * tip) / 216,
        ours: foot(id, c).z,
        unit: 'lb',
      });
  });
});
