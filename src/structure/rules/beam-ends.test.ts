import { describe, expect, it } from 'vitest';
import type { BeamEnd, Project } from '../../project/model.js';
import { place } from '../place.js';
import { change, given, houseEndsProject, shedProject } from '../testing.js';

type End = Partial<BeamEnd> | Record<string, unknown>;
const thin = { kind: 'solid', size: '4x4', species: 'Douglas Fir-Larch', grade: 'No. 1' } as const;
const withEnd = (beam: number, by: End, more: Record<string, unknown> = {}): Project =>
  change(houseEndsProject, {
    choices: {
      sections: (old) => ({ ...old, thin: { ...thin, treatment: 'none', incised: false, service: 'dry' } as const }),
    },
    cover: {
      beams: (old) =>
        old.map((b, i) =>
          i === beam ? { ...b, ...more, ends: { start: { ...b.ends!.start!, ...by } as BeamEnd } } : b,
        ),
    },
  });
const codes = (p: Project) => place(p).issues.map((i) => `${i.severity} ${i.code}`);

const clad = (cladding: 'brick-veneer' | 'stone-veneer'): Project =>
  change(houseEndsProject, {
    house: { walls: (old) => old.map((w) => ({ ...w, build: { ...w.build, cladding } })) },
  });

describe('a beam held by the house', () => {
  const { value, issues } = place(houseEndsProject);
  const structure = value!;
  it('stands without faults on one post of the yard', () => {
    expect(issues.filter((i) => i.severity !== 'note')).toEqual([]);
  });

  it('puts the post in the wall under the last of the beam, its heights consistent', () => {
    // Bearing 93; built-up 2x12: underside 93 − 11.25 = 81.75; foundation −1.5: post 83.25 long. 4x6: 3.5 into the wall.
    const post = structure.members.find((m) => m.id === 'P3')!;
    expect(post.length).toBeCloseTo(83.25, 9);
    expect(post.start).toMatchObject({ x: -108, y: -1.75, z: -1.5 });
    expect(post.end.z).toBeCloseTo(81.75, 9);
  });

  it('ties beam to post, post to foundation, and the other beam to the wall', () => {
    const kinds = structure.joints.filter((j) => /wall|house/.test(j.kind));
    expect(kinds.map((j) => [j.kind, ...j.ties.map((t) => t.part)])).toEqual([
      ['beam-to-wall-post', 'B1', 'P3'],
      ['beam-to-wall', 'B2', 'HW1'],
      ['post-to-house', 'P3', 'HW1'],
    ]);
    // Wood on wood: 3.5 along the beam, 4.5 of structural plies across.
    expect(kinds[0]!.contact).toEqual({ length: 3.5, width: 4.5 });
    expect(kinds[1]!.contact).toEqual({ length: 0, width: 0 });
  });

  it('brings its own footing where the file gives one', () => {
    const p = withEnd(0, { foot: { kind: 'footing', footing: 'pier', footingMark: 'F9' } });
    const made = place(p);
    expect(made.value!.footings.find((f) => f.id === 'F9')!.at).toEqual({ x: -108, y: -1.75 });
    expect(codes(p)).toContain('warning footing-under-house');
    expect(made.value!.joints.some((j) => j.kind === 'post-to-footing' && j.ties[1]!.part === 'F9')).toBe(true);
  });
});

describe('where it may not be', () => {
  it.each([
    ['short of the wall', 1, {}, { from: { x: 108, y: 2 } }, 'error beam-end-off-wall'],
    ['the post sticking out', 0, {}, { from: { x: -108, y: -1 } }, 'error post-not-in-wall'],
    ['the post behind the studs', 0, {}, { from: { x: -108, y: -7 } }, 'error post-not-in-wall'],
    ['past the end of its wall', 1, { wall: 1 }, {}, 'error beam-end-off-wall'],
    ['on a fascia', 1, { into: 'fascia' }, {}, 'error beam-on-nothing'],
    ['on a cantilever', 1, { into: 'cantilever' }, {}, 'error beam-on-nothing'],
    ['on a floor band', 1, { into: 'band' }, {}, 'error beam-on-nothing'],
    ['on one stud', 1, { into: 'single-stud' }, {}, 'error beam-on-nothing'],
    ['on nobody knows what', 1, { into: 'unknown' }, {}, 'error beam-on-nothing'],
    ['on a post narrower than the beam', 0, { section: 'thin' }, {}, 'warning post-narrower-than-beam'],
    ['not verified', 1, { verified: given(false) }, {}, 'warning beam-end-unverified'],
    ['on one post with no house', 1, undefined, { ends: undefined }, 'error beam-needs-two-posts'],
  ] as const)('%s', (_, beam, by, more, code) => {
    const p = by
      ? withEnd(beam, by, more)
      : change(houseEndsProject, {
          cover: { beams: (old) => old.map((b, i) => (i === beam ? { ...b, ...more } : b)) },
        });
    expect(codes(p)).toContain(code);
  });

  it('on veneer, and never for a post behind it', () => {
    for (const c of ['brick-veneer', 'stone-veneer'] as const) {
      const found = codes(clad(c));
      expect(found.filter((x) => x === 'error beam-on-veneer')).toHaveLength(1);
    }
  });

  it('through a window or with its post in a door', () => {
    const hole = (sill: number, head: number) =>
      change(houseEndsProject, {
        house: {
          openings: (old) => [
            ...old,
            { ...old[0]!, mark: 'W9', kind: 'window' as const, offset: 264 - 120, width: 24, sill, head },
          ],
        },
      });
    expect(codes(hole(60, 88))).toContain('error beam-crosses-opening');
    expect(codes(hole(0, 80))).toContain('error post-in-opening');
  });

  it('through the top plates', () => {
    const high = change(houseEndsProject, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, bearing: 96 })) },
    });
    expect(codes(high)).toContain('error beam-cuts-plate');
  });
});

describe('a ledger in studs', () => {
  it('is fastened at every stud or every second', () => {
    const at = (spacing: number) =>
      codes(
        change(shedProject, {
          cover: {
            ledgers: (old) => [
              {
                ...old[0]!,
                fastening: {
                  kind: 'lag',
                  diameter: 0.375,
                  length: 6,
                  washer: 1,
                  spacing,
                  rows: [2],
                  into: 'studs',
                  through: 0.5,
                  standoff: 0,
                  framing: { species: 'Spruce-Pine-Fir', depth: 5.5, bottom: undefined, top: undefined },
                  basis: '',
                  verified: given(true),
                  path: '/cover/ledgers/0/fastening',
                },
              },
            ],
          },
        }),
      );
    expect(at(12)).toContain('error fasteners-off-studs');
    expect(at(16)).not.toContain('error fasteners-off-studs');
    expect(at(32)).not.toContain('error fasteners-off-studs');
  });
});

describe('the other end of such a beam', () => {
  it('still may not run into the house', () => {
    const p = change(houseEndsProject, {
      cover: { beams: (old) => old.map((b, i) => (i === 1 ? { ...b, from: { x: 108, y: -30 } } : b)) },
    });
    expect(codes(p)).toContain('error beam-in-wall');
  });
});
