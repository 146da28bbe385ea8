import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  drawingInput,
  drawSet,
  dxfModelPlan,
  dxfOf,
  FACES,
  type FaceName,
  pdfOf,
  SHEET_SIZE_NAMES,
  type SheetSizeName,
  svgOf,
} from '../../../src/index.js';
import { packageRoot, UserFault, writeWhole } from '../files.js';
import type { Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';

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

export async function draw(
  io: Io,
  file: string,
  o: { output: string; only?: string; size?: string; dxf?: boolean; json?: boolean },
): Promise<number> {
  const size = o.size as SheetSizeName | undefined;
  if (size !== undefined && !SHEET_SIZE_NAMES.includes(size)) {
    throw new UserFault(`"${size}" is not a sheet size; choose one of ${SHEET_SIZE_NAMES.join(', ')}`);
  }
  io.progress(`reading ${file}\n`);
  const d = await load(file);
  for (const i of d.issues) io.err(printIssue(file, i));
  const input = drawingInput(d);
  if (input === undefined) {
    io.err('Nothing was drawn: put the errors above right first.\n');
    return exitOf(d);
  }
  io.progress('drawing\n');
  const all = drawSet(input, size);
  const wanted = o.only?.split(',').map((s) => s.trim().toUpperCase());
  const missing = wanted?.filter((id) => !all.some((s) => s.id === id)) ?? [];
  if (missing.length > 0) {
    throw new UserFault(`no sheet ${missing.join(', ')} in this set; it has ${all.map((s) => s.id).join(', ')}`);
  }
  const sheets = wanted ? all.filter((s) => wanted.includes(s.id)) : all;
  const written: string[] = [];
  const put = async (name: string, data: string | Uint8Array) => {
    const path = join(o.output, name);
    await writeWhole(path, data);
    written.push(path);
  };
  for (const s of sheets) {
    io.progress(`  ${s.id} ${s.title}\n`);
    await put(join('sheets', `${s.id}.svg`), svgOf(s));
  }
  if (o.dxf) {
    io.progress('  drawing exchange files\n');
    // Made before the first is written, so that a fault in one leaves no half set of them.
    const files = sheets.map((s) => [`${s.id}.dxf`, dxfOf(s)] as const);
    // The plans together are no sheet of the set: a request for single sheets leaves them as they are.
    const plan = wanted ? undefined : dxfModelPlan(sheets);
    if (plan !== undefined) files.push(['model-plan.dxf', plan]);
    for (const [name, text] of files) await put(join('dxf', name), text);
  }
  const { job } = input.project;
  await put(
    'set.pdf',
    await pdfOf(sheets, await fonts(), {
      title: `${job.title}, ${job.address}`,
      author: job.preparedBy,
      date: new Date(`${job.date}T00:00:00Z`),
    }),
  );
  io.out(o.json ? `${JSON.stringify({ files: written, issuable: d.verdict.issuable })}\n` : `${written.at(-1)}\n`);
  return exitOf(d);
}
