/** One post moved half a foot: every value, part, result, sheet and approval that it touches is named, and no other. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { textBoxes } from '../drawings/annotate/layout.js';
import { drawingArea, sheetFrame, stampSpace } from '../drawings/annotate/title-block.js';
import type { SheetSize } from '../drawings/ir/index.js';
import { judgeSheets } from '../review/sheets/registry.js';
import { compare } from './index.js';
import { clustered } from './sheets.js';
import { changedValues } from './values.js';

const root = new URL('../../', import.meta.url).pathname;
const written = readFileSync(`${root}examples/01-gable-scissor-kept-slab/project.json`, 'utf8');
const granted = written.replace('"state": "needed", "date": ""', '"state": "granted", "date": "2026-03-20"');
const moved = granted
  .replace('"mark": "P2", "at": "13 ft 6 in"', '"mark": "P2", "at": "13 ft"')
  .replace('"revisions": []', '"revisions": [{ "number": "A", "date": "2026-04-10", "note": "post P2 moved" }]');

const boxes = (size: SheetSize) => ({
  frame: sheetFrame(size),
  area: drawingArea(size),
  stamp: stampSpace(size),
});

describe('two versions', () => {
  const c = compare(granted, moved);

  it('names the value that was changed, as written', () => {
    expect(c.values[0]).toEqual({ path: '/cover/beams/0/posts/1/at', before: '13 ft 6 in', after: '13 ft' });
    expect(c.values.map((v) => v.path)).toEqual(['/cover/beams/0/posts/1/at', '/log/revisions/0']);
  });

  it('names the parts that moved, and no other', () => {
    expect(c.parts.map((p) => p.mark)).toEqual(expect.arrayContaining(['P2', 'F2']));
    for (const p of c.parts) expect(['P2', 'F2', 'J3', 'J4']).toContain(p.mark);
  });

  it('names results that changed, of parts near it', () => {
    expect(c.results.length).toBeGreaterThan(3);
    // B1 is also a chord of the roof R1.
    for (const r of c.results) expect(['B1', 'R1', 'F1', 'F2', 'P1', 'P2', 'J3', 'J4']).toContain(r.subject);
  });

  it('touches the sheets that show the post, and not those that do not', () => {
    const ids = c.sheets.map((s) => s.sheet);
    for (const id of ['C-101', 'S-101', 'S-102', 'S-601']) expect(ids).toContain(id);
    for (const id of ['S-103', 'S-502']) expect(ids).not.toContain(id);
    expect(c.sheets.find((s) => s.sheet === 'S-102')!.marks).toContain('P2');
  });

  it('sends the approval back that saw those sheets', () => {
    expect(c.approvals.map((a) => a.body)).toEqual(['Zoning clearance']);
  });

  it('clouds each touched sheet, with the number of its revision', () => {
    expect(c.revision).toEqual({ number: 'A', entered: true });
    expect(c.revised.map((s) => s.id)).toEqual(c.sheets.map((s) => s.sheet));
    for (const s of c.revised) {
      const marks = s.items.filter((i) => i.layer === 'G-ANNO-REVS');
      expect(marks.length).toBeGreaterThan(0);
      const change = c.sheets.find((x) => x.sheet === s.id)!;
      const numbers = textBoxes(s).filter((b) => b.layer === 'G-ANNO-REVS' && b.content === 'A');
      expect(numbers.length).toBe(change.clouds.length);
    }
  });

  it('puts clouds and triangles inside the frame and off the stamp', () => {
    for (const s of c.revised) {
      const set = { sheets: [s], marks: new Set<string>() };
      const judged = judgeSheets({ ...set, ...boxes(s.size) });
      expect([...judged['inside-frame'], ...judged['stamp-clear'], ...judged['texts-apart']]).toEqual([]);
    }
  });
});

it('finds nothing where nothing was changed but layout and comments of the file', () => {
  const c = compare(written, written.replace('"cover": {', '// a word\n  "cover": {'));
  expect([c.values, c.parts, c.results, c.sheets, c.approvals, c.revised].flat()).toEqual([]);
});

it('asks for a revision where the log has none', () => {
  expect(compare(granted, moved.replace(/"revisions": \[.*?\]/, '"revisions": []')).revision).toEqual({
    number: '1',
    entered: false,
  });
});

it('says nothing of parts, results and sheets of a version that cannot be read', () => {
  const c = compare(written, written.replace('"9 ft"', '"nine"'));
  expect([c.parts, c.results, c.sheets, c.revised].flat()).toEqual([]);
  expect(c.values.length).toBeGreaterThan(0);
});

it('matches rows of a list by their names, not by their places', () => {
  const file = (rows: string) => `{ "eavewright": 1, "cover": { "beams": [${rows}] } }`;
  const [b1, b2] = ['{ "mark": "B1", "at": 1 }', '{ "mark": "B2", "at": 2 }'];
  expect(changedValues(file(`${b1}, ${b2}`), file(`${b2}, ${b1}`))).toEqual([]);
  expect(changedValues(file(`${b1}, ${b2}`), file(b2))).toEqual([
    { path: '/cover/beams/0', before: '{"mark":"B1","at":1}' },
  ]);
});

it('joins what is near into one cloud', () => {
  const r = (x: number) => ({ x, y: 0, w: 1, h: 1 });
  expect(clustered([r(0), r(5), r(1.2)])).toEqual([r(5), { x: 0, y: 0, w: 2.2, h: 1 }]);
});
