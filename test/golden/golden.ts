/**
 * Golden text: what the program writes for the examples, kept as text and read as a diff. `npm run accept` rewrites the
 * files; without it a difference fails with the first differing lines.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect } from 'vitest';

export const root = resolve(import.meta.dirname, '../..');
const accepting = process.env.ACCEPT === '1';

export function expectGolden(path: string, text: string): void {
  const file = join(root, path);
  if (accepting) {
    if (existsSync(file) && readFileSync(file, 'utf8') === text) return;
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
    return;
  }
  if (!existsSync(file))
    expect.fail(`${relative(root, file)} does not exist; run \`npm run accept\` and read what it wrote`);
  const kept = readFileSync(file, 'utf8').split('\n');
  const now = text.split('\n');
  const at = now.findIndex((l, i) => l !== kept[i]);
  if (at < 0 && kept.length === now.length) return;
  const line = at < 0 ? now.length : at;
  expect.fail(
    `${relative(root, file)} differs from line ${line + 1} (${kept.length} lines kept, ${now.length} now)\n` +
      `  kept  ${kept[line] ?? '(end)'}\n  now   ${now[line] ?? '(end)'}\nRun \`npm run accept\` and read the diff.`,
  );
}

/** While accepting, removes kept files that nothing is compared with any more. */
export function dropGoldens(folder: string, gone: (name: string) => boolean): void {
  if (!accepting) return;
  for (const name of readdirSync(join(root, folder))) if (gone(name)) rmSync(join(root, folder, name));
}
