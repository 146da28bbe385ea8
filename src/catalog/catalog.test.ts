import { describe, expect, it } from 'vitest';
import {
  BOLTS,
  CONCRETE_BAGS,
  CUBIC_FEET_PER_CUBIC_YARD,
  FASTENERS,
  FINISHES,
  findCovering,
  findFastener,
  findGrade,
  findSize,
  GLULAM_DEPTHS,
  gradeById,
  gradesSold,
  LAG_SCREWS,
  LAG_THREAD,
  NAILS,
  nailFyb,
  parseNominal,
  REBAR,
  ROOF_COVERINGS,
  SAWN_SIZES,
  SHEATHING,
  SOIL_CLASSES,
  type Sourced,
  SPECIES,
  STEEL_PLATES,
  underlaymentLayers,
  WOOD_GRADES,
  WOOD_SCREWS,
  woodWeightPcf,
} from './index.js';

const families: Record<string, readonly (Sourced & { id: string })[]> = {
  grades: WOOD_GRADES,
  sizes: SAWN_SIZES.map((s) => ({ ...s, id: s.nominal })),
  species: SPECIES.map((s) => ({ ...s, id: s.name })),
  sheathing: SHEATHING,
  coverings: ROOF_COVERINGS,
  finishes: FINISHES,
  fasteners: FASTENERS,
  plates: STEEL_PLATES,
  bags: CONCRETE_BAGS,
  rebar: REBAR,
  soils: SOIL_CLASSES,
};

const rising = (xs: readonly number[]): boolean => xs.every((x, i) => i === 0 || x > xs[i - 1]!);

describe.each(Object.entries(families))('catalogue family %s', (_name, rows) => {
  it('has rows with source, edition and provenance, and unique ids', () => {
    expect(rows.length).toBeGreaterThan(0);
    for (const r of rows) {
      expect(r.source.length, r.id).toBeGreaterThan(5);
      expect(r.edition.length, r.id).toBeGreaterThan(0);
      expect(['read', 'memory'], r.id).toContain(r.provenance);
    }
    expect(new Set(rows.map((r) => r.id)).size).toBe(rows.length);
  });

  it('holds only finite positive numbers', () => {
    for (const r of rows) {
      for (const [k, v] of Object.entries(r)) if (typeof v === 'number') expect(v, `${r.id} ${k}`).toBeGreaterThan(0);
    }
  });
});

it('freezes the rows', () => {
  for (const rows of [WOOD_GRADES, SAWN_SIZES, SPECIES, SHEATHING, ROOF_COVERINGS, FINISHES, FASTENERS, SOIL_CLASSES]) {
    for (const r of rows) expect(Object.isFrozen(r)).toBe(true);
  }
});

