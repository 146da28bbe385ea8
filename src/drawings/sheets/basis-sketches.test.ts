/** Sketches of the load basis: every governing form of snow and wind once, its figures as the loads stage made them. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet } from '../../index.js';
import { textBoxes } from '../annotate/layout.js';
import type { SheetContext } from './contract.js';
import { sorted } from './governing.js';

const root = new URL('../../../examples/', import.meta.url);
const inputs = readdirSync(root).flatMap((name) => {
  const input = drawingInput(derive(readFileSync(new URL(`${name}/project.json`, root), 'utf8')));
  return input ? [{ name, input }] : [];
});

describe.each(inputs)('$name', ({ input }) => {
  const sheets = drawSet(input, 'ANSI B').filter((s) => s.id.startsWith('S-7'));
  const boxes = sheets.flatMap((s) => textBoxes(s));
  const titles = boxes.filter((b) => b.layer === 'S-DETL' && /^[SW].*, R\d+$/.test(b.content));

  it('is there where a case that varies over the roof governs, and names cases that exist', () => {
    const drawn = input.loads.cases.filter((c) => c.kind === 'S' || c.kind === 'W');
    const zoned = drawn.filter((c) => c.plan?.some((l) => l.zone)).map((c) => c.id);
    const governs = sorted({ input } as SheetContext).calculated.map((r) => r.combination);
    expect(titles.length > 0).toBe(governs.some((g) => zoned.some((id) => g.includes(id))));
    const ids = new Set(input.loads.cases.map((c) => c.id));
    for (const t of titles) expect(ids).toContain(t.content.replace(/, R\d+$/, ''));
  });

  it('prints the psf of each load that it draws', () => {
    const figures = new Set(boxes.filter((b) => b.layer === 'S-DETL').map((b) => Number.parseFloat(b.content)));
    for (const t of titles) {
      const [, id, roof] = /^(.*), (R\d+)$/.exec(t.content)!;
      const zoned = input.loads.cases.find((c) => c.id === id)!.plan!.filter((l) => l.roof === roof);
      for (const l of zoned)
        expect(
          [...figures].some((f) => Math.abs(f - l.psf) < 0.006 * Math.abs(l.psf) + 0.001),
          t.content,
        ).toBe(true);
    }
  });

  it('shows a way that snow may lie wherever one is carried', () => {
    for (const a of input.loads.snow ?? [])
      if (a.outcome === 'included')
        expect(
          titles.some((t) => a.cases.includes(t.content.split(', ')[0]!)),
          a.question,
        ).toBe(true);
  });
});
