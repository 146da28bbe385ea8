import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkJson, derive, drawingInput, drawSet, svgOf } from '../../src/index.js';
import { dropGoldens, expectGolden, root } from './golden.js';

for (const name of readdirSync(join(root, 'examples')).sort()) {
  const folder = `examples/${name}`;
  const derived = derive(readFileSync(join(root, folder, 'project.json'), 'utf8'));
  describe(name, () => {
    it('keeps its results', () =>
      expectGolden(`${folder}/expected/check.json`, `${JSON.stringify(checkJson(derived), null, 1)}\n`));

    const input = drawingInput(derived);
    if (input) {
      const sheets = drawSet(input).map((sheet) => ({ id: sheet.id, svg: svgOf(sheet) }));
      for (const { id, svg } of sheets)
        it(`keeps sheet ${id}`, () => expectGolden(`${folder}/expected/sheets/${id}.svg`, svg));

      it('keeps no sheet that is not in the set, and calculation sheets too', () => {
        const ids = new Set(sheets.map((s) => `${s.id}.svg`));
        dropGoldens(`${folder}/expected/sheets`, (name) => !ids.has(name));
        const kept = readdirSync(join(root, folder, 'expected/sheets')).sort();
        expect(kept).toEqual(sheets.map((s) => `${s.id}.svg`).sort());
        expect(sheets.some((s) => s.id.startsWith('S-7'))).toBe(true);
      });

      it('names every placed mark by an id on some plan, once a sheet', () => {
        const { members, footings } = input.structure;
        const ids = sheets.map(({ svg }) => [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]!));
        for (const list of ids) expect(new Set(list).size).toBe(list.length);
        const named = new Set(
          ids
            .flat()
            .filter((id) => /^S-1/.test(id))
            .map((id) => id.slice(id.indexOf('.') + 1)),
        );
        expect([...new Set([...members, ...footings].map((p) => p.mark))].filter((m) => !named.has(m))).toEqual([]);
      });
    }
  });
}
