/** Buying and the work on the ground, on a phone without a network; the files are those of the command line. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { main } from '../../apps/cli/main.js';
import {
  compareChoices,
  derive,
  deriveProject,
  editText,
  formatLength,
  inventedPrices,
  stakeOf,
} from '../../src/index.js';
import {
  desk,
  drawn,
  example,
  fileOf,
  here,
  L,
  opened,
  PHONE,
  panel,
  root,
  settled,
  site,
  textOf,
} from './browser.testing.js';

const app = here();
const dir = mkdtempSync(join(tmpdir(), 'eavewright-'));
afterAll(() => rmSync(dir, { recursive: true }));

const text = textOf(L);
const SMALL = { width: 360, height: 740 };
const SLOW = { timeout: 60_000 };
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const quiet = { out: () => {}, err: () => {}, progress: () => {} };
/** Bytes that a command writes for the example. */
async function commanded(command: string, name: string): Promise<Buffer> {
  await main([command, fileOf(L), '-o', join(dir, command)], quiet);
  return readFileSync(join(dir, command, name));
}

async function view(page: Page, name: 'Buy' | 'Site', part?: string): Promise<void> {
  await panel(page, name);
  await page.waitForSelector('.pages', SLOW);
  if (part) await page.locator('.pages button', { hasText: part }).click();
}

async function fetched(page: Page, name: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download', SLOW), page.click(`[data-file="${name}"]`)]);
  expect(download.suggestedFilename()).toBe(name);
  return readFileSync(await download.path());
}

/** Controls of the open view lower than a gloved finger needs, by name. */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        '.panel button, .panel summary, .panel select, .panel label.choice, .panel input:not([type="radio"], .choice input)',
      ),
    ]
      .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.5)
      .map((e) => `${e.tagName} ${e.textContent?.slice(0, 40)}`),
  );

const runsOff = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const { scrollWidth, scrollHeight } = document.documentElement;
    return Math.max(scrollWidth - window.innerWidth, scrollHeight - window.innerHeight);
  });

