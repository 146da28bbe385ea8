import { join } from 'node:path';
import {
  type DrawingInput,
  type Drawn,
  drawingInput,
  drawJudged,
  dxfModelPlan,
  dxfOf,
  pdfOf,
  SHEET_SIZE_NAMES,
  type Sheet,
  type SheetFinding,
  type SheetSizeName,
  separateFiles,
  svgOf,
} from '../../../src/index.js';
import { UserFault, writeWhole } from '../files.js';
import { EXIT, type Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { fonts } from './fonts.js';

export interface DrawOptions {
  readonly output: string;
  readonly only?: string;
  readonly size?: string;
  readonly dxf?: boolean;
  readonly separate?: boolean;
  readonly each?: boolean;
  readonly black?: boolean;
  readonly json?: boolean;
}

/** The size asked for, or none; anything that is no sheet size is refused. */
export function sizeOf(name: string | undefined): SheetSizeName | undefined {
  const size = name as SheetSizeName | undefined;
  if (size !== undefined && !SHEET_SIZE_NAMES.includes(size)) {
    throw new UserFault(`"${size}" is not a sheet size; choose one of ${SHEET_SIZE_NAMES.join(', ')}`);
  }
  return size;
}

function chosen(all: readonly Sheet[], only: string | undefined): readonly Sheet[] {
  const wanted = only?.split(',').map((s) => s.trim().toUpperCase());
  const missing = wanted?.filter((id) => !all.some((s) => s.id === id)) ?? [];
  if (missing.length > 0) {
    throw new UserFault(`no sheet ${missing.join(', ')} in this set; it has ${all.map((s) => s.id).join(', ')}`);
  }
  return wanted ? all.filter((s) => wanted.includes(s.id)) : all;
}

/** `A-201 at 12.3, 4.5 in: No two texts touch: “a” and “b”`; the place is from the sheet's lower left corner. */
export const printFinding = (f: SheetFinding): string =>
  `${f.sheet}${f.at ? ` at ${f.at.x.toFixed(1)}, ${f.at.y.toFixed(1)} in` : ''}: ${f.rule}: ${f.what}\n`;

/** Makes the PDF files of a set: name in the output folder, and bytes. */
export async function pdfs(
  input: DrawingInput,
  drawn: Pick<Drawn, 'verdict'>,
  files: readonly { readonly name: string; readonly title: string; readonly sheets: readonly Sheet[] }[],
  black: boolean | undefined,
): Promise<readonly (readonly [string, Uint8Array])[]> {
  const { job } = input.project;
  const faces = await fonts();
  return Promise.all(
    files.map(async (f) => {
      const bytes = await pdfOf(f.sheets, faces, {
        title: [f.title, job.title, job.address].filter(Boolean).join(', '),
        author: job.preparedBy,
        subject: drawn.verdict.issuable ? 'For permit' : 'PRELIMINARY – NOT FOR PERMIT',
        keywords: f.sheets.map((s) => s.id).join(', '),
        date: new Date(`${job.date}T00:00:00Z`),
        ...(black && { black }),
      });
      return [f.name, bytes] as const;
    }),
  );
}

export async function draw(io: Io, file: string, o: DrawOptions): Promise<number> {
  const size = sizeOf(o.size);
  io.progress(`reading ${file}\n`);
  const d = await load(file);
  for (const i of d.issues) io.err(printIssue(file, i));
  const input = drawingInput(d);
  if (input === undefined) {
    io.err('Nothing was drawn: put the errors above right first.\n');
    return exitOf(d);
  }
  io.progress('drawing\n');
  const drawn = drawJudged(input, size);
  const sheets = chosen(drawn.sheets, o.only);
  const files: (readonly [string, string | Uint8Array])[] = sheets.map((s) => [
    join('sheets', `${s.id}.svg`),
    svgOf(s),
  ]);
  if (o.dxf) {
    files.push(...sheets.map((s) => [join('dxf', `${s.id}.dxf`), dxfOf(s)] as const));
    // The plans together are no sheet of the set: a request for single sheets leaves them as they are.
    const plan = o.only === undefined ? dxfModelPlan(sheets) : undefined;
    if (plan !== undefined) files.push([join('dxf', 'model-plan.dxf'), plan]);
  }
  files.push(
    ...(await pdfs(
      input,
      drawn,
      [
        ...(o.separate ? separateFiles(sheets).map((f) => ({ ...f, name: join('separate', `${f.name}.pdf`) })) : []),
        ...(o.each
          ? sheets.map((s) => ({ name: join('pages', `${s.id}.pdf`), title: `${s.id} ${s.title}`, sheets: [s] }))
          : []),
        { name: 'set.pdf', title: '', sheets },
      ],
      o.black,
    )),
  );
  // Everything is made before the first file is written, so that a fault in one leaves no half set of them.
  const written: string[] = [];
  for (const [name, data] of files) {
    const path = join(o.output, name);
    io.progress(`  ${path}\n`);
    await writeWhole(path, data);
    written.push(path);
  }
  for (const f of drawn.findings) io.err(printFinding(f));
  const { issuable } = drawn.verdict;
  io.out(
    o.json ? `${JSON.stringify({ files: written, issuable, findings: drawn.findings })}\n` : `${written.at(-1)}\n`,
  );
  const code = exitOf(d);
  return code === EXIT.issuable && !issuable ? EXIT.notIssuable : code;
}
