/** The command buy as a script sees it. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BROKEN, GABLE, run, SHED, scratch } from './cli.testing.js';

const temp = scratch();

describe('eavewright buy', () => {
  it('writes papers, workbook, text and JSON; the same bytes twice', { timeout: 120_000 }, async () => {
    const [a, b] = [join(temp, 'a'), join(temp, 'b')];
    const r = await run('buy', GABLE, '-o', a, '--invented-prices');
    expect(r.code).toBe(0);
    expect(r.out).toContain('INVENTED');
    const files = readdirSync(a).sort();
    expect(files).toEqual(['buy.csv', 'buy.json', 'buy.pdf', 'buy.xlsx', 'hire.pdf', 'prices.csv']);
    await run('buy', GABLE, '-o', b, '--invented-prices');
    for (const f of files) expect(readFileSync(join(b, f)).equals(readFileSync(join(a, f))), f).toBe(true);
    const json = JSON.parse(readFileSync(join(a, 'buy.json'), 'utf8'));
    expect(json.lines.length).toBeGreaterThan(20);
    expect(json.cuts.every((c: { gap: number }) => c.gap >= 0)).toBe(true);
  });

  it('takes a filled price list and says what has no price', { timeout: 120_000 }, async () => {
    const out = join(temp, 'c');
    const list = join(temp, 'prices.csv');
    writeFileSync(list, 'item,unit,price\r\n"concrete mix, 3000 psi or more, 80 lb bag",bag,7\r\n');
    const r = await run('buy', SHED, '-o', out, '--prices', list, '--json');
    expect(r.code).toBe(0);
    expect(JSON.parse(r.out).issuable).toBe(true);
    const json = JSON.parse(readFileSync(join(out, 'buy.json'), 'utf8'));
    const concrete = json.lines.find((l: { item: string }) => l.item.startsWith('concrete mix, 3000'));
    expect(concrete.total).toBe(7 * concrete.buy.quantity);
    expect(json.costs.unpriced.length).toBe(json.lines.length - 1);
  });

  it('refuses a bad list by its lines, and two sorts of prices at once; nothing is written', async () => {
    const out = join(temp, 'd');
    const list = join(temp, 'bad.csv');
    writeFileSync(list, 'item,unit,price\r\nboard,each,cheap\r\n');
    const r = await run('buy', GABLE, '-o', out, '--prices', list);
    expect(r.code).toBe(2);
    expect(r.err).toContain('bad.csv:2');
    expect((await run('buy', GABLE, '-o', out, '--prices', list, '--invented-prices')).code).toBe(2);
    expect(existsSync(out)).toBe(false);
  });

  it('takes nothing off a project that cannot be placed', async () => {
    const out = join(temp, 'e');
    const r = await run('buy', BROKEN, '-o', out);
    expect(r.code).toBe(2);
    expect(existsSync(out)).toBe(false);
  });
});

describe('eavewright size', () => {
  it('finds sizes that pass and says why the next cheaper do not', { timeout: 180_000 }, async () => {
    const r = await run('size', GABLE, '--invented-prices', '--json');
    expect(r.code).toBe(0);
    const found = JSON.parse(r.out);
    expect(found.choices.length).toBeGreaterThan(1);
    expect(found.derived + found.pruned).toBeLessThanOrEqual(found.combinations + 2 * found.choices.length + 1);
    for (const s of found.steps) expect(s.fails.length).toBeGreaterThan(0);
    expect(Array.isArray(found.misfits)).toBe(true);
  });
  it('asks for prices and for a sound limit', async () => {
    const r = await run('size', GABLE);
    expect(r.code).toBe(2);
    expect(r.err).toContain('--prices');
    expect((await run('size', GABLE, '--invented-prices', '--most', '0')).code).toBe(2);
  });
});