describe('wood grades', () => {
  it('holds the tables it claims', () => {
    const count = (t: string) => WOOD_GRADES.filter((g) => g.table === t).length;
    expect([count('4A'), count('4B'), count('5A'), count('SCL')]).toEqual([50, 15, 1, 1]);
    expect(count('4D')).toBe(16); // 10 western rows, 3 Southern Pine rows in both size classes
  });

  // NDS Appendix D: Emin = 1.03 E (1 - 1.645 COV) / 1.66, COV 0.25 for visually graded lumber; tables round to 10,000.
  it.each(WOOD_GRADES.filter((g) => g.table.startsWith('4')))('$id: Emin follows from E', (g) => {
    const exact = (1.03 * g.E * (1 - 1.645 * 0.25)) / 1.66;
    expect(Math.abs(g.Emin - exact)).toBeLessThanOrEqual(5_100);
  });

  // Appendix D again with 1.05 and COV 0.10 for glued-laminated timber. LVL producers publish their own Emin.
  it.each(WOOD_GRADES.filter((g) => g.table === '5A'))('$id: Emin follows from E', (g) => {
    const ratio = (1.05 * (1 - 1.645 * 0.1)) / 1.66;
    expect(g.Emin / (ratio * g.E)).toBeCloseTo(1, 1.7);
    if (g.EY !== undefined && g.EminY !== undefined) expect(g.EminY / (ratio * g.EY)).toBeCloseTo(1, 1.7);
  });

  it('agrees with the specific gravity table', () => {
    const G = new Map(SPECIES.map((s) => [s.name, s.G]));
    for (const g of WOOD_GRADES) if (g.table.startsWith('4')) expect(g.G, g.id).toBe(G.get(g.species));
  });

  it('never ranks a lower visual grade above a higher one', () => {
    const order = ['Select Structural', 'No. 1 & Btr', 'No. 1', 'No. 1 / No. 2', 'No. 2', 'No. 3'];
    for (const a of WOOD_GRADES) {
      for (const b of WOOD_GRADES) {
        if (a.species !== b.species || a.table !== b.table || a.sizeClass !== b.sizeClass || a.width !== b.width)
          continue;
        const [ia, ib] = [order.indexOf(a.grade), order.indexOf(b.grade)];
        if (ia < 0 || ib < 0 || ia >= ib) continue;
        for (const k of ['Fb', 'Ft', 'Fv', 'FcPerp', 'Fc', 'E', 'Emin'] as const) {
          expect(a[k]!, `${a.id} ${b.id} ${k}`).toBeGreaterThanOrEqual(b[k]!);
        }
      }
    }
  });

  it('lowers Southern Pine values with width', () => {
    for (const grade of ['Select Structural', 'No. 1', 'No. 2']) {
      const rows = [4, 6, 8, 10, 12].map((w) => findGrade('Southern Pine', grade, 2, w)!);
      for (const k of ['Fb', 'Ft', 'Fc'] as const) {
        expect(rows.every((r, i) => i === 0 || r[k]! <= rows[i - 1]![k]!)).toBe(true);
      }
      expect(rising(rows.map((r) => -r.Fb))).toBe(true);
    }
  });

  it('chooses the table by size', () => {
    const id = (s: string, g: string, t: number, w: number) => findGrade(s, g, t, w)?.id;
    expect(id('Douglas Fir-Larch', 'No. 2', 2, 10)).toBe('douglas-fir-larch/no-2/4A');
    expect(id('Douglas Fir-Larch', 'No. 1', 4, 12)).toBe('douglas-fir-larch/no-1/4A');
    expect(id('Douglas Fir-Larch', 'No. 1', 6, 6)).toBe('douglas-fir-larch/no-1/4D-posts-timbers');
    expect(id('Douglas Fir-Larch', 'No. 1', 6, 8)).toBe('douglas-fir-larch/no-1/4D-posts-timbers');
    expect(id('Douglas Fir-Larch', 'No. 1', 6, 10)).toBe('douglas-fir-larch/no-1/4D-beams-stringers');
    expect(id('Southern Pine', 'No. 2', 2, 6)).toBe('southern-pine/no-2/4B-6');
    expect(id('Southern Pine', 'No. 2', 4, 14)).toBe('southern-pine/no-2/4B-12');
    expect(id('Spruce-Pine-Fir', 'No. 2', 2, 8)).toBe('spruce-pine-fir/no-1-no-2/4A');
    expect(id('Hem-Fir', 'Stud', 2, 6)).toBe('hem-fir/stud/4A');
    expect(id('Hem-Fir', 'Stud', 2, 8)).toBe('hem-fir/no-3/4A');
    expect(id('Redwood', 'No. 1', 6, 6)).toBeUndefined();
    expect(id('Douglas Fir-Larch', 'No. 1', 1, 6)).toBeUndefined();
    expect(gradeById('douglas-fir/24f-v4/5A')?.FbNeg).toBe(1850);
    expect(gradesSold('4D').get('Hem-Fir')).toEqual(['No. 2', 'No. 1']);
  });
});

describe('sizes', () => {
  it('reads the trade spellings', () => {
    expect(parseNominal('2x10')).toEqual({ thickness: 2, width: 10 });
    expect(parseNominal(' 10 X 2 ')).toEqual({ thickness: 2, width: 10 });
    expect(parseNominal('6×6')).toEqual({ thickness: 6, width: 6 });
    for (const bad of ['', '2x', '2-2x8', '0x4', 'x', '2x4x8', '1.5x5.5']) expect(parseNominal(bad)).toBeUndefined();
  });

  it('dresses boards, dimension lumber and timbers', () => {
    const of = (n: string) => [findSize(n)!.b, findSize(n)!.d];
    expect(of('1x8')).toEqual([0.75, 7.25]);
    expect(of('2x4')).toEqual([1.5, 3.5]);
    expect(of('2x10')).toEqual([1.5, 9.25]);
    expect(of('4x6')).toEqual([3.5, 5.5]);
    expect(of('6x8')).toEqual([5.5, 7.5]);
    expect(of('6x12')).toEqual([5.5, 11.5]);
    expect(of('8x8')).toEqual([7.5, 7.5]);
    expect(findSize('7x9')).toBeUndefined();
  });

  it('is monotone: a larger nominal side is a larger dressed side', () => {
    for (const a of SAWN_SIZES) {
      expect(a.b).toBeLessThan(a.nominalThickness);
      expect(a.d).toBeLessThan(a.nominalWidth);
      for (const b of SAWN_SIZES) {
        if (a.nominalThickness === b.nominalThickness && a.nominalWidth < b.nominalWidth) expect(a.d).toBeLessThan(b.d);
        if (a.nominalWidth === b.nominalWidth && a.nominalThickness < b.nominalThickness) expect(a.b).toBeLessThan(b.b);
      }
    }
    expect(rising(GLULAM_DEPTHS)).toBe(true);
    expect([GLULAM_DEPTHS[0], GLULAM_DEPTHS.at(-1)]).toEqual([6, 24]);
  });
});

