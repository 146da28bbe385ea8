import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { CALM, type Fixture, makeGable, makeShed } from '../../analysis/testing.js';
import type { HousePlane, WallPlaced } from '../../structure/model.js';
import { buildLoads } from '../build.js';
import type { LoadCase, Loads } from '../model.js';
import { nearEdgeHeight } from './house-steps.js';

const FT = 12;

interface HouseSize {
  /** Height of the wall above the roof's edge at it, house depth, distance of the wall behind y = 0, inches. */
  readonly step: number;
  readonly depth: number;
  readonly back?: number;
  /** Rise per run of a gable along x with its eave over the wall; none when absent. */
  readonly pitch?: number;
}

/** The fixture with a house behind y = 0 whose wall stands `step` above the near edge of the cover. */
function withHouse(f: Fixture, h: HouseSize): Fixture {
  const back = h.back ?? 0;
  const plate = nearEdgeHeight(f.structure, f.structure.roofs[0]!, '+y') + h.step;
  const rear: WallPlaced = {
    ...f.structure.walls[0]!,
    start: { x: -600, y: -back },
    end: { x: 600, y: -back },
    plate,
  };
  const front: WallPlaced = {
    ...rear,
    id: 'wall-2',
    name: 'front',
    start: { x: 600, y: -back - h.depth },
    end: { x: -600, y: -back - h.depth },
    out: { x: 0, y: -1 },
  };
  const middle = -back - h.depth / 2;
  const ridge = plate + (h.depth / 2) * (h.pitch ?? 0);
  const plane = (id: string, eave: number): HousePlane => ({
    id,
    state: 'existing',
    outline: [
      { x: -600, y: eave, z: plate },
      { x: 600, y: eave, z: plate },
      { x: 600, y: middle, z: ridge },
      { x: -600, y: middle, z: ridge },
    ],
  });
  const housePlanes = h.pitch === undefined ? [] : [plane('HR1-1', -back), plane('HR1-2', -back - h.depth)];
  return { ...f, structure: { ...f.structure, walls: [rear, front], housePlanes } };
}

const loadsOf = (f: Fixture): Loads => buildLoads(f.project, f.structure).value!;
const snowCases = (l: Loads): readonly LoadCase[] => l.cases.filter((c) => c.kind === 'S' && !c.pattern);
const find = (l: Loads, id: string): LoadCase => l.cases.find((c) => c.id === id)!;
const ask = (l: Loads, question: string) => l.snow!.find((a) => a.question === question)!;
const row = (l: Loads, symbol: string, about: string): number =>
  l.basis.rows.find((r) => r.symbol === symbol && r.meaning.includes(about))!.value;

/** Weight of a case's areas on plan, lb: each region's own area, whole surfaces by their outline. */
function weight(f: Fixture, c: LoadCase): number {
  let sum = 0;
  for (const a of c.areas) {
    const s = f.structure.surfaces.find((q) => q.id === a.surface)!;
    const ring = a.region ?? s.outline;
    const xs = ring.map((p) => p.x);
    const ys = ring.map((p) => p.y);
    const area = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
    sum += (a.psf * area * Math.cos(s.slope)) / 144;
  }
  return sum;
}

