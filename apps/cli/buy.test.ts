/** The command buy as a script sees it. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { main } from './main.js';

const root = resolve(import.meta.dirname, '../..');
const example = (name: string): string => join(root, 'examples', name, 'project.json');
const GABLE = example('01-gable-scissor-kept-slab');
const SHED = example('02-shed-snow-two-storey');
const BROKEN = example('03-broken-on-purpose');

const temp = mkdtempSync(join(tmpdir(), 'eavewright-buy-'));
afterAll(() => rmSync(temp, { recursive: true, force: true }));

async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(args, {
    out: (t) => {
      out += t;
    },
    err: (t) => {
      err += t;
    },
    progress: () => {},
  });
  return { code, out, err };
}

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
