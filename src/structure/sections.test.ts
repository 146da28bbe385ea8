import { describe, expect, it } from 'vitest';
import { makeSection, woodAcross } from './sections.js';

const origin = { choice: 'beam', path: '/choices/sections/beam' };
const dry = { treatment: 'none', incised: false, service: 'dry' } as const;
const dfl = { species: 'Douglas Fir-Larch', ...dry };
/** NDS Supplement 3.1.3 with G = 0.5 and 15 % moisture, lb/in³. */
const DFL_WEIGHT = (((62.4 * 0.5) / (1 + 0.009 * 0.5 * 15)) * 1.15) / 1728;

const section = (c: Parameters<typeof makeSection>[0]) => {
  const made = makeSection(c as never, origin);
  if (!made.ok) throw new Error(made.message);
  return made.section;
};

describe('sections', () => {
  it('dresses sawn lumber', () => {
    const s = section({ kind: 'solid', size: '2x10', grade: 'No. 2', ...dfl });
    expect(s).toMatchObject({
      b: 1.5,
      d: 9.25,
      width: 1.5,
      depth: 9.25,
      family: 'sawn-dimension',
      sizeClass: 'dimension',
      label: '2x10 DF-L No. 2',
    });
    // NDS Supplement Table 4A, Douglas Fir-Larch No. 2: Fb 900 psi, E 1.6e6 psi.
    expect(s.values).toMatchObject({ Fb: 900, E: 1.6e6, G: 0.5 });
    expect(s.weight).toBeCloseTo(DFL_WEIGHT * 1.5 * 9.25, 9);
  });

  it('tells a post from a beam by its shape', () => {
    // More than 2 in wider than thick: beams and stringers (NDS Supplement Table 4D).
    expect(section({ kind: 'solid', size: '6x6', grade: 'No. 1', ...dfl })).toMatchObject({
      b: 5.5,
      d: 5.5,
      sizeClass: 'posts-timbers',
      family: 'sawn-timber',
    });
    expect(section({ kind: 'solid', size: '6x10', grade: 'No. 1', ...dfl })).toMatchObject({
      b: 5.5,
      d: 9.5,
      sizeClass: 'beams-stringers',
    });
  });

  it('counts plywood strips in width and weight, not in strength', () => {
    const s = section({
      kind: 'built-up',
      plies: 3,
      ply: '2x10',
      spacers: 2,
      spacerThickness: 0.5,
      fastening: '',
      grade: 'No. 2',
      ...dfl,
    });
    expect(s).toMatchObject({
      b: 4.5,
      width: 5.5,
      d: 9.25,
      plies: 3,
      plyWidth: 1.5,
      label: '(3) 2x10 + (2) 1/2" ply DF-L No. 2',
    });
    // Plywood 3.2 psf per inch of thickness.
    expect(s.weight).toBeCloseTo(DFL_WEIGHT * 4.5 * 9.25 + (3.2 / 144) * 1 * 9.25, 9);
  });

  it('takes glulam and veneer lumber as given', () => {
    expect(
      section({ kind: 'glulam', combination: '24F-V4', width: 5.5, depth: 12, treatment: 'none', service: 'dry' }),
    ).toMatchObject({
      label: '5 1/2" x 12" 24F-V4 glulam',
      family: 'glulam',
      values: { Fb: 2400, FbNeg: 1850 },
    });
    expect(
      section({
        kind: 'lvl',
        grade: '2.0E',
        plies: 2,
        thickness: 1.75,
        depth: 11.875,
        fastening: '',
        treatment: 'none',
        service: 'dry',
      }),
    ).toMatchObject({ b: 3.5, plies: 2, plyWidth: 1.75 });
  });

  it.each([
    { kind: 'solid', size: '2-by-ten', grade: 'No. 2', ...dfl },
    { kind: 'solid', size: '2x10', grade: 'No. 7', ...dfl },
    { kind: 'built-up', plies: 1, ply: '2x10', spacers: 0, spacerThickness: 0, fastening: '', grade: 'No. 2', ...dfl },
    {
      kind: 'built-up',
      plies: 2,
      ply: '2x10',
      spacers: 2,
      spacerThickness: 0.5,
      fastening: '',
      grade: 'No. 2',
      ...dfl,
    },
    { kind: 'glulam', combination: '99F', width: 5.5, depth: 12, treatment: 'none', service: 'dry' },
    {
      kind: 'lvl',
      grade: '9.9E',
      plies: 2,
      thickness: 1.75,
      depth: 12,
      fastening: '',
      treatment: 'none',
      service: 'dry',
    },
  ] as const)('refuses %o', (choice) => {
    const made = makeSection(choice as never, origin);
    expect(made.ok).toBe(false);
  });
});

describe('wood across a bearing', () => {
  it.each([
    // (3) 1-1/2 in plies with (2) 1/2 in strips on a 5-1/2 in post: the plies alone; on a 3-1/2 in one the middle ply and 1/2 in of each outer.
    [4.5, 5.5, 5.5, 4.5],
    [4.5, 5.5, 3.5, 2.5],
    [5.5, 5.5, 3.5, 3.5],
    [1.5, 1.5, 5.5, 1.5],
  ])('of %d in wood in %d in on %d in is %d in', (b, width, across, want) => {
    expect(woodAcross({ b, width }, across)).toBeCloseTo(want, 12);
  });
});
