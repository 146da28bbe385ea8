import {
  type CheckResult,
  checkJson,
  type Derived,
  derive,
  type Issue,
  nearestToLimit,
} from '../../../src/checking.js';
import { readText } from '../files.js';
import { EXIT, type Io } from '../io.js';

/** Reads a project from a file or, for `-`, from standard input, and derives everything. */
export async function load(file: string): Promise<Derived> {
  return derive(await readText(file));
}

export const exitOf = (d: Derived): number =>
  d.issues.some((i) => i.severity === 'error') ? EXIT.badInput : d.verdict.issuable ? EXIT.issuable : EXIT.notIssuable;

export function printIssue(file: string, i: Issue): string {
  const place = i.line === undefined ? file : `${file}:${i.line}:${i.column ?? 1}`;
  const found = i.found === undefined ? '' : `\n    found     ${i.found}`;
  const expected = i.expected === undefined ? '' : `\n    expected  ${i.expected}`;
  return `${place} ${i.severity} ${i.code} at ${i.path || '/'}\n    ${i.message}${found}${expected}\n`;
}

const ratio = (r: CheckResult): string => (r.capacity > 0 ? r.ratio.toFixed(2).padStart(6) : '     –');

export function printResult(r: CheckResult): string {
  const status = r.status.replace('-', ' ').padEnd(14);
  return `  ${status}${ratio(r)}  ${r.subject.padEnd(10)} ${r.title}${r.note ? `: ${r.note}` : ''}\n`;
}

export async function check(io: Io, file: string, o: { json?: boolean; all?: boolean }): Promise<number> {
  const d = await load(file);
  if (o.json) {
    io.out(`${JSON.stringify(checkJson(d), null, 2)}\n`);
    return exitOf(d);
  }
  for (const i of d.issues) io.out(printIssue(file, i));
  const shown = d.results.filter((r) => o.all || (r.status !== 'pass' && r.status !== 'not-applicable'));
  for (const r of shown) io.out(printResult(r));
  const count = (s: string) => d.results.filter((r) => r.status === s).length;
  const worst = nearestToLimit(d.results);
  io.out(
    `${d.results.length} results: ${count('pass')} pass, ${count('fail')} fail, ${count('not-evaluated')} not evaluated, ` +
      `${count('outside-scope')} outside scope, ${count('not-applicable')} not applicable\n`,
  );
  if (worst) io.out(`nearest to its limit: ${worst.title} of ${worst.subject}, ${worst.ratio.toFixed(2)}\n`);
  io.out(d.verdict.issuable ? 'ISSUABLE\n' : 'PRELIMINARY – NOT FOR PERMIT\n');
  if (!d.verdict.issuable) for (const r of d.verdict.reasons) io.out(`  – ${r}\n`);
  return exitOf(d);
}
