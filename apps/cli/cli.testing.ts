/** The command line as a script meets it: arguments in, exit code and both streams out; files in a folder that goes again. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll } from 'vitest';
import { main } from './main.js';

export const root = resolve(import.meta.dirname, '../..');
export const example = (name: string): string => join(root, 'examples', name, 'project.json');
export const GABLE = example('01-gable-scissor-kept-slab');
export const SHED = example('02-shed-snow-two-storey');
export const BROKEN = example('03-broken-on-purpose');

/** A folder of its own for the test file that asks, removed after its last test. */
export function scratch(): string {
  const dir = mkdtempSync(join(tmpdir(), 'eavewright-cli-'));
  afterAll(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

export async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(args, {
    out: (t) => {
      out += t;
    },
    err: (t) => {
      err += t;
    },
    progress: () => {},
  });
  return { code, out, err };
}