describe('the rest', () => {
  it('weighs wood between 22 and 50 pcf and heavier when wetter', () => {
    for (const s of SPECIES) {
      expect(woodWeightPcf(s.G)).toBeGreaterThan(22);
      expect(woodWeightPcf(s.G)).toBeLessThan(50);
      expect(woodWeightPcf(s.G, 19)).toBeGreaterThan(woodWeightPcf(s.G, 12));
    }
  });

  it('orders sheathing by strength', () => {
    expect(rising(SHEATHING.map((p) => p.thickness))).toBe(true);
    for (const p of SHEATHING) expect(p.maxSpanEdgeSupported).toBeGreaterThanOrEqual(p.maxSpanUnsupported);
    // the trade thickness and the decimal are the same number, printed to the thousandth
    for (const p of SHEATHING) {
      const [n, d] = p.name.split('/').map(Number) as [number, number];
      expect(Math.abs(p.thickness - n / d)).toBeLessThan(0.001);
    }
  });

  it('keeps the root below the shank and knows strengths by diameter', () => {
    for (const f of [...LAG_SCREWS, ...WOOD_SCREWS]) {
      expect(f.Dr! / f.D, f.id).toBeGreaterThan(0.65);
      expect(f.Dr! / f.D, f.id).toBeLessThan(0.85);
    }
    for (const list of [LAG_SCREWS, BOLTS]) expect(rising(list.map((f) => f.D))).toBe(true);
    for (const f of LAG_SCREWS) expect(f.tip!).toBeLessThan(f.D);
    for (const f of NAILS) expect(f.Fyb).toBe(nailFyb(f.D));
    expect([0.131, 0.148, 0.162, 0.192, 0.244].map(nailFyb)).toEqual([100000, 90000, 90000, 80000, 70000]);
    expect([0.05, 0.3].map(nailFyb)).toEqual([undefined, undefined]);
    expect(rising(LAG_THREAD.map(([L]) => L)) && rising(LAG_THREAD.map(([, T]) => T))).toBe(true);
    for (const [L, T] of LAG_THREAD) expect(T).toBeLessThan(L);
    expect(findFastener('bolt-1-2')?.D).toBe(0.5);
  });

  it('gives the bags per cubic yard the trade quotes', () => {
    const perYard = CONCRETE_BAGS.map((b) => CUBIC_FEET_PER_CUBIC_YARD / b.yield);
    expect(perYard).toEqual([90, 72, 60, 45].map((n) => expect.closeTo(n, 6)));
    // dry mix weighs about 133 lb per cubic foot placed whatever the bag
    for (const b of CONCRETE_BAGS) expect(b.weight / b.yield).toBeCloseTo(133.33, 2);
  });

  it('derives bar areas from bar diameters', () => {
    for (const b of REBAR) expect(Math.abs(b.area - (Math.PI * b.diameter ** 2) / 4)).toBeLessThan(0.006);
    // steel weighs 490 pcf: area / 144 * 490 per foot of bar
    for (const b of REBAR) expect(b.weight / ((((Math.PI * b.diameter ** 2) / 4) * 490) / 144)).toBeCloseTo(1, 2);
  });

  it('doubles the underlayment under low-slope shingles only', () => {
    const shingle = findCovering('asphalt-shingle')!;
    expect([2, 3.9, 4, 6].map((s) => underlaymentLayers(shingle, s))).toEqual([2, 2, 1, 1]);
    expect(underlaymentLayers(findCovering('single-ply-membrane')!, 1)).toBe(0);
    expect(underlaymentLayers(findCovering('standing-seam-metal')!, 1)).toBe(1);
  });

  it('weakens soils in class order', () => {
    expect(rising(SOIL_CLASSES.map((s) => -s.bearing)) && rising(SOIL_CLASSES.map((s) => -s.lateral))).toBe(true);
    for (const s of SOIL_CLASSES) expect((s.friction === undefined) !== (s.cohesion === undefined)).toBe(true);
  });
});
