/** The list finds what is on the sheets, says why not where it is not, and follows the project file's own rows. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../../derive.js';
import { drawSet } from '../../drawings/sheets/set.js';
import { type CompletenessRow, completeness, foundText, OFFICE_ROWS, OFFICES_READ, unknownRows } from './index.js';

const root = new URL('../../../', import.meta.url).pathname;
const text = readFileSync(`${root}examples/01-gable-scissor-kept-slab/project.json`, 'utf8');

function listOf(file: string, without: RegExp = /^$/): readonly CompletenessRow[] {
  const input = drawingInput(derive(file))!;
  const sheets = drawSet(input, 'ARCH D').filter((s) => !without.test(s.id));
  return completeness({ sheets, ...input });
}
const byName = (rows: readonly CompletenessRow[], name: string) => rows.find((r) => r.name === name)!;
/** The example with more in it at the end of the file. */
const withMore = (part: string): string => text.replace(/\}\s*$/, `, ${part}\n}`);

const rows = listOf(text);

describe('the completeness list', () => {
  it('has names once, and counts no more offices than were read', () => {
    expect(new Set(OFFICE_ROWS.map((r) => r.name)).size).toBe(OFFICE_ROWS.length);
    for (const r of OFFICE_ROWS) expect(r.asked).toBeLessThanOrEqual(OFFICES_READ);
  });

  it('names the sheets that show a row', () => {
    expect(byName(rows, 'site-plan').found).toEqual({ state: 'shown', sheets: ['C-101'] });
    expect(byName(rows, 'foundation-plan').found).toEqual({ state: 'shown', sheets: ['S-101'] });
    expect(byName(rows, 'form-index').found.state).toBe('shown');
  });

  it.each([
    ['site-plan', /^C-/],
    ['foundation-plan', /^S-101/],
    ['framing-plan', /^S-103/],
    ['elevations', /^A-201/],
    ['section', /^A-301/],
    ['connectors', /^S-601/],
    ['height', /^A-/],
    ['lot-coverage', /^C-/],
    ['criteria-wind', /^G-/],
    ['calculations', /^S-7/],
  ])('misses %s when its sheets are taken out', (name, ids) => {
    expect(byName(rows, name).found.state).toBe('shown');
    expect(['missing', 'ask']).toContain(byName(listOf(text, ids), name).found.state);
  });

  it('takes rows out and adds rows as the file says', () => {
    const own = listOf(
      withMore(`"submittal": { "officeChecklist": { "remove": ["lot-trees"], "add": [
        { "item": "frost depth", "words": "frost  depth" },
        { "item": "photographs", "answer": "photos.pdf" },
        { "item": "a thing", "words": "no such words anywhere" } ] } }`),
    );
    expect(own.some((r) => r.name === 'lot-trees')).toBe(false);
    const added = own.filter((r) => r.group === 'This office').map((r) => r.found.state);
    expect(added).toEqual(['shown', 'beside', 'missing']);
    expect(unknownRows(['lot-trees', 'lot-tree'])).toEqual(['lot-tree']);
  });

  it('is not answered by its own sheet', () => {
    for (const r of rows)
      if (r.found.state === 'shown' && r.found.sheets.length < 10) expect(r.found.sheets).not.toContain('G-601');
  });

  it('says on which sheets a rule of paper does not hold', () => {
    const input = drawingInput(derive(text))!;
    const fault = { check: 'scale-bars', rule: '', sheet: 'S-101', what: 'none' } as const;
    const judged = completeness({ sheets: drawSet(input), ...input, findings: [fault] });
    expect(byName(judged, 'form-bars').found).toEqual({ state: 'missing', why: 'not so on S-101' });
  });

  it('closes up runs of sheets', () => {
    const row: CompletenessRow = {
      name: 'x',
      group: 'Documents',
      item: 'x',
      found: { state: 'shown', sheets: ['G-001', 'S-701', 'S-702', 'S-703', 'A-201', 'A-202'] },
    };
    expect(foundText(row)).toBe('G-001, S-701–S-703, A-201, A-202');
    expect(foundText(row, 6)).toBe('every sheet');
  });
});
