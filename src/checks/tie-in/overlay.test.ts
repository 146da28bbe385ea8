import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, given } from '../../structure/testing.js';
import { overlayProject, overlayWith } from '../../structure/testing-overlay.js';
import type { CheckContext } from '../contract.js';
import { mandatoryOf } from '../mandatory.js';
import { LOT } from '../testing.js';
import { TRIGGERS } from '../triggers/registry.js';
import { fillForces } from './fill-rafter.js';
import { OVERLAY_CHECKS } from './index.js';
import { overlayLoads } from './overlay-loads.js';

function contextOf(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  return { project, structure, loads, effects: analyse(project, structure, loads).value!, lot: LOT };
}

const ctx = contextOf(overlayProject);
const o = ctx.structure.overlays![0]!;
const run = (id: string, c: CheckContext = ctx) => {
  const check = OVERLAY_CHECKS.find((k) => k.id === id)!;
  return check.run(check.subjects(c)[0]!, c);
};

describe('the overlay on the old roof', () => {
  const q = overlayLoads(ctx, o);

  it('conserves load: the seats of all fill rafters take the plan load of the whole area', () => {
    const sum = o.fills.reduce((t, f) => t + ((q.dead + q.live) * f.area) / 144, 0);
    expect(sum).toBeCloseTo(((q.dead + q.live) * q.area) / 144, 6);
  });

  it('dead load by hand', () => {
    // Layers of the cover on the slope, over the cosine; every member by its weight.
    const slope = Math.hypot(1, 4 / 12);
    const layers = ctx.structure.surfaces[0]!.layers.reduce((t, l) => t + l.psf, 0);
    const members = o.members.reduce((t, m) => t + m.section.weight * m.length, 0);
    expect(q.dead).toBeCloseTo(layers * slope + (144 * members) / q.area, 9);
    expect(q.live).toBe(20);
  });

  it('the push of a pair is that of two bars leaning together', () => {
    // Even load w on each bar of level run r, rise h: moments about the foot give H = w r² / (2 h) = V / (2 · slope).
    const f = o.fills.find((x) => x.mark === q.worst.mark)!;
    const w = q.worst.down / f.run;
    expect(q.worst.thrust).toBeCloseTo((w * f.run ** 2) / (2 * f.run * (4 / 12)), 6);
  });

  it('nothing of it rests on the cover: totals of the cover are its own', () => {
    expect(ctx.effects.balance.length).toBeGreaterThan(0);
    const mine = new Set(ctx.structure.members.map((m) => m.id));
    for (const m of o.members) expect(mine.has(m.id)).toBe(false);
  });

  it('passes beside what the letter states, and fails where it states less', () => {
    const f = run('overlay-load');
    expect(f.status).toBe('pass');
    expect(f.demand).toBeCloseTo(q.dead, 9);
    const less = overlayWith({}, { statement: { ...statement, down: given(q.dead - 0.1, 'letter') } });
    expect(run('overlay-load', contextOf(less)).status).toBe('fail');
    const point = overlayWith({}, { statement: { ...statement, point: given(q.point - 1, 'letter') } });
    expect(run('overlay-point', contextOf(point)).status).toBe('fail');
    const up = overlayWith({}, { statement: { ...statement, up: given(1, 'letter') } });
    expect(run('overlay-uplift', contextOf(up)).status).toBe('fail');
  });

  it('leaves the push at the seats open unless the statement names it, and fails where it states less', () => {
    expect(run('overlay-thrust')).toMatchObject({ status: 'pass', demand: q.worst.thrust, capacity: 2000 });
    const none = contextOf(overlayWith({}, { statement: { ...statement, thrust: undefined } }));
    expect(run('overlay-thrust', none).status).toBe('not-evaluated');
    const less = contextOf(
      overlayWith({}, { statement: { ...statement, thrust: given(q.worst.thrust - 1, 'letter') } }),
    );
    expect(run('overlay-thrust', less).status).toBe('fail');
    const nobody = contextOf(overlayWith({}, { statement: { ...statement, thrust: given(2000, '') } }));
    expect(run('overlay-thrust', nobody).status).toBe('not-evaluated');
  });

  it('wants the fastening of every joint stated', () => {
    expect(run('overlay-joints').status).toBe('pass');
    for (const key of ['rafterToPlate', 'rafterToRidge', 'ridgeToFrame', 'fastening'] as const) {
      const f = run('overlay-joints', contextOf(overlayWith({}, { statement: { ...statement, [key]: '' } })));
      expect(f.status, key).toBe('not-evaluated');
    }
    expect(run('overlay-joints', contextOf(overlayWith({}, { statement: undefined }))).note).toContain(
      'Fill rafters FR',
    );
  });

  it('is outside scope without a statement: far over 5 percent', () => {
    const bare = contextOf(overlayWith({}, { statement: undefined }));
    for (const id of ['overlay-load', 'overlay-point', 'overlay-uplift', 'overlay-side'])
      expect(run(id, bare).status, id).toBe('outside-scope');
    const rec = makeRecorder();
    const check = OVERLAY_CHECKS.find((k) => k.id === 'overlay-load')!;
    check.run(check.subjects(bare)[0]!, bare, rec);
    const share = rec.lines.find((l) => l.kind === 'step' && l.symbol === 'share');
    expect(share?.kind === 'step' && share.value).toBeCloseTo(q.dead / (12 + 20), 9);
  });

  it('fill rafter: forces of a pair by the statics of a three-hinged frame', () => {
    // Run 96, rise 48, 24 in wide, 30 psf: w = 5 lb/in on plan, V = 480; H = w r² / 2h = 5 · 96² / 96 = 480.
    const f = fillForces(96, 0.5, 24, 30, 0);
    expect(f.M).toBeCloseTo((5 * 96 ** 2) / 8, 9);
    const [cos, sin] = [2 / Math.sqrt(5), 1 / Math.sqrt(5)];
    expect(f.N).toBeCloseTo(480 * cos + 240 * sin, 9);
    // 10 psf square to the slope: p = 10 · 24 / 144 a running inch over L = 96 / cos; about the foot p L²/2 = H · 48.
    const L = 96 / cos;
    const p = (10 * 24) / 144;
    const g = fillForces(96, 0.5, 24, 0, 10);
    expect(g.M).toBeCloseTo((p * L * L) / 8, 9);
    expect(g.N).toBeCloseTo(((p * L * L) / 2 / 48) * cos, 9);
  });

  it('fill rafter passes, and fails where it is too shallow for its run', () => {
    expect(run('overlay-rafter').status).toBe('pass');
    expect(run('overlay-rafter-deflection').status).toBe('pass');
    const sections = overlayProject.choices.sections;
    const small = change(overlayProject, {
      choices: { sections: { ...sections, fill: { ...sections.fill!, size: '2x3' } as never } },
    });
    expect(run('overlay-rafter-deflection', contextOf(small)).status).toBe('fail');
  });

  it('says what the old roof and its eave must be', () => {
    expect(run('overlay-base').status).toBe('pass');
    expect(run('overlay-water').status).toBe('pass');
    expect(run('overlay-base', contextOf(overlayWith({}, { oldCovering: 'kept' }))).status).toBe('fail');
    expect(run('overlay-base', contextOf(overlayWith({}, {}, { framing: undefined }))).status).toBe('not-evaluated');
    expect(run('overlay-water', contextOf(overlayWith({}, {}, { gutter: false }))).status).toBe('fail');
    expect(run('overlay-water', contextOf(overlayWith({}, {}, { gutter: undefined }))).status).toBe('not-evaluated');
  });

  it('side load is all that is put on the cover, whatever holds it', () => {
    const f = run('overlay-side');
    expect(f.status).toBe('pass');
    const i = ctx.loads.cases.findIndex(
      (c) => c.kind === 'W' && ctx.effects.balance.some((b) => b.case === c.id && Math.abs(b.applied.y) > 1),
    );
    const one = ctx.effects.balance.find((b) => b.case === ctx.loads.cases[i]!.id)!;
    expect(f.demand).toBeGreaterThanOrEqual(0.6 * Math.abs(one.applied.y) - 1e-6);
  });

  it('is mandatory where a roof goes on over the house', () => {
    for (const c of OVERLAY_CHECKS) expect(mandatoryOf(overlayProject).has(c.id), c.id).toBe(true);
  });

  it('asks for a professional: snow in the valleys, old trusses without a statement', () => {
    const found = (id: string, c: CheckContext) => TRIGGERS.find((t) => t.id === id)!.found(c);
    expect(found('overlay-snow', ctx)).toBeUndefined();
    const snow = change(overlayProject, { basis: { snow: { ground: given(25) } } });
    expect(found('overlay-snow', { ...ctx, project: snow })).toContain('Snow');
    const trusses = { kind: 'trusses', size: '2x4', spacing: 24, sheathing: '', dead: 12 } as const;
    const bare = overlayWith({}, { statement: undefined }, { framing: trusses });
    expect(found('overlay-on-trusses', { ...ctx, project: bare })).toContain('trusses');
    expect(found('overlay-on-trusses', { ...ctx, project: overlayWith({}, {}, { framing: trusses }) })).toBeUndefined();
  });
});

const statement = {
  down: given(9, 'letter'),
  up: given(40, 'letter'),
  point: given(900, 'letter'),
  side: given(true, 'letter'),
  thrust: given(2000, 'letter'),
  rafterToPlate: 'nails a',
  rafterToRidge: 'nails b',
  ridgeToFrame: 'nails c',
  fastening: 'as in the letter',
};
