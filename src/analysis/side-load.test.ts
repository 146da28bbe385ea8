/** Side load held by the posts: the frame against hand statics, its balance, its failures. */
import { describe, expect, it } from 'vitest';
import type { Project } from '../project/model.js';
import { shedProject } from '../structure/testing.js';
import { bracedGable, fixedGable, KNEE, looseGable, sunk } from '../structure/testing-braced.js';
import { BALANCE_LIMIT } from './index.js';
import { footOf, most, POSTS, push, run, shearOf } from './testing-side-load.js';

describe('knee braces to the beams, pushed along them', () => {
  const H = 1200;
  const r = run(bracedGable, undefined, push('y', H));
  const post = r.structure.members.find((m) => m.id === 'P1')!;
  const h = post.end.z - post.start.z;

  it('each post takes about a quarter of the push: four alike, one brace each; the beams give a little', () => {
    for (const p of POSTS) expect(shearOf(r, p, 'y', 0) / (H / 4)).toBeCloseTo(1, 2);
  });

  it('brace, post and cap as by hand: Hb = V·h/a, M = V·(h − a), T = V·(h − a)/a', () => {
    const a = KNEE.rise;
    for (const brace of r.structure.members.filter((m) => m.role === 'brace' && m.path.includes('/beams/'))) {
      const n = most(r.effects.members.get(brace.id)!.n[0]!);
      const joint = r.structure.joints.find((j) => j.kind === 'brace-to-post' && j.ties[0]!.part === brace.id)!;
      const V = shearOf(r, joint.ties[1]!.part, 'y', 0);
      expect(n).toBeCloseTo(((V * h) / a) * Math.SQRT2, 2);
    }
    for (const p of POSTS) {
      const V = shearOf(r, p, 'y', 0);
      const e = r.effects.members.get(p)!;
      // The beams run along y, the posts' width with them: bending along the beam is about the weak axis.
      expect(most(e.mWeak[0]!)).toBeCloseTo(V * (h - a), 1);
      expect(most(e.m[0]!)).toBeLessThan(0.01 * V * (h - a));
      const cap = r.structure.joints.find((j) => j.kind === 'beam-to-post' && j.ties[1]!.part === p)!;
      expect(Math.abs(r.effects.joints.get(cap.id)!.force[0]!.y)).toBeCloseTo((V * (h - a)) / a, 2);
    }
  });

  it('the posts resist the overturning of the push at the beams’ top', () => {
    // Push 12 in above the underside, 95 in above the feet, on two lines of posts 13 ft apart.
    const lift = (H * (h + 12)) / 156;
    const [near, far] = [
      ['P1', 'P3'],
      ['P2', 'P4'],
    ].map((row) => row.reduce((sum, p) => sum + r.effects.footings.get(footOf(r, p))!.force[0]!.z, 0));
    expect(far).toBeCloseTo(lift, 1);
    expect(near).toBeCloseTo(-lift, 1);
  });

  it('the beam’s moment about its own axis jumps by Hb·d/2 where a brace pushes its underside', () => {
    const e = r.effects.members.get('B1')!;
    const at = e.stations.findIndex((x, i) => Math.abs(x - 36) < 1e-6 && Math.abs(e.stations[i + 1]! - 36) < 1e-6);
    const Hb = (shearOf(r, 'P1', 'y', 0) * h) / KNEE.rise;
    expect(Math.abs(e.m[0]![at + 1]! - e.m[0]![at]!)).toBeCloseTo(Hb * 6, 0);
  });
});

