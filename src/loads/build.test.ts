import { describe, expect, it } from 'vitest';
import { CALM, makeGable, makeShed } from '../analysis/testing.js';
import { buildLoads } from './index.js';
import type { LoadCase, Loads } from './model.js';

const loadsOf = (f: ReturnType<typeof makeShed>): Loads => buildLoads(f.project, f.structure).value!;
const find = (l: Loads, id: string): LoadCase => l.cases.find((c) => c.id === id)!;
const row = (l: Loads, symbol: string): number => l.basis.rows.find((r) => r.symbol === symbol)!.value;

describe('dead, roof live and snow', () => {
  const loads = loadsOf(makeShed());

  it('puts the layers on the slope and the fascia on the eave', () => {
    const D = find(loads, 'D');
    expect(D.areas).toEqual([{ surface: 'R1', psf: 3.5, acts: 'slope' }]);
    expect(D.edges).toEqual([{ surface: 'R1', v: 0, weight: 0.25 }]);
    expect(D.selfWeight).toBe(true);
  });

  it('takes balanced snow as ps = Cs·0.7·Ce·Ct·Is·pg (ASCE 7-16 Eq. 7.3-1): 0.7·1.0·1.2·1.0·30 psf', () => {
    expect(find(loads, 'S').areas[0]!.psf).toBeCloseTo(25.2, 9);
    expect(row(loads, 'Ct')).toBe(1.2);
  });

  it('adds rain on snow and keeps the low-slope minimum where the ground load is light (7-16 7.3.4)', () => {
    // 15 psf ground: ps = 0.84·15 = 12.6; minimum Is·pg = 15 governs; 9.5 degrees is steeper than W/50.
    expect(find(loadsOf(makeShed({ site: { ...CALM, snow: 15 } })), 'S').areas[0]!.psf).toBeCloseTo(15, 9);
  });

  it('has no snow case and no snow combination without ground snow', () => {
    const dry = loadsOf(makeShed({ site: { ...CALM, snow: 0 } }));
    expect(dry.cases.some((c) => c.kind === 'S')).toBe(false);
    expect(dry.combinations.some((c) => c.label.includes('S'))).toBe(false);
  });

  it('lets the jurisdiction ask for more roof live load than the standard, never less', () => {
    expect(find(loads, 'Lr').areas[0]!.psf).toBe(20);
    expect(find(loadsOf(makeShed({ site: { ...CALM, live: 30 } })), 'Lr').areas[0]!.psf).toBe(30);
    expect(find(loadsOf(makeShed({ site: { ...CALM, live: 12 } })), 'Lr').areas[0]!.psf).toBe(20);
  });

  it('reduces for slope only where the project says so: 6 in 12 gives R2 = 0.9', () => {
    const f = makeShed({ pitch: 6 / 12, site: { ...CALM, live: 12 } });
    expect(find(loadsOf(f), 'Lr').areas[0]!.psf).toBe(20);
    const basis = { ...f.project.basis, roofLive: { ...f.project.basis.roofLive, reduce: true } };
    const reduced = buildLoads({ ...f.project, basis }, f.structure).value!;
    expect(find(reduced, 'Lr').areas[0]!.psf).toBeCloseTo(18, 9);
  });

  it('uses 10 psf only under an adopted appendix, for recreation', () => {
    const f = makeShed({ site: { ...CALM, live: 10 } });
    const adopted = {
      ...f.project.basis.roofLive,
      patioAppendix: { ...f.project.basis.roofLive.patioAppendix, value: true },
    };
    const project = { ...f.project, basis: { ...f.project.basis, roofLive: adopted } };
    expect(find(buildLoads(project, f.structure).value!, 'Lr').areas[0]!.psf).toBe(10);
    const carport = { ...project, cover: { ...project.cover, use: 'carport' as const } };
    expect(find(buildLoads(carport, f.structure).value!, 'Lr').areas[0]!.psf).toBe(20);
  });
});

