/** A new user's way: from an empty desk through the questions and findings to a set that may be issued, and its PDF. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { desk, drawn, here, panel, settled } from './browser.testing.js';

const app = here();

/** Answers as an invented office gives them, by the label of the question. */
const OFFICE: readonly (readonly [label: string, answer: string])[] = [
  ['Wind speed', '105 mph'],
  ['Wind exposure', 'B'],
  ['Hill or ridge factor', '1'],
  ['Ground snow load', '0 psf'],
  ['Snow exposure', 'partially'],
  ['Least roof live load', '20 psf'],
  ['Patio-cover appendix adopted', 'no'],
  ['Seismic design category', 'B'],
  ['Frost depth', '12 in'],
  ['Soil bearing', '1500 psf'],
  ['Lateral soil bearing', '100 psf/ft'],
];
const SIX: readonly (readonly [string, string])[] = [
  ['Rear setback', '20 ft'],
  ['Left setback', '8 ft'],
  ['Right setback', '8 ft'],
  ['Front setback', '25 ft'],
  ['Measured to the post or the eave', 'eave'],
  ['Coverage limit', '40 %'],
  ['Height limit', '15 ft'],
];

/** How the sheathing is nailed and what the covering holds, as an owner would say. */
const SAID: Readonly<Record<string, string>> = {
  nail: 'common-8d',
  edge: '6 in',
  field: '12 in',
  count: '3',
  uplift: '80 psf',
  from: 'test report of the panels, read by the owner',
};

async function answer(page: Page, label: string, value: string): Promise<void> {
  const field = page
    .locator('.panel .field')
    .filter({ has: page.locator('label', { hasText: new RegExp(`^${label}$`) }) })
    .first();
  await field.waitFor({ state: 'attached' });
  const select = field.locator('select').first();
  if (await select.count()) await select.selectOption({ label: value });
  else {
    const input = field.locator('input').first();
    await input.fill(value);
    await input.press('Enter');
  }
  await field.locator('.plain', { hasText: 'I don’t know' }).waitFor();
}

const openAll = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const d of document.querySelectorAll('.panel details')) (d as HTMLDetailsElement).open = true;
  });

const openChapter = async (page: Page, title: string): Promise<void> => {
  await page.locator('.chapter h3 button', { hasText: title }).click();
  await openAll(page);
};

describe('from an empty desk', () => {
  it('the questions lead to a permit set', { timeout: 150_000 }, async () => {
    const { page, context, faults } = await desk(app.browser, app.url);
    await page.click('[data-roof="shed-free"]');
    await drawn(page);
    expect(await page.textContent('[data-testid="six-answer"]')).toMatch(/to ask/);

    // The six questions.
    await openAll(page);
    for (const [label, value] of SIX) await answer(page, label, value);
    await settled(page);
    expect(await page.textContent('[data-testid="six-answer"]')).toContain('A cover can be had here');

    // What the office told.
    await openChapter(page, 'What the office told you');
    for (const [label, value] of OFFICE) await answer(page, label, value);

    // What is left to ask stands under Findings; each opens its field.
    await panel(page, 'Findings');
    for (let left = 10; left > 0; left--) {
      await settled(page);
      const q = page.locator('.findings.questions button').first();
      if ((await q.count()) === 0) break;
      await openAll(page);
      await q.click();
      const field = page.locator('.panel .field.office').first();
      await field.waitFor();
      const select = field.locator('select');
      if (await select.count()) await select.selectOption({ index: 1 });
      else {
        await field.locator('input').first().fill('moderate');
        await field.locator('input').first().press('Enter');
      }
      await field.locator('.plain', { hasText: 'I don’t know' }).waitFor();
      await panel(page, 'Findings');
    }

    // Open findings are answered where they stand: nails, blocks, covering, then a product for each joint.
    for (let left = 14; left > 0; left--) {
      await settled(page);
      const open = page.locator('.findings.open .result').first();
      if ((await open.count()) === 0) break;
      const before = await page.textContent('.findings.open summary b');
      if ((await open.locator('.result-head').getAttribute('aria-expanded')) !== 'true')
        await open.locator('.result-head').click();
      const form = open.locator('form.remedies');
      await form.waitFor();
      if (await form.locator('[name="product"]').count()) {
        await form.locator('[name="product"]').fill('steel connector with nails as its table says');
        for (const way of ['down', 'up', 'along', 'across']) await form.locator(`[name="${way}"]`).fill('5000');
        await form.locator('[name="concrete"]').fill('3000 psi');
        await form.locator('[name="source"]').fill('its evaluation report, Table 1');
      } else {
        // Nothing is filled in by itself: what is left empty is asked for.
        await form.locator('button.main').click();
        await form.locator('.fault').waitFor();
        for (const input of await form.locator('input').all())
          await input.fill(SAID[(await input.getAttribute('name'))!]!);
      }
      await form.locator('button.main').click();
      await page.waitForFunction(
        (was) => document.querySelector('.findings.open summary b')?.textContent !== was,
        before,
      );
    }
    await settled(page);
    expect(await page.textContent('.verdict')).toContain('may be issued');
    expect(await page.textContent('[data-testid="stamp"]')).toContain('For permit');

    await panel(page, 'Print');
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('[data-export="pdf"]')]);
    expect(
      readFileSync(await download.path())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    expect(faults).toEqual([]);
    await context.close();
  });
});
