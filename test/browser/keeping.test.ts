/** What is kept: a killed tab, two tabs, no network, files that are damaged or too new, the single file. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { desk, drawn, example, here, L, opened, root, settled, site, textOf, thing } from './browser.testing.js';

const app = here();

describe('keeping', () => {
  it('a killed tab loses nothing, not even what can be undone', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await example(page, L);
    await thing(page, 'Move post P4').focus();
    await page.keyboard.press('ArrowLeft');
    await settled(page);
    await thing(page, `Dimension 11'-0`).waitFor({ state: 'attached' });
    const url = page.url();
    const cdp = await context.newCDPSession(page);
    // A crashed page answers no more: the call itself is never answered.
    void cdp.send('Page.crash').catch(() => undefined);
    await page.waitForEvent('crash');
    const again = await context.newPage();
    await again.goto(url);
    await drawn(again);
    await thing(again, `Dimension 11'-0`).waitFor({ state: 'attached' });
    await again.click('.tools >> text=Undo');
    await thing(again, `Dimension 11'-1`).waitFor({ state: 'attached' });
    await context.close();
  });

  it('two tabs do not write over each other silently', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await example(page, L);
    await settled(page);
    const other = await context.newPage();
    await other.goto(page.url());
    await drawn(other);
    await thing(page, 'Move post P4').focus();
    await page.keyboard.press('ArrowLeft');
    await settled(page);
    await other.waitForSelector('text=changed in another tab');
    await thing(other, 'Move post P3').focus();
    await other.keyboard.press('ArrowRight');
    await other.waitForSelector('.kept.conflict');
    await other.click('text=Keep mine as a copy');
    await settled(other);
    expect(other.url()).not.toBe(page.url());
    await context.close();
  });

  it('reloads without a network', async () => {
    const own = await site();
    const { page, context } = await desk(app.browser, own.url);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(async () => (await caches.keys()).length === 1);
    await page.reload();
    await example(page, L);
    await settled(page);
    own.server.closeAllConnections();
    own.server.close();
    await context.setOffline(true);
    await page.reload();
    await drawn(page);
    await thing(page, `Dimension 11'-1`).waitFor({ state: 'attached' });
    await context.close();
  });
});

describe('files', () => {
  it('a damaged one shows every issue with its place and what would be right', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await opened(page, 'broken.json', textOf('03-broken-on-purpose'));
    await page.waitForSelector('.issues li');
    expect(await page.locator('.issues li').count()).toBe(5);
    const said = await page.innerText('.issues');
    expect(said).toContain('line 14, column 5');
    expect(said).toContain('did you mean "sheetSize"');
    await context.close();
  });

  it('one that is no JSON at all names the slip', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await opened(page, 'cut.json', '{ "eavewright": 1, "job": { "title": "half a fi');
    await page.waitForSelector('.issues li');
    expect(await page.innerText('.issues')).toContain('syntax');
    await context.close();
  });

  it('one of a newer version is refused with the reason', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await opened(page, 'new.json', '{ "eavewright": 99 }');
    await page.waitForSelector('.issues li');
    expect(await page.innerText('.issues')).toMatch(/newer-version[\s\S]*later version of the program/);
    await context.close();
  });
});

describe('the single HTML file', () => {
  it('opens from the disk and works everything out', async () => {
    const { page, context, faults } = await desk(app.browser, pathToFileURL(join(root, 'dist/eavewright.html')).href);
    await example(page, L);
    await thing(page, `Dimension 11'-1`).waitFor({ state: 'attached' });
    expect(await page.innerText('[data-testid="stamp"]')).toMatch(/for permit/i);
    expect(faults).toEqual([]);
    await context.close();
  });
});
