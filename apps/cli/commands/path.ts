import { pathOf, pathText } from '../../../src/checking.js';
import { UserFault } from '../files.js';
import type { Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { marksOf } from './marks.js';

export async function pathCommand(io: Io, file: string, mark: string, o: { json?: boolean }): Promise<number> {
  const d = await load(file);
  for (const i of d.issues.filter((x) => x.severity === 'error')) io.err(printIssue(file, i));
  const answer = pathOf(d, mark);
  if (answer === undefined) {
    if (!d.structure) return exitOf(d);
    throw new UserFault(
      `nothing is marked "${mark}" here; the marks are ${marksOf(d.structure, d.project).join(', ')}`,
    );
  }
  io.out(o.json ? `${JSON.stringify(answer, null, 2)}\n` : pathText(answer));
  return exitOf(d);
}
