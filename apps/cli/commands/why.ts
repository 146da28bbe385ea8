import { why, whyText } from '../../../src/checking.js';
import { UserFault } from '../files.js';
import type { Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { marksOf } from './marks.js';

export async function whyCommand(io: Io, file: string, mark: string, o: { json?: boolean }): Promise<number> {
  const d = await load(file);
  for (const i of d.issues.filter((x) => x.severity === 'error')) io.err(printIssue(file, i));
  const answer = why(d, mark);
  if (answer === undefined) {
    if (!d.structure) return exitOf(d);
    throw new UserFault(
      `nothing is marked "${mark}" here; the marks are ${marksOf(d.structure, d.project).join(', ')}`,
    );
  }
  io.out(o.json ? `${JSON.stringify(answer, null, 2)}\n` : whyText(answer));
  return exitOf(d);
}
