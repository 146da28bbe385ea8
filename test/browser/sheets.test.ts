/** Sheets as the workspace: change a dimension, drag and undo, cure a failing check. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { editText } from '../../src/index.js';
import { desk, drawn, example, here, L, opened, panel, settled, textOf, thing } from './browser.testing.js';

const app = here();

/** What the panel of a part says of one of its checks. */
async function ratio(page: Page, mark: string, check: string): Promise<number> {
  await panel(page, 'Part');
  await page.selectOption('.panel select', mark);
  const row = page.locator('.panel .result', { hasText: check }).first().locator('.bar em');
  await row.waitFor();
  return Number.parseFloat(await row.innerText());
}

describe('a dimension', () => {
  it('is changed on the sheet, and the check of the beam follows', async () => {
    const { page, context, faults } = await desk(app.browser, app.url);
    await example(page, L);
    const before = await ratio(page, 'B3', 'Beam bending');
    await thing(page, `Dimension 11'-1`).dispatchEvent('click');
    await page.fill('.edit-box input', `8 ft`);
    await page.click('.edit-box button.main');
    await settled(page);
    await thing(page, `Dimension 8'-0"`).waitFor({ state: 'attached' });
    await panel(page, 'Part');
    expect(await ratio(page, 'B3', 'Beam bending')).not.toBe(before);
    await page.click('.tools >> text=Undo');
    await settled(page);
    await panel(page, 'Part');
    expect(await ratio(page, 'B3', 'Beam bending')).toBe(before);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('says what is wrong with a length it cannot read, and changes nothing', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await example(page, L);
    await thing(page, `Dimension 11'-1`).dispatchEvent('click');
    await page.fill('.edit-box input', 'wide');
    await page.click('.edit-box button.main');
    await page.waitForSelector('.edit-box .fault');
    expect(await page.locator('.tools button').first().isDisabled()).toBe(true);
    // A post past the end of its beam: refused with the reason, and the sheet stays.
    await page.fill('.edit-box input', '90 ft');
    await page.click('.edit-box button.main');
    await page.waitForFunction(() =>
      /past the end/.test(document.querySelector('.edit-box .fault')?.textContent ?? ''),
    );
    expect(await page.locator('canvas').count()).toBe(1);
    expect(await page.locator('.tools button').first().isDisabled()).toBe(true);
    await context.close();
  });

  it('of the house says where it comes from', async () => {
    const { page, context } = await desk(app.browser, app.url);
    await example(page, '04-free-gable-knee-braces');
    await page.locator('[role="tab"]', { hasText: 'A-201' }).click();
    await page.waitForSelector('canvas[aria-label*="A-201"]');
    await thing(page, 'Dimension').dispatchEvent('click');
    await page.waitForSelector('.edit-box');
    expect(await page.innerText('.edit-box')).toMatch(/measured|Roof|Change|pitch/i);
    await context.close();
  });
});

describe('a tag', () => {
  it('opens its part, whose values change in place', async () => {
    const { page, context, faults } = await desk(app.browser, app.url);
    await example(page, L);
    await thing(page, 'Part P4').dispatchEvent('click');
    await page.waitForSelector('.edit-box .field');
    expect(await page.textContent('.edit-box h3')).toBe('post P4');
    const at = page.locator('.edit-box .field', { hasText: 'From the start of the beam' }).locator('input');
    await at.fill('11 ft');
    await at.press('Enter');
    await settled(page);
    await page.waitForFunction(() => !document.querySelector('.sheet-things')?.textContent?.includes("11'-1"));
    await page.locator('.edit-box button', { hasText: 'load path' }).click();
    await page.waitForSelector('.load-path li');
    expect(await page.textContent('.load-path')).toContain('soil');
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('dragging', () => {
  it('moves a post with live dimensions, and undo brings it back', async () => {
    const { page, context, faults } = await desk(app.browser, app.url);
    await example(page, L);
    await thing(page, 'Move post P4').focus();
    const grip = (await page.locator('.grip').boundingBox())!;
    const [x, y] = [grip.x + 22, grip.y + 22];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 8; i++) await page.mouse.move(x - 8 * i, y + 3);
    await page.waitForSelector('.drag-note');
    expect(await page.innerText('.drag-note')).toMatch(/from the start of B3/);
    await page.waitForFunction(() => /Passes|Fails/.test(document.querySelector('.drag-note')?.textContent ?? ''));
    await page.mouse.up();
    await page.waitForFunction(() => !document.querySelector('.sheet-things')?.textContent?.includes("11'-1"));
    await settled(page);
    await page.keyboard.press('Control+z');
    await settled(page);
    await thing(page, `Dimension 11'-1`).waitFor({ state: 'attached' });
    await page.keyboard.press('Control+Shift+z');
    await page.waitForFunction(() => !document.querySelector('.sheet-things')?.textContent?.includes("11'-1"));
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('a finding', () => {
  it('that fails offers remedies that were tried, and one click cures it', async () => {
    const { page, context, faults } = await desk(app.browser, app.url);
    const weak = editText(textOf('01-gable-scissor-kept-slab'), [
      { path: '/choices/sections/beam/depth', value: '7-1/2 in' },
    ]).value!;
    await opened(page, 'weak.json', weak);
    await drawn(page);
    await page.locator('[role="tab"]', { hasText: 'S-102' }).click();
    await page.waitForSelector('.badge[aria-label^="B1"]');
    await panel(page, 'Findings');
    await page.waitForSelector('.findings.fail');
    const fails = Number(await page.innerText('.findings.fail summary b'));
    expect(fails).toBeGreaterThan(0);
    await page.click('.findings.fail .result-head >> nth=0');
    await page.waitForSelector('.remedies li button', { timeout: 40_000 });
    await page.waitForSelector('.trace li');
    await page.click('.remedies li button >> nth=0');
    await settled(page);
    await page.waitForFunction(
      (n) => Number(document.querySelector('.findings.fail summary b')?.textContent ?? 0) < n,
      fails,
    );
    expect(faults).toEqual([]);
    await context.close();
  });
});
