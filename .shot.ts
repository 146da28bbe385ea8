import { launch, site, desk, example, drawn, PHONE } from '/tmp/w-app/test/browser/browser.testing.js';
const b = await launch(); const s = await site();
const which = process.argv.slice(2);
const faults: string[] = [];
async function run(name: string, vp: any, scheme: 'light'|'dark', fn: (page: any) => Promise<void>) {
  if (which.length && !which.some(w => name.includes(w))) return;
  const context = await b.newContext({ viewport: vp, colorScheme: scheme, hasTouch: vp.width < 500, isMobile: vp.width<500, deviceScaleFactor: vp.width<500?2:1 });
  const page = await context.newPage();
  page.on('pageerror', e => console.log(name, 'ERR', e.message)); page.on('console', m => m.type()==='error' && console.log(name, 'CONSOLE', m.text()));
  await page.goto(s.url);
  await page.waitForTimeout(600);
  try { await fn(page); } catch (e) { console.log(name, 'FAILED', (e as Error).message.slice(0, 300)); }
  await page.waitForTimeout(500);
  await page.screenshot({ path: `/tmp/shots/${name}.png` });
  await context.close();
}
const D = { width: 1440, height: 900 };
await run('welcome', D, 'light', async () => {});
await run('welcome-phone-dark', PHONE, 'dark', async () => {});
await run('sheet', D, 'light', async p => { await example(p, '05-l-shape-two-roofs'); });
await run('findings-dark', D, 'dark', async p => { await example(p, '05-l-shape-two-roofs'); await p.click('text=Findings'); });
await run('phone', PHONE, 'light', async p => { await example(p, '01-gable-scissor-kept-slab'); });
await run('phone-sheet', {width:360,height:740}, 'dark', async p => { await example(p, '01-gable-scissor-kept-slab'); await p.click('.panel .close'); });
await run('broken', D, 'light', async p => { await p.click('[data-example="03-broken-on-purpose"]'); });
await run('starter', D, 'light', async p => { await p.click('[data-roof="shed-free"]'); await drawn(p); });
await run('starter-findings', D, 'light', async p => { await p.click('[data-roof="shed-free"]'); await drawn(p); await p.click('.panel-keys >> text=Findings'); await p.click('.result-head >> nth=0'); });
await run('part', D, 'light', async p => { await example(p, '01-gable-scissor-kept-slab'); await p.click('.panel-keys >> text=Part'); await p.selectOption('.panel select', 'B1'); });
await run('edit', D, 'light', async p => { await example(p, '05-l-shape-two-roofs'); await p.locator('.sheet-things button', { hasText: 'Dimension 11' }).first().evaluate((e: HTMLElement) => e.click()); });
await run('outputs', D, 'light', async p => { await example(p, '05-l-shape-two-roofs'); await p.click('.panel-keys >> text=Print'); });
await run('model', D, 'light', async p => { await example(p, '05-l-shape-two-roofs'); await p.click('.views >> text=Model'); await p.waitForTimeout(2500); });
await run('model-dark-phone', PHONE, 'dark', async p => { await example(p, '01-gable-scissor-kept-slab'); await p.click('.panel .close'); await p.click('.views >> text=Model'); await p.waitForTimeout(2500); });
await b.close(); s.server.close();
