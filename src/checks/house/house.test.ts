import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { Opening } from '../../project/model.js';
import { change, given, houseEndsProject, shedProject } from '../../structure/testing.js';
import type { CheckContext, Finding } from '../contract.js';
import { runFirst } from '../testing.js';
import { bayMoment, bayShear, endBayShear, tipMoment } from './bay.js';
import { houseFacts } from './facts.js';
import { assessHeader } from './header.js';
import { header, shed, worked } from './house.testing.js';
import { houseConnection } from './house-connection.js';
import { ledgerStrength } from './ledger-strength.js';
import { sideDemand } from './side.js';

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
