import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, it } from 'vitest';
import { checkJson, derive, drawingInput, drawSet, svgOf } from '../../src/index.js';
import { expectGolden, root } from './golden.js';

for (const name of readdirSync(join(root, 'examples')).sort()) {
  const folder = `examples/${name}`;
  const derived = derive(readFileSync(join(root, folder, 'project.json'), 'utf8'));
  describe(name, () => {
    it('keeps its results', () =>
      expectGolden(`${folder}/expected/check.json`, `${JSON.stringify(checkJson(derived), null, 1)}\n`));

    const input = drawingInput(derived);
    if (input) {
      for (const sheet of drawSet(input)) {
        it(`keeps sheet ${sheet.id}`, () => expectGolden(`${folder}/expected/sheets/${sheet.id}.svg`, svgOf(sheet)));
      }
    }
  });
}
