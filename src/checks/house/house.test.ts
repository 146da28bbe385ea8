import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Header, LedgerFastening, Opening, Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, given, houseEndsProject, shedProject } from '../../structure/testing.js';
import type { CheckContext, Finding } from '../contract.js';
import { jointDemands } from '../joints/demands.js';
import { jointProducts } from '../joints/products.js';
import { LOT, runFirst } from '../testing.js';
import { bayMoment, bayShear, endBayShear, tipMoment } from './bay.js';
import { houseFacts } from './facts.js';
import { type Shank, shankOf, spotsOf } from './fastener.js';
import { assessHeader } from './header.js';
import { houseConnection } from './house-connection.js';
import { ledgerFasteners, namesDeckTable } from './ledger-fasteners.js';
import { searched } from './ledger-search.js';
import { partsAt } from './ledger-shares.js';
import { ledgerStrength } from './ledger-strength.js';
import { flatForces, type HousePlace, housePlaces } from './places.js';
import { sideDemand } from './side.js';

const worked = (project: Project): CheckContext => {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: LOT };
};

/** Three 1/2 in. bolts every 12 in. into a band 107.5 to 116.75 in. above the floor; ledger 2x12, its top at 119. */
const bolts = (by: Partial<LedgerFastening> = {}): LedgerFastening => ({
  kind: 'bolt',
  diameter: 0.5,
  length: 5,
  washer: 2,
  spacing: 12,
  rows: [4.25, 6.75, 9.25],
  into: 'band',
  through: 0.4375,
  standoff: 0,
  framing: { species: 'Douglas Fir-Larch', depth: 1.5, bottom: 107.5, top: 116.75 },
  basis: '',
  verified: given(true, 'seen from below'),
  path: '/cover/ledgers/0/fastening',
  ...by,
});

const header = (by: Partial<Header> = {}): Header => ({
  verified: given(true, "the builder's framing plan"),
  path: '/house/openings/0/header',
  ...by,
});

const shed = (f: Partial<LedgerFastening> = {}, h: Header | 'none' = header()): Project =>
  change(shedProject, {
    house: { openings: (old) => old.map((o) => (o.sill < 40 ? (h === 'none' ? o : { ...o, header: h }) : o)) },
    cover: { ledgers: (old) => [{ ...old[0]!, fastening: bolts(f) }] },
  });
const ends = worked(houseEndsProject);
const byId = (ctx: CheckContext, id: string): Finding => houseConnection.run({ id, path: '' }, ctx);

describe('side load brought to the house', () => {
  it.each([ends, worked(shed())])('keeps force and twist of every restraint', (ctx) => {
    const { structure, effects } = ctx;
    const ties = structure.joints.filter((j) => /^(ledger-to-house|beam-to-wall)/.test(j.kind));
    for (let c = 0; c < effects.cases.length; c++) {
      const own = effects.restraints.map((r) => ({ at: r.at, f: r.force[c]! }));
      const ours = ties.map((j) => ({ at: j.at, f: sideDemand(ctx, j.id)[c]! }));
      const sum = (list: typeof own, g: (t: (typeof own)[number]) => number) => list.reduce((s, t) => s + g(t), 0);
      expect(sum(ours, (t) => t.f.x)).toBeCloseTo(
        sum(own, (t) => t.f.x),
        6,
      );
      expect(sum(ours, (t) => t.f.y)).toBeCloseTo(
        sum(own, (t) => t.f.y),
        6,
      );
      // All ties lie on one wall line: moments about its middle must agree, forces along it having no arm there.
      const y0 = ties.reduce((s, j) => s + j.at.y, 0) / ties.length;
      const arm = (t: (typeof own)[number]) => t.at.x * t.f.y - (t.at.y - y0) * t.f.x;
      const skew = (t: (typeof own)[number]) => t.at.x * t.f.y;
      expect(Math.abs(sum(ours, skew) - sum(own, arm))).toBeLessThan(1e-3);
    }
  });

  it('is nothing where something else resists it', () => {
    const braced = change(houseEndsProject, { cover: { lateral: { x: 'knee-braces', y: 'knee-braces' } } });
    const ctx = worked(braced);
    for (const j of ctx.structure.joints)
      for (const f of sideDemand(ctx, j.id)) expect(f).toEqual({ x: 0, y: 0, z: 0 });
  });
});

