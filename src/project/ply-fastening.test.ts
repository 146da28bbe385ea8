import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf } from './testing.js';

const BUILT = `"extra": { "kind": "built-up", "plies": 2, "ply": "2x10", "spacers": 0, "spacerThickness": "0 in", "fastening": "two rows 16d at 12 in", "plyFastening": { "fastener": "common-16d", "rows": 2, "spacing": "12 in", "edge": "2 in", "end": "3 in" }, "species": "Douglas Fir-Larch", "grade": "No. 2", "treatment": "none", "incised": false, "service": "dry" },`;
const file = (row: string) => edit('"sections": {', `"sections": { ${row}`);

describe('plyFastening of a section', () => {
  it('arrives in inches, and may be left out', () => {
    const r = read(file(BUILT));
    expect(r.issues).toEqual([]);
    expect(r.value!.choices.sections.extra).toMatchObject({
      plyFastening: { fastener: 'common-16d', rows: 2, spacing: 12, edge: 2, end: 3 },
    });
    expect(read(file(BUILT.replace(/"plyFastening": \{[^}]*\}, /, ''))).issues).toEqual([]);
  });

  it('refuses a fastener nobody sells and half a row', () => {
    const at = '/choices/sections/extra/plyFastening';
    expect(errorsOf(file(BUILT.replace('"common-16d"', '"common-17d"')))).toMatchObject([
      { code: 'not-one-of', path: `${at}/fastener` },
    ]);
    expect(errorsOf(file(BUILT.replace('"rows": 2', '"rows": 1.5')))).toMatchObject([
      { code: 'out-of-range', path: `${at}/rows` },
    ]);
  });
});
