import { readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { packageRoot } from '../files.js';
import { EXIT, type Io } from '../io.js';
import { check } from './check.js';
import { draw } from './draw.js';

/** Checks and draws the first example. Its honest state (preliminary or issuable) is printed, and is no failure of starting. */
export async function start(io: Io, o: { output: string }): Promise<number> {
  const examples = join(packageRoot(), 'examples');
  const first = (await readdir(examples)).sort()[0]!;
  const file = join(examples, first, 'project.json');
  io.out(`Example: ${first}\n\n`);
  const code = await check(io, file, {});
  if (code > EXIT.notIssuable) return code;
  const drawn = await draw({ ...io, out: () => {} }, file, { output: join(o.output, first) });
  if (drawn > EXIT.notIssuable) return drawn;
  io.out(`\nThe set: ${resolve(o.output, first, 'set.pdf')}\nThe sheets: ${resolve(o.output, first, 'sheets')}\n`);
  io.out(
    `Change the file and look again:  npx eavewright draw ${join('examples', first, 'project.json')} -o ${o.output}\n`,
  );
  return EXIT.issuable;
}
