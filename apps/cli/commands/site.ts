/** Stake-out, stage cards and as-built: what is done on the ground. */
import { join } from 'node:path';
import {
  type AsBuiltRun,
  asBuiltRun,
  type Derived,
  formatLength,
  pdfOf,
  type Sheet,
  stagesOf,
  stakeOf,
} from '../../../src/index.js';
import { UserFault, writeWhole } from '../files.js';
import { EXIT, type Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';
import { fonts } from './fonts.js';

const DATE = /^\d{4}-\d{2}-\d{2}$/;

async function pdf(d: Derived, sheets: readonly Sheet[], what: string): Promise<Uint8Array> {
  const { job } = d.project!;
  return pdfOf(sheets, await fonts(), {
    title: `${what}: ${job.title}, ${job.address}`,
    author: job.preparedBy,
    date: new Date(`${job.date}T00:00:00Z`),
  });
}

/** Made before the first is written, so that a fault leaves no half set. */
async function writeAll(
  io: Io,
  dir: string,
  files: readonly (readonly [string, string | Uint8Array])[],
  json?: boolean,
): Promise<void> {
  const paths = files.map(([name]) => join(dir, name));
  for (const [i, [, data]] of files.entries()) await writeWhole(paths[i]!, data);
  io.out(json ? `${JSON.stringify({ files: paths })}\n` : paths.map((p) => `${p}\n`).join(''));
}

const told = (io: Io, file: string, d: Derived): void => {
  for (const i of d.issues) io.err(printIssue(file, i));
};

const jobOf = (d: Derived) => {
  const { title, address, date } = d.project!.job;
  return { title, address, date, issuable: d.verdict.issuable, lengths: 'inches' };
};

export async function stake(io: Io, file: string, o: { output: string; json?: boolean }): Promise<number> {
  const d = await load(file);
  told(io, file, d);
  const s = stakeOf(d);
  if (!s) {
    io.err('Nothing was laid out: put the errors above right first.\n');
    return exitOf(d);
  }
  await writeAll(
    io,
    o.output,
    [
      ['stake.csv', s.csv],
      ['stake.json', `${JSON.stringify({ job: jobOf(d), layout: s.layout }, null, 2)}\n`],
      ['stake.pdf', await pdf(d, s.sheets, 'Stake-out')],
    ],
    o.json,
  );
  return exitOf(d);
}

export async function stages(
  io: Io,
  file: string,
  o: { output: string; today?: string; approved?: string; json?: boolean },
): Promise<number> {
  if (o.today !== undefined && !DATE.test(o.today))
    throw new UserFault(`"${o.today}" is no day; write it as 2026-05-01`);
  const d = await load(file);
  told(io, file, d);
  const approved = o.approved === undefined ? undefined : (await load(o.approved)).project;
  if (o.approved !== undefined && !approved)
    throw new UserFault(`${o.approved}: this project cannot be read, so nothing can be compared with it`);
  const today = o.today ?? new Date().toISOString().slice(0, 10);
  const s = stagesOf(d, { today, ...(approved ? { approved } : {}) });
  if (!s) {
    io.err('No card was written: put the errors above right first.\n');
    return exitOf(d);
  }
  const { cards, sequence, approvals, changes } = s;
  await writeAll(
    io,
    o.output,
    [
      ['stages.csv', s.csv],
      ['stages.json', `${JSON.stringify({ job: jobOf(d), today, approvals, changes, sequence, cards }, null, 2)}\n`],
      ['stages.pdf', await pdf(d, s.sheets, 'Stages')],
    ],
    o.json,
  );
  return exitOf(d);
}

const WORDS = { fits: 'fits', adjust: 'ADJUST', stop: 'STOP', unknown: 'not known' } as const;

function asBuiltText(d: Derived, r: AsBuiltRun): string {
  const len = (v: number): string => formatLength(v, { units: d.project!.job.units });
  const out: string[] = [];
  for (const b of r.built.bad) {
    out.push(
      `BAD READING  ${b.words}: the others say ${len(b.expected)} (normalized residual ${b.normalized.toFixed(1)}, limit 3.3), at ${b.path}`,
    );
    if (b.alike.length > 0) out.push(`             or ${b.alike.join(', ')}: nothing tells them apart; read again`);
  }
  for (const [name, t] of [
    ['plan', r.built.plan],
    ['height', r.built.heights],
  ] as const)
    if (t)
      out.push(
        t.freedom <= 0
          ? `${name}: no reading checks another; take more`
          : `${name}: ${t.freedom} spare readings, weighted sum ${t.weightedSum.toFixed(1)} of at most ${t.limit.toFixed(1)}: ${t.passes ? 'the rest agree' : 'THE READINGS DO NOT AGREE'}`,
      );
  for (const f of r.built.findings) {
    out.push(`  ${WORDS[f.state].padEnd(10)} ${f.part.padEnd(16)} ${f.found}`);
    if (f.remedy !== '') out.push(`${' '.repeat(30)}${f.remedy}`);
  }
  out.push(
    r.measured.verdict.issuable
      ? 'As measured every check still passes.'
      : `As measured the set is not issuable:\n${r.measured.verdict.reasons.map((x) => `  – ${x}`).join('\n')}`,
  );
  const worse = r.changed.filter((c) => c.was.status !== c.now.status);
  for (const c of worse)
    out.push(`  ${c.title} of ${c.subject}: ${c.was.status}, now ${c.now.status}${c.note ? `: ${c.note}` : ''}`);
  return `${out.join('\n')}\n`;
}

/** 0 when all that was measured fits or can be adjusted and every check passes with it; 1 when something stops the work. */
export async function asBuilt(io: Io, file: string, o: { json?: boolean }): Promise<number> {
  const d = await load(file);
  const r = asBuiltRun(d);
  const errors = [...d.issues, ...(r?.issues ?? []), ...(r?.measured.issues ?? [])].filter(
    (i) => i.severity === 'error',
  );
  for (const i of errors) io.err(printIssue(file, i));
  if (!r) {
    if (d.structure) io.err('Nothing was measured: the project file has no log.asBuilt.\n');
    return EXIT.badInput;
  }
  const { built, changed, measured } = r;
  if (o.json)
    io.out(
      `${JSON.stringify({ ...built, asMeasured: { issuable: measured.verdict.issuable, reasons: measured.verdict.reasons, changed } }, null, 2)}\n`,
    );
  else io.out(asBuiltText(d, r));
  if (errors.length > 0) return EXIT.badInput;
  const stopped =
    built.findings.some((f) => f.state === 'stop') || [built.plan, built.heights].some((t) => t && !t.passes);
  return stopped || !measured.verdict.issuable ? EXIT.notIssuable : EXIT.issuable;
}
