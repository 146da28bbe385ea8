import { describe, expect, it } from 'vitest';
import { bounds, volume } from '../../base/geometry/index.js';
import { distance } from '../../base/vec.js';
import type { BraceSpec, Project } from '../../project/model.js';
import type { Member } from '../model.js';
import { piecesOf } from '../pieces/index.js';
import { place } from '../place.js';
import { bracedGable, KNEE, looseGable } from '../testing-braced.js';
import { kneeShape } from './knee.js';

describe('the shape of a knee brace', () => {
  it('at 45° with a 3 1/2" face on a post 5 1/2" wide', () => {
    const k = kneeShape({ run: 30, rise: 30, half: 2.75, depth: 3.5 });
    expect(k.working).toBeCloseTo(30 * Math.SQRT2, 9);
    expect(k.foot).toEqual({ x: expect.closeTo(2.75, 9), y: expect.closeTo(-27.25, 9) });
    expect(k.bevelAtPost).toBeCloseTo(Math.PI / 4, 9);
    // At 45° both bevels reach half the depth past the centre on either side: the long edge is longer by the depth.
    const centre = 27.25 * Math.SQRT2;
    expect(k.length).toBeCloseTo(centre + 3.5, 9);
    expect(k.shortest).toBeCloseTo(centre - 3.5, 9);
    for (const p of k.outline) expect(Math.min(Math.abs(p.x - 2.75), Math.abs(p.y))).toBeLessThan(1e-9);
  });

  it('steeper than 45°: the bevels are the slope and its complement', () => {
    const k = kneeShape({ run: 24, rise: 32, half: 2.75, depth: 5.5 });
    expect(k.working).toBeCloseTo(40, 9);
    expect(k.bevelAtPost).toBeCloseTo(Math.atan(32 / 24), 12);
    expect(k.bevelAtPost + k.bevelAtBeam).toBeCloseTo(Math.PI / 2, 12);
  });
});

const placed = (p: Project) => {
  const { value, issues } = place(p);
  return { value, codes: issues.filter((i) => i.severity === 'error').map((i) => i.code) };
};
const role = (members: readonly Member[], r: Member['role']): Member[] => members.filter((m) => m.role === r);

describe('a gable braced both ways', () => {
  const s = placed(bracedGable).value!;

  it('has a brace for each post along its beam and one at each end of each strut', () => {
    const braces = role(s.members, 'brace');
    expect(braces.length).toBe(8);
    // Eight alike: one mark, one row of the schedule.
    expect(new Set(braces.map((b) => b.mark))).toEqual(new Set(['KB1']));
    expect(role(s.members, 'strut').map((m) => m.mark)).toEqual(['ST1', 'ST2']);
    // Posts 18 ft apart, 5 1/2" wide.
    expect(role(s.members, 'strut')[0]!.length).toBeCloseTo(216 - 5.5, 9);
  });

  it('joins each brace to what it braces and to its post, each strut to two posts', () => {
    const count = (kind: string): number => s.joints.filter((j) => j.kind === kind).length;
    expect(count('brace-to-beam')).toBe(8);
    expect(count('brace-to-post')).toBe(8);
    expect(count('strut-to-post')).toBe(4);
    const post = role(s.members, 'post')[0]!;
    const j = s.joints.find((k) => k.kind === 'brace-to-post' && k.ties.at(-1)!.part === post.id)!;
    expect(j.ties.at(-1)!.along).toBeCloseTo(distance(post.start, post.end) - 30, 9);
  });

  it('joins a strut’s brace where its line of action meets the strut’s axis', () => {
    const j = s.joints.find((k) => k.kind === 'brace-to-beam' && k.ties[0]!.part === 'ST1')!;
    // Down to the underside 30 in 30, so up to the axis 3 3/4" further in.
    expect(Math.min(j.ties[0]!.along, 210.5 - j.ties[0]!.along)).toBeCloseTo(30 + 7.5 / 2 - 2.75, 9);
  });

  it('draws each brace from the face of the post to the underside, with the wood of its outline', () => {
    const beam = role(s.members, 'beam')[0]!;
    const pieces = piecesOf(s, bracedGable).filter((p) => p.role === 'brace');
    expect(pieces.length).toBe(8);
    for (const p of pieces) {
      expect(volume(p.solid)).toBeCloseTo(3.5 * 3.5 * 27.25 * Math.SQRT2, 6);
      expect(bounds(p.solid).max.z).toBeLessThan(beam.start.z - 6 + 1e-9);
    }
  });
});

