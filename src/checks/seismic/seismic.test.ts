import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Loads } from '../../loads/model.js';
import type { Project, SeismicCategory } from '../../project/model.js';
import { place } from '../../structure/index.js';
import { shedProject } from '../../structure/testing.js';
import type { CheckContext } from '../contract.js';
import { contextFor } from '../testing.js';
import { seismic } from './seismic.js';

function inCategory(value: SeismicCategory, system: Project['cover']['lateral']['x'] = 'house'): Project {
  const category = { ...shedProject.basis.seismic.category, value };
  return {
    ...shedProject,
    basis: { ...shedProject.basis, seismic: { category } },
    cover: { ...shedProject.cover, lateral: { x: system, y: system } },
  };
}
function contextOf(project: Project, loads: Partial<Loads> = {}): CheckContext {
  const structure = place(project).value!;
  return contextFor({ project, structure, loads: { ...buildLoads(project, structure).value!, ...loads } });
}
const run = (ctx: CheckContext, rec?: ReturnType<typeof makeRecorder>) =>
  seismic.run(seismic.subjects(ctx)[0]!, ctx, rec);

describe('earthquake', () => {
  it('states the exemption and its condition', () => {
    const f = run(contextOf(inCategory('C')));
    expect(f.status).toBe('not-applicable');
    expect(f.note).toContain('detached one- or two-family dwelling');
    expect(f.clause).toBe('ASCE 7-16 11.1.2');
  });

  it('passes with the cases carried, and prints the force they hold', () => {
    const ctx = contextOf(inCategory('D1', 'fixed-posts'));
    const rec = makeRecorder();
    const f = run(ctx, rec);
    expect(f.status).toBe('pass');
    expect(f.note).toContain('timber cantilever columns');
    const printed = rec.lines.flatMap((l) => (l.kind === 'step' && l.symbol === 'Eh' ? [l.value] : []));
    const carried = ctx.loads.cases.find((c) => c.id === 'E+x')!.side[0]!.force.x;
    expect(printed[0]).toBeCloseTo(carried, 9);
  });

  it('does not pass without them, nor where the system is not permitted', () => {
    const ctx = contextOf(inCategory('D1'));
    const cases = ctx.loads.cases.filter((c) => c.id !== 'E-y');
    expect(run(contextOf(inCategory('D1'), { cases })).status).toBe('not-evaluated');
    expect(run(contextOf(inCategory('E'))).status).toBe('not-evaluated');
    const sds = { value: 1.4, state: 'given' as const, from: 'map', path: '' };
    const e = inCategory('E', 'fixed-posts');
    const known = { ...e, basis: { ...e.basis, seismic: { ...e.basis.seismic, sds } } };
    expect(run(contextOf(known)).status).toBe('outside-scope');
  });
});