describe('drift on a shed below a wall', () => {
  // Shed of the fixture: 139.25 in = 11.604 ft from the ledger's face to the eave, (238.5 + 16)/12 = 21.208 ft along.
  const along = 254.5 / 12;
  const deep = 139.25 / 12;

  it('S03: pg 25, house 40 ft long, step 4 ft gives 35.8 psf at the wall', () => {
    // hd = 0.43·∛40·⁴√35 − 1.5 = 0.43·3.4200·2.4323 − 1.5 = 2.077 ft; γ = 0.13·25 + 14 = 17.25 pcf; pd = 35.83 psf;
    // w = 4·2.077 = 8.308 ft, all of it on the roof. hc = 4 − 21/17.25 = 2.783 ft leaves the drift uncut.
    const f = withHouse(makeShed({ site: { ...CALM, snow: 25 } }), { step: 4 * FT, depth: 40 * FT });
    const l = loadsOf(f);
    const a = ask(l, 'drift');
    expect(a).toMatchObject({ outcome: 'included', cases: ['S·drift+y·leeward'] });
    expect(a.peak).toBeCloseTo(35.8, 1);
    expect(row(l, 'w', 'drift')).toBeCloseTo(8.308, 2);
    // Balanced ps = 0.84·25 = 21 psf below it; the triangle weighs pd·w/2 for each foot along.
    const expected = (21 * deep + (35.83 * 8.308) / 2) * along;
    expect(weight(f, find(l, 'S·drift+y·leeward')) / expected).toBeCloseTo(1, 3);
  });

  it('S08: pg 30, house 100 ft long, step 10 ft gives 63 psf over 14.08 ft, cut where the roof ends', () => {
    const f = withHouse(makeShed(), { step: 10 * FT, depth: 100 * FT });
    const l = loadsOf(f);
    expect(ask(l, 'drift').peak).toBeCloseTo(63, 1);
    expect(row(l, 'w', 'drift')).toBeCloseTo(14.08, 2);
    const edge = 63 * (1 - deep / 14.08);
    const expected = (25.2 * deep + ((63 + edge) / 2) * deep) * along;
    expect(weight(f, find(l, 'S·drift+y·leeward')) / expected).toBeCloseTo(1, 3);
  });

  it('S06: the windward drift of a 35 ft roof below a shallow house: 22.3 psf over 5.38 ft', () => {
    // 0.75·hd = 0.75·(0.43·∛35·⁴√30 − 1.5) = 1.344 ft at γ = 16.6 pcf; leeward from 20 ft only 1.231 ft.
    const f = withHouse(makeShed({ depth: 420 - 13.25, site: { ...CALM, snow: 20 } }), {
      step: 4 * FT,
      depth: 20 * FT,
    });
    const l = loadsOf(f);
    expect(ask(l, 'drift').cases).toEqual(['S·drift+y·windward']);
    expect(ask(l, 'drift').peak).toBeCloseTo(22.3, 1);
    expect(row(l, 'w', 'drift')).toBeCloseTo(5.376, 2);
  });

  it('needs a step, and a clear height of a fifth of the snow below it', () => {
    for (const step of [-5, 0]) {
      const l = loadsOf(withHouse(makeShed(), { step, depth: 40 * FT }));
      expect(ask(l, 'drift').outcome).toBe('none');
      expect(snowCases(l).map((c) => c.id)).toEqual(['S']);
    }
    // hb = 25.2/17.9 = 16.9 in; a step of 19 in leaves 2.1 in, under a fifth.
    expect(ask(loadsOf(withHouse(makeShed(), { step: 19, depth: 480 })), 'drift').outcome).toBe('none');
    expect(ask(loadsOf(withHouse(makeShed(), { step: 21, depth: 480 })), 'drift').outcome).toBe('included');
  });

  it('is smaller across a gap and nothing from 20 ft on', () => {
    // hd from 40 ft is 26.38 in. The eave-to-eave line of 6 to 1: (6·48 − 61.5)/6 = 37.8 in leaves it whole, (6·48 − 201.5)/6 =
    // 14.42 in cuts it: 14.42/12·17.9 = 21.50 psf over 86.5 in. The roof's edge stands 1.5 in before y = 0.
    const loads = (back: number): Loads => loadsOf(withHouse(makeShed(), { step: 48, depth: 480, back }));
    const at = (back: number) => ask(loads(back), 'drift');
    expect(at(60).peak).toBeCloseTo((26.38 / 12) * 17.9, 1);
    expect(at(200).peak).toBeCloseTo(21.505, 2);
    expect(row(loads(200), 'w', 'drift')).toBeCloseTo(86.5 / 12, 6);
    expect(at(240).outcome).toBe('none');
  });

  it('says where it is not covered', () => {
    const skew = withHouse(makeShed(), { step: 48, depth: 480 });
    const walls = skew.structure.walls.map((w, i) => (i > 0 ? w : { ...w, out: { x: 0.6, y: 0.8 } }));
    expect(ask(loadsOf({ ...skew, structure: { ...skew.structure, walls } }), 'drift').outcome).toBe('outside');
    const lone = withHouse(makeShed(), { step: 48, depth: 480 });
    const one = { ...lone.structure, walls: lone.structure.walls.slice(0, 1) };
    expect(ask(loadsOf({ ...lone, structure: one }), 'drift').outcome).toBe('outside');
    const shack = {
      name: 'barn',
      counts: true,
      outline: [
        { x: 200, y: 0 },
        { x: 300, y: 0 },
        { x: 300, y: 99 },
      ],
    };
    const project = { ...lone.project, lot: { ...lone.project.lot, buildings: [shack] } };
    expect(ask(loadsOf({ ...lone, project }), 'drift').note).toContain('barn');
  });
});

