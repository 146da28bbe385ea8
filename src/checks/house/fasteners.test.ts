import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { LedgerFastening } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { shedProject } from '../../structure/testing.js';
import { headAcross, leastWasher } from '../heads.js';
import { jointDemands } from '../joints/demands.js';
import { jointProducts } from '../joints/products.js';
import { runFirst } from '../testing.js';
import { type Shank, shankOf, spotsOf } from './fastener.js';
import { bolts, shed, worked } from './house.testing.js';
import { houseConnection } from './house-connection.js';
import { ledgerFasteners, namesDeckTable } from './ledger-fasteners.js';
import { searched } from './ledger-search.js';
import { partsAt } from './ledger-shares.js';
import { ledgerStrength } from './ledger-strength.js';
import { flatForces, type HousePlace, housePlaces } from './places.js';
import { ROOM, roomsOf } from './washer-room.js';

const STUDS = { species: 'Douglas Fir-Larch', depth: 5.5, bottom: undefined, top: undefined };
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

  it.each([
    // Middle to middle of two discs that touch: their diameter; from a middle to an edge: half of it.
    ['between rows', { washer: 2.625 }, 'between the rows at 4.25 and 6.75 in'],
    ['over the bottom edge', { rows: [4.25, 9.25], washer: 4.25 }, "to the ledger's bottom edge"],
    ['between places', { rows: [5.5], washer: 3, spacing: 2.5, end: 3.5 }, 'between places'],
    ['over the end', { rows: [5.5], washer: 4, end: 1.875, diameter: 0.375 }, "to the ledger's end"],
    [
      'past a stud',
      { washer: 2, rows: [5.5], length: 9, into: 'studs', framing: STUDS, diameter: 0.375 },
      'from the middle of a stud to its edge',
    ],
  ] as const)('asks room for washers %s', (_, by, what) => {
    const ctx = worked(shed(by as unknown as Partial<LedgerFastening>));
    const place = housePlaces(ctx)[0]!;
    const s = shankOfLedger(place);
    const { first } = searched(ctx, place, s)!;
    const short = roomsOf(s, place, first).filter((r) => r.have < r.need - 1e-6);
    expect(short.map((r) => r.what)).toContain(what);
  });

  it('says of washers that overlap how far apart they must stand', () => {
    // 2 in washers on rows 1-5/8 in apart: 3D = 1-1/2 in of the standard is kept, yet they lie 3/8 in over each other.
    const f = runFirst(ledgerFasteners, worked(shed({ rows: [4.25, 5.875, 7.625, 9.25], end: 3.5 })));
    expect(f).toMatchObject({ status: 'fail', clause: ROOM });
    expect(f.note).toContain('1.63 in between the rows at 4.25 and 5.88 in, where 2.00 in is the least');
    expect(f.note).toContain('smaller washers');
    const smaller = runFirst(
      ledgerFasteners,
      worked(shed({ rows: [4.25, 5.875, 7.625, 9.25], end: 3.5, washer: 1.375 })),
    );
    expect(smaller.clause).not.toBe(ROOM);
  });

  it('takes the corners of the head where no wider washer is given', () => {
    // 3/4 in. shank: head 1-1/8 in across flats, 1.299 across corners, under 1.75·3/4 = 1.3125.
    expect(headAcross(0.75)).toBeCloseTo(1.3125, 9);
    expect(headAcross(0.75)).toBeGreaterThan(1.125 * (2 / Math.sqrt(3)));
    expect(leastWasher(0.5)).toBe(1.062);
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
