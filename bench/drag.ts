/**
 * Dragging a post of the largest example in headless Chromium: the time between frames of the page, and how old the sheet is
 * that a frame shows. `npm run bench` prints it; nothing here fails a build. Needs the built app and a Chromium.
 */
import { desk, example, launch, site, thing } from '../test/browser/browser.testing.js';

const LARGEST = '05-l-shape-two-roofs';
const FRAME = 33;

const part = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;

export interface Drag {
  readonly frames: number;
  /** Share of frames within 33 ms, 0 to 1. */
  readonly within: number;
  readonly p50: number;
  readonly p95: number;
  /** Milliseconds from a move of the pointer to the sheet that shows it: middle one and 95 of 100; sheets drawn in all. */
  readonly sheet50: number;
  readonly sheet95: number;
  readonly sheets: number;
  /** Processor time of the page's thread for a frame, milliseconds. */
  readonly thread: number;
}

/** @param plain Chromium with --disable-gpu, as a machine without a graphics processor; else one emulated in software */
export async function dragBench(moves = 240, plain = true): Promise<Drag> {
  const browser = await launch(plain);
  const s = await site();
  try {
    const { page } = await desk(browser, s.url);
    await example(page, LARGEST);
    await thing(page, 'Move post P4').focus();
    const grip = (await page.locator('.grip').boundingBox())!;
    const [x, y] = [grip.x + 22, grip.y + 22];
    await page.mouse.move(x, y);
    await page.mouse.down();
    // A first sweep warms the worker, as a second drag of a user's would find it.
    for (let i = 0; i < 60; i++) await page.mouse.move(x - 60 - 30 * Math.sin(i / 6), y);
    // As text: a transpiler's helpers for named functions do not exist in the page.
    await page.evaluate(`(() => {
      window.steps = []; window.go = true;
      let last = performance.now();
      const tick = () => {
        const now = performance.now();
        window.steps.push(now - last);
        last = now;
        if (window.go) requestAnimationFrame(tick);
      };
      requestAnimationFrame(tick);
      performance.clearMeasures('drag-sheet');
    })()`);
    // Time of the page's own thread, which other work on the machine does not lengthen.
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
    const busy = async (): Promise<number> =>
      (await cdp.send('Performance.getMetrics')).metrics.find((m) => m.name === 'TaskDuration')?.value ?? 0;
    const before = await busy();
    for (let i = 0; i < moves; i++) {
      await page.mouse.move(x - 60 - 30 * Math.sin(i / 9), y);
      await page.waitForTimeout(12);
    }
    const got = await page.evaluate(() => {
      const w = window as unknown as { steps: number[]; go: boolean };
      w.go = false;
      return { frames: w.steps.slice(2), sheets: performance.getEntriesByName('drag-sheet').map((e) => e.duration) };
    });
    const thread = (1000 * ((await busy()) - before)) / Math.max(1, got.frames.length);
    await page.mouse.up();
    const frames = got.frames.sort((a, b) => a - b);
    const sheets = got.sheets.sort((a, b) => a - b);
    return {
      frames: frames.length,
      within: frames.filter((f) => f <= FRAME).length / Math.max(1, frames.length),
      p50: part(frames, 0.5),
      p95: part(frames, 0.95),
      sheet50: part(sheets, 0.5),
      sheet95: part(sheets, 0.95),
      sheets: sheets.length,
      thread,
    };
  } finally {
    await browser.close();
    s.server.closeAllConnections();
    s.server.close();
  }
}
