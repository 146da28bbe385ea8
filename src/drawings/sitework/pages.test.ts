import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Derived, derive } from '../../index.js';
import { stagesOf, stakeOf } from '../../site.js';
import { flatten, type Sheet, toPaper } from '../ir/index.js';

const at = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
const derived = (path: string): Derived => derive(at(path));
const words = (pages: readonly Sheet[]): string[] =>
  pages.flatMap((p) => flatten(p).flatMap((f) => (f.kind === 'text' ? [f.content] : [])));

describe('the stake-out plan', () => {
  const d = derived('examples/04-free-gable-knee-braces/project.json');
  const { layout, sheets } = stakeOf(d)!;
  const page = sheets[0]!;
  const view = page.viewports[0]!;

  it('is to scale: centers stand on paper as far apart as the scale says', () => {
    const mark = (name: string) => {
      const p = layout.points.find((q) => q.name === name)!;
      return toPaper(view, { x: p.along, y: p.out });
    };
    const [a, b] = [mark('F1'), mark('F6')];
    // 16 ft by 18 ft at 1/8 in to the foot.
    expect(page.scaleNote).toBe('1/8" = 1\'-0"');
    expect(b.x - a.x).toBeCloseTo(2, 6);
    expect(b.y - a.y).toBeCloseTo(18 / 8, 6);
    const circles = view.items.filter((i) => i.kind === 'circle').map((c) => toPaper(view, c.center));
    expect(circles.some((c) => Math.hypot(c.x - a.x, c.y - a.y) < 1e-9)).toBe(true);
  });
  it('letters home base, every footing, every running dimension and both diagonals', () => {
    const said = words([page]);
    for (const t of ['HOME BASE, 0 and 0, and the benchmark’s mark', 'F1', 'F6', '13\'-0"', '29\'-0"', '37\'-0"'])
      expect(said).toContain(t);
    expect(said.filter((t) => t === '24\'-1"')).toHaveLength(2);
  });
  it('stands on pages marked preliminary while the set is', () => {
    const not: Derived = { ...d, verdict: { ...d.verdict, issuable: false } };
    expect(words(stakeOf(not)!.sheets)).toContain('PRELIMINARY – NOT FOR PERMIT');
    expect(words(sheets)).not.toContain('PRELIMINARY – NOT FOR PERMIT');
  });
});

describe('as built, on paper', () => {
  it('names the bad reading and gives the findings', () => {
    const said = words(stakeOf(derived('test/site/as-built.project.json'))!.sheets).join(' ');
    expect(said).toContain('Bad reading: F1 to F4');
    expect(said).toContain('Pack 1/4"');
    expect(said).toContain('Every check again, with the measured places');
    expect(said).toContain('Wood protected against decay');
  });
});

describe('stage cards, on paper', () => {
  const d = derived('test/site/as-built.project.json');
  const s = stagesOf(d, { today: '2026-05-01' })!;
  const said = words(s.sheets).join(' ');
  it('has a page for each card, its lines, cautions and who said what fails', () => {
    for (const c of s.cards) {
      expect(s.sheets.some((p) => p.title.endsWith(c.title))).toBe(true);
      for (const i of c.items) expect(said).toContain(i.text.split(' ').slice(0, 3).join(' '));
    }
    expect(said).toContain('CAUTION');
  });
  it('draws the bars: the critical ones filled, as many as there are tasks', () => {
    const page = s.sheets.find((p) => p.title === 'Build order')!;
    const bars = page.items.filter(
      (i) => i.kind === 'polyline' && i.closed === true && i.layer === 'G-ANNO-SCHD' && i.fill !== undefined,
    );
    expect(bars).toHaveLength(s.sequence.bars.length);
    expect(bars.filter((b) => b.kind === 'polyline' && b.fill === 'ink')).toHaveLength(
      s.sequence.bars.filter((b) => b.critical).length,
    );
  });
  it('shows ticks and remarks of the log, and the clock', () => {
    expect(said).toContain('2 ft 7 in at the shallowest; picture f2-bottom.jpg');
    expect(said).toContain('159 days left');
  });
});
