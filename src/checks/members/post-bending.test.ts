import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { Project } from '../../project/model.js';
import type { Joint, Member } from '../../structure/model.js';
import { gableProject } from '../../structure/testing.js';
import type { CheckContext } from '../contract.js';
import { bar, contextFor, forcesOf, joint, joist, postBar } from '../testing.js';
import { slendernessCheck } from './braces.js';
import { combinedCheck } from './combined.js';
import { postCombined, postShear } from './post-bending.js';
import { postEnds } from './post-ends.js';
import { postSlenderness } from './posts.js';

const lateral = (x: Project['cover']['lateral']['x'], y = x): Project => ({
  ...gableProject,
  cover: { ...gableProject.cover, lateral: { x, y } },
});

const knee: Member = bar({
  id: 'KB1-01',
  mark: 'KB1',
  role: 'brace',
  section: joist(),
  start: { x: 74.75, y: 0, z: 68.75 },
  end: { x: 102, y: 0, z: 96 },
  up: { x: -Math.SQRT1_2, y: 0, z: Math.SQRT1_2 },
  unbraced: { top: 42.4, bottom: 42.4 },
});
const onPost: Joint = joint({
  id: 'J9',
  kind: 'brace-to-post',
  ties: [
    { part: 'KB1-01', along: 0 },
    { part: 'P1', along: 66 },
  ],
});

/** A 6x6 8 ft high, bent in its first plane by wind only: cases D, S, W. */
function bent(
  project: Project,
  change: Partial<Member>,
  n: number,
  m: number,
  w: number,
  members: readonly Member[] = [],
  joints: readonly Joint[] = [],
): CheckContext {
  return contextFor({
    project,
    structure: { members: [postBar(change), ...members], joints: [...joints] },
    members: [
      forcesOf('P1', 3, {
        stations: [0, 48, 96],
        n: [
          [n, n, n],
          [0, 0, 0],
          [0, 0, 0],
        ],
        m: [
          [0, 0, 0],
          [0, 0, 0],
          [m, m / 2, 0],
        ],
        mWeak: [
          [0, 0, 0],
          [0, 0, 0],
          [w, w / 2, 0],
        ],
        v: [
          [0, 0, 0],
          [0, 0, 0],
          [m / 96, m / 96, m / 96],
        ],
      }),
    ],
  });
}
const P1 = { id: 'P1', path: '/cover/beams/0/posts/0' };

describe('how a post may buckle', () => {
  const ends = (project: Project, change: Partial<Member> = {}, joints: readonly Joint[] = []) => {
    const post = postBar(change);
    return postEnds(contextFor({ project, structure: { members: [post, knee], joints: [...joints] } }), post);
  };
  it('held by the house: 1.0 both ways, as ever', () => {
    const { one, two } = ends(lateral('house'));
    expect([one.Ke, one.l, two.Ke, two.l]).toEqual([1, 96, 1, 96]);
  });
  it('a knee brace in the plane of x: 2.4 there, 1.0 where it leans on others', () => {
    const { one, two } = ends(lateral('knee-braces'), {}, [onPost]);
    expect([one.Ke, two.Ke]).toEqual([2.4, 1]);
  });
  it('a held foot: 2.1 both ways, from where it is held', () => {
    const { one, two } = ends(lateral('fixed-posts'), { foot: { kind: 'embedded', at: -16 } });
    expect([one.Ke, one.l, two.Ke, two.l]).toEqual([2.1, 112, 2.1, 112]);
  });
  it('only in the direction the posts hold', () => {
    const { one, two } = ends(lateral('fixed-posts', 'house'), { foot: { kind: 'fixed', at: 0 } });
    expect([one.Ke, two.Ke]).toEqual([2.1, 1]);
  });
  it('makes a 6x6 of 12 ft too slender as a cantilever: 2.1·144/5.5 = 55', () => {
    const tall = { foot: { kind: 'fixed', at: 0 }, end: { x: 72, y: 0, z: 144 } } as const;
    const f = postSlenderness.run(
      P1,
      contextFor({ project: lateral('fixed-posts'), structure: { members: [postBar(tall)] } }),
    );
    expect(f.demand).toBeCloseTo(54.98, 2);
    expect(f.status).toBe('fail');
  });
});

