/** The stake-out and the footing plan of the set say the same: two ways to the same holes. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawings/ir/index.js';
import { derive, drawingInput, drawSet, formatLength, layoutOf } from '../../src/index.js';

const root = new URL('../../examples/', import.meta.url);
const examples = readdirSync(root).filter((n) => !n.startsWith('03'));

describe.each(examples)('example %s', (name) => {
  const d = derive(readFileSync(new URL(`${name}/project.json`, root), 'utf8'));
  const sheet = drawSet(drawingInput(d)!).find((s) => s.id === 'S-101')!;
  const said = new Set(flatten(sheet).flatMap((f) => (f.kind === 'text' ? [f.content] : [])));
  const layout = layoutOf(d.structure!);
  const len = (v: number): string => formatLength(v, { units: d.project!.job.units, glyphs: true });

  it('every footing stands along and out as the footing plan’s table has it', () => {
    const centers = layout.points.filter((p) => p.role === 'footing');
    expect(centers.length).toBeGreaterThan(0);
    for (const p of centers) {
      expect(said, p.name).toContain(len(p.along));
      expect(said, p.name).toContain(len(p.out));
    }
  });
  it('the longest diagonal between footings is on the plan too', () => {
    const own = layout.rectangles.filter((r) => r.first.from.startsWith('F') && r.second.from.startsWith('F'));
    const longest = own.sort((a, b) => b.first.length - a.first.length)[0];
    if (longest) expect(said).toContain(len(longest.first.length));
  });
});
