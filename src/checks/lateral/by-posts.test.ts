import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { JointProduct, Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { bracedGable, fixedGable, KNEE, looseGable, sunk } from '../../structure/testing-braced.js';
import { kneeBraceForces } from '../codes/statics/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { runChecks } from '../run.js';
import { LOT } from '../testing.js';
import { baseMoment } from './base-moment.js';
import { overloadOf } from './p-delta.js';
import { movedMost } from './roof-drift.js';
import { swayX, swayY } from './sway.js';

function context(project: Project, turn = (s: CheckContext['structure']) => s): CheckContext {
  const structure = turn(place(project).value!);
  const loads = buildLoads(project, structure).value!;
  return { project, structure, loads, lot: LOT, effects: analyse(project, structure, loads).value! };
}
const COVER = { id: 'cover', path: '/cover' };
const ofAxis = (ctx: CheckContext, axis: 'x' | 'y'): Finding => (axis === 'x' ? swayX : swayY).run(COVER, ctx);

const braced = context(bracedGable);
const fixed = context(fixedGable);

describe('knee braces both ways', () => {
  it('pass, with the movement of the roof over its limit as the answer', () => {
    for (const axis of ['x', 'y'] as const) {
      const f = ofAxis(braced, axis);
      expect(f.status).toBe('pass');
      const moved = movedMost(braced, axis)!;
      expect(f.ratio).toBeCloseTo(Math.max(moved.ratio, overloadOf(braced, axis).ratio), 12);
      expect(moved.limit).toBeCloseTo(moved.drift.height / 60, 12);
    }
  });

  it('movement from the trace: factors times cases, softened by the incising of the posts (E 0.95)', () => {
    const moved = movedMost(braced, 'x')!;
    const sum = moved.combination.terms.reduce((s, t) => s + t.factor * moved.drift.move[t.case]!.x, 0);
    expect(moved.soft).toBeCloseTo(1 / 0.95, 9);
    expect(moved.move).toBeCloseTo(Math.abs(sum) / 0.95, 9);
    const rec = makeRecorder();
    swayX.run(COVER, braced, rec);
    const step = rec.lines.find((l) => l.kind === 'step' && l.symbol === 'Δ');
    expect(step).toMatchObject({ value: moved.move, unit: 'in' });
  });

  it('fail where the limit is set tighter than the roof moves', () => {
    const tight: Project = {
      ...bracedGable,
      choices: { ...bracedGable.choices, deflection: { live: 360, total: 240, drift: 600 } },
    };
    const f = ofAxis(context(tight), 'x');
    expect(f.status).toBe('fail');
    expect(f.note).toContain('larger knee braces');
  });

  it('the braces’ forces are those of the portal formula with the shear of their own post', () => {
    const { structure, effects } = braced;
    for (const brace of structure.members.filter((m) => m.role === 'brace' && m.path.includes('/beams/'))) {
      const joint = structure.joints.find((j) => j.kind === 'brace-to-post' && j.ties[0]!.part === brace.id)!;
      const post = structure.members.find((m) => m.id === joint.ties[1]!.part)!;
      const foot = structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[0]!.part === post.id)!;
      braced.loads.cases.forEach((c, i) => {
        if (c.selfWeight) return;
        const V = effects.footings.get(foot.ties[1]!.part)!.force[i]!.y;
        const hand = kneeBraceForces(V, post.end.z - post.start.z, KNEE.rise, Math.PI / 4);
        const n = effects.members.get(brace.id)!.n[i]!;
        expect(Math.abs(n[0]!)).toBeCloseTo(Math.abs(hand.axial), 3);
      });
    }
  });

  it('stability coefficient by its own definition, and far from its limit', () => {
    const o = overloadOf(braced, 'y');
    expect(o.theta).toBeCloseTo((o.P * o.flexibility) / o.height, 12);
    expect(o.theta).toBeGreaterThan(0);
    expect(o.theta).toBeLessThan(0.1);
    expect(o.P).toBeGreaterThan(3000);
  });

  it('every mandatory check of posts, braces and struts is answered for each part', () => {
    const results = runChecks(braced);
    for (const id of [
      'post-combined',
      'post-shear',
      'brace-slenderness',
      'brace-combined',
      'strut-slenderness',
      'strut-combined',
      'strut-shear',
    ]) {
      const own = results.filter((r) => r.check === id);
      expect(own.length, id).toBe(id.startsWith('post') ? 4 : id.startsWith('brace') ? 1 : 2);
      for (const r of own) {
        expect(r.mandatory, id).toBe(true);
        expect(['pass', 'fail'], id).toContain(r.status);
        expect(r.ratio, id).toBeGreaterThan(0);
      }
    }
  });
});

