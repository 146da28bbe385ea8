import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf } from './testing.js';

/** The gable example without its truss papers. */
const file = readFileSync(
  join(resolve(import.meta.dirname, '../..'), 'examples/01-gable-scissor-kept-slab/project.json'),
  'utf8',
).replace(/ {4}"trussPapers": \[[\s\S]*?\n {4}\],\n/, '');
const SHEET = `{ "mark": "T1", "from": "sheet A1", "sealedBy": "an engineer, 2026-04-03", "span": "18 ft 5-1/2 in",
  "pitch": "4/12", "bottomPitch": "2/12", "heel": "5 1/2 in", "overhang": "16 in", "spacing": "24 in",
  "bearingWidth": "1 1/2 in", "bracing": "none", "reactions": [
    { "bearing": "left", "kind": "gravity", "amount": "605 lb", "duration": 1.25 },
    { "bearing": "right", "kind": "uplift", "amount": "90 lb", "duration": 1.6, "side": "20 lb" } ] }`;
const withCover = (more: string): string => edit('"ledgers": [],', `"ledgers": [], ${more},`, file);

describe('truss papers in the file', () => {
  it('are read in base units; what is left out is nothing, not a guess', () => {
    const p = read(withCover(`"trussPapers": [${SHEET}]`)).value!.cover.trussPapers![0]!;
    expect(p).toMatchObject({ mark: 'T1', span: 221.5, heel: 5.5, bearingWidth: 1.5, deflection: '' });
    expect(p.reactions).toEqual([
      { bearing: 'left', kind: 'gravity', amount: 605, side: 0, duration: 1.25 },
      { bearing: 'right', kind: 'uplift', amount: 90, side: 20, duration: 1.6 },
    ]);
    expect(p.govern).toBeUndefined();
    expect(read(file).value!.cover.trussPapers).toBeUndefined();
  });

  it('must say why they are set aside', () => {
    const aside = SHEET.replace('"bracing"', '"govern": { "set": "ours" }, "bracing"');
    expect(errorsOf(withCover(`"trussPapers": [${aside}]`)).map((i) => i.path)).toEqual([
      '/cover/trussPapers/0/govern/why',
    ]);
  });

  it('may be deferred on the office’s word, which is asked for while unknown', () => {
    const said = read(withCover('"deferred": { "value": ["trusses"], "from": "building counter" }')).value!;
    expect(said.cover.deferred).toMatchObject({ value: ['trusses'], state: 'given', from: 'building counter' });
    const asked = read(withCover('"deferred": "unknown"')).value!;
    expect(asked.cover.deferred).toMatchObject({ value: [], state: 'unknown' });
    expect(asked.questions.map((q) => q.path)).toContain('/cover/deferred');
    expect(errorsOf(withCover('"deferred": { "value": ["doors"], "from": "counter" }'))).toHaveLength(1);
  });
});