describe('struts with knee braces, pushed across the beams', () => {
  const H = 1000;
  const r = run(bracedGable, undefined, push('x', H));

  it('each post is in balance by hand about the axis of its strut', () => {
    for (const p of POSTS) {
      const post = r.structure.members.find((m) => m.id === p)!;
      const strut = r.structure.members.find((m) => m.role === 'strut' && Math.abs(m.start.y - post.start.y) < 1)!;
      const V = shearOf(r, p, 'x', 0);
      const braces = r.structure.joints.filter((j) => j.kind === 'brace-to-post' && j.ties[1]!.part === p);
      const cap = r.structure.joints.find((j) => j.kind === 'beam-to-post' && j.ties[1]!.part === p)!;
      const T = r.effects.joints.get(cap.id)!.force[0]!.x;
      let moment = V * (strut.start.z - post.start.z);
      for (const j of braces) moment -= r.effects.joints.get(j.id)!.force[0]!.x * (strut.start.z - j.at.z);
      // The push at the top turns the other way about the strut.
      expect(moment + T * (post.end.z - strut.start.z)).toBeCloseTo(0, 2);
    }
    expect(POSTS.reduce((sum, p) => sum + shearOf(r, p, 'x', 0), 0)).toBeCloseTo(H, 6);
  });

  it('strut and braces are pinned bars: no moment at their ends', () => {
    for (const m of r.structure.members.filter((q) => q.role === 'brace')) {
      const e = r.effects.members.get(m.id)!;
      expect(most(e.m[0]!)).toBeLessThan(1e-6);
      expect(e.spans[0]!.length).toBeCloseTo(30 * Math.SQRT2 + (m.path.includes('struts') ? 3.75 * Math.SQRT2 : 0), 6);
    }
  });
});

describe('posts held at their feet', () => {
  it('are cantilevers: M = V·h at the foot, Δ = V·h³/3EI', () => {
    const H = 800;
    for (const axis of ['x', 'y'] as const) {
      const r = run(fixedGable, undefined, push(axis, H));
      for (const p of POSTS) {
        const post = r.structure.members.find((m) => m.id === p)!;
        const h = post.end.z - post.start.z;
        const V = shearOf(r, p, axis, 0);
        // The framing’s push acts at the mean of its seats, 3 in off the middle of the posts: the roof turns a little.
        expect(V / (H / 4)).toBeCloseTo(1, 1);
        const e = r.effects.members.get(p)!;
        expect(most((axis === 'x' ? e.m : e.mWeak)[0]!)).toBeCloseTo(V * h, 2);
        const I = 5.5 ** 4 / 12;
        const drift = r.effects.drift!.find((d) => d.post === p)!;
        expect(drift.height).toBeCloseTo(h, 9);
        expect(drift.move[0]![axis]).toBeCloseTo((V * h ** 3) / (3 * post.section.values.E * I), 6);
      }
    }
  });

  it('hand the footing their moment, taken on to its underside', () => {
    const r = run(fixedGable, undefined, push('x', 800));
    for (const p of POSTS) {
      const post = r.structure.members.find((m) => m.id === p)!;
      const id = footOf(r, p);
      const footing = r.structure.footings.find((f) => f.id === id)!;
      const { force, moment } = r.effects.footings.get(id)!;
      // A push toward +x at height above the underside turns about +y.
      expect(moment[0]!.y).toBeCloseTo(force[0]!.x * (post.end.z - footing.bottom), 1);
    }
  });

  it('embedded posts are held a third of their depth down', () => {
    const depth = 48;
    const r = run({ ...fixedGable }, (s) => sunk(s, depth), push('x', 800));
    for (const p of POSTS) {
      const post = r.structure.members.find((m) => m.id === p)!;
      const surface = post.start.z + depth;
      expect(most(r.effects.members.get(p)!.m[0]!)).toBeCloseTo(
        shearOf(r, p, 'x', 0) * (post.end.z - surface + depth / 3),
        1,
      );
      expect(r.effects.members.get(p)!.stations[0]).toBeCloseTo((depth * 2) / 3, 6);
    }
  });
});

