/** Disk access of the command line: reading with a plain error, writing whole files or none. */
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Something the user can put right: printed without a stack, exit code 2. */
export class UserFault extends Error {}

export async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (e) {
    const code = (e as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') throw new UserFault(`${path}: there is no such file`);
    if (code === 'EISDIR') throw new UserFault(`${path}: this is a folder; name the project file in it`);
    if (code === 'EACCES') throw new UserFault(`${path}: this file may not be read (permission denied)`);
    throw e;
  }
}

/** Writes beside the target first and renames, so a crash leaves the old file or the new one, never half of one. */
export async function writeWhole(path: string, data: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const part = `${path}.part-${process.pid}`;
  try {
    await writeFile(part, data);
    await rename(part, path);
  } catch (e) {
    await rm(part, { force: true });
    const code = (e as NodeJS.ErrnoException).code;
    if (code === 'EACCES' || code === 'EROFS') throw new UserFault(`${path}: cannot be written (permission denied)`);
    if (code === 'ENOSPC') throw new UserFault(`${path}: the disk is full`);
    throw e;
  }
}

/** The package's own folder, from the built file or from the source. */
export function packageRoot(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const at = here.includes(`${join('dist', 'apps')}`) ? '../../..' : '../..';
  return join(here, at);
}
