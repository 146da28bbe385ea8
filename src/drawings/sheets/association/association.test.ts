/** The packet a committee gets: its sheets are sound, say what a committee asks, and follow the project file. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../../../derive.js';
import type { SheetCheckId } from '../../../review/sheets/contract.js';
import { judgeSheets } from '../../../review/sheets/registry.js';
import { drawnSet } from '../../../review/sheets/set.js';
import { textBoxes } from '../../annotate/layout.js';
import type { Sheet } from '../../ir/index.js';
import { drawAssociation } from './index.js';

const root = new URL('../../../../', import.meta.url).pathname;
const fileOf = (name: string) => readFileSync(`${root}examples/${name}/project.json`, 'utf8');
const words = (sheets: readonly Sheet[]) =>
  sheets
    .map((s) =>
      textBoxes(s)
        .map((b) => b.content)
        .join(' '),
    )
    .join('\n');

/** The packet has no structural sheets, so nothing of it is on a structural plan, and its sheets name ones it has not. */
const NOT_HERE: ReadonlySet<SheetCheckId> = new Set(['marks-on-plans', 'marks-in-schedules', 'callouts']);

const drawn = readdirSync(`${root}examples`).flatMap((name) => {
  const input = drawingInput(derive(fileOf(name)));
  return input ? [{ name, input }] : [];
});

describe.each(drawn)('$name', ({ input }) => {
  it.each(['ANSI B', 'ARCH D'] as const)('is sound in %s', (size) => {
    const sheets = drawAssociation(input, size);
    const faults = Object.entries(judgeSheets(drawnSet(sheets, input.structure)))
      .filter(([id]) => !NOT_HERE.has(id as SheetCheckId))
      .flatMap(([id, list]) => list.map((f) => `${id}: ${f.sheet} ${f.what}`));
    expect(faults).toEqual([]);
    expect(sheets[0]!.id).toBe('G-001');
    expect(sheets.map((s) => s.id)).toEqual(expect.arrayContaining(['C-101', 'A-201', 'A-901']));
  });
});

describe('what it says', () => {
  const bare = words(drawAssociation(drawn[0]!.input));
  it('asks for what the file does not say', () => {
    for (const word of ['Materials and colors', 'to be stated', 'Drainage', 'Schedule of the work', 'From the yard'])
      expect(bare).toContain(word);
    expect(bare).toMatch(/From the neighbor’s side, right[\s\S]*From the neighbor’s side, left/);
  });

  it('says what the file says', () => {
    const more = `, "submittal": { "association": { "name": "Invented Ranch committee",
      "finishes": [{ "part": "roof", "material": "shingles", "color": "weathered gray" }],
      "schedule": [{ "step": "Footings", "when": "first week of May" }],
      "neighbors": [{ "name": "lot 17", "side": "north line" }], "storage": "in the driveway" } }\n}`;
    const input = drawingInput(derive(fileOf('01-gable-scissor-kept-slab').replace(/\}\s*$/, more)))!;
    const said = words(drawAssociation(input));
    for (const word of ['Invented Ranch committee', 'weathered gray', 'first week of May', 'lot 17', 'in the driveway'])
      expect(said).toContain(word);
    expect(said).toContain('Association review');
    expect(said).not.toContain('For permit');
  });
});