describe('every case of the loads', () => {
  it.each([
    ['braced both ways', bracedGable],
    ['fixed posts', fixedGable],
  ] as const)('%s: applied, integral and reactions close; nothing is left on a restraint', (_, project) => {
    const r = run(project);
    expect(r.effects.failure).toBeUndefined();
    for (const b of r.effects.balance) {
      expect(b.errorApplied).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions).toBeLessThan(BALANCE_LIMIT);
    }
    for (const s of r.effects.sway) for (const f of s.force) expect(Math.hypot(f.x, f.y)).toBe(0);
    r.loads.cases.forEach((_c, i) => {
      for (const axis of ['x', 'y'] as const) {
        const feet = POSTS.reduce((sum, p) => sum + shearOf(r, p, axis, i), 0);
        expect(feet).toBeCloseTo(r.effects.balance[i]!.applied[axis], 4);
      }
    });
  });

  it.each(['x', 'y'] as const)('moments of the feet balance the loads in the plane of %s', (axis) => {
    const r = run(bracedGable);
    r.loads.cases.forEach((c, i) => {
      let moment = 0;
      for (const j of r.structure.joints) {
        if (j.kind !== 'truss-to-beam') continue;
        const f = r.effects.joints.get(j.id)!.force[i]!;
        moment += j.at[axis] * f.z - 100 * f[axis];
      }
      if (c.selfWeight)
        for (const m of r.structure.members) {
          if (!['beam', 'post', 'brace', 'strut'].includes(m.role)) continue;
          const long = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y, m.end.z - m.start.z);
          moment -= ((m.start[axis] + m.end[axis]) / 2) * m.section.weight * long;
        }
      for (const p of POSTS) {
        const post = r.structure.members.find((m) => m.id === p)!;
        const f = r.effects.footings.get(footOf(r, p))!.force[i]!;
        moment -= post.start[axis] * -f.z - post.start.z * f[axis];
      }
      // Of about a million: braces' own weight is spread over their working length.
      expect(Math.abs(moment)).toBeLessThan(20);
    });
  });

  it('has no number that is not finite', () => {
    for (const m of run(bracedGable).effects.members.values())
      for (const key of ['m', 'v', 'n', 'mWeak', 'vWeak', 'sag'] as const)
        for (const row of m[key]) for (const v of row) expect(Number.isFinite(v)).toBe(true);
  });
});

describe('a shed on a ledger, braced along the house only', () => {
  const cover = shedProject.cover;
  const project: Project = {
    ...shedProject,
    cover: {
      ...cover,
      lateral: { x: 'knee-braces', y: 'house' },
      beams: cover.beams.map((b) => ({
        ...b,
        posts: b.posts.map((p, i) => ({
          ...p,
          braces: [
            {
              section: 'brace',
              run: 24,
              rise: 24,
              toward: i === 0 ? ('end' as const) : ('start' as const),
              path: p.path,
            },
          ],
        })),
      })),
    },
    choices: {
      ...shedProject.choices,
      sections: { ...shedProject.choices.sections, brace: bracedGable.choices.sections.brace! },
    },
  };
  const r = run(project);
  it('closes every case, with the house holding across and the posts along', () => {
    expect(r.effects.failure).toBeUndefined();
    for (const b of r.effects.balance) {
      expect(b.errorApplied).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions).toBeLessThan(BALANCE_LIMIT);
    }
    const most = (axis: 'x' | 'y'): number =>
      Math.max(...r.effects.restraints.flatMap((q) => q.force.map((f) => Math.abs(f[axis]))));
    expect(most('x')).toBe(0);
    expect(Math.max(...r.effects.drift!.flatMap((d) => d.move.map((m) => Math.abs(m.y))))).toBe(0);
    expect(Math.max(...r.effects.drift!.flatMap((d) => d.move.map((m) => Math.abs(m.x))))).toBeGreaterThan(0.01);
  });
});

describe('a frame that nothing holds', () => {
  it('is named as such, not solved', () => {
    // Braces along the beams of one line only, and an unsheathed roof that cannot pass the load on.
    const bare = bracedGable.cover.roofs.map((q) => ({ ...q, finish: { ...q.finish, sheathing: '' } }));
    const one = bracedGable.cover.beams.map((b, i) =>
      i === 0 ? b : { ...b, posts: b.posts.map((p) => ({ ...p, braces: [] })) },
    );
    const loose: Project = { ...bracedGable, cover: { ...bracedGable.cover, roofs: bare, beams: one } };
    expect(run(loose).effects.failure).toMatch(/can move freely.*dy/);
  });
  it('keeps its restraints where nothing of the named system is placed: the sway checks fail it', () => {
    const oneWay: Project = { ...bracedGable, cover: { ...bracedGable.cover, struts: [] } };
    const r = run(oneWay);
    expect(r.effects.failure).toBeUndefined();
    const held = (axis: 'x' | 'y'): number =>
      Math.max(...r.effects.sway.flatMap((s) => s.force.map((f) => Math.abs(f[axis]))));
    expect(held('x')).toBeGreaterThan(100);
    expect(held('y')).toBe(0);
  });
  it('keeps its restraints where the system is open', () => {
    const r = run(looseGable);
    expect(r.effects.failure).toBeUndefined();
    expect(r.effects.drift).toEqual([]);
    expect(r.effects.sway.some((s) => s.force.some((f) => Math.abs(f.x) > 1))).toBe(true);
  });
});