describe('a storey set back', () => {
  it('drifts across the lower wing like a wall behind a gap', () => {
    // The wing's wall is no higher than the cover; the upper storey stands 100 in behind it, 48 in above the cover's edge.
    const f = withHouse(makeShed(), { step: 0, depth: 480 });
    const plate = f.structure.walls[0]!.plate + 48;
    const upper = {
      kind: 'gable' as const,
      min: { x: -600, y: -480 },
      max: { x: 600, y: -100 },
      ridge: 'x' as const,
      pitch: 0.3,
      plate,
      overhang: 0,
      rake: 0,
      covering: 'asphalt-shingle',
      path: '/house/roofs/0',
    };
    const project = { ...f.project, house: { ...f.project.house, roofs: [upper] } };
    expect(ask(loadsOf(f), 'drift').outcome).toBe('none');
    // (6·48 − 101.5)/6 = 31.1 in leaves hd of 26.38 in whole.
    expect(ask(loadsOf({ ...f, project }), 'drift').peak).toBeCloseTo((26.38 / 12) * 17.9, 1);
  });
});

describe('sliding snow', () => {
  it('is not answered where a higher wall has no roof described', () => {
    expect(ask(loadsOf(withHouse(makeShed(), { step: 96, depth: 480 })), 'sliding').outcome).toBe('outside');
  });

  it('spreads 0.4·pf·W over 15 ft, on the part of the roof that is there', () => {
    // pf = 0.7·1·1.2·1·30 = 25.2 psf; W = 40/2 = 20 ft; 0.4·25.2·20/15 = 13.44 psf on 11.604 ft of roof (the eave stands
    // 1.5 in before its edge, so the first 15 ft reach past it).
    const f = withHouse(makeShed(), { step: 8 * FT, depth: 40 * FT, pitch: 5 / 12 });
    const l = loadsOf(f);
    const c = find(l, 'S·sliding+y');
    expect(ask(l, 'sliding').peak).toBeCloseTo(13.44, 9);
    expect(weight(f, c)).toBeCloseTo(((25.2 + 13.44) * 139.25 * 254.5) / 144, 6);
  });

  it('needs a slope that sheds toward the cover', () => {
    const flat = withHouse(makeShed(), { step: 96, depth: 480, pitch: 0.2 / 12 });
    expect(ask(loadsOf(flat), 'sliding').outcome).toBe('none');
    const f = withHouse(makeShed(), { step: 96, depth: 480, pitch: 5 / 12 });
    const away = { ...f.structure, housePlanes: f.structure.housePlanes.slice(1) };
    expect(ask(loadsOf({ ...f, structure: away }), 'sliding').outcome).toBe('none');
  });
});