async function against(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: a } = window as unknown as {
      axe: { run(o: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const r = await a.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
    return r.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 140))}`);
  });
}

describe('the site view on a phone without a network', () => {
  it('ticks a card, keeps it over a reload, and undoes it', async () => {
    const own = await site();
    const { page, context } = await desk(app.browser, own.url, SMALL);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(async () => (await caches.keys()).length === 1);
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await example(page, L);
    await settled(page);
    own.server.close();
    await context.setOffline(true);
    await page.reload();
    await drawn(page);
    await view(page, 'Site');
    await page.click('[data-card="footing"]');
    const boxes = page.locator('[data-stage="footing"] [data-item]');
    const first = boxes.nth(0);
    // Two quick taps: the second must not write over the first.
    await first.check();
    await boxes.nth(1).check();
    const measured = page.locator('[data-stage="footing"] .note-field input').first();
    await measured.fill('3 ft 1 in');
    await measured.press('Enter');
    await page.locator('[data-stage="footing"] .choice', { hasText: 'Passed in part' }).click();
    await page.waitForFunction(() =>
      /2 of \d+\s*Passed in part/.test(document.querySelector('[data-card="footing"]')?.textContent ?? ''),
    );
    await settled(page);
    await page.reload();
    await drawn(page);
    await view(page, 'Site');
    await page.click('[data-card="footing"]');
    expect(await first.isChecked()).toBe(true);
    expect(await boxes.nth(1).isChecked()).toBe(true);
    expect(await measured.inputValue()).toBe('3 ft 1 in');
    for (let i = 0; i < 4; i++) {
      await page.click('.tools button >> nth=0');
      await settled(page);
    }
    await page.waitForFunction(() => /0 of/.test(document.querySelector('[data-card="footing"]')?.textContent ?? ''));
    expect(await first.isChecked()).toBe(false);
    await context.close();
  });

  it('buys too: the solver is at hand', async () => {
    const own = await site();
    const { page, context, faults } = await desk(app.browser, own.url, SMALL);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    own.server.close();
    await context.setOffline(true);
    await page.reload();
    await example(page, L);
    await view(page, 'Buy', 'Cut list');
    expect(await page.locator('.buy-view', { hasText: 'does not let the solver run' }).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('a measured blunder', () => {
  it('is named as soon as it is typed, and is gone when it is put right', async () => {
    const layout = stakeOf(derive(text))!.layout;
    const named = (role: string) => layout.points.find((p) => p.role === role)?.name;
    const date = '2026-05-20';
    const rows = layout.readings.map(({ kind, from, to, value }) => ({
      kind,
      ...(from === named(kind === 'level' ? 'benchmark' : 'home') ? {} : { from }),
      to,
      value: formatLength(value),
      date,
      instrument: kind === 'level' ? 'optical-level' : 'steel-tape',
    }));
    const wrong = layout.readings.findIndex((r) => r.kind === 'along' && r.to === 'F2');
    const kept = rows.filter((_, i) => i !== wrong);
    const { page, context, faults } = await desk(app.browser, app.url, PHONE);
    await opened(page, 'read.json', editText(text, [{ path: '/log/asBuilt', value: { readings: kept } }]).value!);
    await drawn(page);
    await view(page, 'Site', 'Stake out');
    expect(await page.locator('[data-testid="bad-reading"]').count()).toBe(0);
    const row = page.locator('[data-reading^="F2 along the wall"]');
    const blank = row.locator('input');
    // Read a foot long: the commonest slip with a tape.
    await blank.fill(formatLength(layout.readings[wrong]!.value + 12));
    await blank.press('Enter');
    await page.waitForSelector('[data-testid="bad-reading"]', SLOW);
    expect(await page.textContent('[data-testid="bad-reading"]')).toContain('F2 along the wall');
    expect(await row.textContent()).toContain('this reading is wrong');
    await blank.fill(formatLength(layout.readings[wrong]!.value));
    await blank.press('Enter');
    await page.waitForSelector('[data-testid="bad-reading"]', { state: 'detached', ...SLOW });
    expect(await row.textContent()).toContain('agrees with the others');
    await blank.fill('about ten');
    await blank.press('Enter');
    await page.waitForSelector('.notice.problem');
    expect(await blank.getAttribute('aria-invalid')).toBe('true');
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('the buy view', () => {
  it('lists the boards that the command line counts, and its files have the same bytes', async () => {
    const json = JSON.parse((await commanded('buy', 'buy.json')).toString()) as {
      readonly cuts: readonly { readonly item: string; readonly boards: readonly unknown[] }[];
      readonly lines: readonly { readonly id: string; readonly buy: { readonly quantity: number } }[];
    };
    const { page, context, faults } = await desk(app.browser, app.url, PHONE);
    await example(page, L);
    await view(page, 'Buy');
    const seen = await page
      .locator('[data-line]')
      .evaluateAll((rows) =>
        rows.map((r) => [
          r.getAttribute('data-line'),
          Number.parseFloat(r.querySelector('.count')!.textContent!.replaceAll(',', '')),
        ]),
      );
    expect(seen).toEqual(expect.arrayContaining(json.lines.map((l) => [l.id, Math.round(l.buy.quantity * 100) / 100])));
    expect(seen).toHaveLength(json.lines.length);
    await page.click('.pages >> text=Cut list');
    for (const g of json.cuts.filter((c) => c.boards.length > 0)) {
      const group = page.locator(`[data-cuts='${g.item}']`);
      expect(await group.locator('summary').textContent()).toContain(`${g.boards.length} piece`);
      const counts = await group.locator('.boards li > b').allTextContents();
      expect(counts.reduce((n, c) => n + Number.parseInt(c, 10), 0)).toBe(g.boards.length);
    }
    await page.click('.pages >> text=Papers');
    for (const name of ['buy.xlsx', 'buy.csv', 'buy.pdf']) {
      const ours = await fetched(page, name);
      expect(ours.length).toBeGreaterThan(1000);
      expect(ours.equals(readFileSync(join(dir, 'buy', name))), name).toBe(true);
    }
    await view(page, 'Site', 'Permits');
    expect((await fetched(page, 'stake.csv')).equals(await commanded('stake', 'stake.csv'))).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes a price typed in place and a filled list, and a line picks its part', async () => {
    const { page, context } = await desk(app.browser, app.url, PHONE);
    await example(page, L);
    await view(page, 'Buy');
    const bags = page.locator('[data-line^="concrete:footings"]').first();
    const count = Number.parseFloat((await bags.locator('.count').textContent())!);
    await bags.locator('.price input').fill('7.50');
    await bags.locator('.price input').press('Enter');
    const total = (count * 7.5).toLocaleString('en-US', { minimumFractionDigits: 2 });
    await page.waitForFunction((t) => document.querySelector('.lines .total')?.textContent === t, total);
    await bags.locator('.price input').fill('cheap');
    await bags.locator('.price input').press('Enter');
    await page.waitForSelector('.notice.problem');
    await page.click('.pages >> text=Cost');
    const list = await fetched(page, 'prices.csv');
    const filled = list.toString().replace(/,\r\n/g, ',2\r\n');
    await page.setInputFiles('[data-testid="price-list"]', {
      name: 'prices.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(filled),
    });
    await page.waitForFunction(() => !document.querySelector('.buy-view')?.textContent?.includes('The sum is too low'));
    await page.click('.tools button >> nth=0');
    await page.waitForFunction(() => document.querySelector('.buy-view')?.textContent?.includes('The sum is too low'));
    await page.click('.pages >> text=To buy');
    await bags.locator('.item').click();
    expect(await page.textContent('.picked-part')).toContain('footing');
    await page.click('.picked-part button');
    await page.waitForSelector('.load-path, .panel select');
    await context.close();
  });
});

describe('other ways to build it', () => {
  it('stand side by side with the checks that would fail, at prices that say they are invented', async () => {
    const { project } = derive(text);
    const rows = compareChoices(project!, deriveProject, { priceList: inventedPrices });
    const { page, context, faults } = await desk(app.browser, app.url, PHONE);
    await example(page, L);
    await view(page, 'Buy', 'Cost');
    await page.locator('.buy-view .choice input').check();
    await page.waitForSelector('.buy-view > .caution');
    expect(await page.textContent('.buy-view > .caution')).toContain('INVENTED');
    await page.click('[data-testid="compare"]');
    await page.waitForSelector('.compared li', SLOW);
    const shown = await page.locator('.compared li').allTextContents();
    expect(shown).toHaveLength(rows.length);
    for (const [i, r] of rows.entries()) {
      expect(shown[i]).toContain(r.title);
      for (const f of r.failing) expect(shown[i]).toContain(f);
      expect(shown[i]).toMatch(r.refused ? /Cannot be built so/ : /[1-9][\d,]*\.\d\d/);
    }
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('both views', () => {
  for (const colorScheme of ['light', 'dark'] as const)
    it(`fit 360 px, have keys for gloves, and nothing is against WCAG 2.2 AA, ${colorScheme}`, async () => {
      const { page, context } = await desk(app.browser, app.url, SMALL);
      await page.emulateMedia({ colorScheme });
      await example(page, L);
      const pages = {
        Site: ['Stages', 'Stake out', 'Order', 'Permits'],
        Buy: ['To buy', 'Cut list', 'Cost', 'Papers'],
      } as const;
      for (const name of ['Site', 'Buy'] as const) {
        await view(page, name);
        for (const part of pages[name]) {
          await page.locator('.pages button', { hasText: part }).click();
          for (const d of (await page.locator('.panel details:not([open]) > summary').all()).slice(0, 3))
            await d.click();
          expect(await runsOff(page), `${name}, ${part}`).toBeLessThanOrEqual(0);
          expect(await tooSmall(page), `${name}, ${part}`).toEqual([]);
          expect(await against(page), `${name}, ${part}`).toEqual([]);
        }
      }
      await context.close();
    });
});

describe('the single file', () => {
  it('plans the cuts with the solver as well', async () => {
    const { page, context, faults } = await desk(
      app.browser,
      pathToFileURL(join(root, 'dist/eavewright.html')).href,
      PHONE,
    );
    await example(page, L);
    await view(page, 'Buy', 'Cut list');
    expect(await page.locator('.cut-group').count()).toBeGreaterThan(3);
    expect(await page.locator('.buy-view', { hasText: 'does not let the solver run' }).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
});