describe('a bay of the ledger', () => {
  /** Greatest moment and shear of equal loads on a simple span, tried at many places. */
  function tried(r: number, s: number): { m: number; v: number } {
    let [m, v] = [0, 0];
    for (let k = 0; k < 400; k++) {
      const at: number[] = [];
      for (let x = (r * k) / 400; x < s; x += r) at.push(x);
      const R = at.reduce((sum, x) => sum + (1 - x / s), 0);
      v = Math.max(v, R, at.length - R);
      for (const here of at) m = Math.max(m, R * here - at.reduce((sum, x) => sum + Math.max(0, here - x), 0));
    }
    return { m, v };
  }
  it.each([
    [16, 16],
    [24, 16],
    [16, 24],
    [16, 32],
    [12, 48],
    [14.5, 8],
  ])('of rafters at %d in on bays of %d in is never underrated', (r, s) => {
    const { m, v } = tried(r, s);
    expect(bayMoment(r, s)).toBeGreaterThanOrEqual(m - 1e-6);
    expect(bayMoment(r, s)).toBeLessThan(1.2 * m);
    expect(bayShear(r, s)).toBeGreaterThanOrEqual(v - 1e-2);
  });
  it('has more shear beside a place with a rafter beyond it', () => {
    // Rafter 6 in past the place, next 6 in inside on a bay of 12 in: 6/12 + 1.268·6/12.
    expect(endBayShear(12, 12, 6)).toBeCloseTo(0.5 + 1.268 * 0.5, 9);
    // Nothing beyond the place: a rafter right beside it, and the next 8 in inside.
    expect(endBayShear(8, 12, 0)).toBeCloseTo(1 + 4 / 12, 9);
  });
  it('runs past its first place as a cantilever', () => expect(tipMoment(16, 20)).toBe(20 + 4));
});

const shankOfLedger = (place: HousePlace): Shank => shankOf(place.ledger!.fastening!, place.member) as Shank;

