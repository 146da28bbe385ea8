import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { FACES, type FaceName } from '../../../src/index.js';
import { packageRoot } from '../files.js';

/** Font files of the faces that sheets are lettered in. */
export async function fonts(): Promise<Record<FaceName, Uint8Array>> {
  const root = packageRoot();
  const entries = await Promise.all(
    Object.entries(FACES).map(
      async ([name, f]) => [name, new Uint8Array(await readFile(join(root, 'assets/fonts', f.file)))] as const,
    ),
  );
  return Object.fromEntries(entries) as Record<FaceName, Uint8Array>;
}
