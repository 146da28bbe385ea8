import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { serve } from './app.js';

let done: (() => Promise<void>) | undefined;
afterEach(async () => {
  await done?.();
  done = undefined;
});

async function served() {
  const dir = await mkdtemp(join(tmpdir(), 'eavewright-'));
  await writeFile(join(dir, 'index.html'), '<p>here</p>');
  await writeFile(join(dir, 'policy.txt'), "default-src 'none'");
  const server = await serve(0, dir);
  done = async () => {
    server.closeAllConnections();
    server.close();
    await rm(dir, { recursive: true });
  };
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

describe('serving the app', () => {
  it('sends the page with its policy', async () => {
    const r = await fetch(`${await served()}/`);
    expect(await r.text()).toBe('<p>here</p>');
    expect(r.headers.get('content-security-policy')).toBe("default-src 'none'");
    expect(r.headers.get('content-type')).toContain('text/html');
  });
  it('sends nothing from outside its folder', async () => {
    const base = await served();
    for (const path of ['/../package.json', '/%2e%2e/%2e%2e/etc/passwd', '/nothing', '/%ff'])
      expect((await fetch(base + path)).status, path).toBe(404);
  });
  it('says what to do when it is not built', async () => {
    await expect(serve(0, join(tmpdir(), 'not-there'))).rejects.toThrow('npm run build');
  });
});