describe('fasteners of a ledger', () => {
  const member = worked(shed()).structure.members.find((m) => m.role === 'ledger')!;

  it('gives the end place more than the rafter beyond it, and says from where', () => {
    const ctx = worked(shed());
    const place = housePlaces(ctx)[0]!;
    const last = [...place.joints].sort((p, q) => p.ties[0]!.along - q.ties[0]!.along).at(-1)!;
    const c = ctx.loads.combinations.find(
      (x) => x.id === searched(ctx, place, shankOfLedger(place))!.worst!.F.combination,
    )!;
    const { rows } = flatForces(ctx, [last], place.wall)![0]!;
    const down = c.terms.reduce((sum, t) => sum + t.factor * rows[3 * t.case + 1]!, 0);
    const parts = partsAt(ctx, place, last, c);
    expect(parts.reduce((sum, p) => sum + p.share * p.load, 0)).toBeCloseTo(down, 6);
    // Places 6 to 234 in at 12 in, rafter at 239.25: about the next place, R·(1 + 5.25/12); over many bays, 1 + 1.268·5.25/12.
    expect(parts[0]!.share).toBeCloseTo(1.5547, 3);
    expect(down).toBeGreaterThan(parts[0]!.load * (1 + 5.25 / 12));
    // Bolts as they stand do not hold that.
    expect(runFirst(ledgerFasteners, ctx).status).toBe('fail');
  });

  it('passes three bolts at 12 in, the first 3-1/2 in from the end, by pocket calculator', () => {
    const ctx = worked(shed({ end: 3.5 }));
    const f = runFirst(ledgerFasteners, ctx);
    expect(f.status).toBe('pass');
    // 1/2 in. bolt across 7/16 in., both members 1-1/2 in. DF-L loaded across the grain, Fe⊥ 3157.6 psi, mode II:
    // Z = 179.9 lb; rows 2.5 in. = 5D, first place 3.5 in. = 7D from the end: CΔ = 1. Cg: γ = 63640, EA = 1.6e6·1.5·2 =
    // 4.8e6, u = 1 + 63640·1.25·2/4.8e6 = 1.03314, m = 0.77356, m³ = 0.46290, m⁶ = 0.21428:
    // 0.77356·0.78572/(3·(1.4629·1.77356 − 0.78572))·2/0.22644 = 0.9893.
    const worst = [...housePlaces(ctx)[0]!.joints].reduce((w, j) => {
      const { rows } = flatForces(ctx, [j], ctx.structure.walls[0]!)![0]!;
      return ctx.loads.combinations.reduce((v, c) => {
        const sum = (k: 0 | 1 | 2) => c.terms.reduce((s, t) => s + t.factor * rows[3 * t.case + k]!, 0);
        const L = Math.hypot(sum(0), sum(1)) / 3;
        const down = sum(1);
        const T = Math.max(0, sum(2)) / 3 + (Math.abs(down) * (1.5 + 0.4375)) / (down > 0 ? 7 : 9.25);
        // Washer 2 in. over a hole of 9/16 in.: 2.893 in², 625 psi.
        const ratio = L / (179.906 * 0.9893 * c.CD) + T / (625 * 2.8931);
        return Math.max(v, ratio);
      }, w);
    }, 0);
    expect(f.ratio).toBeCloseTo(worst, 3);
  });

  it('says the same side load in the joint schedule as at the house', () => {
    const ctx = worked(shed());
    const place = housePlaces(ctx)[0]!;
    const d = jointDemands(ctx).find((q) => q.kind === 'ledger-to-house')!;
    expect(d.alongX.value).toBeCloseTo(place.needs!.along.value, 6);
    expect(d.alongY.value).toBeCloseTo(Math.max(place.needs!.away.value, place.needs!.against.value), 6);
    expect(d.alongX.value).toBeGreaterThan(0);
  });

  it('stands where it is told: 3-1/2 in from both ends, equal bays of at most the spacing between', () => {
    const at = housePlaces(worked(shed({ end: 3.5 })))[0]!.joints.map((j) => j.ties[0]!.along);
    // (240 − 7)/12 = 19.4: twenty bays of 11.65 in.
    expect(at).toHaveLength(21);
    at.forEach((x, i) => {
      expect(x).toBeCloseTo(3.5 + 11.65 * i, 9);
    });
    const crossed = shed({ end: 120 });
    expect(place(crossed).issues.map((i) => i.code)).toContain('ledger-fasteners-cross');
  });

  it('leaves a trace that ends with its ratio', () => {
    const ctx = worked(shed());
    const rec = makeRecorder();
    const f = ledgerFasteners.run({ id: 'L1', path: '' }, ctx, rec);
    const steps = rec.lines.flatMap((l) => (l.kind === 'step' ? [l] : []));
    expect(steps.at(-1)).toMatchObject({ symbol: 'ratio', value: f.ratio });
    const by = (s: string) => steps.filter((x) => x.symbol === s).at(-1)!.value;
    expect(by('L') / by("Z'") + by('T') / by('Pw')).toBeCloseTo(f.ratio, 6);
  });

  it.each([
    ['too few', { rows: [4.25, 9.25], spacing: 24 }, 'overloaded'],
    ['too near the edge', { rows: [1, 9.25] }, "from the ledger's top edge"],
    ['under the band', { framing: { ...bolts().framing, bottom: 109 } }, "from the band's bottom edge"],
    ['rows too close', { rows: [4.25, 5.25] }, 'between rows'],
    ['a bolt too short', { length: 3 }, 'long where'],
    ['a lag that does not reach', { kind: 'lag' as const, length: 4 }, 'bears'],
    ['no such size', { diameter: 0.45 }, 'catalogue'],
    [
      'lags in studs under side load',
      {
        kind: 'lag' as const,
        into: 'studs' as const,
        length: 7,
        framing: { species: 'Douglas Fir-Larch', depth: 5.5, bottom: undefined, top: undefined },
      },
      "from the stud's edge",
    ],
  ] as const)('fails %s', (_, by, says) => {
    const f = runFirst(ledgerFasteners, worked(shed(by as Partial<LedgerFastening>)));
    expect(f.status).toBe('fail');
    expect(f.note).toContain(says);
  });

  it('has nothing to turn about on spacers with one row', () => {
    expect(runFirst(ledgerFasteners, worked(shed({ rows: [5.5], standoff: 0.5, length: 6 })))).toMatchObject({
      status: 'fail',
      ratio: 99,
    });
  });

  it('counts the thread of a lag without its tip', () => {
    // 1/2 x 6 lag: thread 3.5 less tip 5/16 = 3.1875; ledger 1.5 and sheathing 0.4375 leave 4.0625, less tip 3.75.
    const s = shankOf(
      bolts({
        kind: 'lag',
        length: 6,
        into: 'studs',
        framing: { species: 'Spruce-Pine-Fir', depth: 5.5, bottom: undefined, top: undefined },
      }),
      member,
    );
    expect(s).toMatchObject({ thread: 3.1875, lm: 3.75, Gm: 0.42 });
  });

  it('asks a loaded edge of the side that uplift loads', () => {
    const s = shankOf(bolts(), member);
    if ('why' in s) throw new Error(s.why);
    const need = (lifts: boolean) =>
      spotsOf(s, { first: 6, lifts, along: false }).find((p) => p.what.includes("ledger's bottom"))!.need;
    expect([need(true), need(false)]).toEqual([2, 0.75]);
  });

  it('is the calculated connection of its joint', () => {
    const ctx = worked(shed());
    const mark = ctx.structure.joints.find((j) => j.kind === 'ledger-to-house')!.mark;
    expect(jointProducts.run({ id: mark, path: '' }, ctx)).toEqual(runFirst(ledgerFasteners, ctx));
  });

  it('takes no deck table for proof', () => {
    for (const t of ['deck ledger table', 'IRC R507.9.1.3(1)', 'Deck guide']) expect(namesDeckTable(t), t).toBe(true);
    expect(namesDeckTable('own calculation')).toBe(false);
    expect(runFirst(ledgerFasteners, worked(shed({ basis: 'deck ledger table of the code' }))).note).toContain(
      'no proof',
    );
  });

  it('stays open while nothing is said of them', () => {
    for (const check of [ledgerFasteners, ledgerStrength])
      expect(runFirst(check, worked(shedProject)).status).toBe('not-evaluated');
  });
});

