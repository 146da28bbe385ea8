import { join } from 'node:path';
import { drawAssociation, drawingInput } from '../../../src/index.js';
import { writeWhole } from '../files.js';
import type { Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { pdfs, sizeOf } from './draw.js';

/** The packet for the homeowners' association as one PDF file. */
export async function association(
  io: Io,
  file: string,
  o: { output: string; size?: string; json?: boolean },
): Promise<number> {
  const size = sizeOf(o.size);
  const d = await load(file);
  for (const i of d.issues) io.err(printIssue(file, i));
  const input = drawingInput(d);
  if (input === undefined) {
    io.err('Nothing was drawn: put the errors above right first.\n');
    return exitOf(d);
  }
  const sheets = drawAssociation(input, size);
  const name = 'association.pdf';
  const [made] = await pdfs(input, { verdict: d.verdict }, [{ name, title: 'Association packet', sheets }], false);
  const path = join(o.output, name);
  await writeWhole(path, made![1]);
  io.out(o.json ? `${JSON.stringify({ files: [path], issuable: d.verdict.issuable })}\n` : `${path}\n`);
  return exitOf(d);
}
