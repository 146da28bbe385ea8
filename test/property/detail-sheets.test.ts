/** Detail sheets, joint plan and notes of many covers: nothing throws, no number is missing, no sheet check fails. */
import { describe, expect, it } from 'vitest';
import { drawingInput, drawSet } from '../../src/index.js';
import { SHEET_CHECKS } from '../../src/review/sheets/registry.js';
import { drawnSet } from '../../src/review/sheets/set.js';
import { draws, KINDS } from './covers.js';

const MINE = /^(G-00[2-9]|S-10[4-9]|S-50[3-9]|S-53\d|A-50\d)$/;
const COUNT = 1;

describe.each(KINDS)('%s', (kind) => {
  it.each(['ARCH D', 'ANSI B'] as const)(
    '%s',
    (size) => {
      for (const { name, d } of draws(kind, COUNT)) {
        const input = drawingInput(d);
        if (!input) continue;
        const sheets = drawSet(input, size);
        const set = drawnSet(sheets, input.structure);
        const faults = Object.entries(SHEET_CHECKS).flatMap(([id, check]) =>
          check
            .run(set)
            .filter((f) => MINE.test(f.sheet))
            .map((f) => `${id} ${f.sheet}: ${f.what}`),
        );
        expect(faults, name).toEqual([]);
        const wrong = sheets.filter((s) => MINE.test(s.id) && /NaN|Infinity|undefined/.test(JSON.stringify(s)));
        expect(
          wrong.map((s) => s.id),
          name,
        ).toEqual([]);
      }
    },
    120_000,
  );
});
