/** The built app served on a free port, and a Chromium of the system's to look at it with. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmdirSync, statSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { serve } from '../../apps/cli/commands/app.js';

export const root = join(import.meta.dirname, '../..');
const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Software drawing, no network of the browser's own. */
const ARGS = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function chromiumPath(): string {
  const found = CHROMIUM.find((p) => existsSync(p));
  if (!found) throw new Error('no Chromium: scripts/debian-tools.sh installs it on Debian');
  return found;
}

/** `plain` leaves the graphics library out: quicker where nothing is drawn in three dimensions. */
export const launch = (plain = false): Promise<Browser> =>
  chromium.launch({
    executablePath: chromiumPath(),
    headless: true,
    args: plain ? [...ARGS.filter((a) => !/swiftshader/.test(a)), '--disable-gpu'] : ARGS,
  });

const SOURCES = ['apps/web', 'apps/cli/commands', 'src', 'scripts/build-web.ts', 'examples', 'schema'];

function newest(path: string): number {
  const s = statSync(path);
  if (!s.isDirectory()) return /\.(test|testing)\.tsx?$/.test(path) ? 0 : s.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((f) => (f === 'expected' ? 0 : newest(join(path, f)))));
}

/** Builds the app when a source is newer than it. Test files run side by side: one builds, the others wait. */
export async function built(): Promise<void> {
  const made = join(root, 'dist/web/sw.js');
  const single = join(root, 'dist/eavewright.html');
  const fresh = (): boolean => {
    if (!existsSync(made) || !existsSync(single)) return false;
    return (
      Math.min(statSync(made).mtimeMs, statSync(single).mtimeMs) >
      Math.max(...SOURCES.map((p) => newest(join(root, p))))
    );
  };
  const lock = join(root, 'dist/web.lock');
  mkdirSync(join(root, 'dist'), { recursive: true });
  for (let wait = 0; wait < 600; wait++) {
    if (!existsSync(lock) && fresh()) return;
    try {
      mkdirSync(lock);
    } catch {
      await new Promise((r) => setTimeout(r, 200));
      continue;
    }
    try {
      if (!fresh())
        execFileSync(process.execPath, ['--import', 'tsx', join(root, 'scripts/build-web.ts'), '--quiet'], {
          cwd: root,
        });
    } finally {
      rmdirSync(lock);
    }
  }
}

export interface Site {
  readonly url: string;
  readonly server: Server;
}

export async function site(): Promise<Site> {
  const server = await serve(0, join(root, 'dist/web'));
  return { server, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

/** Browser and built app of a test file, there from its first test to its last. */
export interface Here {
  readonly browser: Browser;
  readonly url: string;
}

/** Opens both before the tests of the file that calls it, and closes them after. */
export function here(): Here {
  const now: { browser?: Browser; site?: Site } = {};
  beforeAll(async () => {
    await built();
    [now.browser, now.site] = await Promise.all([launch(), site()]);
  }, 120_000);
  afterAll(async () => {
    await now.browser?.close();
    now.site?.server.close();
  });
  return {
    get browser() {
      return now.browser!;
    },
    get url() {
      return now.site!.url;
    },
  };
}

/** The largest example. */
export const L = '05-l-shape-two-roofs';
export const fileOf = (example: string): string => join(root, 'examples', example, 'project.json');
export const textOf = (example: string): string => readFileSync(fileOf(example), 'utf8');

export const DESKTOP = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** A fresh page with what it complained of. */
export async function desk(
  browser: Browser,
  url: string,
  viewport = DESKTOP,
): Promise<{ page: Page; context: BrowserContext; faults: string[] }> {
  const context = await browser.newContext({ viewport, acceptDownloads: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (e) => faults.push(e.message));
  page.on('console', (m) => {
    if (m.type() === 'error') faults.push(m.text());
  });
  await page.goto(url);
  return { page, context, faults };
}

/** Opens an example and waits until it lies on the desk. */
export async function example(page: Page, name: string): Promise<void> {
  await page.click(`[data-example="${name}"]`);
  await drawn(page);
}

export const drawn = (page: Page): Promise<unknown> => page.waitForSelector('main[aria-busy="false"] canvas');

/** Puts a text on the desk as if picked in the file dialog. */
export async function opened(page: Page, name: string, text: string): Promise<void> {
  await page.setInputFiles('[data-testid="open-file"]', {
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
}

/** The thing of that name on the sheet, as a keyboard reaches it. */
export const thing = (page: Page, label: string | RegExp) =>
  page.locator('.sheet-things button', { hasText: label }).first();

export const panel = (page: Page, name: string): Promise<void> =>
  page.locator('.panel-keys button', { hasText: name }).click();

/** Waits until a change has been worked out, shown and kept. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      document.querySelector('main')?.getAttribute('aria-busy') === 'false' &&
      document.querySelector('.kept')?.classList.contains('saved') === true,
  );
}
