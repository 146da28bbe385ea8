/** Stake-out, stage cards and what was measured, for the Site view. */
import {
  type AsBuiltRun,
  asBuiltRun,
  type Derived,
  type Layout,
  type Project,
  type ReadReading,
  stagesOf,
  stakeOf,
} from '../../../src/index.js';
import type { ReadingRow, SiteView } from './work-api.js';

type Reading = NonNullable<Project['log']['asBuilt']>['readings'][number];

const nameOf = (layout: Layout, role: 'home' | 'benchmark'): string | undefined =>
  layout.points.find((p) => p.role === role)?.name;

const WORDS: Readonly<Record<ReadingRow['kind'], (from: string | undefined, to: string) => string>> = {
  along: (from, to) => `${to} along the wall${from ? ` from ${from}` : ''}`,
  out: (from, to) => `${to} out from ${from ?? 'the wall'}`,
  distance: (from, to) => `${from ?? 'home base'} to ${to}`,
  level: (from, to) => `${to} above ${from ?? 'the benchmark'}`,
};

/** Every length the stake-out asks to tape, with the reading of the log that answers it; then readings beyond those. */
function rowsOf(layout: Layout, logged: readonly Reading[], run: AsBuiltRun | undefined): ReadingRow[] {
  const home = nameOf(layout, 'home');
  const benchmark = nameOf(layout, 'benchmark');
  const usual = (kind: ReadingRow['kind']): string | undefined => (kind === 'level' ? benchmark : home);
  const bare = (kind: ReadingRow['kind'], from: string | undefined) => (from === usual(kind) ? undefined : from);
  const judged = new Map(run?.built.readings.map((r) => [r.path, r]));
  const expected = new Map(run?.built.bad.map((b) => [b.path, b.expected]));
  const read = (r: Reading | undefined): (ReadReading & { expected?: number | undefined }) | undefined => {
    const j = r && judged.get(r.path);
    return j && { ...j, expected: expected.get(j.path) };
  };
  const used = new Set<Reading>();
  const counted = new Map<string, number>();
  const rows = layout.readings.map((c): ReadingRow => {
    const from = bare(c.kind, c.from);
    const key = `${c.kind}|${from}|${c.to}`;
    const nth = counted.get(key) ?? 0;
    counted.set(key, nth + 1);
    const r = logged.filter((x) => x.kind === c.kind && bare(x.kind, x.from) === from && x.to === c.to)[nth];
    if (r) used.add(r);
    return { kind: c.kind, from, to: c.to, nth, words: WORDS[c.kind](from, c.to), designed: c.value, read: read(r) };
  });
  const more = logged.flatMap((r): ReadingRow[] => {
    const j = read(r);
    if (used.has(r) || !j) return [];
    const alike = logged.filter((x) => x.kind === r.kind && x.from === r.from && x.to === r.to);
    return [
      {
        kind: r.kind,
        from: r.from,
        to: r.to,
        nth: alike.indexOf(r),
        words: WORDS[r.kind](r.from, r.to),
        designed: j.designed,
        read: j,
      },
    ];
  });
  return [...rows, ...more];
}

export function siteView(d: Derived, today: string): SiteView | undefined {
  const stages = stagesOf(d, { today });
  const stake = stakeOf(d);
  if (!stages || !stake || !d.project) return undefined;
  const run = asBuiltRun(d);
  const worse = (run?.changed ?? []).filter((c) => c.was.status !== c.now.status);
  const built = run && { ...run.built, readings: undefined };
  return {
    units: d.project.job.units,
    cards: stages.cards,
    sequence: stages.sequence,
    approvals: stages.approvals,
    layout: stake.layout,
    readings: rowsOf(stake.layout, d.project.log.asBuilt?.readings ?? [], run),
    built,
    second: run && {
      issuable: run.measured.verdict.issuable,
      reasons: run.measured.verdict.reasons,
      worse: worse.map((c) => `${c.title} of ${c.subject}: ${c.was.status}, now ${c.now.status}`),
    },
    problems: (run?.issues ?? []).map((i) => `${i.message}${i.expected ? ` Right would be: ${i.expected}` : ''}`),
  };
}
