/** Which checks there are, which are mandatory, and that none can drop out in silence. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../analysis/index.js';
import { buildLoads } from '../loads/index.js';
import { judge } from '../review/verdict.js';
import { place } from '../structure/place.js';
import { gableProject, shedProject } from '../structure/testing.js';
import type { Check, CheckContext } from './contract.js';
import { ADVISORY, EVERY_MANDATORY, mandatoryFor, mandatoryOf } from './mandatory.js';
import { CHECKS } from './registry.js';
import { rerun, runChecks } from './run.js';
import { contextFor, LOT } from './testing.js';

const worked = (project: CheckContext['project']): CheckContext => {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: LOT };
};
const gable = worked(gableProject);
const shed = worked(shedProject);

describe('the registry', () => {
  it('has each check once, with a title', () => {
    const ids = CHECKS.map((c) => c.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const c of CHECKS) expect(c.title.length, c.id).toBeGreaterThan(3);
  });

  it('implements every mandatory check of every kind of structure', () => {
    const ids = new Set(CHECKS.map((c) => c.id));
    expect([...EVERY_MANDATORY].filter((id) => !ids.has(id))).toEqual([]);
  });

  it('asks every check of some kind of structure', () => {
    expect(CHECKS.filter((c) => !EVERY_MANDATORY.has(c.id) && !ADVISORY.has(c.id)).map((c) => c.id)).toEqual([]);
  });
});

describe('mandatory lists', () => {
  it('differ by attachment, roof and framing', () => {
    const a = mandatoryFor('attached', [{ kind: 'gable', framing: 'scissor-truss' }]);
    const b = mandatoryFor('free-standing', [{ kind: 'shed', framing: 'rafter' }]);
    for (const id of ['house-connection', 'wind-attached', 'snow-unbalanced', 'truss-papers']) {
      expect([a.has(id), b.has(id)], id).toEqual([true, false]);
    }
    expect([a.has('rafter-bending'), b.has('rafter-bending')]).toEqual([false, true]);
  });

  it.each([
    ['gable', gable],
    ['shed', shed],
  ] as const)('a check taken out of the registry leaves a hole that says so (%s)', (_name, ctx) => {
    for (const id of mandatoryOf(ctx.project)) {
      const without = CHECKS.filter((c) => c.id !== id);
      const hole = runChecks(ctx, without).find((r) => r.check === id);
      expect(hole, id).toMatchObject({ status: 'not-evaluated', mandatory: true, subject: 'cover' });
    }
  });
});

describe('running', () => {
  it('gives finite numbers, a note for everything but a pass, and unique ids', () => {
    for (const ctx of [gable, shed]) {
      const results = runChecks(ctx);
      expect(new Set(results.map((r) => r.id)).size).toBe(results.length);
      for (const r of results) {
        expect([r.demand, r.capacity, r.ratio].every(Number.isFinite), r.id).toBe(true);
        if (r.status !== 'pass') expect(r.note.length, r.id).toBeGreaterThan(10);
        expect(r.status === 'pass' ? r.ratio <= 1 + 1e-9 : true, r.id).toBe(true);
      }
    }
  });

  it('does not let a number that is none pass for an answer', () => {
    const broken: Check = {
      id: 'beam-bending',
      title: 'Beam bending',
      subjects: () => [{ id: 'B1', path: '' }],
      run: () => ({
        status: 'pass',
        demand: Number.NaN,
        capacity: 1,
        ratio: Number.NaN,
        unit: '',
        combination: '',
        clause: '',
        note: '',
      }),
    };
    expect(runChecks(gable, [broken])[0]).toMatchObject({ status: 'not-evaluated', ratio: 0 });
  });

  it('fails a loose frame by name and evaluates nothing that needs forces', () => {
    const loose = { ...gable, effects: { ...contextFor({}).effects, failure: 'B1 stands on nothing' } };
    const results = runChecks(loose);
    expect(results.find((r) => r.check === 'frame-solved')).toMatchObject({ status: 'fail' });
    expect(results.find((r) => r.id === 'frame-solved:frame')!.note).toContain('B1 stands on nothing');
    expect(results.find((r) => r.id === 'beam-bending:B1')!.status).toBe('not-evaluated');
    expect(results.find((r) => r.id === 'soil-bearing:F1')!.status).toBe('not-evaluated');
    expect(judge([], results, true).issuable).toBe(false);
  });

  it('reports loads out of range as outside scope', () => {
    const loads = { ...gable.loads, outside: [{ about: 'snow', why: 'ground snow over the mapped range' }] };
    const r = runChecks({ ...gable, loads }).find((x) => x.check === 'load-range')!;
    expect(r).toMatchObject({ status: 'outside-scope', subject: 'snow' });
    expect(r.note).toContain('licensed professional');
  });

  it('turns each unknown office value into an open question', () => {
    const questions = [{ path: '/basis/frost', text: 'What is the frost depth here?', meanwhile: '12 in' }];
    const open = { ...gable, project: { ...gable.project, questions } };
    const r = runChecks(open).filter((x) => x.check === 'office-answers');
    expect(r).toHaveLength(1);
    expect(r[0]).toMatchObject({ status: 'not-evaluated', path: '/basis/frost', mandatory: true });
  });

  it('says what is out of balance', () => {
    const [first, ...rest] = gable.effects.balance;
    const effects = { ...gable.effects, balance: [{ ...first!, errorReactions: 0.02 }, ...rest] };
    const r = runChecks({ ...gable, effects }).find((x) => x.check === 'load-balance')!;
    expect(r).toMatchObject({ status: 'fail', combination: first!.case });
  });

  it('finds nothing to explain for an unknown result', () => {
    const rec = { step: () => {}, heading: () => {} };
    expect(rerun('beam-bending:B9', gable, rec)).toBe(false);
    expect(rerun('no-such', gable, rec)).toBe(false);
    expect(rerun('beam-bending:B1', gable, rec)).toBe(true);
  });
});

describe('checks still to be built', () => {
  const status = (ctx: CheckContext, id: string) => runChecks(ctx).find((r) => r.check === id)?.status;

  it('never pass', () => {
    const pending = ['truss-papers', 'joint-products', 'sway-x', 'sway-y', 'diaphragm', 'house-connection', 'seismic'];
    for (const ctx of [gable, shed]) {
      for (const r of runChecks(ctx)) if (pending.includes(r.check)) expect(r.status, r.id).not.toBe('pass');
    }
  });

  it('arise only where the question does', () => {
    const free = {
      ...gable,
      project: { ...gable.project, cover: { ...gable.project.cover, attachment: 'free-standing' as const } },
    };
    expect(status(free, 'wind-attached')).toBe('not-applicable');
  });

  it('fail a direction that nothing resists', () => {
    const cover = { ...gable.project.cover, lateral: { x: 'none' as const, y: 'house' as const } };
    const bare = { ...gable, project: { ...gable.project, cover } };
    expect(status(bare, 'sway-x')).toBe('fail');
    expect(status(bare, 'sway-y')).toBe('not-evaluated');
  });
});
