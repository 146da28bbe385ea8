import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { LoadCase, Loads } from '../loads/model.js';
import { analyse, BALANCE_LIMIT, combine, type Effects, envelope, footingEnvelope, jointEnvelope } from './index.js';
import { CALM, type Fixture, makeGable, makeShed, SHED } from './testing.js';

interface Run {
  readonly loads: Loads;
  readonly effects: Effects;
  readonly issues: readonly unknown[];
}
function run(f: Fixture): Run {
  const loads = buildLoads(f.project, f.structure).value!;
  const out = analyse(f.project, f.structure, loads);
  return { loads, effects: out.value!, issues: out.issues };
}
const caseOf = (r: Run, id: string): number => r.effects.cases.indexOf(id);

/** A load stage with one case only, for closed forms. */
function only(f: Fixture, c: Partial<LoadCase>): Run {
  const one: LoadCase = {
    id: 'T',
    kind: 'S',
    title: '',
    areas: [],
    edges: [],
    plan: [],
    selfWeight: false,
    side: [],
    clause: '',
    ...c,
  };
  const loads: Loads = { cases: [one], combinations: [], strength: [], basis: { rows: [] }, outside: [] };
  const out = analyse(f.project, f.structure, loads);
  return { loads, effects: out.value!, issues: out.issues };
}

describe('a shed on ledger and posts', () => {
  const shed = run(makeShed());

  it('closes every case: applied, integral of the project, reactions', () => {
    expect(shed.issues).toEqual([]);
    expect(shed.effects.failure).toBeUndefined();
    expect(shed.effects.balance.length).toBe(shed.loads.cases.length);
    for (const b of shed.effects.balance) {
      expect(b.errorApplied).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions).toBeLessThan(BALANCE_LIMIT);
    }
  });

  it('gives an inner rafter its closed form under load on plan: wL²/8 with w square to the axis', () => {
    const f = makeShed({ eave: 0 });
    const r = only(f, {
      areas: [{ surface: 'R1', psf: 30, acts: 'plan' }],
      plan: [{ roof: 'R1', psf: 30, acts: 'plan' }],
    });
    expect(r.issues).toEqual([]);
    const e = r.effects.members.get('RF1-7')!;
    const theta = Math.atan(SHED.pitch);
    const across = (30 / 144) * SHED.spacing * Math.cos(theta) ** 2;
    const span = e.spans.find((s) => s.kind === 'span')!;
    const tail = e.spans[0]!.length;
    // Uniform load on a span with one overhang (the half beam): midspan moment wL²/8 − w·a²/4.
    const mid = (span.from + span.to) / 2;
    const i = e.stations.findIndex((x) => Math.abs(x - mid) < 1e-9);
    expect(e.m[0]![i]).toBeCloseTo((across * span.length ** 2) / 8 - (across * tail ** 2) / 4, 6);
  });

  it('balances a rafter: vertical loads make no thrust, and N is the reaction along the slope', () => {
    const r = only(makeShed({ eave: 0 }), {
      areas: [{ surface: 'R1', psf: 30, acts: 'plan' }],
      plan: [{ roof: 'R1', psf: 30, acts: 'plan' }],
    });
    const hung = r.effects.joints.get('JH-7')!.force[0]!;
    expect(hung.x).toBeCloseTo(0, 9);
    expect(hung.y).toBeCloseTo(0, 9);
    const e = r.effects.members.get('RF1-7')!;
    // At the hanger the rafter hangs: tension of the reaction's part along the slope.
    const sin = Math.sin(Math.atan(SHED.pitch));
    expect(e.n[0]!.at(-1)).toBeCloseTo(-hung.z * sin, 6);
  });

  it('hands all sideways wind to the house at the ledger, none to the beam', () => {
    const k = caseOf(shed, 'W-y·A·clear');
    expect(shed.effects.joints.get('JB-7')!.force[k]!.y).toBeCloseTo(0, 9);
    expect(shed.effects.joints.get('JH-7')!.force[k]!.y).toBeLessThan(0);
    expect(shed.effects.sway[0]!.force[k]!.y).toBeCloseTo(0, 6);
  });

  it('runs the beam over the middle post: 10/8 and 3/8 of a span for an even load', () => {
    // Fine spacing stands for a uniform load; posts at the very ends make two equal spans.
    const f = makeShed({ posts: [0, 120, 240], spacing: 6, rake: 0 });
    const r = only(f, {
      areas: [{ surface: 'R1', psf: 30, acts: 'plan' }],
      plan: [{ roof: 'R1', psf: 30, acts: 'plan' }],
    });
    const mid = -r.effects.joints.get('JP-PB12')!.force[0]!.z;
    const end = -r.effects.joints.get('JP-PB11')!.force[0]!.z;
    const total = mid + 2 * end;
    // Posts shorten a little and the end strips are narrower: within 1 %.
    expect(mid / total).toBeGreaterThan(0.625 * 0.99);
    expect(mid / total).toBeLessThan(0.625 * 1.01);
  });

  it('shortens posts by what they carry and takes it to the footing', () => {
    const k = caseOf(shed, 'D');
    const post = shed.effects.members.get('PB12')!;
    const foot = shed.effects.footings.get('FB12')!;
    expect(post.n[k]![0]).toBeCloseTo(-foot.force[k]!.z, 9);
    expect(post.n[k]![1]! - post.n[k]![0]!).toBeCloseTo(((5.5 * 5.5 * 35) / 1728) * post.stations[1]!, 6);
    expect(foot.force[k]!.z).toBeGreaterThan(0);
    expect(foot.moment[k]).toEqual({ x: 0, y: 0, z: 0 });
  });

  it('has no number that is not finite', () => {
    for (const e of shed.effects.members.values()) {
      for (const curve of [e.m, e.v, e.n, e.mWeak, e.vWeak, e.sag])
        for (const c of curve) for (const x of c) expect(Number.isFinite(x)).toBe(true);
    }
  });

  it('keeps dm/dx = v along beam and rafter', () => {
    const k = caseOf(shed, 'S');
    for (const id of ['B1', 'RF1-7']) {
      const e = shed.effects.members.get(id)!;
      const { stations: x } = e;
      for (let i = 0; i + 1 < x.length; i++) {
        const dx = x[i + 1]! - x[i]!;
        if (dx < 1e-6) continue;
        const mean = (e.v[k]![i]! + e.v[k]![i + 1]!) / 2;
        expect((e.m[k]![i + 1]! - e.m[k]![i]!) / dx).toBeCloseTo(mean, 3);
      }
    }
  });
});

