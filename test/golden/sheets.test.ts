/** What must hold on every sheet of every example at both sheet sizes, whatever it shows. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet, layout, type Sheet, sheetFrame } from '../../src/index.js';
import { root } from './golden.js';

const names = readdirSync(join(root, 'examples')).sort();

for (const name of names) {
  const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
  if (!input) continue;
  for (const size of ['ARCH D', 'ANSI B'] as const) {
    describe(`${name}, ${size}`, () => {
      const sheets: readonly Sheet[] = drawSet(input, size);

      it('keeps every text inside the frame', () => {
        const out = sheets.flatMap((s) =>
          layout.outside(layout.textBoxes(s), sheetFrame(size)).map((b) => `${s.id}: ${b.content}`),
        );
        expect(out).toEqual([]);
      });

      it('lets no two texts touch', () => {
        const touching = sheets.flatMap((s) =>
          layout.overlaps(layout.textBoxes(s)).map(([a, b]) => `${s.id}: “${a.content}” and “${b.content}”`),
        );
        expect(touching).toEqual([]);
      });

      it('letters nothing smaller than 3/32 in, form labels aside', () => {
        const small = sheets.flatMap((s) =>
          layout
            .textBoxes(s)
            .filter((b) => b.layer !== 'G-ANNO-TTLB' && b.layer !== 'G-ANNO-TITL' && b.h < 3 / 32 - 1e-9)
            .map((b) => `${s.id}: ${b.content}`),
        );
        expect(small).toEqual([]);
      });

      it('shows every scheduled mark on some plan', () => {
        const plans = sheets.filter((s) => ['S-101', 'S-102', 'S-103'].includes(s.id));
        const shown = new Set(plans.flatMap((s) => layout.textBoxes(s)).map((b) => b.content));
        const marks = new Set(
          [...input.structure.members, ...input.structure.footings, ...input.structure.joints].map((p) => p.mark),
        );
        const text = [...shown].join(' ');
        expect([...marks].filter((m) => !new RegExp(`\\b${m}\\b`).test(text))).toEqual([]);
      });

      it('lists on the cover exactly the sheets of the set, in order', () => {
        const cover = layout.textBoxes(sheets[0]!).map((b) => b.content);
        const ids = sheets.map((s) => s.id);
        // The index in drawing order; the last id on the sheet is the title block's own.
        expect(cover.filter((t) => /^[GCSA]-\d{3}$/.test(t)).slice(0, -1)).toEqual(ids);
      });
    });
  }
}