describe('a post bent by side load', () => {
  it('Eq. 15.4-1 by pocket calculator: D + 0.6W on a cantilever of 8 ft', () => {
    const ctx = bent(lateral('fixed-posts'), { foot: { kind: 'fixed', at: 0 } }, -3000, 20000, 0);
    const f = postCombined.run(P1, ctx);
    // A 30.25, S 27.73. fc = 99.17; fb1 = 0.6·20000/27.73 = 432.75. le/d = 2.1·96/5.5 = 36.65;
    // FcE = 0.822·580000/36.65² = 354.8; Fc* = 1600, α = 0.22177; CP = 0.76361 − √(0.58310 − 0.27721) = 0.21053;
    // Fc' = 336.9; Fb' = 1920. Off centre in the plane of bending, 6e/d = 1:
    // (99.17/336.9)² + (432.75 + 99.17·1.0654)/(1920·0.72049) = 0.08667 + 0.38921 = 0.4759.
    expect(f.ratio).toBeCloseTo(0.476, 2);
    expect(f.combination).toBe('D+0.6W');
    expect(f.status).toBe('pass');
  });

  it('both axes count: the same moment about the other axis adds its share', () => {
    const one = postCombined.run(P1, bent(lateral('fixed-posts'), { foot: { kind: 'fixed', at: 0 } }, -3000, 20000, 0));
    const two = postCombined.run(
      P1,
      bent(lateral('fixed-posts'), { foot: { kind: 'fixed', at: 0 } }, -3000, 20000, 20000),
    );
    // fb2/(Fb'·(1 − fc/FcE2)) with the load off centre about one of them: 432.75/(1920·0.7205) = 0.3128 more.
    expect(two.ratio - one.ratio).toBeCloseTo(0.313, 2);
  });

  it("in tension: ft/Ft' + fb/Fb* of Eq. 3.9-1", () => {
    const ctx = bent(lateral('fixed-posts'), { foot: { kind: 'fixed', at: 0 } }, 2000, -20000, 0);
    const rec = makeRecorder();
    const f = postCombined.run(P1, ctx, rec);
    // 2000/30.25/(825·1.6) + 432.75/1920 under D + 0.6W.
    expect(f.ratio).toBeCloseTo(66.12 / 1320 + 432.75 / 1920, 3);
    expect(rec.lines.some((l) => l.kind === 'step' && l.clause === 'NDS 2018 Eq. 3.9-1')).toBe(true);
  });

  it('fails an overloaded one and names a cure', () => {
    const f = postCombined.run(P1, bent(lateral('fixed-posts'), { foot: { kind: 'fixed', at: 0 } }, -3000, 90000, 0));
    expect(f.status).toBe('fail');
    expect(f.note).toContain('thicker');
  });

  it('shear: 1.5·V/(b·d) over Fv·CD', () => {
    const f = postShear.run(P1, bent(lateral('fixed-posts'), {}, -3000, 20000, 0));
    const V = 0.6 * (20000 / 96);
    expect(f.demand).toBeCloseTo((1.5 * V) / 30.25, 6);
    expect(f.capacity).toBeCloseTo(170 * 1.6, 6);
  });

  it('is not asked of a bar in compression', () => {
    const ctx = contextFor({
      structure: { members: [postBar()] },
      members: [
        forcesOf('P1', 3, {
          stations: [0, 96],
          n: [
            [-1, -1],
            [0, 0],
            [0, 0],
          ],
        }),
      ],
    });
    expect(postCombined.subjects(ctx)).toEqual([]);
  });
});

describe('slenderness of braces', () => {
  it('takes the working length over the thinner side', () => {
    const ctx = contextFor({
      structure: { members: [knee] },
      members: [forcesOf('KB1-01', 3, { stations: [0, 38], spans: [{ from: 0, to: 38, length: 42.4, kind: 'span' }] })],
    });
    const check = slendernessCheck('brace', '');
    const f = check.run({ id: 'KB1', path: '' }, ctx);
    expect(f.demand).toBeCloseTo(42.4 / 1.5, 9);
  });
  it('is the same length in the check of its forces, the longest of the mark', () => {
    const long = { ...knee, id: 'KB1-02' };
    const ends = (id: string, length: number, n: readonly (readonly number[])[]) =>
      forcesOf(id, 3, { stations: [0, 38], n, spans: [{ from: 0, to: 38, length, kind: 'span' }] });
    const ctx = contextFor({
      structure: { members: [knee, long] },
      members: [
        ends('KB1-01', 42.4, [
          [-600, -600],
          [-1800, -1800],
          [2800, 2800],
        ]),
        ends('KB1-02', 47.7, []),
      ],
    });
    const rec = makeRecorder();
    const f = combinedCheck('brace', '').run({ id: 'KB1', path: '' }, ctx, rec);
    const steps = rec.lines.flatMap((l) => (l.kind === 'step' ? [l] : []));
    expect(steps.find((l) => l.symbol === 'l')).toMatchObject({ value: 47.7 });
    const slender = steps.filter((l) => l.symbol === 'le/d').map((l) => l.value);
    expect(Math.max(...slender)).toBeCloseTo(47.7 / 1.5, 9);
    // Pushed with 2400 lb under D + S and pulled with 0.6·2800 − 0.6·600 = 1320 lb: the push governs by fc/Fc'.
    expect(f.combination).toBe('D+S');
    const { section } = knee;
    expect(f.ratio).toBeCloseTo(
      2400 / (section.b * section.d) / steps.filter((l) => l.symbol === "Fc'").at(-1)!.value,
      9,
    );
  });
});
