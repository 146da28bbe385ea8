/**
 * Random covers on the site: every footing and post is set out once, diagonals agree, readings of the drawn layout find
 * nothing wrong, and what was measured exactly gives back what was drawn. `SEED=…` draws others.
 */
import { describe, expect, it } from 'vitest';
import { outside, overlaps, textBoxes } from '../../src/drawings/annotate/index.js';
import { asBuiltOf, asMeasured, layoutOf, type Project, sequenceOf, stagesOf, stakeOf } from '../../src/index.js';
import { place } from '../../src/structure/place.js';
import { draws, KINDS } from './covers.js';

/** The readings asked for, read without error. */
function exactly(project: Project, structure: ReturnType<typeof place>['value'] & object): Project {
  const readings = layoutOf(structure).readings.map((r, i) => ({
    ...r,
    date: '2026-05-20',
    instrument: 'steel-tape' as const,
    path: `/log/asBuilt/readings/${i}`,
  }));
  return { ...project, log: { ...project.log, asBuilt: { readings, cut: [] } } };
}

describe.each(KINDS)('random covers on the site: %s', (kind) => {
  const all = draws(kind, 3);

  it('every footing is one point, every post one length, all in one piece', () => {
    for (const { name, d } of all) {
      const l = layoutOf(d.structure);
      const posts = d.structure.joints.filter((j) => j.kind === 'post-to-footing');
      expect(l.posts.length, name).toBe(posts.length);
      for (const p of l.posts) expect(p.length, `${name} ${p.post}`).toBeCloseTo(p.underside - p.bears - p.standoff, 9);
      const centers = l.points.filter((p) => p.role === 'footing').map((p) => p.name);
      expect(new Set(centers).size, name).toBe(centers.length);
      for (const r of l.rectangles) expect(r.first.length, name).toBeCloseTo(r.second.length, 6);
      expect(JSON.stringify(l), name).not.toMatch(/null|NaN/);
    }
  });

  it('readings without error find nothing wrong and change nothing', () => {
    for (const { name, d } of all) {
      const p = exactly(d.project, d.structure);
      const a = asBuiltOf(p, d.structure);
      expect(a.issues, name).toEqual([]);
      expect(a.value!.bad, name).toEqual([]);
      expect(a.value!.loose, name).toEqual([]);
      expect(
        a.value!.findings.filter((f) => f.state !== 'fits'),
        name,
      ).toEqual([]);
      const again = place(asMeasured(p, d.structure)).value!;
      for (const [i, m] of again.members.entries())
        expect(m.length, `${name} ${m.id}`).toBeCloseTo(d.structure.members[i]!.length, 6);
    }
  });

  it('pages keep their texts apart and on the paper; the order of work holds together', () => {
    for (const { name, d } of all) {
      for (const page of [...stakeOf(d)!.sheets, ...stagesOf(d, { today: '2026-05-01' })!.sheets]) {
        const boxes = textBoxes(page);
        expect(
          overlaps(boxes).map(([a, b]) => `${a.content} | ${b.content}`),
          `${name} ${page.title}`,
        ).toEqual([]);
        expect(
          outside(boxes, { x: 0.4, y: 0.4, w: 7.7, h: 10.2 }).map((b) => b.content),
          `${name} ${page.title}`,
        ).toEqual([]);
      }
      const s = sequenceOf(d.project, d.structure);
      for (const b of s.bars)
        for (const w of b.after)
          expect(b.start, `${name} ${b.id}`).toBeGreaterThanOrEqual(
            s.bars.find((o) => o.id === w.on)!.end + w.days - 1e-9,
          );
    }
  });
});
