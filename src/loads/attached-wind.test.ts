import { describe, expect, it } from 'vitest';
import { CALM, type Fixture, makeGable, makeShed } from '../analysis/testing.js';
import type { RoofPlaced } from '../structure/model.js';
import { attachedPressure, houseFacts } from './attached-wind.js';
import { buildLoads } from './index.js';
import type { Loads } from './model.js';

const loadsOf = (f: Fixture): Loads => buildLoads(f.project, f.structure).value!;

/** The fixture's roof said to touch a house 240 in deep and 400 in wide: eave at `plate`, ridge `rise` above it. */
function beside(f: Fixture, plate: number, rise: number, meanHeight?: number): Fixture {
  const roofs: RoofPlaced[] = f.structure.roofs.map((r) => ({
    ...r,
    attached: true,
    meanHeight: meanHeight ?? r.meanHeight,
  }));
  const corners = [
    { x: -200, y: 0 },
    { x: 200, y: 0 },
    { x: 200, y: -240 },
    { x: -200, y: -240 },
  ];
  const walls = corners.map((start, i) => ({
    id: f.structure.walls[i]?.id ?? `w${i}`,
    name: `w${i}`,
    start,
    end: corners[(i + 1) % 4]!,
    out: [
      { x: 0, y: 1 },
      { x: 1, y: 0 },
      { x: 0, y: -1 },
      { x: -1, y: 0 },
    ][i]!,
    base: 0,
    plate,
    openings: [],
    path: '',
  }));
  const top = plate + rise;
  const plane = (id: string, y: number) => ({
    id,
    state: 'existing' as const,
    outline: [
      { x: -200, y, z: plate },
      { x: 200, y, z: plate },
      { x: 200, y: -120, z: top },
      { x: -200, y: -120, z: top },
    ],
  });
  return {
    project: f.project,
    structure: {
      ...f.structure,
      roofs,
      walls,
      housePlanes: [plane('a', 0), plane('b', -240)],
      grade: { z0: -10, gx: 0, gy: 0 },
    },
  };
}
const only = (f: Fixture): RoofPlaced => f.structure.roofs[0]!;
// Exposure C to 15 ft: qh = 0.00256·2.01·(15/900)^(2/9.5)·0.85·110² psf.
const q15 = 0.00256 * 2.01 * (15 / 900) ** (2 / 9.5) * 0.85 * 110 ** 2;

describe('heights beside the house', () => {
  it('takes the eave of the wall it touches, and the middle of the house roof', () => {
    const x = houseFacts(beside(makeShed(), 110, 60).structure, only(beside(makeShed(), 110, 60)))!;
    expect([x.he, x.h, x.least]).toEqual([120, 150, 240]);
  });

  it('takes the eave as the mean height up to 10 degrees', () => {
    const f = beside(makeShed(), 110, 20);
    expect(houseFacts(f.structure, only(f))!.h).toBe(120);
  });
});

describe('pressures', () => {
  it('reads the canopy figure by height: rows below 0.5, between, and from 0.9 on', () => {
    const at = (hc: number, plate: number): number => {
      const f = beside(makeShed(), plate, 20, hc);
      return attachedPressure(f.project, f.structure, only(f), 'minus', 10 * 144) as number;
    };
    expect(at(60, 190)).toBe(-16); // 0.6·qh = 13.5 is under the least of 16 psf
    // he = 160 in, 0.625: −0.9.
    expect(at(100, 150)).toBeCloseTo(-0.9 * q15, 9);
  });

  it('near the eave a sloping cover is also an overhang: 0.85·(0.9 + 0.8) of qh for h/L up to 0.5', () => {
    // he = h = 120 in over 240 in: h/L = 0.5. Canopy −1.4 at 10 ft² is less than 1.445.
    const f = beside(makeShed(), 110, 20, 119);
    expect(attachedPressure(f.project, f.structure, only(f), 'minus', 1440)).toBeCloseTo(-1.445 * q15, 9);
    // Pressing: +0.9 at 10 ft², 0.65 from 100 ft² on.
    expect(attachedPressure(f.project, f.structure, only(f), 'plus', 1440)).toBeCloseTo(0.9 * q15, 9);
    expect(attachedPressure(f.project, f.structure, only(f), 'plus', 20000)).toBe(16);
  });

  it('a level cover below the eave is a canopy as written', () => {
    const f = beside(makeShed({ pitch: 0.015 }), 110, 20, 119);
    expect(attachedPressure(f.project, f.structure, only(f), 'minus', 1440)).toBeCloseTo(-1.4 * q15, 9);
  });

  it('stops at 60 ft of house and at 7 in 12 of cover', () => {
    const tall = beside(makeShed(), 800, 20);
    expect(loadsOf(tall).attachedWind![0]!.outcome).toBe('outside');
    const steep = beside(makeGable({ pitch: 7.2 / 12 }), 110, 20);
    expect(loadsOf(steep).attachedWind![0]!).toMatchObject({ outcome: 'outside', cases: [] });
    const bare = beside(makeShed(), 110, 20);
    const unknown = { ...bare, structure: { ...bare.structure, housePlanes: [] } };
    expect(loadsOf(unknown).attachedWind![0]!.outcome).toBe('unknown');
  });
});

