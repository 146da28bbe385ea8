/** Outlookers: shares that add up, a lever worked by hand, and a balance that closes by the second road. */
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { Project } from '../project/model.js';
import { place } from '../structure/place.js';
import { change } from '../structure/testing.js';
import { rakeProject, rakeShedProject, rakeTrussProject } from '../structure/testing-rake.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';

function run(p: Project) {
  const placed = place(p);
  const structure = placed.value!;
  expect(structure, placed.issues.map((i) => `${i.code} ${i.path}`).join(', ')).toBeDefined();
  const loads = buildLoads(p, structure).value!;
  const { value, issues } = analyse(p, structure, loads);
  expect(issues).toEqual([]);
  expect(value!.failure).toBeUndefined();
  return { structure, loads, effects: value! };
}

describe.each([
  ['rafters', rakeProject],
  ['trusses', rakeTrussProject],
] as const)('a rake on outlookers under %s', (_, project) => {
  const { structure, loads, effects } = run(project);

  it('balances every case by the second road', () => {
    for (const b of effects.balance) {
      expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
    }
  });

  it('shares every strip out to exactly one', () => {
    for (const s of structure.surfaces) {
      const us = s.outline.map((p) => p.x);
      const [w0, w1] = [Math.min(...us), Math.max(...us)];
      const strips = structure.members.flatMap((m) => m.strips.filter((k) => k.surface === s.id));
      for (let u = w0 + 0.37; u < w1; u += 1.93) {
        const sum = strips.filter((k) => k.u0 < u && u < k.u1).reduce((t, k) => t + (k.share ?? 1), 0);
        expect(sum, `${s.id} at ${u}`).toBeCloseTo(1, 12);
      }
    }
  });

  it('lifts the inner joint by the lever of the overhang', () => {
    // 18 in over a 24 in bay: of each pound on the rake the end frame takes 1 + 9/24, the next frame −9/24.
    const live = loads.cases.findIndex((c) => c.kind === 'Lr');
    const psf = loads.cases[live]!.areas[0]!.psf;
    const look = structure.members.find((m) => m.rake)!;
    const slope = structure.surfaces[0]!.slope;
    const plan = (18 * (look.rake!.v1 - look.rake!.v0) * Math.cos(slope)) / 144;
    const joints = structure.joints.filter((j) => j.ties[0]!.part === look.id);
    const inner = joints.find((j) => j.ties[0]!.along < 1e-6)!;
    const outer = joints.find((j) => j.ties[0]!.along > 1)!;
    expect(effects.joints.get(outer.id)!.force[live]!.z).toBeCloseTo(-psf * plan * (1 + 9 / 24), 6);
    expect(effects.joints.get(inner.id)!.force[live]!.z).toBeCloseTo((psf * plan * 9) / 24, 6);
  });

  it('brings to the frames what the joints of the outlookers hand over', () => {
    // Sum over the outlookers of one end: the frames' own extra beside their strips, case by case.
    const surface = structure.surfaces[0]!;
    const live = loads.cases.findIndex((c) => c.kind === 'Lr');
    const psf = loads.cases[live]!.areas.find((a) => a.surface === surface.id)!.psf * Math.cos(surface.slope);
    const height = Math.max(...surface.outline.map((p) => p.y));
    const ends = structure.members.filter((m) =>
      m.strips.some((k) => k.surface === surface.id && k.share !== undefined),
    );
    for (const m of ends) {
      const byStrips = m.strips
        .filter((k) => k.surface === surface.id && k.share !== undefined)
        .reduce((t, k) => t - (k.share! * (k.u1 - k.u0) * height * psf) / 144, 0);
      const byJoints = structure.joints
        .filter((j) => j.kind === 'outlooker-to-frame' && j.ties[1]!.part === m.id)
        .filter((j) => structure.members.find((q) => q.id === j.ties[0]!.part)!.rake!.surface === surface.id)
        .reduce((t, j) => t + effects.joints.get(j.id)!.force[live]!.z, 0);
      expect(byJoints, m.id).toBeCloseTo(byStrips, 6);
    }
  });
});

describe('a shed on a ledger', () => {
  it('balances with its rakes on outlookers, whatever the last bay is', () => {
    const { structure, effects } = run(rakeShedProject);
    expect(structure.members.some((m) => m.rake)).toBe(true);
    for (const b of effects.balance) {
      expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
    }
  });
});

describe('rakes that cannot be built', () => {
  const code = (p: Project): string[] => place(p).issues.map((i) => i.code);
  const roofs = (more: object) => (p: Project) =>
    change(p, { cover: { roofs: (old) => old.map((r) => ({ ...r, ...more })) } });
  it('warns of a long rake that nothing carries, and not of a short one', () => {
    expect(code(roofs({ rakeFraming: undefined })(rakeTrussProject))).toContain('rake-not-carried');
    expect(code(roofs({ rakeFraming: undefined, rake: 12 })(rakeTrussProject))).not.toContain('rake-not-carried');
    expect(code(rakeTrussProject)).not.toContain('rake-not-carried');
  });
  it('refuses an outlooker longer outside than inside', () => {
    expect(code(roofs({ rake: 30 })(rakeTrussProject))).toContain('rake-too-long');
  });
  it('refuses end rafters as deep as the others', () => {
    const rakeFraming = { ...rakeProject.cover.roofs[0]!.rakeFraming!, endFrame: 'rafter' };
    expect(code(roofs({ rakeFraming })(rakeProject))).toContain('end-frame-under-outlookers');
  });
});
