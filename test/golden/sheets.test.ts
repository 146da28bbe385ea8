/** What must hold on every sheet of every example at both sheet sizes, whatever it shows. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet } from '../../src/index.js';
import { SHEET_CHECKS } from '../../src/review/sheets/registry.js';
import { drawnSet } from '../../src/review/sheets/set.js';
import { root } from './golden.js';

const names = readdirSync(join(root, 'examples')).sort();

for (const name of names) {
  const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
  if (!input) continue;
  describe.each(['ARCH D', 'ANSI B'] as const)(`${name}, %s`, (size) => {
    const set = drawnSet(drawSet(input, size), input.structure);
    it.each(Object.entries(SHEET_CHECKS))('%s', (_, check) => {
      expect(check.run(set).map((f) => `${f.sheet}: ${f.what}`)).toEqual([]);
    });
  });
}
