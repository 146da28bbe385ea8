/** The built app served on a free port, and a Chromium of the system's to look at it with. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
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

export const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath(), headless: true, args: ARGS });

/** Builds the app when a source is newer than it. */
export function built(): void {
  execFileSync(process.execPath, ['--import', 'tsx', join(root, 'scripts/build-web.ts'), '--quiet'], { cwd: root });
}

export interface Site {
  readonly url: string;
  readonly server: Server;
}

export async function site(): Promise<Site> {
  const server = await serve(0, join(root, 'dist/web'));
  return { server, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

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
