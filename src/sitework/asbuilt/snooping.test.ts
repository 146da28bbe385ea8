/** One blunder in each of a hundred simulated layouts: is the very reading found? */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Project, type Reading, read } from '../../project/index.js';
import { place } from '../../structure/place.js';
import { layoutOf } from '../layout/index.js';
import { measured } from './measure.js';

const project = (name: string): Project =>
  read(readFileSync(new URL(`../../../examples/${name}/project.json`, import.meta.url), 'utf8')).value!;

/** Mulberry32: the same numbers for the same seed everywhere. */
function chance(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
const normal = (u: () => number): number => Math.sqrt(-2 * Math.log(1 - u())) * Math.cos(2 * Math.PI * u());

const SIGMA = 1 / 16;

/** The readings of the stake-out sheet of a cover whose points stand up to an inch off, read with errors, one of them grossly. */
function simulated(base: Project, seed: number, blunder: boolean): { readonly project: Project; readonly bad: number } {
  const u = chance(seed);
  const layout = layoutOf(place(base).value!);
  const at = new Map(
    layout.points.map((p) => {
      const off = p.role === 'footing' ? 1 : 0;
      const moved = {
        along: p.along + off * normal(u) * 0.3,
        out: p.out + off * normal(u) * 0.3,
        level: (p.level ?? 0) + off * normal(u) * 0.3,
      };
      return [p.name, moved];
    }),
  );
  const true_ = (r: (typeof layout.readings)[number]): number => {
    const [a, b] = [at.get(r.from)!, at.get(r.to)!];
    if (r.kind === 'level') return b.level - a.level;
    if (r.kind === 'along') return Math.abs(b.along - a.along);
    if (r.kind === 'out') return Math.abs(b.out - a.out);
    return Math.hypot(b.along - a.along, b.out - a.out);
  };
  const readings = layout.readings.map(
    (r, i): Reading => ({
      kind: r.kind,
      from: r.from,
      to: r.to,
      value: true_(r) + normal(u) * SIGMA,
      date: '2026-05-20',
      instrument: 'steel-tape',
      sigma: SIGMA,
      path: `/log/asBuilt/readings/${i}`,
    }),
  );
  // A blunder is a tape or rod read an inch, three inches or a foot wrong, or anything in between.
  const bad = blunder ? Math.floor(u() * readings.length) : -1;
  const size = (0.75 + u() * 11.25) * (u() < 0.5 ? -1 : 1);
  const all = readings.map((r, i) => (i === bad ? { ...r, value: r.value + size } : r));
  return { project: { ...base, log: { ...base.log, asBuilt: { readings: all, cut: [] } } }, bad };
}

describe.each([
  '01-gable-scissor-kept-slab',
  '02-shed-snow-two-storey',
  '04-free-gable-knee-braces',
  '05-l-shape-two-roofs',
])('a blunder in a simulated layout of example %s', (name) => {
  const base = project(name);
  const layout = layoutOf(place(base).value!);
  it('is found, and it alone, in at least 95 of 100', () => {
    let found = 0;
    let alone = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const s = simulated(base, seed, true);
      const m = measured(s.project, layout)!;
      const named = m.bad.map((b) => b.path);
      if (named[0] === `/log/asBuilt/readings/${s.bad}`) found++;
      if (named.length === 1) alone++;
    }
    expect(found).toBeGreaterThanOrEqual(95);
    expect(alone).toBeGreaterThanOrEqual(90);
  });
  it('is cried where there is none in at most 10 of 100', () => {
    let cried = 0;
    for (let seed = 1001; seed <= 1100; seed++)
      if (measured(simulated(base, seed, false).project, layout)!.bad.length > 0) cried++;
    expect(cried).toBeLessThanOrEqual(10);
  });
  it('leaves the adjusted places within four of their sigmas of the true ones', () => {
    const s = simulated(base, 7, false);
    const m = measured(s.project, layout)!;
    for (const p of m.points) {
      expect(p.plan!.sigmaAlong).toBeLessThan(SIGMA);
      expect(Math.abs(p.plan!.along - p.designed.along)).toBeLessThan(2);
    }
  });
});
