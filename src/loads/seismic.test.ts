import { describe, expect, it } from 'vitest';
import { analyse } from '../analysis/index.js';
import { CALM, type Fixture, makeGable, makeShed } from '../analysis/testing.js';
import type { Project, SeismicCategory } from '../project/model.js';
import { place } from '../structure/index.js';
import { gableProject } from '../structure/testing.js';
import { buildLoads } from './index.js';
import type { Loads } from './model.js';
import { seismicForce, seismicWeight } from './seismic.js';

const given = <T>(value: T) => ({ value, state: 'given' as const, from: 'test', path: '/basis/seismic' });

function shaken(f: Fixture, category: SeismicCategory, change: Partial<Project['basis']['seismic']> = {}): Fixture {
  const seismic = { category: given(category), ...change };
  return { ...f, project: { ...f.project, basis: { ...f.project.basis, seismic } } };
}
const withSystem = (f: Fixture, x: Project['cover']['lateral']['x']): Fixture => ({
  ...f,
  project: { ...f.project, cover: { ...f.project.cover, lateral: { x, y: x } } },
});
const loadsOf = (f: Fixture): Loads => buildLoads(f.project, f.structure).value!;

describe('exemption (11.1.2)', () => {
  it('dwellings in A, B and C carry no earthquake', () => {
    for (const c of ['A', 'B', 'C'] as const) {
      const l = loadsOf(shaken(makeShed(), c));
      expect(l.seismic!.outcome).toBe('exempt');
      expect(l.cases.some((x) => x.kind === 'E')).toBe(false);
      expect(l.combinations.some((x) => x.label.includes('E'))).toBe(false);
    }
  });

  it('not in D, and not above risk category II', () => {
    expect(loadsOf(shaken(makeShed(), 'D0')).seismic!.outcome).toBe('included');
    const f = shaken(makeShed(), 'C');
    const basis = { ...f.project.basis, riskCategory: 'III' as const };
    expect(loadsOf({ ...f, project: { ...f.project, basis } }).seismic!.outcome).toBe('included');
  });

  it('asks for SDS in category E, and refuses cantilevered timber posts there', () => {
    expect(loadsOf(shaken(makeShed(), 'E')).seismic!.outcome).toBe('unknown');
    const posts = withSystem(shaken(makeShed(), 'E', { sds: given(1.5) }), 'fixed-posts');
    expect(loadsOf(posts).seismic!.outcome).toBe('outside');
  });
});

describe('a category of the residential code', () => {
  // IRC 2018 Table R301.2.2.1.1, recalled: A to 0.17g, B to 0.33g, C to 0.50g, D0 to 0.67g, D1 to 0.83g, D2 to 1.25g.
  it.each([
    ['D0', 0.67],
    ['D1', 0.83],
    ['D2', 1.25],
  ] as const)('%s stands for an SDS of %d where none is given', (category, sds) => {
    const force = (f: Fixture): number => loadsOf(f).seismic!.force;
    const [open, told] = [shaken(makeShed(), category), shaken(makeShed(), category, { sds: given(sds) })];
    expect(force(open)).toBeGreaterThan(0);
    expect(force(open)).toBeCloseTo(force(told), 9);
  });
});

