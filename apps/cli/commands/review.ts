import {
  askedText,
  completeness,
  drawingInput,
  drawJudged,
  foundText,
  NO_SUBMITTAL,
  unknownRows,
} from '../../../src/index.js';
import type { Io } from '../io.js';
import { EXIT } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { printFinding } from './draw.js';

/** What the office's checklist asks, row by row, against the set as drawn; nothing is written. */
export async function review(io: Io, file: string, o: { json?: boolean }): Promise<number> {
  const d = await load(file);
  const input = drawingInput(d);
  if (input === undefined) {
    for (const i of d.issues) io.err(printIssue(file, i));
    io.err('Nothing was reviewed: put the errors above right first.\n');
    return exitOf(d);
  }
  const drawn = drawJudged(input);
  const { project, structure, results } = input;
  const { sheets } = drawn;
  const rows = completeness({ sheets, project, structure, results, findings: drawn.findings });
  const unknown = unknownRows((project.submittal ?? NO_SUBMITTAL).officeChecklist.remove);
  for (const name of unknown) io.err(`/submittal/officeChecklist/remove: no row is named "${name}"\n`);
  if (o.json) {
    io.out(
      `${JSON.stringify({ rows, findings: drawn.findings, issuable: drawn.verdict.issuable, unknown }, null, 2)}\n`,
    );
  } else {
    for (const group of new Set(rows.map((r) => r.group))) {
      io.out(`${group}\n`);
      for (const r of rows.filter((x) => x.group === group)) {
        const path = r.found.state !== 'shown' && r.found.path ? ` (${r.found.path})` : '';
        io.out(
          `  ${r.name.padEnd(20)} ${askedText(r).padEnd(11)} ${r.item}\n${' '.repeat(35)}${foundText(r, sheets.length)}${path}\n`,
        );
      }
    }
    const count = (state: string) => rows.filter((r) => r.found.state === state).length;
    io.out(
      `${rows.length} rows: ${count('shown')} shown, ${count('beside')} beside the sheets, ${count('not-needed')} not needed, ` +
        `${count('ask')} to ask the office, ${count('missing')} not shown\n`,
    );
    for (const f of drawn.findings) io.out(printFinding(f));
  }
  if (unknown.length > 0) return EXIT.badInput;
  if (exitOf(d) !== EXIT.issuable) return exitOf(d);
  return drawn.verdict.issuable && rows.every((r) => r.found.state !== 'missing') ? EXIT.issuable : EXIT.notIssuable;
}