describe('the ledger between its fasteners', () => {
  it('passes and traces', () => {
    const ctx = worked(shed());
    const rec = makeRecorder();
    const f = ledgerStrength.run({ id: 'L1', path: '' }, ctx, rec);
    expect(f.status).toBe('pass');
    expect(rec.lines.at(-1)).toMatchObject({ symbol: 'ratio', value: f.ratio });
    const shear = rec.lines.find((l) => l.kind === 'step' && l.symbol === "Vr'")!;
    // 2x12 incised DF-L: Fv' = 180·1.15·0.8 = 165.6; de = 9.25: (2/3·165.6·1.5·9.25)·(9.25/11.25)² = 1035.6 lb.
    expect(shear).toMatchObject({ value: expect.closeTo(1035.6, 0) });
  });
  it('fails where it hangs on one high row', () => {
    const f = runFirst(ledgerStrength, worked(shed({ rows: [4.25], washer: 2 })));
    expect(f.status).toBe('fail');
    expect(f.note).toContain('shear');
  });
});

describe('the house', () => {
  it('is answered when every question is', () => {
    const f = byId(worked(shed()), 'L1');
    expect(f.status).toBe('pass');
    expect(f.note).toContain('verified as stated, not computed');
    expect(byId(ends, 'B1 start').status).toBe('pass');
    expect(byId(ends, 'B2 start').status).toBe('pass');
  });

  it('is outside scope over an opening whose header nobody knows', () => {
    const f = byId(worked(shed({}, 'none')), 'L1');
    expect(f.status).toBe('outside-scope');
    expect(f.note).toMatch(/D1 .*\d+ lb per foot/);
  });

  it('takes no yes without a name', () => {
    const f = byId(worked(shed({ verified: given(true, '') })), 'L1');
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain('say who saw it');
    expect(byId(worked(shed({}, header({ verified: given(true, '') }))), 'L1').status).toBe('outside-scope');
  });

  it('waits where something was not verified, with the force', () => {
    const f = byId(worked(shed({ verified: given(false) })), 'L1');
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toMatch(/floor band or blocking.*to take \d+ lb down/);
  });

  it.each(['fascia', 'cantilever', 'band', 'single-stud', 'unknown'] as const)('refuses a beam on a %s', (into) => {
    const p = change(houseEndsProject, {
      cover: {
        beams: (old) =>
          old.map((b, i) => (i === 1 ? { ...b, ends: { start: { ...b.ends!.start!, into } as never } } : b)),
      },
    });
    expect(byId(worked(p), 'B2 start').status).toBe('fail');
  });

  it('refuses veneer', () => {
    const p = change(houseEndsProject, {
      house: { walls: (old) => old.map((w) => ({ ...w, build: { ...w.build, cladding: 'brick-veneer' as const } })) },
    });
    const ctx = worked(p);
    expect(byId(ctx, 'B2 start').status).toBe('fail');
    expect(byId(ctx, 'B1 start').status).toBe('pass');
  });

  it('leaves anchors in masonry to a professional', () => {
    const p = change(houseEndsProject, {
      house: {
        walls: (old) => old.map((w) => ({ ...w, build: { ...w.build, cladding: 'concrete-masonry' as const } })),
      },
    });
    for (const id of ['B1 start', 'B2 start']) expect(byId(worked(p), id).status).toBe('outside-scope');
  });

  it('gives a beam end over a window to its header', () => {
    const opening = {
      ...houseEndsProject.house.openings[0]!,
      mark: 'W9',
      offset: 264 + 90,
      width: 36,
      sill: 40,
      head: 78,
    };
    const p = change(houseEndsProject, {
      house: { openings: (old): Opening[] => [...old.filter((o) => o.mark !== 'W2'), opening] },
    });
    const f = byId(worked(p), 'B2 start');
    expect(f.status).toBe('outside-scope');
    expect(f.note).toMatch(/W9 .*lb at one place/);
  });

  it('says what side load is left in the air where nothing meets the house', () => {
    const p = change(houseEndsProject, {
      cover: { beams: (old) => old.map(({ ends: _, ...b }) => ({ ...b, from: { ...b.from, y: 8 } })) },
    });
    const f = byId({ ...worked(houseEndsProject), ...{ project: p } }, 'cover');
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toMatch(/Side load of \d+ lb/);
  });

  it('lists each fact once for the sheets', () => {
    const facts = houseFacts(ends);
    expect(facts.filter((f) => f.state === 'verified').map((f) => f.place)).toEqual([
      'B1 start',
      'B1 start',
      'B2 start',
    ]);
    expect(facts.every((f) => f.what.length > 5 && f.path.startsWith('/'))).toBe(true);
  });
});

