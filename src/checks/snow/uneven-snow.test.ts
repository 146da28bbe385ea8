import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { buildLoads } from '../../loads/index.js';
import { place } from '../../structure/place.js';
import { gableProject, shedProject } from '../../structure/testing.js';
import type { CheckContext, Finding } from '../contract.js';
import { LOT } from '../testing.js';
import { snowDrift, snowSliding, snowUnbalanced } from './uneven-snow.js';

function worked(project: CheckContext['project'], pg?: number): CheckContext {
  const { snow } = project.basis;
  const p =
    pg === undefined
      ? project
      : { ...project, basis: { ...project.basis, snow: { ...snow, ground: { ...snow.ground, value: pg } } } };
  const structure = place(p).value!;
  const loads = buildLoads(p, structure).value!;
  return { project: p, structure, loads, effects: analyse(p, structure, loads).value!, lot: LOT };
}
const answer = (check: typeof snowDrift, ctx: CheckContext): Finding => check.run(check.subjects(ctx)[0]!, ctx);

describe('uneven snow', () => {
  const shed = worked(shedProject, 40);

  it('passes with the surcharge as demand and no ratio once its case is carried', () => {
    const f = answer(snowDrift, shed);
    expect(f).toMatchObject({ status: 'pass', ratio: 0, capacity: 0, unit: 'psf' });
    const c = shed.loads.cases.find((x) => x.id.startsWith('S·drift'))!;
    expect(f.note).toContain(c.id);
    expect(f.demand).toBe(Math.max(...c.plan!.filter((p) => p.zone).map((p) => p.psf)));
  });

  it('never passes on a case that is not among the cases, or on no answer', () => {
    const cases = shed.loads.cases.filter((c) => !c.id.startsWith('S·'));
    expect(answer(snowDrift, { ...shed, loads: { ...shed.loads, cases } }).status).toBe('not-evaluated');
    expect(answer(snowDrift, { ...shed, loads: { ...shed.loads, snow: [] } }).status).toBe('not-evaluated');
  });

  it('hands what is not covered to a professional', () => {
    const snow = shed.loads.snow!.map((a) => ({ ...a, outcome: 'outside' as const }));
    const f = answer(snowSliding, { ...shed, loads: { ...shed.loads, snow } });
    expect(f.status).toBe('outside-scope');
    expect(f.note).toContain('licensed professional');
  });

  it('arises only where it can', () => {
    expect(answer(snowUnbalanced, shed).status).toBe('not-applicable');
    expect(answer(snowUnbalanced, worked(gableProject, 30)).status).toBe('pass');
    for (const check of [snowDrift, snowSliding, snowUnbalanced])
      expect(answer(check, worked(gableProject, 0)).status).toBe('not-applicable');
  });
});
