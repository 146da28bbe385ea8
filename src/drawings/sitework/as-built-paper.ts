import { type AsBuilt, type Rerun, SIGMA_SOURCE } from '../../sitework/asbuilt/index.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';

const STATES: Readonly<Record<string, string>> = { fits: 'fits', adjust: 'ADJUST', stop: 'STOP', unknown: 'not known' };

/** What the checks say with the measured places in. */
export interface SecondRun {
  readonly issuable: boolean;
  readonly reasons: readonly string[];
  readonly changed: readonly Rerun[];
}

function secondRun(r: SecondRun): Block[] {
  const turned = r.changed.filter((c) => c.was.status !== c.now.status);
  return [
    { kind: 'heading', text: 'Every check again, with the measured places' },
    r.issuable
      ? { kind: 'para', text: 'Every check that must pass still passes.' }
      : { kind: 'bullets', items: r.reasons },
    {
      kind: 'table',
      columns: [
        { head: 'Check', max: 2.4 },
        { head: 'Part' },
        { head: 'Was' },
        { head: 'Now' },
        { head: 'Why', grow: true },
      ],
      rows: turned.map((c): TableRow => [c.title, c.subject, words(c.was.status), words(c.now.status), c.note]),
    },
  ];
}

const words = (status: string): string => status.replaceAll('-', ' ');

/** What was measured, which reading is bad, what still fits. */
export function asBuiltPaper(b: AsBuilt, len: (inches: number) => string, second?: SecondRun): Paper {
  const tests: Block[] = (
    [
      ['In plan', b.plan],
      ['In height', b.heights],
    ] as const
  ).flatMap(([name, t]): Block[] =>
    t === undefined
      ? []
      : [
          {
            kind: 'para',
            text:
              t.freedom <= 0
                ? `${name}: no reading checks another; take more.`
                : `${name}: ${t.freedom} more readings than needed; weighted sum of squares ${t.weightedSum.toFixed(1)}, chance explains up to ${t.limit.toFixed(1)} (chi-square, 95 in 100): ${t.passes ? 'the rest agree.' : 'the readings do not agree: sigmas too small, or more than one bad reading.'}`,
          },
        ],
  );
  return {
    title: 'As built',
    sub: 'Least-squares adjustment of the readings in the project’s log; the house wall is the datum.',
    blocks: [
      ...b.bad.map(
        (x): Block => ({
          kind: 'para',
          face: 'bold',
          text: `Bad reading: ${x.words}. The others say ${len(x.expected)} (normalized residual ${x.normalized.toFixed(1)}, limit 3.3).${x.alike.length > 0 ? ` Or ${x.alike.join(', ')}: nothing tells them apart; read again.` : ' Read it again.'}`,
        }),
      ),
      ...tests,
      {
        kind: 'table',
        title: 'What fits',
        columns: [{ head: 'Part' }, { head: '' }, { head: 'Found', max: 3 }, { head: 'What to do', grow: true }],
        rows: b.findings.map((f): TableRow => [f.part, STATES[f.state]!, f.found, f.remedy]),
      },
      ...(second ? secondRun(second).filter((x) => x.kind !== 'table' || x.rows.length > 0) : []),
      { kind: 'gap' },
      {
        kind: 'table',
        title: 'Measured places',
        columns: [
          { head: 'Point', grow: true },
          { head: 'Along', align: 'right' },
          { head: 'Out', align: 'right' },
          { head: 'Level', align: 'right' },
          { head: 'Off along', align: 'right' },
          { head: 'Off out', align: 'right' },
          { head: 'Off level', align: 'right' },
        ],
        rows: b.points.map(
          (p): TableRow => [
            p.name,
            p.plan ? len(p.plan.along) : '–',
            p.plan ? len(p.plan.out) : '–',
            p.height ? len(p.height.level) : '–',
            p.plan ? len(p.plan.along - p.designed.along) : '–',
            p.plan ? len(p.plan.out - p.designed.out) : '–',
            p.height && p.designed.level !== undefined ? len(p.height.level - p.designed.level) : '–',
          ],
        ),
      },
      { kind: 'gap' },
      {
        kind: 'table',
        title: 'Readings',
        columns: [
          { head: 'Reading', grow: true },
          { head: 'With' },
          { head: 'Read', align: 'right' },
          { head: 'Sigma', align: 'right' },
          { head: 'Adjusted less read', align: 'right' },
          { head: 'Normalized', align: 'right' },
          { head: 'Redundancy', align: 'right' },
          { head: '' },
        ],
        rows: b.readings.map(
          (r): TableRow => [
            r.words,
            r.instrument,
            len(r.value),
            `${len(r.sigma)}${r.usualSigma ? ' *' : ''}`,
            r.state === 'unused' ? '–' : len(r.residual),
            r.state === 'unused' ? '–' : r.normalized.toFixed(1),
            r.state === 'unused' ? '–' : r.redundancy.toFixed(2),
            r.state,
          ],
        ),
      },
      {
        kind: 'para',
        text: `* Sigma ${SIGMA_SOURCE}. Redundancy: share of a reading’s own error that its residual shows.`,
      },
    ],
  };
}
