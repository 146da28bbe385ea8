import { why, whyText } from '../../../src/index.js';
import { UserFault } from '../files.js';
import type { Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';

export async function whyCommand(io: Io, file: string, mark: string, o: { json?: boolean }): Promise<number> {
  const d = await load(file);
  for (const i of d.issues.filter((x) => x.severity === 'error')) io.err(printIssue(file, i));
  const answer = why(d, mark);
  if (answer === undefined) {
    if (!d.structure) return exitOf(d);
    const marks = [
      ...new Set(
        [
          ...d.structure.members,
          ...d.structure.footings,
          ...d.structure.joints,
          ...d.structure.roofs,
          ...(d.project?.cover.houseTies ?? []),
        ].map((p) => p.mark),
      ),
    ];
    throw new UserFault(`nothing is marked "${mark}" here; the marks are ${marks.join(', ')}`);
  }
  io.out(o.json ? `${JSON.stringify(answer, null, 2)}\n` : whyText(answer));
  return exitOf(d);
}