describe('a header of known make', () => {
  const o = (existing: number): Opening => ({
    ...shedProject.house.openings[0]!,
    width: 60,
    header: header({
      verified: given(false),
      made: { plies: 2, size: '2x10', species: 'Douglas Fir-Larch', grade: 'No. 2', jacks: 1, existing },
    }),
  });
  it('is worked out by hand', () => {
    // L = 61.5, w = 20 + 10 = 30 lb/in: M = 14183, R = 922.5. (2) 2x10: S = 42.78, fb = 331.5; Fb' = 900·0.9·1.1 = 891: 0.372.
    // fv = 1.5·922.5/27.75 = 49.9 of 162: 0.308. Jack 3 x 1.5 = 4.5 in²: 205 of 625: 0.328.
    const a = assessHeader(o(10), { even: 20, point: 0, at: 0 });
    expect(a).toMatchObject({ state: 'worked-out', ratio: expect.closeTo(0.372, 3) });
  });
  it('takes a beam where it stands', () => {
    // P = 2000 at 30 of 60: a = 30.75: M = 10·61.5²/8 + 2000·30.75²/61.5 = 4728 + 30750 = 35478: fb = 829.3 of 891.
    const a = assessHeader(o(10), { even: 0, point: 2000, at: 30 });
    expect(a).toMatchObject({ ratio: expect.closeTo(0.931, 3) });
  });
  it('shows where its load comes from and what it uses', () => {
    const p = change(shed(), {
      house: { openings: (old) => old.map((x) => (x.mark === 'D1' ? { ...x, header: o(1).header } : x)) },
    });
    const rec = makeRecorder();
    const f = houseConnection.run({ id: 'L1', path: '' }, worked(p), rec);
    const steps = rec.lines.flatMap((l) => (l.kind === 'step' ? [l] : []));
    const q = steps.find((l) => l.symbol === 'q' && l.meaning.includes('opening D1'))!;
    const [, sum, length] = /^\((.*)\)\/(.*)$/.exec(q.substituted)!;
    const forces = sum!.split(' + ').map(Number);
    expect(forces.reduce((a, b) => a + b, 0) / Number(length)).toBeCloseTo(q.value, 1);
    const w = steps.find((l) => l.symbol === 'w')!;
    expect(w.value).toBeCloseTo(q.value + 1, 9);
    expect(Math.max(...steps.filter((l) => l.symbol === 'used').map((l) => l.value))).toBeCloseTo(f.ratio, 9);
    expect(f.demand / f.capacity).toBeCloseTo(f.ratio, 9);
  });
  it('is too weak when it is', () => {
    const p = change(shed(), {
      house: { openings: (old) => old.map((x) => (x.mark === 'D1' ? { ...x, header: o(60).header } : x)) },
    });
    expect(byId(worked(p), 'L1').status).toBe('fail');
  });
});

