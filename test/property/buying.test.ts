/** The buying papers of the examples: legible, whole, and the files a spreadsheet opens. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSolver } from '../../apps/cli/solver.js';
import { outside, overlaps, textBoxes } from '../../src/drawings/annotate/index.js';
import { flatten, missingGlyphs } from '../../src/drawings/ir/index.js';
import {
  type Buy,
  buyJson,
  buyOf,
  buyPages,
  buyTables,
  csvOf,
  derive,
  drawingInput,
  hirePages,
  parseCsv,
  purchaseTable,
  xlsxOf,
} from '../../src/index.js';

const EXAMPLES = join(import.meta.dirname, '../../examples');
const names = readdirSync(EXAMPLES)
  .filter((n) => !n.includes('broken'))
  .sort();

describe.each(names)('buying papers of %s', (name) => {
  let b: Buy;
  beforeAll(async () => {
    const d = derive(readFileSync(join(EXAMPLES, name, 'project.json'), 'utf8'));
    b = buyOf(d.project!, d.structure!, drawingInput(d), { solve: await loadSolver(), prices: 'invented' });
  });

  it('letters nothing over anything, nothing off the page, nothing too small', () => {
    for (const page of [...buyPages(b), ...hirePages(b)]) {
      const boxes = textBoxes(page);
      expect(
        overlaps(boxes).map(([p, q]) => `${page.id}: "${p.content}" on "${q.content}"`),
        page.id,
      ).toEqual([]);
      expect(outside(boxes, { x: 0.5, y: 0.4, w: 7.5, h: 10.2 }).map((x) => `${page.id}: ${x.content}`)).toEqual([]);
      for (const f of flatten(page)) {
        if (f.kind !== 'text') continue;
        expect(f.height, `${page.id}: ${f.content}`).toBeGreaterThanOrEqual(3 / 32 - 1e-9);
        expect(missingGlyphs(f.content, f.face), f.content).toEqual([]);
        expect(f.content).not.toMatch(/NaN|undefined|Infinity|\[object/);
      }
    }
  });

  it('prints every line, every board’s pieces and every scope line', () => {
    const words = [...buyPages(b), ...hirePages(b)]
      .flatMap(flatten)
      .flatMap((f) => (f.kind === 'text' ? [f.content] : []));
    const all = words.join('\n');
    for (const s of b.scopes) for (const l of s.lines) expect(words).toContain(l.id);
    for (const t of b.trusses) expect(all).toContain(`Truss ${t.order.mark}`);
    for (const g of b.takeoff.cuts) expect(all).toContain(g.item);
    expect(all).toContain('INVENTED');
  });

  it('writes a workbook that reads back, totals included, and the same bytes twice', async () => {
    const date = new Date('2026-03-02T00:00:00Z');
    const bytes = await xlsxOf(buyTables(b), date);
    expect(await xlsxOf(buyTables(b), date)).toEqual(bytes);
    const book = await readXlsx(bytes);
    expect(book.sheets.map((s) => s.name)).toEqual(buyTables(b).map((t) => t.name));
    const rows = book.sheets[0]!.rows;
    const head = rows.findIndex((r) => r[1] === 'Item');
    const body = rows.slice(head + 1, head + 1 + b.takeoff.lines.length);
    expect(body.map((r) => r[1])).toEqual(b.takeoff.lines.map((l) => l.item));
    body.forEach((r, i) => {
      expect(r[2]).toBeCloseTo(b.takeoff.lines[i]!.buy.quantity, 9);
      expect(r[5]).toBeCloseTo(b.costs.lines[i]!.total!, 2);
    });
    expect(rows[head + 1 + b.takeoff.lines.length]![5]).toBeCloseTo(b.costs.material, 2);
  });

  it('writes text that reads back line by line', () => {
    const table = purchaseTable(b);
    const { value } = parseCsv(csvOf(table));
    expect(value!.length).toBe(table.rows.length + 1);
    expect(value!.slice(1, -1).map((r) => r[1])).toEqual(b.takeoff.lines.map((l) => l.item));
  });

  it('is JSON without holes', () => {
    const text = JSON.stringify(buyJson(b));
    expect(text).not.toMatch(/NaN|Infinity/);
    expect(JSON.parse(text).lines.length).toBe(b.takeoff.lines.length);
  });
});
