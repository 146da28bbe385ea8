/**
 * The whole catalogue as text, one row a line. No number of it changes unnoticed: a change shows as a line in review
 * and is accepted with `ACCEPT=1 npx vitest run src/catalog`. This pins values; their truth is the verification ring's.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import * as catalog from './index.js';

const FILE = join(dirname(fileURLToPath(import.meta.url)), 'expected', 'catalogue.txt');

const line = (row: unknown): string =>
  typeof row === 'object' && row !== null && !Array.isArray(row)
    ? Object.entries(row)
        .filter(([, v]) => v !== undefined)
        .map(([k, v]) => `${k}=${typeof v === 'object' ? JSON.stringify(v) : v}`)
        .join('; ')
    : JSON.stringify(row);

function listing(): string {
  const out: string[] = [];
  for (const [name, value] of Object.entries(catalog).sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (typeof value === 'function') continue;
    if (Array.isArray(value)) out.push(`${name}:`, ...value.map((row) => `  ${line(row)}`));
    else out.push(`${name}: ${line(value)}`);
  }
  return `${out.join('\n')}\n`;
}

it('is the catalogue that was accepted', () => {
  const text = listing();
  if (process.env.ACCEPT === '1') {
    mkdirSync(dirname(FILE), { recursive: true });
    writeFileSync(FILE, text);
  }
  expect(text.split('\n')).toEqual(readFileSync(FILE, 'utf8').split('\n'));
});
