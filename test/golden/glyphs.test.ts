/** No sheet of any example asks for a character that its lettering cannot draw. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { flatten } from '../../src/drawings/ir/flatten.js';
import { missingGlyphs } from '../../src/drawings/ir/text.js';
import { derive, drawingInput, drawSet } from '../../src/index.js';
import { root } from './golden.js';

const names = readdirSync(join(root, 'examples')).sort();
const drawn = names.flatMap((name) => {
  const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
  return input ? [{ name, input }] : [];
});

it('has examples to look at', () => {
  expect(drawn.length).toBeGreaterThanOrEqual(2);
});

for (const { name, input } of drawn) {
  it.each(['ARCH D', 'ANSI B'] as const)(`${name}, %s: every character drawn has a glyph`, (size) => {
    let strings = 0;
    const missing = drawSet(input, size).flatMap((sheet) =>
      flatten(sheet).flatMap((t) => {
        if (t.kind !== 'text') return [];
        strings++;
        return missingGlyphs(t.content, t.face).map((ch) => {
          const code = ch.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
          return `${sheet.id}: U+${code} in “${t.content}” (${t.face})`;
        });
      }),
    );
    expect(missing).toEqual([]);
    expect(strings).toBeGreaterThan(500);
  });
}

it('would notice a character that no face has', () => {
  expect(missingGlyphs('12" 漢', 'condensed')).toEqual(['漢']);
});
