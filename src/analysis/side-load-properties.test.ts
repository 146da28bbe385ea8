/** Side load held by the posts: sharing by stiffness, symmetry, any sizes, and where an embedded post counts as held. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project, SectionChoice } from '../project/model.js';
import { bracedGable, fixedGable } from '../structure/testing-braced.js';
import { BALANCE_LIMIT } from './index.js';
import { footOf, most, POSTS, push, run, shearOf } from './testing-side-load.js';

describe('unequal lines', () => {
  /** B2's posts three times as stiff as B1's. */
  const stiff: Project = {
    ...fixedGable,
    cover: {
      ...fixedGable.cover,
      beams: fixedGable.cover.beams.map((b, i) => ({
        ...b,
        posts: b.posts.map((p) => ({ ...p, section: i === 0 ? 'post' : 'thick' })),
      })),
    },
    choices: {
      ...fixedGable.choices,
      sections: {
        ...fixedGable.choices.sections,
        thick: {
          kind: 'solid',
          size: '8x8',
          species: 'Douglas Fir-Larch',
          grade: 'No. 1',
          treatment: 'above-ground',
          incised: true,
          service: 'dry',
        },
      },
    },
  };

  it('share a push square to them by stiffness, through the links', () => {
    const r = run(stiff, undefined, push('x', 1000));
    const [thin, thick] = [
      ['P1', 'P2'],
      ['P3', 'P4'],
    ].map((line) => line.reduce((sum, p) => sum + shearOf(r, p, 'x', 0), 0));
    expect(thick! / thin!).toBeCloseTo((7.5 / 5.5) ** 4, 1);
    expect(thin! + thick!).toBeCloseTo(1000, 4);
  });

  it('turn about the stiffer line under a push along them, and still share it', () => {
    const r = run(stiff, undefined, push('y', 1000));
    const [thin, thick] = [shearOf(r, 'P1', 'y', 0), shearOf(r, 'P3', 'y', 0)];
    expect(thick).toBeGreaterThan(thin);
    // The roof twists, so the posts also push each other across.
    expect(Math.abs(shearOf(r, 'P1', 'x', 0))).toBeGreaterThan(1);
  });
});

describe('a mirrored project', () => {
  const uneven: Project = {
    ...bracedGable,
    cover: {
      ...bracedGable.cover,
      beams: bracedGable.cover.beams.map((b, i) =>
        i === 0
          ? b
          : {
              ...b,
              posts: b.posts.map((p) => ({ ...p, braces: p.braces!.map((k) => ({ ...k, run: 36, rise: 24 })) })),
            },
      ),
    },
  };
  /** x to −x: the beams change sides and keep their posts’ names. */
  const mirrored: Project = {
    ...uneven,
    cover: {
      ...uneven.cover,
      beams: uneven.cover.beams.map((b) => ({ ...b, from: { ...b.from, x: -b.from.x }, to: { ...b.to, x: -b.to.x } })),
      roofs: uneven.cover.roofs.map((q) => (q.kind === 'gable' ? { ...q, beams: ['B2', 'B1'] } : q)),
    },
  };
  it('has mirrored effects', () => {
    const [a, b] = [run(uneven), run(mirrored)];
    const twin = (id: string): string => id.replace(/^W([+-])x/, (_, s) => `W${s === '+' ? '-' : '+'}x`);
    a.effects.cases.forEach((id, i) => {
      const k = b.effects.cases.indexOf(twin(id));
      expect(k).toBeGreaterThanOrEqual(0);
      for (const p of POSTS) {
        const [f, g] = [a, b].map((r) => r.effects.footings.get(footOf(r, p))!);
        expect(g!.force[k]!.x).toBeCloseTo(-f!.force[i]!.x, 4);
        expect(g!.force[k]!.y).toBeCloseTo(f!.force[i]!.y, 4);
        expect(g!.force[k]!.z).toBeCloseTo(f!.force[i]!.z, 4);
        const [e, o] = [a, b].map((r) => r.effects.members.get(p)!);
        expect(most(o!.m[k]!)).toBeCloseTo(most(e!.m[i]!), 3);
        expect(most(o!.mWeak[k]!)).toBeCloseTo(most(e!.mWeak[i]!), 3);
      }
    });
  });
});

describe('any sizes of braces and posts', () => {
  it('close, stay finite, and hold the post of each brace in balance about its cap', () => {
    fc.assert(
      fc.property(
        fc.record({
          run: fc.integer({ min: 18, max: 60 }),
          rise: fc.integer({ min: 18, max: 60 }),
          bearing: fc.integer({ min: 96, max: 150 }),
          size: fc.constantFrom('6x6', '8x8'),
        }),
        ({ run: reach, rise, bearing, size }) => {
          const { cover, choices } = bracedGable;
          const r = run({
            ...bracedGable,
            cover: {
              ...cover,
              roofs: cover.roofs.map((q) => ({ ...q, bearing })),
              beams: cover.beams.map((b) => ({
                ...b,
                posts: b.posts.map((p) => ({ ...p, braces: p.braces!.map((k) => ({ ...k, run: reach, rise })) })),
              })),
            },
            choices: {
              ...choices,
              sections: {
                ...choices.sections,
                post: { ...(choices.sections.post as Extract<SectionChoice, { kind: 'solid' }>), size },
              },
            },
          });
          expect(r.effects.failure).toBeUndefined();
          for (const b of r.effects.balance) expect(b.errorReactions).toBeLessThan(BALANCE_LIMIT);
          for (const brace of r.structure.members.filter((m) => m.role === 'brace' && m.path.includes('/beams/'))) {
            const joint = r.structure.joints.find((j) => j.kind === 'brace-to-post' && j.ties[0]!.part === brace.id)!;
            const post = r.structure.members.find((m) => m.id === joint.ties[1]!.part)!;
            r.loads.cases.forEach((_c, i) => {
              const V = shearOf(r, post.id, 'y', i);
              const Hb = r.effects.joints.get(joint.id)!.force[i]!.y;
              const size = Math.max(1, Math.abs(V * (post.end.z - post.start.z)));
              expect(Math.abs(V * (post.end.z - post.start.z) - Hb * rise) / size).toBeLessThan(1e-3);
            });
          }
        },
      ),
      { numRuns: 12 },
    );
  });
});

describe('where an embedded post counts as held', () => {
  /**
   * A rigid post pushed at height `h` (in depths above ground) in soil whose stiffness grows with depth: p(z) ~ z·(z0 − z).
   * Greatest moment by plain statics over V·(h + 1/3).
   */
  function share(h: number): number {
    const z0 = (1 / 4 + h / 3) / (1 / 3 + h / 2);
    const total = z0 / 2 - 1 / 3;
    const taken = (z: number): number => (z0 * z * z) / 2 / total - z ** 3 / 3 / total;
    const STEPS = 20000;
    let moment = h;
    let greatest = h;
    for (let i = 0; i < STEPS; i++) {
      moment += (1 - taken((i + 0.5) / STEPS)) / STEPS;
      greatest = Math.max(greatest, moment);
    }
    // The foot itself carries nothing.
    expect(Math.abs(moment)).toBeLessThan(1e-3);
    return greatest / (h + 1 / 3);
  }
  it('a third of the depth down overstates the moment of a rigid post in stiffening soil', () => {
    for (const h of [0.25, 0.5, 1, 2, 3, 5]) expect(share(h)).toBeLessThan(1);
  });
});