describe('wind', () => {
  const shed = loadsOf(makeShed());
  // Exposure C below 15 ft: Kz = 2.01·(15/900)^(2/9.5) = 0.849; qh = 0.00256·0.849·0.85·110² (ASCE 7-16 Eq. 26.10-1).
  const qh = 0.00256 * 2.01 * (15 / 900) ** (2 / 9.5) * 0.85 * 110 ** 2;

  it('states qh at the mean roof height by the equation for Kz', () => {
    expect(row(shed, 'qh')).toBeCloseTo(qh, 9);
    expect(shed.basis.rows.find((r) => r.symbol === 'Kz')!.meaning).toContain('by the equation');
  });

  it('meets the high edge of a shed when blowing out from the house (uplift) and the low edge when blowing in', () => {
    // θ = 9.46°: between 7.5° and 15°, Fig. 27.3-4 case A clear. γ 0: CNW −0.6…−0.9; γ 180: 0.9…1.3.
    const t = ((Math.atan(2 / 12) * 180) / Math.PI - 7.5) / 7.5;
    const out = find(shed, 'W+y·A·clear');
    expect(out.plan![0]!.psf).toBeCloseTo(0.85 * qh * (-0.6 - 0.3 * t), 9);
    const inward = find(shed, 'W-y·A·clear');
    expect(inward.plan![0]!.psf).toBeCloseTo(0.85 * qh * (0.9 + 0.4 * t), 9);
    // Windward half: the high one for wind going out, the low one (v from 0) for wind coming in.
    expect(Math.min(...out.areas[0]!.region!.map((p) => p.y))).toBeGreaterThan(0);
    expect(Math.min(...inward.areas[0]!.region!.map((p) => p.y))).toBe(0);
  });

  it('runs both tables of the monoslope figure in both directions', () => {
    const swapped = find(shed, 'W-y·A·clear·swapped');
    expect(swapped.plan![0]!.psf).toBeCloseTo(find(shed, 'W+y·A·clear').plan![0]!.psf, 12);
  });

  it('mirrors the pitched roof, and zones the wind along the ridge by h', () => {
    const gable = loadsOf(makeGable());
    const right = find(gable, 'W+x·A·clear');
    const left = find(gable, 'W-x·A·clear');
    expect(right.areas.map((a) => [a.surface, a.psf])).toEqual([
      ['R1-left', right.plan![0]!.psf],
      ['R1-right', right.plan![1]!.psf],
    ]);
    expect(left.areas[0]!.surface).toBe('R1-right');
    expect(left.areas[0]!.psf).toBe(right.areas[0]!.psf);
    const along = find(gable, 'W+y·A·obstructed');
    const h = row(gable, 'h') * 12;
    expect(along.plan!.map((p) => p.zone!.from)).toEqual([0, h]);
    expect(along.plan![0]!.psf / along.plan![1]!.psf).toBeCloseTo(1.2 / 0.9, 9);
  });

  it('says when a roof lies outside the figures and loads nothing there', () => {
    const steep = loadsOf(makeGable({ pitch: 13 / 12 }));
    expect(steep.outside.map((o) => o.about)).toContain('wind on R1 across its ridge');
    expect(steep.cases.some((c) => c.id === 'W+x·A·clear')).toBe(false);
    const narrow = loadsOf(makeShed({ depth: 72 }));
    expect(narrow.outside.some((o) => o.why.includes('h/L'))).toBe(true);
  });

  it('has the 16 psf least horizontal wind in each direction on the projected area (27.1.5)', () => {
    const c = find(shed, 'W+x·least');
    expect(c.areas).toEqual([]);
    const Af = shed.basis.rows.find((r) => r.symbol === 'Af' && r.meaning.includes('+x'))!.value;
    expect(c.side[0]!.force.x).toBeCloseTo(16 * Af, 9);
  });

  it('pushes the fascia of a roof of at most 5 degrees along the wind (27.3.4): (1.5 + 1.0)·qh', () => {
    const flat = loadsOf(makeShed({ pitch: 1 / 12 }));
    const c = flat.cases.find((k) => k.id.startsWith('W+x·A'))!;
    const edge = 126 + 5.5 / 2 + 12 - 1.5;
    expect(c.side[0]!.force.x).toBeCloseTo((2.5 * row(flat, 'qh') * 9.25 * edge) / 144, 6);
    expect(find(shed, 'W+x·A·clear').side).toEqual([]);
  });
});