describe('unbalanced snow on a gable', () => {
  it('wide form for trusses at any width, mirrored for the two directions', () => {
    // W = 253.5/2 in = 10.5625 ft (fetch floor 20 ft); hd = 0.43·∛20·⁴√40 − 1.5 = 1.4354 ft; S = 3, γ = 17.9 pcf.
    // Surcharge 1.4354·17.9/√3 = 14.834 psf over (8/3)·1.4354·√3 = 6.630 ft; 0.3·25.2 = 7.56 psf windward; 15 ft along.
    const f = makeGable();
    const l = loadsOf(f);
    expect(snowCases(l).map((c) => c.id)).toEqual(['S', 'S·unbalanced+x', 'S·unbalanced-x']);
    const expected = (7.56 * 10.5625 + 25.2 * 10.5625 + 14.834 * 6.63) * 15;
    for (const id of ['S·unbalanced+x', 'S·unbalanced-x']) expect(weight(f, find(l, id)) / expected).toBeCloseTo(1, 4);
    const least = (id: string): string => find(l, id).areas.reduce((a, b) => (b.psf < a.psf ? b : a)).surface;
    expect([least('S·unbalanced+x'), least('S·unbalanced-x')]).toEqual(['R1-left', 'R1-right']);
  });

  it('narrow form for rafters from eave to ridge up to 20 ft: Is·pg on one slope only', () => {
    const f = makeGable();
    const members = f.structure.members.map((m) => (m.role === 'truss' ? { ...m, role: 'rafter' as const } : m));
    const loads = (g: Fixture): Loads =>
      loadsOf({ ...g, structure: { ...g.structure, members: g === f ? members : g.structure.members } });
    expect(find(loads(f), 'S·unbalanced+x').areas).toEqual([{ surface: 'R1-right', psf: 30, acts: 'plan' }]);
  });

  it('does not arise on one slope or a steep one', () => {
    expect(ask(loadsOf(makeShed()), 'unbalanced').outcome).toBe('none');
    expect(ask(loadsOf(makeGable({ pitch: 8 / 12 })), 'unbalanced').outcome).toBe('none');
    expect(ask(loadsOf(makeGable({ pitch: 7 / 12 })), 'unbalanced').outcome).toBe('included');
  });
});

describe('several ways of lying', () => {
  it('are alternatives: no combination adds two', () => {
    const l = loadsOf(withHouse(makeShed(), { step: 96, depth: 480, pitch: 5 / 12 }));
    const ways = snowCases(l).length;
    expect(ways).toBe(3);
    for (const c of [...l.combinations, ...l.strength])
      expect(c.terms.filter((t) => l.cases[t.case]!.kind === 'S').length).toBeLessThanOrEqual(1);
    const plain = l.combinations.filter((c) => c.label === 'D + S' && !c.id.includes('partial'));
    expect(plain.map((c) => c.id)).toEqual(['D+S', 'D+S (S·drift+y·leeward)', 'D+S (S·sliding+y)']);
    const winds = l.cases.filter((c) => c.kind === 'W').length;
    expect(l.combinations.filter((c) => c.label === 'D + 0.45W + 0.75S' && !c.id.includes('partial')).length).toBe(
      ways * winds,
    );
    expect(new Set(l.combinations.map((c) => c.id)).size).toBe(l.combinations.length);
  });

  it('balance against the project’s own plan, any house, roof, gap and snow', () => {
    const sizes = fc.record({
      gable: fc.boolean(),
      snow: fc.integer({ min: 5, max: 100 }),
      step: fc.integer({ min: -20, max: 200 }),
      depth: fc.integer({ min: 100, max: 1400 }),
      back: fc.integer({ min: 0, max: 260 }),
      housePitch: fc.integer({ min: 0, max: 12 }),
      pitch: fc.integer({ min: 1, max: 7 }),
      reach: fc.integer({ min: 96, max: 240 }),
    });
    fc.assert(
      fc.property(sizes, (s) => {
        const site = { ...CALM, snow: s.snow };
        const plain = s.gable
          ? makeGable({ pitch: s.pitch / 12, span: s.reach, site })
          : makeShed({ pitch: s.pitch / 12, depth: s.reach, site });
        const f = withHouse(plain, { step: s.step, depth: s.depth, back: s.back, pitch: s.housePitch / 12 });
        const loads = loadsOf(f);
        const { balance } = analyse(f.project, f.structure, loads).value!;
        expect(balance.length).toBe(loads.cases.length);
        for (const b of balance) {
          expect(b.errorApplied, b.case).toBeLessThan(1e-6);
          expect(b.errorReactions, b.case).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });
});