describe('cases', () => {
  it('carry both signs over the whole roof and into the combinations', () => {
    const l = loadsOf(beside(makeGable(), 110, 20));
    const up = l.cases.find((c) => c.id === 'W·house·up')!;
    const down = l.cases.find((c) => c.id === 'W·house·down')!;
    expect(up.areas.map((a) => a.surface)).toEqual(['R1-left', 'R1-right']);
    expect(up.areas[0]!.psf).toBeLessThan(0);
    expect(down.areas[0]!.psf).toBeGreaterThan(0);
    expect(l.combinations.some((c) => c.id === '0.6D+0.6W (W·house·up)')).toBe(true);
  });

  it('are absent on a free-standing cover', () => {
    const l = loadsOf(makeGable());
    expect(l.attachedWind).toEqual([]);
    expect(l.cases.some((c) => c.id.includes('house'))).toBe(false);
  });

  it('block the wind below an attached roof whatever the file says', () => {
    const f = beside(makeShed(), 110, 20);
    const wind = { ...f.project.basis.wind, flow: 'clear' as const };
    const clear = { ...f.project, basis: { ...f.project.basis, wind } };
    expect(buildLoads(clear, f.structure).value!.cases.some((c) => c.id.includes('obstructed'))).toBe(true);
    expect(buildLoads(clear, makeGable().structure).value!.cases.some((c) => c.id.includes('obstructed'))).toBe(false);
  });

  it('keep the independent balance', async () => {
    const { analyse } = await import('../analysis/index.js');
    for (const f of [beside(makeShed({ site: CALM }), 110, 20), beside(makeGable(), 110, 20)]) {
      const l = loadsOf(f);
      for (const b of analyse(f.project, f.structure, l).value!.balance)
        expect(Math.max(b.errorApplied, b.errorReactions), b.case).toBeLessThan(1e-6);
    }
  });
});

describe('a cover above the eave it touches', () => {
  it('is outside the canopy figure: lifting is the overhang rule alone, and the basis says so', () => {
    // he = h = 120 in, house 240 in deep: h/L = 0.5; hc/he = 1.25.
    const f = beside(makeShed(), 110, 20, 150);
    expect(attachedPressure(f.project, f.structure, only(f), 'minus', 1440)).toBeCloseTo(0.85 * -1.7 * q15, 9);
    expect(attachedPressure(f.project, f.structure, only(f), 'plus', 1440)).toBeCloseTo(0.9 * q15, 9);
    const rows = loadsOf(f).basis.rows.filter((r) => r.meaning.includes('W·house·'));
    expect(rows.find((r) => r.symbol === 'hc/he')!.meaning).toContain('outside the canopy figure');
    const up = rows.filter((r) => r.meaning.includes('W·house·up'));
    expect(up.map((r) => r.symbol)).toEqual(['Kz', 'Ke', 'qz', 'hc/he', 'h/L', 'Cp', 'p', 'p']);
    const down = rows.filter((r) => r.meaning.includes('W·house·down'));
    expect(down.map((r) => r.symbol)).toEqual(['GCp', 'p']);
  });
});
