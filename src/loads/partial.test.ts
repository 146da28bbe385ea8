import { describe, expect, it } from 'vitest';
import { analyse } from '../analysis/index.js';
import { CALM, type Fixture, makeGable, makeShed } from '../analysis/testing.js';
import { pressingWinds } from './combinations.js';
import { buildLoads } from './index.js';
import type { LoadCase, Loads } from './model.js';
import { alternateSpans } from './partial.js';
import { continuousLines, spanZones } from './patterns.js';

const loadsOf = (f: Fixture): Loads => buildLoads(f.project, f.structure).value!;
const partial = (l: Loads, kind: 'S' | 'Lr'): readonly LoadCase[] =>
  l.cases.filter((c) => c.kind === kind && c.pattern);

describe('continuous lines', () => {
  it('cut a roof at the supports between spans; the outer spans run to its edges', () => {
    const { structure } = makeShed();
    const { lines } = continuousLines(structure);
    for (const line of lines) {
      const roof = structure.roofs[0]!;
      const zones = spanZones(line, roof);
      expect(zones.length).toBe(line.cuts.length + 1);
      expect(zones[0]!.from).toBe(0);
      const L = line.toward === '+x' ? roof.max.x - roof.min.x : roof.max.y - roof.min.y;
      expect(zones.at(-1)!.to).toBeCloseTo(L, 9);
      for (let i = 1; i < zones.length; i++) expect(zones[i]!.from).toBe(zones[i - 1]!.to);
    }
    expect(lines.map((l) => l.name)).toEqual(['B1', 'R1 rafters']);
  });

  it('count an end past its support only from the depth of the member on', () => {
    const { structure } = makeShed();
    const beam = structure.members.find((m) => m.role === 'beam')!;
    const at = structure.joints.filter((j) => j.ties[0]!.part === beam.id).map((j) => j.at.x);
    const low = Math.min(beam.start.x, beam.end.x);
    const first = Math.min(...at) - low;
    const deep = { ...beam, section: { ...beam.section, depth: first + 0.01 } };
    const shallow = { ...beam, section: { ...beam.section, depth: first - 0.01 } };
    const lines = (b: typeof beam) =>
      continuousLines({
        ...structure,
        members: structure.members.map((m) => (m.id === beam.id ? b : m)),
      }).lines.find((l) => l.of === 'beam');
    const cuts = (b: typeof beam): number => lines(b)?.cuts.length ?? 0;
    expect(cuts(shallow) - cuts(deep)).toBeGreaterThanOrEqual(1);
  });

  it('loads every other span', () => {
    expect(alternateSpans(1)).toEqual([]);
    expect(alternateSpans(3)).toEqual([
      [1, 0, 1],
      [0, 1, 0],
    ]);
  });
});

