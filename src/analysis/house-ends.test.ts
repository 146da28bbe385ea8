/** Beams held by the house: loads come down where statics says, and nothing is lost at any joint. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { BeamEnd, Project } from '../project/model.js';
import { place } from '../structure/place.js';
import { change, houseEndsProject } from '../structure/testing.js';
import { analyse, BALANCE_LIMIT } from './index.js';

const worked = (p: Project) => {
  const placed = place(p);
  const structure = placed.value!;
  const loads = buildLoads(p, structure).value!;
  return { structure, loads, placed, out: analyse(p, structure, loads) };
};

describe('beams on one post and the house', () => {
  const { structure, loads, out } = worked(houseEndsProject);
  const effects = out.value!;
  const D = loads.cases.findIndex((c) => c.kind === 'D');

  it('closes', () => {
    expect(effects.failure).toBeUndefined();
    expect(out.issues).toEqual([]);
  });

  it('splits the beam by the lever between house and post', () => {
    // B2, 180 long, held at 0 and 174. Own weight and its trusses by moments about the post.
    const b = structure.members.find((m) => m.id === 'B2')!;
    let moment = b.section.weight * 180 * (174 - 90);
    for (const j of structure.joints) {
      if (j.kind !== 'truss-to-beam' || j.ties[1]!.part !== 'B2') continue;
      moment += -effects.joints.get(j.id)!.force[D]!.z * (174 - j.ties[1]!.along);
    }
    const wall = structure.joints.find((j) => j.kind === 'beam-to-wall')!;
    expect(-effects.joints.get(wall.id)!.force[D]!.z).toBeCloseTo(moment / 174, 3);
  });

  it('hands the post in the wall its beam and its own weight, and no footing', () => {
    const z = (kind: string) => effects.joints.get(structure.joints.find((j) => j.kind === kind)!.id)!.force[D]!.z;
    const post = structure.members.find((m) => m.id === 'P3')!;
    expect(z('post-to-house')).toBeCloseTo(z('beam-to-wall-post') - post.section.weight * post.length, 3);
    expect([...effects.footings.keys()].sort()).toEqual(['F1', 'F2']);
  });
});

describe('any span and bearing', () => {
  const projects: fc.Arbitrary<Project> = fc
    .record({
      run: fc.integer({ min: 100, max: 240 }),
      post: fc.integer({ min: 0, max: 30 }),
      bearing: fc.integer({ min: 84, max: 93 }),
      foot: fc.boolean(),
      snow: fc.constantFrom(0, 30),
    })
    .map((g) =>
      change(houseEndsProject, {
        basis: { snow: { ground: { ...houseEndsProject.basis.snow.ground, value: g.snow as never } } },
        cover: {
          beams: (old) =>
            old.map((b, i) => {
              const start = b.ends!.start!;
              const length = g.run - b.from.y;
              const end: BeamEnd =
                i === 0 && g.foot
                  ? ({ ...start, foot: { kind: 'footing', footing: 'pier', footingMark: 'F9' } } as BeamEnd)
                  : start;
              return {
                ...b,
                to: { x: b.to.x, y: g.run },
                posts: b.posts.map((p) => ({ ...p, at: length - 6 - g.post })),
                ends: { start: end },
              };
            }),
          roofs: (old) => old.map((r) => ({ ...r, bearing: g.bearing, to: g.run - 3 })),
        },
      }),
    );

  it('loses no load at any joint', () => {
    fc.assert(
      fc.property(projects, (p) => {
        const { structure, out } = worked(p);
        const effects = out.value!;
        expect(effects.failure).toBeUndefined();
        for (const b of effects.balance) {
          expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
          expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
        }
        const heavy = effects.cases.indexOf('D');
        for (const post of structure.members.filter((m) => m.role === 'post')) {
          const top = structure.joints.filter((j) => j.ties[1]!.part === post.id);
          const foot = structure.joints.find((j) => j.ties[0]!.part === post.id)!;
          for (let c = 0; c < effects.cases.length; c++) {
            const own = c === heavy ? post.section.weight * post.length : 0;
            const down = top.reduce((s, j) => s + effects.joints.get(j.id)!.force[c]!.z, 0) - own;
            expect(effects.joints.get(foot.id)!.force[c]!.z).toBeCloseTo(down, 2);
          }
        }
      }),
      { numRuns: 25, seed: 20261125 },
    );
  });
});
