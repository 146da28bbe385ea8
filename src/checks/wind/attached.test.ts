import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { AttachedWindAnswer, Loads } from '../../loads/model.js';
import { place } from '../../structure/index.js';
import { gableProject, shedProject } from '../../structure/testing.js';
import type { CheckContext } from '../contract.js';
import { contextFor } from '../testing.js';
import { windAttached } from './attached.js';

function contextOf(project: CheckContext['project'], loads: Partial<Loads> = {}): CheckContext {
  const structure = place(project).value!;
  return contextFor({ project, structure, loads: { ...buildLoads(project, structure).value!, ...loads } });
}
const run = (ctx: CheckContext, rec?: ReturnType<typeof makeRecorder>) =>
  windAttached.run(windAttached.subjects(ctx)[0]!, ctx, rec);

describe('wind on a cover that touches the house', () => {
  it('passes with the cases carried, and prints the very pressures they hold', () => {
    for (const project of [gableProject, shedProject]) {
      const ctx = contextOf(project);
      const rec = makeRecorder();
      const f = run(ctx, rec);
      expect(f.status).toBe('pass');
      expect(f.note).toContain('A load, not a resistance');
      const printed = rec.lines.flatMap((l) => (l.kind === 'step' && l.symbol === 'p' ? [l.value] : []));
      const psf = (id: string): number => ctx.loads.cases.find((c) => c.id === id)!.areas[0]!.psf;
      expect(printed.some((p) => p === psf('W·house·up'))).toBe(true);
      expect(printed.at(-1)).toBe(psf('W·house·down'));
      expect(f.demand).toBeGreaterThanOrEqual(-psf('W·house·up'));
    }
  });

  it('does not pass when a case or a flow is missing', () => {
    const all = contextOf(gableProject).loads.cases;
    const without = (text: string) => contextOf(gableProject, { cases: all.filter((c) => !c.id.includes(text)) });
    for (const text of ['house·up', 'house·down', 'obstructed', 'clear'])
      expect(run(without(text)).status, text).toBe('not-evaluated');
    expect(run(contextOf(gableProject, { attachedWind: [] })).status).toBe('not-evaluated');
  });

  it('hands on what the loads could not answer', () => {
    const answer = contextOf(gableProject).loads.attachedWind![0]!;
    const as = (outcome: AttachedWindAnswer['outcome']) =>
      run(contextOf(gableProject, { attachedWind: [{ ...answer, outcome, cases: [] }] })).status;
    expect([as('outside'), as('unknown'), as('included')]).toEqual(['outside-scope', 'not-evaluated', 'not-evaluated']);
  });

  it('does not arise for a free-standing cover', () => {
    const ctx = contextOf(gableProject);
    const cover = { ...gableProject.cover, attachment: 'free-standing' as const };
    expect(run({ ...ctx, project: { ...gableProject, cover } }).status).toBe('not-applicable');
  });
});