describe('force', () => {
  it('weighs the roof as the dead case does, less the ledger and the lower half of the posts', () => {
    for (const f of [makeShed(), makeGable()]) {
      const l = loadsOf(f);
      const D = analyse(f.project, f.structure, l).value!.balance.find((b) => b.case === 'D')!;
      const length = (m: (typeof f.structure.members)[number]): number =>
        Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y, m.end.z - m.start.z);
      const left = f.structure.members.reduce(
        (sum, m) => sum + m.section.weight * length(m) * (m.role === 'post' ? 0.5 : m.role === 'ledger' ? 1 : 0),
        0,
      );
      const w = f.structure.roofs.reduce((sum, r) => sum + seismicWeight(f.structure, r, 0).dead, 0);
      expect(w / (-D.applied.z - left)).toBeCloseTo(1, 6);
    }
  });

  it('is SDS/R·W times the larger of ρ = 1.3 and Ω0 = 1.5: 1.5·1.0/1.5 on cantilevered timber posts', () => {
    const f = withSystem(shaken(makeShed({ site: { ...CALM, snow: 0 } }), 'D1', { sds: given(1) }), 'fixed-posts');
    const r = f.structure.roofs[0]!;
    const W = seismicWeight(f.structure, r, 0).dead;
    expect(seismicForce(f.project, f.structure, r, 'x', 0)!.E).toBeCloseTo(W, 6);
    // Held by the house: R = 2 for walls of any panel, ρ = 1.3.
    const h = withSystem(f, 'house');
    expect(seismicForce(h.project, h.structure, r, 'x', 0)!.E).toBeCloseTo((1.3 * W) / 2, 6);
  });

  it('counts a fifth of a flat roof snow load over 30 psf (12.7.2)', () => {
    const f = shaken(makeShed(), 'D1', { sds: given(1) });
    const r = f.structure.roofs[0]!;
    const plan = ((r.max.x - r.min.x) * (r.max.y - r.min.y)) / 144;
    const at = (pf: number): number => seismicForce(f.project, f.structure, r, 'x', pf)!.W;
    expect(at(30)).toBe(at(0));
    expect(at(40) - at(0)).toBeCloseTo(8 * plan, 3);
  });

  it('takes the largest SDS of the category where none is given', () => {
    const l = loadsOf(shaken(makeShed(), 'D1'));
    expect(l.basis.rows.find((r) => r.symbol === 'SDS')!.value).toBe(0.83);
  });
});

describe('combinations with an earthquake', () => {
  // SDS = 1: Ev = 0.2·D, so D counts 1 + 0.7·0.2 = 1.14, 0.6 − 0.14 = 0.46; strength 1.4 and 0.7 (ASCE 7-16 2.4.5, 2.3.6).
  const snowy = loadsOf(shaken(makeShed(), 'D1', { sds: given(1) }));
  const dry = loadsOf(shaken(makeShed({ site: { ...CALM, snow: 0 } }), 'D1', { sds: given(1) }));
  const labels = (list: Loads['combinations']): string[] => [
    ...new Set(list.map((c) => c.label).filter((x) => x.includes('E'))),
  ];

  it('have the vertical effect in the factor on D', () => {
    expect(labels(snowy.combinations)).toEqual(['1.14D + 0.7E', '1.105D + 0.525E + 0.75S', '0.46D + 0.7E']);
    expect(labels(snowy.strength)).toEqual(['1.4D + E + 0.2S', '0.7D + E']);
  });

  it('lose the snow where there is none, not the earthquake', () => {
    expect(labels(dry.strength)).toEqual(['1.4D + E', '0.7D + E']);
    expect(labels(dry.combinations)).toContain('1.105D + 0.525E');
  });

  it('last as short as wind and name uplift', () => {
    const e = snowy.combinations.filter((c) => c.label === '0.46D + 0.7E');
    expect(e.length).toBe(4);
    for (const c of e) expect([c.CD, c.uplift]).toEqual([1.6, true]);
  });

  it('carry no load on some spans', () => {
    expect(snowy.combinations.some((c) => c.label.includes('E') && c.id.includes('partial'))).toBe(false);
  });

  it('reach the sway restraints in full', () => {
    const f = shaken(makeGable(), 'D1', { sds: given(1) });
    const l = loadsOf(f);
    const effects = analyse(f.project, f.structure, l).value!;
    const i = l.cases.findIndex((c) => c.id === 'E+x');
    const applied = l.cases[i]!.side.reduce((sum, s) => sum + s.force.x, 0);
    expect(applied).toBeGreaterThan(0);
    expect(effects.sway.reduce((sum, s) => sum + s.force[i]!.x, 0)).toBeCloseTo(applied, 3);
    for (const b of effects.balance) expect(Math.max(b.errorApplied, b.errorReactions), b.case).toBeLessThan(1e-6);
  });
});

describe('the load basis', () => {
  it('says in a sentence why no earthquake load is carried, with its condition', () => {
    const loads = buildLoads(gableProject, place(gableProject).value!).value!;
    const said = loads.basis.rows.find((r) => r.symbol === 'E');
    if (loads.seismic!.outcome !== 'exempt') throw new Error('the fixture is exempt');
    expect(said).toMatchObject({ value: 0, clause: 'ASCE 7-16 11.1.2' });
    expect(said!.meaning).toContain('detached one- or two-family dwelling');
  });
});