describe('a gable of trusses on two beams', () => {
  const gable = run(makeGable());

  it('closes every case and leaves the trusses to their engineer', () => {
    expect(gable.issues).toEqual([]);
    for (const b of gable.effects.balance)
      expect(Math.max(b.errorApplied, b.errorReactions)).toBeLessThan(BALANCE_LIMIT);
    expect(gable.effects.members.has('T1-3')).toBe(false);
    expect(gable.effects.joints.has('JA-3')).toBe(true);
  });

  it('holds the sideways wind as sway, lb for lb', () => {
    gable.loads.cases.forEach((c, k) => {
      const b = gable.effects.balance[k]!;
      expect(gable.effects.sway[0]!.force[k]!.x, c.id).toBeCloseTo(b.applied.x, 6);
      expect(gable.effects.sway[0]!.force[k]!.y, c.id).toBeCloseTo(b.applied.y, 6);
    });
  });

  it('mirrors: wind the other way loads the other side the same', () => {
    const [a, b] = [caseOf(gable, 'W+x·A·clear'), caseOf(gable, 'W-x·A·clear')];
    const left = gable.effects.footings.get('FB11')!.force;
    const right = gable.effects.footings.get('FB21')!.force;
    expect(left[a]!.z).toBeCloseTo(right[b]!.z, 6);
    expect(left[b]!.z).toBeCloseTo(right[a]!.z, 6);
    expect(left[0]!.z).toBeCloseTo(right[0]!.z, 6);
  });

  it('tips under the least horizontal wind: leeward presses, windward lifts, nothing gained', () => {
    const k = caseOf(gable, 'W+x·least');
    const left = gable.effects.footings.get('FB11')!.force[k]!.z;
    const right = gable.effects.footings.get('FB21')!.force[k]!.z;
    expect(left).toBeLessThan(0);
    expect(right).toBeCloseTo(-left, 6);
  });

  it('lifts under 0.6D + 0.6W where the wind outdoes the weight', () => {
    const storm = run(makeGable({ site: { ...CALM, wind: 160 } }));
    const uplift = storm.loads.combinations.filter((c) => c.uplift);
    expect(footingEnvelope(storm.effects, 'FB11', uplift)!.up.value).toBeGreaterThan(0);
    const breeze = run(makeGable({ site: { ...CALM, wind: 30 } }));
    expect(
      footingEnvelope(
        breeze.effects,
        'FB11',
        breeze.loads.combinations.filter((c) => c.uplift && !c.id.includes('least')),
      )!.up.value,
    ).toBe(0);
  });
});

describe('hand statics', () => {
  it('stand beside posts, footings and spans; a continuous beam names its reason', () => {
    const shed = run(makeShed());
    const end = shed.effects.hand.find((h) => h.about === 'B1 on PB11' && h.case === 'S')!;
    expect(end.analysed).toBeLessThan(end.statics);
    expect(end.reason).toBe('continuity over PB12');
    expect(end.governs).toBe('analysed');
    expect(shed.effects.hand.some((h) => h.about.startsWith('FB12 under'))).toBe(true);
  });

  it('agree with the frame for a beam on two posts', () => {
    const gable = run(makeGable());
    const h = gable.effects.hand.find((x) => x.about.startsWith('B1 moment, span') && x.case === 'S')!;
    // The frame's stations hold every framing load and so the peak.
    expect(h.analysed).toBeCloseTo(h.statics, 4);
    expect(gable.effects.hand.every((x) => x.governs === 'analysed')).toBe(true);
  });
});

