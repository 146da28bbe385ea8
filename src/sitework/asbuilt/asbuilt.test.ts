/** The log of test/site/as-built.project.json: what was invented for it is written beside what must come out. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Project, type Reading, read } from '../../project/index.js';
import { place } from '../../structure/place.js';
import { layoutOf } from '../layout/index.js';
import { asBuiltOf, asMeasured } from './index.js';

const file = new URL('../../../test/site/as-built.project.json', import.meta.url);
const project = read(readFileSync(file, 'utf8')).value!;
const structure = place(project).value!;
const built = asBuiltOf(project, structure).value!;
const point = (name: string) => built.points.find((p) => p.name === name)!;
const finding = (part: string, rule: string) => built.findings.find((f) => f.part.startsWith(part) && f.rule === rule)!;
const withLog = (readings: readonly Reading[], more: object = {}): Project => ({
  ...project,
  log: { ...project.log, asBuilt: { readings, cut: [], ...more } },
});

describe('the log of the fixture', () => {
  it('has one bad reading, the diagonal F1-F4 that was taken an inch short', () => {
    expect(built.bad.map((b) => b.words)).toEqual(['F1 to F4']);
    // True places invented for the log: F1 (156-1/8, 23-7/8), F4 (372-1/8, 165-1/4).
    expect(built.bad[0]!.expected).toBeCloseTo(Math.hypot(216, 141.375), 0);
    expect(built.plan!.passes).toBe(true);
  });
  it('gives the invented places back within three sigmas', () => {
    const invented = {
      F1: [156.125, 23.875, -5.25],
      F2: [156.5, 165, -8.75],
      F3: [372, 24.125, -5.5],
      F4: [372.125, 165.25, -8.375],
    };
    for (const [name, [along, out, level]] of Object.entries(invented)) {
      const p = point(name);
      expect(Math.abs(p.plan!.along - along!)).toBeLessThan(3 * p.plan!.sigmaAlong);
      expect(Math.abs(p.plan!.out - out!)).toBeLessThan(3 * p.plan!.sigmaOut);
      expect(Math.abs(p.height!.level - level!)).toBeLessThan(3 * p.height!.sigma);
    }
  });
  it('makes each post as long as its own pier asks: underside less measured top less standoff', () => {
    for (const p of layoutOf(structure).posts) {
      const now = built.posts.find((q) => q.post === p.post)!;
      expect(now.now).toBeCloseTo(p.underside - point(p.footing).height!.level - p.standoff, 9);
    }
  });
  it('says what still fits and what to do', () => {
    expect(finding('F1', 'Anchors and post bases').state).toBe('fits');
    expect(finding('F2', 'Anchors and post bases').state).toBe('adjust');
    // Cut 1/4 in short of what its pier asks.
    expect(finding('P2', 'Post lengths').remedy).toContain('Pack 1/4"');
    expect(finding('P1', 'Post lengths').remedy).toContain('Cut it');
    expect(finding('T1', 'Trusses and rafters on their beams').state).toBe('fits');
  });
});

describe('what the rules say when it is worse', () => {
  const exact = layoutOf(structure).readings.map(
    (r, i): Reading => ({
      ...r,
      date: '2026-04-20',
      instrument: 'steel-tape',
      sigma: 1 / 16,
      path: `/log/asBuilt/readings/${i}`,
    }),
  );
  /** Readings of the drawn layout with one footing moved. */
  const moved = (footing: string, by: { along?: number; out?: number; level?: number }): Project => {
    const places = new Map(
      layoutOf(structure).points.map((p) => [
        p.name,
        p.name === footing
          ? { along: p.along + (by.along ?? 0), out: p.out + (by.out ?? 0), level: (p.level ?? 0) + (by.level ?? 0) }
          : { along: p.along, out: p.out, level: p.level ?? 0 },
      ]),
    );
    return withLog(
      exact.map((r) => {
        const [a, b] = [places.get(r.from!)!, places.get(r.to)!];
        const value = {
          along: Math.abs(b.along - a.along),
          out: Math.abs(b.out - a.out),
          distance: Math.hypot(b.along - a.along, b.out - a.out),
          level: b.level - a.level,
        }[r.kind];
        return { ...r, value };
      }),
    );
  };
  const of = (p: Project) => asBuiltOf(p, structure).value!;

  it('everything as drawn fits, and the second run is the first one', () => {
    const a = of(withLog(exact));
    expect(a.findings.filter((f) => f.state !== 'fits')).toEqual([]);
    expect(a.bad).toEqual([]);
    const again = place(asMeasured(withLog(exact), structure)).value!;
    expect(again.members.map((m) => m.length.toFixed(6))).toEqual(structure.members.map((m) => m.length.toFixed(6)));
  });
  it('a footing two inches off stops the work', () => {
    expect(of(moved('F2', { along: 2 })).findings.find((f) => f.part.startsWith('F2'))!.state).toBe('stop');
  });
  it('a pier three inches high makes its post three inches shorter', () => {
    const a = of(moved('F3', { level: 3 }));
    const p = a.posts.find((q) => q.post === 'P3')!;
    expect(p.designed - p.now!).toBeCloseTo(3, 6);
    const again = place(asMeasured(moved('F3', { level: 3 }), structure)).value!;
    expect(again.members.find((m) => m.mark === 'P3')!.length).toBeCloseTo(p.now!, 6);
    expect(again.footings.find((f) => f.mark === 'F3')!.top).toBeCloseTo(
      structure.footings.find((f) => f.mark === 'F3')!.top + 3,
      6,
    );
  });
  it('beams ten inches too far apart leave the trusses less seat than they need', () => {
    const both = moved('F3', { along: 10 });
    const p = withLog(
      both.log
        .asBuilt!.readings.map((r) => (r.kind === 'along' && r.to === 'F4' ? { ...r, value: r.value + 10 } : r))
        .filter((r) => r.kind !== 'distance'),
    );
    const f = of(p).findings.find((q) => q.part === 'T1')!;
    // 5-1/2 in of seat less half of ten.
    expect(f.found).toContain('1/2" of seat left');
    expect(f.state).toBe('stop');
  });
  it('a reading of a point that is not there is refused with the names that are', () => {
    const r = asBuiltOf(withLog([{ ...exact[0]!, to: 'F9' }]), structure);
    expect(r.issues[0]).toMatchObject({ code: 'reading-point-unknown', path: '/log/asBuilt/readings/0/to' });
    expect(r.issues[0]!.expected).toContain('F1');
  });
  it('a cut post that is not there is refused too', () => {
    const r = asBuiltOf(withLog(exact, { cut: [{ post: 'P9', length: 90, path: '/log/asBuilt/cut/0' }] }), structure);
    expect(r.issues.map((i) => [i.code, i.path])).toEqual([['cut-post-unknown', '/log/asBuilt/cut/0/post']]);
  });
  it('two levels that disagree are both in doubt; nothing is blamed for sure', () => {
    const levels = exact.filter((r) => r.kind === 'level' && r.from === 'BM');
    const p = withLog([...levels, { ...levels[0]!, value: levels[0]!.value + 2, path: '/log/asBuilt/readings/99' }]);
    const a = of(p);
    expect(a.bad).toHaveLength(1);
    expect(a.bad[0]!.alike).toHaveLength(1);
    expect(a.heights!.passes).toBe(true);
  });
  it('points that too few readings fix are named, not guessed', () => {
    const a = of(withLog(exact.filter((r) => r.kind === 'along')));
    expect(a.loose).toEqual(['F1', 'F2', 'F3', 'F4']);
    expect(a.findings.filter((f) => f.part.startsWith('F')).every((f) => f.state === 'unknown')).toBe(true);
  });
});
