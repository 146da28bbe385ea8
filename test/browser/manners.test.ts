/** Manners of the page: keyboard alone, small screens, axe, nothing runs from a project file, the same PDF as the command line. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { main } from '../../apps/cli/main.js';
import { editText } from '../../src/index.js';
import {
  DESKTOP,
  desk,
  drawn,
  example,
  fileOf,
  here,
  L,
  opened,
  PHONE,
  panel,
  settled,
  textOf,
  thing,
} from './browser.testing.js';

const app = here();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA, in words. */
async function faults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const run = (
      window as unknown as {
        axe: { run(o: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      }
    ).axe;
    const r = await run.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] } as object);
    return r.violations.map(
      (v) =>
        `${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.html.slice(0, 120))
          .join(' | ')}`,
    );
  });
}

describe('axe', () => {
  for (const scheme of ['light', 'dark'] as const)
    it(`finds nothing against WCAG 2.2 AA, ${scheme}`, async () => {
      const { page, context } = await desk(app.browser, app.url);
      await page.emulateMedia({ colorScheme: scheme });
      expect(await faults(page)).toEqual([]);
      await page.click('[data-roof="shed-free"]');
      await drawn(page);
      for (const name of ['Questions', 'Findings', 'File', 'Print', 'Changes', 'Part']) {
        if (name !== 'Questions') await panel(page, name);
        if (name === 'Findings') await page.click('.result-head >> nth=0');
        if (name === 'Part') await page.selectOption('.panel select', 'B1');
        await page.waitForTimeout(150);
        expect(await faults(page), name).toEqual([]);
      }
      await thing(page, 'Dimension').dispatchEvent('click');
      await page.waitForSelector('.edit-box input');
      expect(await faults(page), 'edit box').toEqual([]);
      await page.locator('.views button', { hasText: 'Model' }).click();
      await page.waitForSelector('.model-tools');
      await page.waitForTimeout(600);
      expect(await faults(page), 'model').toEqual([]);
      await context.close();
    });
});

describe('keyboard alone', () => {
  it('begins, turns sheets, changes a dimension, moves a post, undoes', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await page.waitForSelector('[data-roof="shed-free"]');
    const focusOn = async (what: string): Promise<void> => {
      for (let i = 0; i < 80; i++) {
        await page.keyboard.press('Tab');
        if (await page.evaluate((w) => document.activeElement?.matches(w) ?? false, what)) return;
      }
      throw new Error(`the keyboard never reaches ${what}`);
    };
    await focusOn('[data-roof="shed-free"]');
    await page.keyboard.press('Enter');
    await drawn(page);
    await focusOn('canvas');
    await page.keyboard.press('PageDown');
    await page.waitForSelector('[role="tab"][aria-selected="true"]:has-text("S-102")');
    await page.keyboard.press('PageUp');
    await page.waitForSelector('[role="tab"][aria-selected="true"]:has-text("S-101")');
    await focusOn('.sheet-things button');
    while (!(await page.evaluate(() => document.activeElement?.textContent?.startsWith('Dimension') ?? false)))
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.edit-box');
    await page.keyboard.press('Escape');
    await page.waitForSelector('.edit-box', { state: 'detached' });
    await focusOn('.sheet-things button');
    while (!(await page.evaluate(() => document.activeElement?.textContent?.startsWith('Move post P1') ?? false)))
      await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    await page.waitForFunction(
      () => document.querySelector('.tools button')?.getAttribute('aria-label') === 'Undo: P1 moved',
    );
    await page.keyboard.press('Control+z');
    await page.waitForFunction(
      () => document.querySelector('.tools button')?.getAttribute('aria-label') === 'Nothing to undo',
    );
    await context.close();
  });
});

describe('a phone', () => {
  for (const viewport of [PHONE, { width: 360, height: 740 }])
    it(`of ${viewport.width} px: nothing runs off the side, keys are large enough for gloves`, async () => {
      const { page, context } = await desk(app.browser, app.url, viewport);
      const fits = async (): Promise<void> => {
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(over).toBeLessThanOrEqual(0);
      };
      await fits();
      await example(page, L);
      for (const name of ['Findings', 'Part', 'File', 'Print', 'Changes']) {
        await panel(page, name);
        await page.waitForTimeout(120);
        await fits();
      }
      const small = await page.evaluate(
        () =>
          [...document.querySelectorAll<HTMLElement>('.panel-keys button, .tools button, .strip button, .views button')]
            .map((b) => b.getBoundingClientRect())
            .filter((r) => r.height < 44).length,
      );
      expect(small).toBe(0);
      expect(await faults(page)).toEqual([]);
      await context.close();
    });
});

describe('a project file', () => {
  it('cannot run anything: its text is only ever text', async () => {
    const { page, context, faults: said } = await desk(app.browser, app.url);
    const evil = '<img src=x onerror="window.ran=1"><script>window.ran=2</script><svg onload="window.ran=3">';
    const text = editText(textOf(L), [
      { path: '/job/title', value: evil },
      { path: '/job/owner', value: evil },
      { path: '/choices/joints/0/product', value: evil },
    ]).value!;
    await opened(page, 'evil.json', text);
    await drawn(page);
    for (const name of ['Findings', 'Part', 'File', 'Print', 'Changes']) await panel(page, name);
    await panel(page, 'Print');
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('[data-export="read-only"]')]);
    const html = readFileSync(await download.path(), 'utf8');
    expect(html).not.toContain('<img src=x');
    expect(html).not.toContain('<script>');
    const sent = await context.newPage();
    await sent.setContent(html);
    expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
    expect(await sent.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
    expect(await page.innerText('.top h1')).toContain('<img');
    expect(said).toEqual([]);
    await context.close();
  });

  it('and the page forbids scripts written into it', async () => {
    const { page, context } = await desk(app.browser, app.url);
    const blocked = await page.evaluate(
      () =>
        new Promise<string>((done) => {
          document.addEventListener('securitypolicyviolation', (e) => done(e.violatedDirective));
          const el = document.createElement('script');
          el.textContent = 'window.ran = 4';
          document.body.append(el);
        }),
    );
    expect(blocked).toMatch(/script-src/);
    expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
    await context.close();
  });
});

describe('the permit set', () => {
  it('has the bytes the command line writes', async () => {
    const { page, context } = await desk(app.browser, app.url, DESKTOP);
    await example(page, L);
    await settled(page);
    await panel(page, 'Print');
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('[data-export="pdf"]')]);
    const ours = readFileSync(await download.path());
    const dir = mkdtempSync(join(tmpdir(), 'eavewright-'));
    try {
      await main(['draw', fileOf(L), '-o', dir], { out: () => {}, err: () => {}, progress: () => {} });
      expect(ours.equals(readFileSync(join(dir, 'set.pdf')))).toBe(true);
    } finally {
      rmSync(dir, { recursive: true });
    }
    await context.close();
  });
});