describe('braces that cannot be', () => {
  const withBraces = (braces: (post: number) => readonly Partial<BraceSpec>[]): Project => ({
    ...looseGable,
    cover: {
      ...looseGable.cover,
      beams: looseGable.cover.beams.map((b, i) =>
        i > 0
          ? b
          : {
              ...b,
              posts: b.posts.map((p, k) => ({
                ...p,
                braces: braces(k).map((q) => ({ ...KNEE, toward: 'end' as const, path: p.path, ...q })),
              })),
            },
      ),
    },
  });
  const codesOf = (braces: (post: number) => readonly Partial<BraceSpec>[]) => placed(withBraces(braces)).codes;

  it('past the end of the beam', () => {
    expect(codesOf((k) => (k === 0 ? [{ toward: 'start' }] : []))).toEqual(['brace-past-beam']);
  });
  it('into the neighbour’s brace', () => {
    const long = 100;
    expect(codesOf((k) => [{ toward: k === 0 ? 'end' : 'start', run: long, rise: 60 }])).toEqual([
      'brace-crosses',
      'brace-crosses',
    ]);
    // Half of the 156 in bay each is the limit.
    expect(codesOf((k) => [{ toward: k === 0 ? 'end' : 'start', run: 78, rise: 60 }])).toEqual([]);
  });
  it('two the same way, down at the foot, too short to cut, of no section', () => {
    expect(codesOf((k) => (k === 0 ? [{}, {}] : []))).toEqual(['brace-twice']);
    expect(codesOf((k) => (k === 0 ? [{ rise: 90 }] : []))).toEqual(['brace-at-foot']);
    expect(codesOf((k) => (k === 0 ? [{ run: 6, rise: 8 }] : []))).toEqual(['brace-too-short']);
    expect(codesOf((k) => (k === 0 ? [{ section: 'none' }] : []))).toContain('section-unknown');
  });
  it('a strut along one beam, and struts whose braces cross', () => {
    const strut = (from: string, to: string, run: number): Project => ({
      ...looseGable,
      cover: {
        ...looseGable.cover,
        struts: [
          { mark: 'ST1', from, to, section: 'strut', braces: { ...KNEE, run, rise: 50 }, path: '/cover/struts/0' },
        ],
      },
    });
    expect(placed(strut('P1', 'P2', 30)).codes).toEqual(['strut-under-beam']);
    expect(placed(strut('P1', 'P3', 100)).codes).toEqual(['brace-crosses']);
    expect(placed(strut('P1', 'P3', 90)).codes).toEqual([]);
  });
  it('warns of a brace one would walk into, not of one beside its post', () => {
    const warned = (rise: number): readonly string[] =>
      place(withBraces((k) => (k === 0 ? [{ rise, run: 40 }] : []))).issues.map((i) => i.code);
    expect(warned(40)).toContain('brace-too-low');
    expect(place(withBraces((k) => (k === 0 ? [{ rise: 12, run: 12 }] : []))).issues.map((i) => i.code)).not.toContain(
      'brace-too-low',
    );
  });
});

describe('the foot of a post', () => {
  const based = (base: 'fixed' | 'embedded'): Project => ({
    ...looseGable,
    cover: {
      ...looseGable.cover,
      beams: looseGable.cover.beams.map((b) => ({ ...b, posts: b.posts.map((p) => ({ ...p, base })) })),
    },
  });
  it('fixed is held where it starts', () => {
    for (const m of role(placed(based('fixed')).value!.members, 'post'))
      expect(m.foot).toEqual({ kind: 'fixed', at: m.start.z });
  });
  it('embedded needs a footing that takes it into the ground', () => {
    expect(new Set(placed(based('embedded')).codes)).toEqual(new Set(['base-and-footing']));
  });
  it('is left out where it is pinned', () => {
    for (const m of role(placed(looseGable).value!.members, 'post')) expect(m.foot).toBeUndefined();
  });
});