describe('partial snow', () => {
  it('two spans: half on either one; the two add up to one and a half times the even load', () => {
    const f = makeShed();
    const l = loadsOf(f);
    const beams = partial(l, 'S').filter((c) => c.id.includes('B1'));
    const spans = continuousLines(f.structure).lines.find((x) => x.of === 'beam')!.cuts.length + 1;
    const effects = analyse(f.project, f.structure, l).value!;
    const i = (id: string): number => l.cases.findIndex((c) => c.id === id);
    expect(spans).toBe(2);
    expect(beams.length).toBe(2);
    const m = effects.members.get('B1')!.m;
    const [a, b] = beams.map((c) => m[i(c.id)]!);
    const full = m[i('S')]!;
    for (let k = 0; k < full.length; k++) expect(a![k]! + b![k]!).toBeCloseTo(1.5 * full[k]!, 3);
  });

  it('uses ps without rain on snow and without the low-slope minimum', () => {
    // 15 psf ground: ps = 12.6 psf, the minimum 15 psf.
    const l = loadsOf(makeShed({ site: { ...CALM, snow: 15 } }));
    const psf = new Set(partial(l, 'S').flatMap((c) => c.areas.map((a) => Number(a.psf.toFixed(6)))));
    expect([...psf].sort((a, b) => a - b)).toEqual([6.3, 12.6]);
  });

  it('spares gable rafters of 1/2 to 7 in 12, which unbalanced snow covers', () => {
    const rafters = (pitch: number): boolean => {
      const f = makeGable({ pitch });
      const members = f.structure.members.map((m) => (m.role === 'truss' ? { ...m, role: 'rafter' as const } : m));
      const l = loadsOf({ ...f, structure: { ...f.structure, members } });
      return partial(l, 'S').some((c) => c.id.includes('rafters'));
    };
    expect([rafters(0.4 / 12), rafters(4 / 12), rafters(7 / 12), rafters(8 / 12)]).toEqual([true, false, false, true]);
  });

  it('says where no member is continuous, and where one is skew', () => {
    const f = makeShed();
    const bare = { ...f, structure: { ...f.structure, joints: [] } };
    expect(loadsOf(bare).snow!.find((a) => a.question === 'partial')!.outcome).toBe('none');
    const beam = f.structure.members.find((m) => m.role === 'beam')!;
    const turned = { ...beam, end: { ...beam.end, y: beam.end.y + 5 } };
    const members = f.structure.members.map((m) => (m.id === beam.id ? turned : m));
    const skew = loadsOf({ ...f, structure: { ...f.structure, members } });
    expect(skew.snow!.find((a) => a.question === 'partial')).toMatchObject({ outcome: 'outside', cases: [] });
  });

  it('meets only the winds that press hardest, and never three quarters alone', () => {
    const l = loadsOf(makeShed());
    const winds = pressingWinds(l.cases);
    expect(winds.size).toBeGreaterThan(0);
    for (const c of l.combinations) {
      if (!c.terms.some((t) => l.cases[t.case]!.pattern)) continue;
      expect(c.label).not.toBe('D + 0.75S');
      expect(c.label).not.toBe('D + 0.75Lr');
      for (const t of c.terms) if (l.cases[t.case]!.kind === 'W') expect(winds.has(t.case), c.id).toBe(true);
    }
    expect(l.combinations.some((c) => c.label === 'D + S' && c.id.includes('partial'))).toBe(true);
    expect(l.combinations.some((c) => c.label === 'D + 0.45W + 0.75S' && c.id.includes('partial'))).toBe(true);
    expect(l.strength.some((c) => c.label === '1.2D + 1.6S' && c.id.includes('partial'))).toBe(true);
  });

  it('leaves out no wind that would govern a member or a joint', () => {
    const site = { ...CALM, wind: 130, snow: 20 };
    for (const f of [makeShed({ site }), makeShed({ site, posts: [30, 90, 150, 210] }), makeGable({ site })]) {
      const l = loadsOf(f);
      const effects = analyse(f.project, f.structure, l).value!;
      const index = (want: (c: LoadCase) => boolean): number[] => l.cases.flatMap((c, i) => (want(c) ? [i] : []));
      const winds = index((c) => c.kind === 'W');
      const all = index((c) => c.pattern === true).flatMap((p) =>
        winds.map((w) => [
          { case: 0, factor: 1 },
          { case: w, factor: 0.45 },
          { case: p, factor: 0.75 },
        ]),
      );
      const listed = l.combinations.map((c) => c.terms);
      type Terms = (typeof listed)[number];
      /** Least and greatest of a quantity over all stations and the sums given. */
      const range = (rows: readonly ArrayLike<number>[], sums: readonly Terms[]): readonly [number, number] => {
        let low = 0;
        let high = 0;
        for (const terms of sums)
          for (let i = 0; i < rows[0]!.length; i++) {
            let v = 0;
            for (const t of terms) v += t.factor * rows[t.case]![i]!;
            low = Math.min(low, v);
            high = Math.max(high, v);
          }
        return [low, high];
      };
      const hold = (rows: readonly ArrayLike<number>[], about: string): void => {
        const [low, high] = range(rows, listed);
        const [least, most] = range(rows, all);
        const slack = 0.005 * Math.max(-low, high) + 0.5;
        expect(most, `${about} up to`).toBeLessThanOrEqual(high + slack);
        expect(least, `${about} down to`).toBeGreaterThanOrEqual(low - slack);
      };
      for (const [id, e] of effects.members) for (const q of ['m', 'v', 'n'] as const) hold(e[q], `${id} ${q}`);
      for (const [id, j] of effects.joints)
        hold(
          j.force.map((q) => [q.x, q.y, q.z]),
          id,
        );
    }
  });

  it('keeps the independent balance of every pattern', () => {
    for (const f of [makeShed(), makeGable()]) {
      const l = loadsOf(f);
      for (const b of analyse(f.project, f.structure, l).value!.balance)
        expect(Math.max(b.errorApplied, b.errorReactions), b.case).toBeLessThan(1e-6);
    }
  });
});

describe('roof live load on some spans', () => {
  it('loads an overhang alone, which lifts the far bearing of its member', () => {
    const f = makeShed();
    const l = loadsOf(f);
    const tail = partial(l, 'Lr').filter((c) => c.id.includes('rafters'));
    expect(tail.length).toBe(2);
    expect(tail.every((c) => c.areas.length === 1)).toBe(true);
    const effects = analyse(f.project, f.structure, l).value!;
    const high = f.structure.joints.find((j) => j.kind === 'rafter-to-ledger')!;
    const down = tail.map((c) => effects.joints.get(high.id)!.force[l.cases.findIndex((x) => x.id === c.id)]!.z);
    expect(Math.max(...down)).toBeGreaterThan(0);
  });
});

describe('an overhang as long as the member is deep', () => {
  it('is a span of its own, so that the span beside it is also loaded alone (ASCE 7 7.5: a cantilever counts as a span)', () => {
    const { structure } = makeShed();
    const beam = structure.members.find((m) => m.role === 'beam')!;
    const at = structure.joints.filter((j) => j.ties[0]!.part === beam.id).map((j) => j.at.x);
    const over = Math.min(...at) - Math.min(beam.start.x, beam.end.x);
    const cuts = (depth: number): number =>
      continuousLines({
        ...structure,
        members: structure.members.map((m) => (m.id === beam.id ? { ...m, section: { ...m.section, depth } } : m)),
      }).lines.find((l) => l.of === 'beam')?.cuts.length ?? 0;
    expect(cuts(over)).toBeGreaterThan(cuts(over + 0.01));
  });
});
