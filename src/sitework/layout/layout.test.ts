import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { read } from '../../project/index.js';
import { place } from '../../structure/place.js';
import { gableProject } from '../../structure/testing.js';
import { layoutOf, stakeCsv } from './index.js';
import { triangleIn } from './square.js';

const gable = layoutOf(place(gableProject).value!);
const examples = readdirSync(new URL('../../../examples', import.meta.url))
  .map((name) => read(readFileSync(new URL(`../../../examples/${name}/project.json`, import.meta.url), 'utf8')).value)
  .flatMap((p) => (p ? [p] : []));

describe('stake-out of a cover whose numbers are known', () => {
  it('measures from the left house corner along the wall and out of it', () => {
    const f = (name: string) => gable.points.find((p) => p.name === name)!;
    // House corner at -22 ft; beam lines at -9 and 9 ft; posts 6 in and 13 ft 6 in along beams that start 6 in out.
    expect([f('F1').along, f('F1').out]).toEqual([13 * 12, 12]);
    expect([f('F4').along, f('F4').out]).toEqual([31 * 12, 14 * 12]);
  });
  it('gives each post its own length on a slab that falls 1/4 in a foot', () => {
    const length = (mark: string) => gable.posts.find((p) => p.post === mark)!.length;
    // 13 ft apart: 3-1/4 in.
    expect(length('P2') - length('P1')).toBeCloseTo(3.25, 9);
  });
  it('pairs equal diagonals of every rectangle', () => {
    expect(gable.rectangles.length).toBeGreaterThanOrEqual(1);
    for (const r of gable.rectangles) expect(r.first.length).toBeCloseTo(r.second.length, 9);
    const whole = gable.rectangles.find((r) => r.first.from === 'F1' && r.first.to === 'F4')!;
    expect(whole.first.length).toBeCloseTo(12 * Math.hypot(18, 13), 9);
    // A corner 1/4 in off along the 13 ft side: 2·(1/4)·13/22.2 = 0.29 in, rounded down to a sixteenth.
    expect(whole.mostDifference).toBe(4 / 16);
  });
  it('stretches strings clear of ground and concrete, and boards 3 ft outside the holes', () => {
    for (const b of gable.boards) expect(b.height).toBeGreaterThanOrEqual(6 - 1e-6);
    const far = gable.boards.find((b) => b.nail === 'A-far')!;
    expect(far.out).toBe(14 * 12 + 15 + 36);
  });
});

describe('3-4-5', () => {
  it('takes the largest whole multiple that fits, whichever way round', () => {
    expect(triangleIn(31 * 12, 14 * 12)).toEqual({ along: 192, out: 144, across: 240 });
    expect(triangleIn(9 * 12, 20 * 12)).toEqual({ along: 108, out: 144, across: 180 });
    expect(triangleIn(24, 18)).toEqual({ along: 24, out: 18, across: 30 });
    expect(triangleIn(10, 10)).toBeUndefined();
  });
});

describe('every example', () => {
  it.each(examples.map((p) => [p.job.title, p] as const))('%s: lengths, points and readings agree', (_, project) => {
    const structure = place(project).value!;
    const l = layoutOf(structure);
    for (const p of l.posts) expect(p.length).toBeCloseTo(p.underside - p.bears - p.standoff, 9);
    for (const f of structure.footings) expect(l.piers.some((p) => p.footing === f.mark)).toBe(true);
    const names = l.points.map((p) => p.name);
    expect(new Set(names).size).toBe(names.length);
    const at = new Map(l.points.map((p) => [p.name, p]));
    for (const d of [...l.ties, ...l.rectangles.flatMap((r) => [r.first, r.second])])
      expect(d.length).toBeCloseTo(
        Math.hypot(at.get(d.to)!.along - at.get(d.from)!.along, at.get(d.to)!.out - at.get(d.from)!.out),
        9,
      );
    for (const s of l.strings) for (const e of s.ends) expect(at.has(e)).toBe(true);
    const rows = stakeCsv(l, project).trim().split('\r\n');
    expect(rows).toHaveLength(l.points.length + 1);
    expect(stakeCsv(l, project)).not.toMatch(/NaN|Infinity|undefined/);
  });
});
