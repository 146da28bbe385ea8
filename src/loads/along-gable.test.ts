import { describe, expect, it } from 'vitest';
import { place } from '../structure/index.js';
import { gableProject, shedProject } from '../structure/testing.js';
import { buildLoads } from './index.js';

/** The attached gable, its end said to be open or closed, or not said. */
function loadsOf(gableEnd?: 'open' | 'closed') {
  const roofs = gableProject.cover.roofs.map((r) => ({ ...r, finish: { ...r.finish, gableEnd } }));
  const project = { ...gableProject, cover: { ...gableProject.cover, roofs } };
  const structure = place(project).value!;
  return { project, structure, loads: buildLoads(project, structure).value! };
}

describe('wind along the ridge of a gable (ASCE 7-16 28.3.5)', () => {
  it('redone by hand from the heights of the placed roof', () => {
    const { project, structure, loads } = loadsOf();
    const { wind } = project.basis;
    const roof = structure.roofs[0]!;
    expect(roof.ridgeAxis).toBe('y');
    // Exposure B below 30 ft: Kz 0.70 in chapter 28.
    expect(wind.exposure.value).toBe('B');
    const qh = 0.00256 * 0.7 * 0.85 * Math.exp((-0.0000362 * wind.elevation) / 12) * wind.speed.value ** 2;
    const ft = (inches: number): number => inches / 12;
    const B = ft(roof.max.x - roof.min.x);
    const { z0, gy } = structure.grade;
    const eave = ft(roof.lowestEave - Math.min(z0 + gy * roof.min.y, z0 + gy * roof.max.y));
    const gable = (B * ft(roof.highestPoint - roof.lowestEave)) / 2;
    const AE = B * eave + gable;
    const beam = structure.members.find((m) => m.role === 'beam')!;
    const band = B * ft(roof.lowestEave - (beam.start.z - beam.section.depth / 2));
    // Two post lines of two; the longer pair counts.
    const longest = Math.max(...structure.members.flatMap((m) => (m.role === 'post' ? [m.length] : [])));
    const width = structure.members.find((m) => m.role === 'post')!.section.width;
    const AS = gable + band + (2 * width * longest) / 144;
    // Least side 15 ft: a = 3 ft. Edge strip 3 ft wide up to the rake.
    const edge = 3 * eave + (9 * Math.tan(roof.slope)) / 2;
    const ww = 0.4 + (0.61 - 0.4) * (edge / AE);
    const lw = 0.29 + (0.43 - 0.29) * (edge / AE);
    const KB = 1.8 - 0.01 * B;
    const KS = 0.6 + 1.25 * (AS / AE) ** 1.8;
    const F = qh * (ww + lw) * KB * KS * AE;
    const along = loads.cases.filter((c) => /^W[+-]y·[AB]·/.test(c.id));
    expect(along.length).toBeGreaterThan(4);
    for (const c of along) {
      expect(c.side[0]!.force.y, c.id).toBeCloseTo(c.id.startsWith('W+y') ? F : -F, 6);
      expect(c.side[0]!.force.x + c.side[0]!.force.z).toBe(0);
    }
    // Across the ridge the roof planes themselves are pushed.
    for (const c of loads.cases) if (/^W[+-]x·[AB]·/.test(c.id)) expect(c.side).toEqual([]);
    const least = loads.cases.find((c) => c.id === 'W+y·least')!.side[0]!.force.y;
    expect(F).toBeGreaterThan(least);
    const printed = loads.basis.rows.filter((r) => r.meaning.startsWith('R1, wind along the ridge'));
    expect(printed.map((r) => r.symbol)).toEqual(['Kz', 'qz', 'AE', 'AS', 'a', 'KB', 'KS', 'p', 'F']);
    expect(printed.at(-1)!.value).toBeCloseTo(F, 6);
  });

  it('an open gable end is pushed less, and closed is what stands where nothing is said', () => {
    const force = (end?: 'open' | 'closed'): number =>
      loadsOf(end).loads.cases.find((c) => c.id === 'W+y·A·clear')!.side[0]!.force.y;
    expect(force('closed')).toBe(force());
    expect(force('open')).toBeLessThan(force());
  });

  it('is of pitched roofs only', () => {
    const loads = buildLoads(shedProject, place(shedProject).value!).value!;
    expect(loads.basis.rows.some((r) => r.meaning.includes('wind along the ridge'))).toBe(false);
  });
});