describe('what cannot be worked out is named', () => {
  it('a beam without posts', () => {
    const f = makeShed();
    const joints = f.structure.joints.filter((j) => j.kind !== 'beam-to-post');
    const out = run({ ...f, structure: { ...f.structure, joints } });
    expect(out.effects.failure).toContain('B1 stands on nothing');
  });

  it('a beam on one post is a mechanism', () => {
    const f = makeShed();
    const joints = f.structure.joints.filter((j) => j.kind !== 'beam-to-post' || j.id === 'JP-PB12');
    const out = run({ ...f, structure: { ...f.structure, joints } });
    expect(out.effects.failure).toMatch(/can move freely/);
  });

  it('a rafter with one bearing', () => {
    const f = makeShed();
    const joints = f.structure.joints.filter((j) => j.id !== 'JB-3');
    const out = run({ ...f, structure: { ...f.structure, joints } });
    expect(out.effects.failure).toContain('RF1-3 has 1 bearing');
  });

  it('a load that the model loses is an error, not a rounding', () => {
    const f = makeShed();
    // The project says a longer roof than was placed.
    const roofs = f.project.cover.roofs.map((r) => ({ ...r, rake: r.rake + 1 }));
    const project = { ...f.project, cover: { ...f.project.cover, roofs } };
    const loads = buildLoads(project, f.structure).value!;
    const out = analyse(project, f.structure, loads);
    expect(out.issues.length).toBeGreaterThan(0);
    expect(out.issues[0]!.code).toBe('balance');
  });
});

describe('helpers', () => {
  const shed = run(makeShed());

  it('envelope agrees with combine at its station', () => {
    const e = shed.effects.members.get('B1')!;
    const { max, min } = envelope(e, shed.loads.combinations, 'm');
    expect(combine(e.m, shed.loads.combinations[max.combination]!, max.station)).toBeCloseTo(max.value, 9);
    expect(combine(e.m, shed.loads.combinations[min.combination]!, min.station)).toBeCloseTo(min.value, 9);
    const span = envelope(e, shed.loads.combinations, 'm', 1);
    expect(e.spanOf[span.max.station]).toBe(1);
  });

  it('jointEnvelope gives down, up and sideways with their combinations', () => {
    const j = jointEnvelope(shed.effects, 'JH-7', shed.loads.combinations)!;
    expect(j.down.value).toBeGreaterThan(0);
    expect(shed.loads.combinations[j.down.combination]!.label).toContain('S');
    expect(j.up.value).toBeGreaterThan(0);
    expect(shed.loads.combinations[j.up.combination]!.uplift).toBe(true);
    expect(j.y.value).toBeGreaterThan(0);
    expect(jointEnvelope(shed.effects, 'none', shed.loads.combinations)).toBeUndefined();
  });
});

describe('property: nothing is lost', () => {
  const site = fc.record({
    wind: fc.double({ min: 85, max: 180, noNaN: true }),
    snow: fc.double({ min: 0, max: 80, noNaN: true }),
    live: fc.double({ min: 12, max: 40, noNaN: true }),
    exposure: fc.constantFrom('B' as const, 'C' as const, 'D' as const),
  });
  const closes = (f: Fixture): void => {
    const r = run(f);
    expect(r.effects.failure).toBeUndefined();
    expect(r.issues).toEqual([]);
  };

  it('random sheds', () => {
    fc.assert(
      fc.property(
        fc.record({
          depth: fc.double({ min: 60, max: 240, noNaN: true }),
          length: fc.double({ min: 100, max: 500, noNaN: true }),
          eave: fc.double({ min: 0, max: 36, noNaN: true }),
          rake: fc.double({ min: 0, max: 24, noNaN: true }),
          pitch: fc.double({ min: 0.02, max: 0.9, noNaN: true }),
          spacing: fc.double({ min: 12, max: 32, noNaN: true }),
          inset: fc.double({ min: 0, max: 40, noNaN: true }),
          site,
        }),
        ({ inset, ...s }) => closes(makeShed({ ...s, posts: [inset, s.length / 2, s.length - inset] })),
      ),
      { numRuns: 60 },
    );
  });

  it('random gables', () => {
    fc.assert(
      fc.property(
        fc.record({
          span: fc.double({ min: 96, max: 360, noNaN: true }),
          length: fc.double({ min: 96, max: 400, noNaN: true }),
          eave: fc.double({ min: 0, max: 30, noNaN: true }),
          rake: fc.double({ min: 0, max: 20, noNaN: true }),
          pitch: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
          spacing: fc.double({ min: 16, max: 48, noNaN: true }),
          inset: fc.double({ min: 0, max: 30, noNaN: true }),
          site,
        }),
        ({ inset, ...s }) => closes(makeGable({ ...s, posts: [inset, s.length - inset] })),
      ),
      { numRuns: 60 },
    );
  });
});
