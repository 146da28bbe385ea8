/** Straps, wood plates and braces against numbers worked out apart from the program. */
import { describe, expect, it } from 'vitest';
import type { ConnectionPart, DrivenDowels } from '../../../project/connections.js';
import type { Member } from '../../../structure/model.js';
import { change, gableProject } from '../../../structure/testing.js';
import { bar, joint, NONE, postBar, timber, v } from '../../testing.js';
import { plates, row, run, wind } from './testing.js';

describe('straps and wood plates', () => {
  const strap: DrivenDowels = {
    kind: 'nails',
    takes: ['up'],
    size: 'common-10d',
    length: 3,
    head: 'upper',
    axis: 'crosswise',
    plates: { material: 'steel', count: 1, thickness: 0.06, width: 1.25, end: 1, Fy: 33000, Fu: 45000 },
    upper: { alongGrain: 1, acrossGrain: 4, spacingAlong: 0, spacingAcross: 1.5, end: 72, edge: 1.5 },
    lower: { alongGrain: 4, acrossGrain: 1, spacingAlong: 1.5, spacingAcross: 0, end: 2, edge: 2.5 },
    upperThickness: undefined,
    lowerThickness: undefined,
  };

  it('nail a strap at both ends, steel and nails compared', () => {
    // 600 lb on four 10d at each end: Z through 0.06 in of Fe 61875: 115.98; 150/(1.6·Z) = 0.8083. Steel: the lesser of
    // 33000·0.075/1.67 and 45000·0.06·(1.25 − 0.2105)/2 = 1403.3: 0.4276.
    const f = run(row(strap), wind(0, 0, 600));
    expect(f.status, f.note).toBe('pass');
    expect(f.ratio).toBeCloseTo(0.8083, 4);
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: 'Ta', value: expect.closeTo(1403.3, 1) }));
    // A thin strap is no strut.
    const down = run(row({ ...strap, takes: ['down'] }), { joints: { J1: [v(0, 0, -100), NONE, NONE] } });
    expect(down.note).toContain('buckles');
  });

  it('bolt wood plates, pushed square to them as well', () => {
    // 1000 lb up and 200 lb crosswise. Beam: Fem⊥ 3157.6, Fes∥ 5600, Z 865.0, Cg 0.99644: shear 0.3626; each bolt
    // pulled 100 lb, washer 2 in on Fc⊥ 625: 1808.2: 0.4179 together. One plate bent flat: 200·8/(5.5·1.5²/6) = 775.8 psi of
    // 900·1.3·1.6, and its half of the tension on the net section: 0.4708.
    const wood = plates({
      takes: ['up', 'crosswise'],
      washer: 2,
      plates: { material: 'wood', count: 2, end: 3.5, section: 'plate' },
    });
    const c = row(wood);
    const plate = { ...gableProject.choices.sections.fascia!, size: '2x6' };
    const sections = { ...gableProject.choices.sections, plate } as typeof gableProject.choices.sections;
    const own = change(gableProject, { choices: { ...gableProject.choices, sections, connections: [c] } });
    const f = run(c, { ...wind(0, 200, 1000), project: own });
    expect(f.status, f.note).toBe('pass');
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: 'use', value: expect.closeTo(0.4179, 3) }));
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: 'use', value: expect.closeTo(0.4708, 3) }));
    // Without washers nothing holds them together.
    const loose = row({ ...wood, washer: 0 });
    const open = change(own, { choices: { ...own.choices, connections: [loose] } });
    expect(run(loose, { ...wind(0, 200, 1000), project: open }).note).toContain('give them washers');
  });
});

describe('a brace', () => {
  // At 45° from the post up to the beam, 1000 lb along it.
  const brace: Member = bar({
    id: 'KB1',
    role: 'blocking',
    section: timber({ b: 3.5, d: 5.5, width: 3.5, depth: 5.5 }),
    start: v(72, 0, 60),
    end: v(108, 0, 96),
    up: v(-Math.SQRT1_2, 0, Math.SQRT1_2),
  });
  const ties = [
    { part: 'KB1', along: 0 },
    { part: 'P1', along: 60 },
  ];
  const structure = { members: [brace, postBar()], joints: [joint({ ties, contact: { length: 0, width: 0 } })] };
  const k = 1000 * Math.SQRT1_2;
  const face: ConnectionPart = { kind: 'bearing', takes: ['push'], length: 3.5, width: 1.5 };
  const one = { alongGrain: 1, acrossGrain: 1, spacingAlong: 0, spacingAcross: 0, end: 6, edge: 2.5 };
  const bolt = plates({ takes: ['pull'], plates: undefined, upper: one, lower: { ...one, end: 36 } });

  it('pushes into a notch and pulls on a bolt', () => {
    // Push down and away from the beam: 1000/5.25 = 190.48 psi; brace on its end 925·1.6 (by the test timber's Fc, CD 1.6); post
    // (Fc 1000·1.6, Fc⊥ 625) at 45°: 2·1600·625/2225 = 898.88: 190.48/898.88 = 0.2119.
    const push = run(row(face, bolt), { ...wind(-k, 0, -k), structure });
    expect(push.status, push.note).toBe('pass');
    expect(push.ratio).toBeCloseTo(0.2119, 4);
    // Pull: single shear of 1/2 in, brace along its grain (5600, 3.5 in), post at 45° (2·5600·3157.6/8757.6 = 4038, 5.5 in).
    const pull = run(row(face, bolt), { ...wind(k, 0, k), structure });
    expect(pull.lines).toContainEqual(expect.objectContaining({ symbol: 'Fe', value: expect.closeTo(4038.2, 0) }));
    expect(pull.ratio).toBeCloseTo(1.0727, 4);
    // Nobody holds the pull without the bolt.
    expect(run(row(face), { ...wind(k, 0, k), structure }).note).toContain('nothing holds 1000 lb pull');
  });

  it('pushes and pulls along itself where it carries a beam, too', () => {
    // The head of the brace under a level beam, 1000 lb along it: what the beam hands down is the push.
    const beam = bar({ id: 'B1', start: v(0, 0, 101.5), end: v(240, 0, 101.5) });
    const head = {
      members: [beam, { ...brace, role: 'brace' as const }],
      joints: [
        joint({
          kind: 'brace-to-beam',
          ties: [
            { part: 'B1', along: 108 },
            { part: 'KB1', along: 51 },
          ],
          contact: { length: 0, width: 0 },
        }),
      ],
    };
    // 1000/5.25 = 190.48 psi on the brace's end, Fc 925·1.6; on the beam at 45° as above on the post.
    const push = run(row(face), { ...wind(-k, 0, -k), structure: head });
    expect(push.status, push.note).toBe('pass');
    expect(push.lines).toContainEqual(expect.objectContaining({ symbol: 'P,push', value: expect.closeTo(1000, 3) }));
    expect(push.lines).toContainEqual(expect.objectContaining({ symbol: 'fc', value: expect.closeTo(190.48, 2) }));
    expect(run(row(face), { ...wind(k, 0, k), structure: head }).note).toContain('nothing holds 1000 lb pull');
  });
});