describe('any fasteners at all', () => {
  it('end in a finite answer', () => {
    const base = worked(shed());
    fc.assert(
      fc.property(
        fc.record({
          kind: fc.constantFrom('lag', 'screw', 'bolt'),
          diameter: fc.constantFrom(0.19, 0.242, 0.25, 0.375, 0.5, 0.75, 0.6),
          length: fc.double({ min: 1, max: 16, noNaN: true }),
          washer: fc.double({ min: 0.1, max: 6, noNaN: true }),
          rows: fc
            .uniqueArray(fc.integer({ min: 1, max: 22 }), { minLength: 1, maxLength: 4 })
            .map((r) => r.sort((a, b) => a - b).map((x) => x / 2)),
          into: fc.constantFrom('studs', 'band'),
          through: fc.double({ min: 0, max: 3, noNaN: true }),
          standoff: fc.constantFrom(0, 0.5, 3),
        }),
        (by) => {
          const ledgers = base.project.cover.ledgers.map((l) => ({ ...l, fastening: bolts(by as never) }));
          const project = { ...base.project, cover: { ...base.project.cover, ledgers } };
          // New effects, for what is kept is kept by them.
          const ctx = { ...base, project, effects: { ...base.effects } };
          for (const check of [ledgerFasteners, ledgerStrength, houseConnection]) {
            const rec = makeRecorder();
            const f = check.run({ id: 'L1', path: '' }, ctx, rec);
            expect([f.demand, f.capacity, f.ratio].every(Number.isFinite), check.id).toBe(true);
            for (const l of rec.lines)
              if (l.kind === 'step') expect(Number.isFinite(l.value), `${check.id} ${l.symbol}`).toBe(true);
            if (f.status !== 'pass') expect(f.note.length).toBeGreaterThan(10);
          }
        },
      ),
      { numRuns: 150, seed: 20261125 },
    );
  });
});
