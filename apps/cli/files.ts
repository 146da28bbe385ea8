/** Disk access of the command line: reading with a plain error, writing whole files or none. */
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

/** Something the user can put right: printed without a stack, exit code 2. */
export class UserFault extends Error {}

const codeOf = (e: unknown): string | undefined => (e as NodeJS.ErrnoException).code;

/** Reads a text file, or standard input for `-`. */
export async function readText(path: string): Promise<string> {
  try {
    // Not by the name /dev/stdin: that cannot be opened when another program feeds us through a socket.
    return path === '-' ? await text(process.stdin) : await readFile(path, 'utf8');
  } catch (e) {
    const code = codeOf(e);
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new UserFault(`${path}: there is no such file`);
    if (code === 'EISDIR') throw new UserFault(`${path}: this is a folder; name the project file in it`);
    if (code === 'EACCES') throw new UserFault(`${path}: this file may not be read (permission denied)`);
    throw e;
  }
}

/** Makes a folder and those above it. Node's own recursive mkdir never returns where the system refuses with ENOENT (/proc). */
async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path);
  } catch (e) {
    const code = codeOf(e);
    if (await isFolder(path)) return;
    if (code !== 'ENOENT' || dirname(path) === path || (await isFolder(dirname(path)))) throw e;
    await makeFolder(dirname(path));
    await mkdir(path).catch(async (again: unknown) => {
      if (!(await isFolder(path))) throw again;
    });
  }
}

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (s) => s.isDirectory(),
    () => false,
  );

const REFUSED: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EISDIR: 'a folder of that name is in the way',
  ENOTDIR: 'a file stands where a folder is needed',
  EEXIST: 'a file stands where a folder is needed',
  ENOENT: 'its folder cannot be made',
  ENAMETOOLONG: 'the name is too long',
};

/** Writes beside the target first and renames, so a crash leaves the old file or the new one, never half of one. */
export async function writeWhole(path: string, data: string | Uint8Array): Promise<void> {
  const part = `${path}.part-${process.pid}`;
  try {
    await makeFolder(dirname(path));
    await writeFile(part, data);
    await rename(part, path);
  } catch (e) {
    // What stopped the writing is the news, not what stops the tidying.
    await rm(part, { force: true }).catch(() => {});
    const reason = REFUSED[codeOf(e) ?? ''];
    if (reason !== undefined) throw new UserFault(`${path}: cannot be written (${reason})`);
    throw e;
  }
}

/** The package's own folder, from the built file or from the source. */
export function packageRoot(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const at = here.includes(`${join('dist', 'apps')}`) ? '../../..' : '../..';
  return join(here, at);
}