describe('combinations', () => {
  const loads = loadsOf(makeShed());
  const winds = loads.cases.filter((c) => c.kind === 'W').length;

  it('expands ASCE 7-16 2.4.1 over every wind case, once each', () => {
    expect(new Set(loads.combinations.map((c) => c.id)).size).toBe(loads.combinations.length);
    const labels = [...new Set(loads.combinations.map((c) => c.label))];
    expect(labels).toEqual([
      'D',
      'D + Lr',
      'D + S',
      'D + 0.75Lr',
      'D + 0.75S',
      'D + 0.6W',
      'D + 0.45W + 0.75Lr',
      'D + 0.45W + 0.75S',
      '0.6D + 0.6W',
    ]);
    expect(loads.combinations.filter((c) => !c.id.includes('partial')).length).toBe(5 + 4 * winds);
  });

  it('gives CD of the shortest load (NDS 2018 Table 2.3.2)', () => {
    const cd = (label: string): number => loads.combinations.find((c) => c.label === label)!.CD;
    expect([cd('D'), cd('D + Lr'), cd('D + S'), cd('D + 0.6W'), cd('0.6D + 0.6W')]).toEqual([
      0.9, 1.25, 1.15, 1.6, 1.6,
    ]);
  });

  it('marks uplift and names the case', () => {
    const up = loads.combinations.filter((c) => c.uplift);
    expect(up.length).toBe(winds);
    expect(up[0]!.id).toBe(`0.6D+0.6W (${loads.cases.find((c) => c.kind === 'W')!.id})`);
  });

  it('has the strength list for concrete', () => {
    const labels = new Set(loads.strength.map((c) => c.label));
    for (const l of ['1.4D', '1.2D + 1.6S', '1.2D + 1.6Lr + 0.5W', '1.2D + W + 0.5S', '0.9D + W'])
      expect(labels).toContain(l);
  });
});

describe('the edition of the loads', () => {
  const under = (loads: '7-16' | '7-22', snow: number): Loads => {
    const f = makeShed({ site: { ...CALM, snow } });
    const codes = { ...f.project.basis.codes, loads };
    return buildLoads({ ...f.project, basis: { ...f.project.basis, codes } }, f.structure).value!;
  };

  it('runs the same project under both, each naming its own clauses', () => {
    for (const edition of ['7-16', '7-22'] as const) {
      const l = under(edition, 30);
      const other = edition === '7-16' ? '7-22' : '7-16';
      for (const c of [...l.cases, ...l.combinations, ...l.strength]) expect(c.clause, c.id).not.toContain(other);
      for (const r of l.basis.rows) expect(r.clause, r.meaning).not.toContain(other);
      expect(l.outside).toEqual([]);
    }
  });

  it('takes 7-22 snow at strength level: 0.7S and 1.0S, companions 0.525S and 0.3S', () => {
    const labels = (list: Loads['combinations']): string[] => [...new Set(list.map((c) => c.label))];
    const l = under('7-22', 30);
    expect(labels(l.combinations)).toContain('D + 0.7S');
    expect(labels(l.combinations)).toContain('D + 0.45W + 0.525S');
    expect(labels(l.strength)).toContain('1.2D + S');
    expect(labels(l.strength)).toContain('1.2D + W + 0.3S');
    // Minimum of a low slope: 7-16 Is·20, 7-22 the smaller of pg and 30 psf.
    expect(row(l, 'pm')).toBe(30);
    expect(row(under('7-16', 30), 'pm')).toBe(20);
  });

  it('gives the same wind pressure either way, Kd in qh or beside it, where Kz is the same', () => {
    const p = (l: Loads): number => find(l, 'W+y·A·clear').plan![0]!.psf / row(l, 'Kz');
    expect(p(under('7-22', 0))).toBeCloseTo(p(under('7-16', 0)), 9);
  });
});