describe('lines without a system', () => {
  const without = (change: Partial<Project['cover']>): Project => ({
    ...bracedGable,
    cover: { ...bracedGable.cover, ...change },
  });

  it('no braces on one beam: fails and names it', () => {
    const one = without({
      beams: bracedGable.cover.beams.map((b, i) =>
        i === 0 ? b : { ...b, posts: b.posts.map((p) => ({ ...p, braces: [] })) },
      ),
    });
    const f = ofAxis(context(one), 'y');
    expect(f.status).toBe('fail');
    expect(f.note).toContain('B2 has none');
  });
  it('nothing across the beams: fails', () => {
    const f = ofAxis(context(without({ struts: [] })), 'x');
    expect(f.status).toBe('fail');
    expect(f.note).toContain('B1, B2 has none');
  });
  it('a frame that can move freely: nothing is evaluated and nothing passes', () => {
    const ctx = context(
      without({
        roofs: bracedGable.cover.roofs.map((q) => ({ ...q, finish: { ...q.finish, sheathing: '' } })),
        beams: bracedGable.cover.beams.map((b, i) =>
          i === 0 ? b : { ...b, posts: b.posts.map((p) => ({ ...p, braces: [] })) },
        ),
      }),
    );
    expect(ctx.effects.failure).toContain('can move freely');
    expect(ofAxis(ctx, 'y').status).toBe('not-evaluated');
    for (const r of runChecks(ctx).filter((q) => q.check === 'post-combined')) expect(r.status).toBe('not-evaluated');
  });
  it('fixed posts that are not: fails', () => {
    const said: Project = {
      ...looseGable,
      cover: { ...bracedGable.cover, lateral: { x: 'fixed-posts', y: 'knee-braces' } },
    };
    expect(ofAxis(context(said), 'x')).toMatchObject({ status: 'fail' });
  });
  it('a rafter or beam that runs to the house keeps that direction from being the posts’ alone', () => {
    const onWall = context(bracedGable, (s) => ({
      ...s,
      joints: [
        ...s.joints,
        {
          ...s.joints[0]!,
          id: 'JX',
          ties: [
            { part: 'B1', along: 0 },
            { part: s.walls[0]!.id, along: 0 },
          ],
        },
      ],
    }));
    expect(ofAxis(onWall, 'y')).toMatchObject({ status: 'not-evaluated' });
    expect(ofAxis(onWall, 'y').note).toContain('name "house"');
  });
});

describe('fixed posts', () => {
  const base = (moment: number | undefined): JointProduct => ({
    serves: ['post-to-footing'],
    product: 'moment post base',
    count: 1,
    down: 9000,
    up: 4000,
    along: 1500,
    across: 1500,
    moment,
    duration: 1.6,
    species: 'Douglas Fir-Larch',
    G: 0.5,
    service: 'dry',
    concrete: 2500,
    source: 'test report',
    path: '/choices/joints/0',
  });
  const withBase = (moment: number | undefined): CheckContext =>
    context({ ...fixedGable, choices: { ...fixedGable.choices, joints: [base(moment)] } });

  it('need a published moment of the base: without it nothing is evaluated', () => {
    const subject = { id: 'P1', path: '' };
    expect(baseMoment.run(subject, fixed).status).toBe('not-evaluated');
    expect(baseMoment.run(subject, withBase(undefined)).note).toContain('published moment');
  });
  it('are held to it: the moment is that of the post at its foot', () => {
    const ctx = withBase(100000);
    const f = baseMoment.run({ id: 'P1', path: '' }, ctx);
    expect(f.status).toBe('pass');
    let most = 0;
    const e = ctx.effects.members.get('P1')!;
    for (const c of ctx.loads.combinations) {
      const at = (rows: readonly Float64Array[]): number =>
        c.terms.reduce((s, t) => s + t.factor * rows[t.case]![0]!, 0);
      most = Math.max(most, Math.hypot(at(e.m), at(e.mWeak)));
    }
    expect(f.demand).toBeCloseTo(most, 3);
    expect(baseMoment.run({ id: 'P1', path: '' }, withBase(most * 0.9)).status).toBe('fail');
  });
  it('embedded ones answer for movement and stability, and have no base to rate', () => {
    const ctx = context(fixedGable, (s) => sunk(s, 48));
    expect(baseMoment.subjects(ctx)).toEqual([]);
    expect(['pass', 'fail']).toContain(ofAxis(ctx, 'x').status);
    // Longer by a third of the depth than posts fixed at the slab: they move more.
    expect(movedMost(ctx, 'x')!.move).toBeGreaterThan(movedMost(fixed, 'x')!.move);
  });
});
