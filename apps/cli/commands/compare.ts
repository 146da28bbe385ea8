import { join } from 'node:path';
import {
  answerLetter,
  answersOf,
  type Comparison,
  compare,
  derive,
  drawAnswers,
  drawingInput,
  drawJudged,
  hasErrors,
  type Project,
  type ReviewComment,
  readComments,
  type Sheet,
} from '../../../src/index.js';
import { readText, UserFault, writeWhole } from '../files.js';
import { EXIT, type Io } from '../io.js';
import { printIssue } from './check.js';
import { pdfs, sizeOf } from './draw.js';

export interface CompareOptions {
  readonly output?: string;
  readonly comments?: string;
  readonly size?: string;
  readonly json?: boolean;
}

/** Longest list printed in full; a whole list is in the JSON. */
const MOST = 12;

function section<T>(io: Io, title: string, rows: readonly T[], line: (row: T) => string): void {
  if (rows.length === 0) return;
  io.out(`${title} (${rows.length})\n`);
  for (const r of rows.slice(0, MOST)) io.out(`  ${line(r)}\n`);
  if (rows.length > MOST) io.out(`  … and ${rows.length - MOST} more\n`);
}

function print(io: Io, c: Comparison): void {
  section(io, 'Values', c.values, (v) => `${v.path}: ${v.before ?? '(not there)'} → ${v.after ?? '(taken out)'}`);
  section(io, 'Placed parts', c.parts, (p) => `${p.part} ${p.how}`);
  section(io, 'Check results', c.results, (r) => {
    const say = (a: typeof r.before) => (a ? `${a.status} ${a.ratio.toFixed(2)}` : 'none');
    return `${r.title} of ${r.subject}: ${say(r.before)} → ${say(r.after)}`;
  });
  section(
    io,
    'Sheets',
    c.sheets,
    (s) => `${s.sheet} ${s.title}: ${s.how}${s.marks.length > 0 ? ` (${s.marks.join(', ')})` : ''}`,
  );
  section(
    io,
    'Approvals',
    c.approvals,
    (a) => `${a.body}, ${a.state}: saw ${a.sheets.join(', ')}, changed since; ask again before building`,
  );
  const { number, entered } = c.revision;
  if (c.sheets.length > 0 && !entered)
    io.out(`Revision ${number} is not in the new file's log.revisions: enter it, so that the title block shows it.\n`);
  if (c.values.length === 0) io.out('Nothing was changed.\n');
}

/** Comments of the project file, or of a file of their own. */
async function commentsOf(
  io: Io,
  project: Project | undefined,
  file: string | undefined,
): Promise<readonly ReviewComment[]> {
  if (file === undefined) return project?.submittal?.comments ?? [];
  const { value, issues } = readComments(await readText(file));
  for (const i of issues) io.err(printIssue(file, i));
  if (!value) throw new UserFault(`${file}: the comments cannot be read`);
  return value;
}

/** A letter goes out with its revision. */
const letterDate = (p: Project): string => p.log.revisions.at(-1)?.date ?? p.job.date;

/** Everything that changed between two versions of a project; with an output folder, the touched sheets and the answer letter. */
export async function compareCommand(io: Io, before: string, after: string, o: CompareOptions): Promise<number> {
  const size = sizeOf(o.size);
  const [old, now] = [await readText(before), await readText(after)];
  const d = derive(now);
  for (const [file, issues] of [
    [before, derive(old).issues],
    [after, d.issues],
  ] as const)
    for (const i of issues) if (i.severity === 'error') io.err(printIssue(file, i));
  const c = compare(old, now, size);
  const comments = await commentsOf(io, d.project, o.comments);
  const given = drawingInput(d);
  const input = given && {
    ...given,
    project: {
      ...given.project,
      submittal: { officeChecklist: { office: '', remove: [], add: [] }, ...given.project.submittal, comments },
    },
  };
  const sheets: readonly Sheet[] = input ? drawJudged(input, size).sheets : [];
  const answers = answersOf(comments, sheets);
  const open = answers.filter((a) => a.open !== '');
  const written: string[] = [];
  if (o.output !== undefined && input) {
    const letter = drawAnswers(input, sheets);
    const files: (readonly [string, string | Uint8Array])[] = [];
    const wanted = [
      { name: 'revised.pdf', title: `Revision ${c.revision.number}`, sheets: c.revised },
      { name: 'answers.pdf', title: 'Answer to review comments', sheets: letter },
    ].filter((f) => f.sheets.length > 0);
    files.push(...(await pdfs(input, d, wanted, false)));
    if (comments.length > 0)
      files.push([
        'answers.md',
        answerLetter({ ...input.project.job, date: letterDate(input.project) }, answers, sheets),
      ]);
    for (const [name, data] of files) {
      const path = join(o.output, name);
      await writeWhole(path, data);
      written.push(path);
    }
  }
  if (o.json) {
    const { revised, ...rest } = c;
    const said = answers.map((a) => ({ ...a.comment, open: a.open }));
    io.out(
      `${JSON.stringify({ ...rest, clouded: revised.map((s) => s.id), answers: said, files: written }, null, 2)}\n`,
    );
  } else {
    print(io, c);
    for (const a of open) io.out(`Comment ${a.comment.number}: ${a.open}\n`);
    for (const path of written) io.out(`${path}\n`);
  }
  if (hasErrors(d.issues) || !given) return EXIT.badInput;
  return open.length > 0 || !d.verdict.issuable ? EXIT.notIssuable : EXIT.issuable;
}
