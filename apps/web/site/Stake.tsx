import { useState } from 'react';
import { formatLength } from '../../../src/index.js';
import type { ReadingRow, SiteView } from '../core/work-api.js';
import { Cautions } from './Cautions.js';
import { NoteField } from './NoteField.js';
import { StakePlan } from './StakePlan.js';
import { note, today } from './useWork.js';

const TAPES = {
  'steel-tape': 'long steel tape',
  tape: 'pocket tape',
  'laser-distance': 'laser distance meter',
} as const;
const LEVELS = {
  'water-level': 'water level',
  'optical-level': 'optical level and rod',
  'line-laser': 'line laser and rod',
} as const;

const KINDS: readonly { readonly kind: ReadingRow['kind']; readonly title: string; readonly help: string }[] = [
  {
    kind: 'along',
    title: 'Running dimensions along the house wall',
    help: 'Tape left at home base, read at each stake.',
  },
  { kind: 'out', title: 'Running dimensions out from the wall', help: 'Square to the wall.' },
  { kind: 'distance', title: 'Sides and diagonals', help: 'They find out which of the others is wrong.' },
  {
    kind: 'level',
    title: 'Levels of the pier tops',
    help: 'Above the benchmark; a lower point is written with a minus.',
  },
];

const STATES: Readonly<Record<string, string>> = {
  good: '✓ agrees with the others',
  doubtful: '? as likely wrong as the one marked: read it again',
  unchecked: 'nothing checks it yet: take the others too',
  unused: 'not used',
  bad: '✗ this reading is wrong',
};

/** Where the holes go, what was measured there, and what that means for the next parts. */
export function Stake({ view }: { readonly view: SiteView }) {
  const [tape, setTape] = useState<string>('steel-tape');
  const [level, setLevel] = useState<string>('water-level');
  const { layout, units } = view;
  const len = (v: number): string => formatLength(v, { units });
  return (
    <>
      <p>
        Everything runs from <b>home base</b>: {layout.homeWords}. Benchmark: {layout.benchmark.words}.
      </p>
      <StakePlan view={view} />
      <Fits view={view} />
      <Cautions all={layout.cautions} />
      {layout.triangle && (
        <p className="asked">
          Right angle at home base: {len(layout.triangle.along)} along, {len(layout.triangle.out)} out,{' '}
          <b>{len(layout.triangle.across)}</b> across.
        </p>
      )}
      {layout.rectangles.map((r) => (
        <p key={r.first.from + r.first.to} className="asked">
          Diagonals {r.first.from}–{r.first.to} and {r.second.from}–{r.second.to}: both <b>{len(r.first.length)}</b>
          {len(r.first.length) === len(r.second.length) ? '' : ` and ${len(r.second.length)}`}, apart by no more than{' '}
          {len(r.mostDifference)}.
        </p>
      ))}
      <div className="pair tools-used">
        <Choose label="Taped with" value={tape} all={TAPES} set={setTape} />
        <Choose label="Leveled with" value={level} all={LEVELS} set={setLevel} />
      </div>
      {KINDS.map(({ kind, title, help }) => {
        const rows = view.readings.filter((r) => r.kind === kind);
        if (rows.length === 0) return null;
        return (
          <section key={kind} aria-label={title}>
            <h4>{title}</h4>
            <p className="help">{help}</p>
            <ul className="readings">
              {rows.map((r) => (
                <Row key={`${r.from}${r.to}${r.nth}`} row={r} len={len} instrument={kind === 'level' ? level : tape} />
              ))}
            </ul>
          </section>
        );
      })}
      <Cuts view={view} len={len} />
    </>
  );
}

function Choose(p: { label: string; value: string; all: Readonly<Record<string, string>>; set: (v: string) => void }) {
  return (
    <label>
      {p.label}
      <select value={p.value} onChange={(e) => p.set(e.target.value)}>
        {Object.entries(p.all).map(([id, words]) => (
          <option key={id} value={id}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

function Row({ row, len, instrument }: { row: ReadingRow; len: (v: number) => string; instrument: string }) {
  const { read } = row;
  const again = row.nth > 0 ? ', read again' : '';
  const off = read && read.value - row.designed;
  return (
    <li className={`reading ${read?.state ?? 'open'}`} data-reading={row.words}>
      <span className="what">
        {row.words}
        {again}
      </span>
      <b className="should">{len(row.designed)}</b>
      <NoteField
        quiet
        label={`Measured: ${row.words}${again}, designed ${len(row.designed)}`}
        placeholder="measured"
        value={read ? len(read.value) : ''}
        onWrite={(typed) =>
          note(`${row.words} measured`, {
            what: 'reading',
            kind: row.kind,
            from: row.from,
            to: row.to,
            nth: row.nth,
            typed,
            today: today(),
            instrument,
          })
        }
      />
      {read && (
        <span className="verdict-line">
          {STATES[read.state]}
          {read.expected !== undefined && `; the others say ${len(read.expected)}`}
          {off !== undefined && Math.abs(off) >= 1 / 32 && (
            <span className="quiet">
              {' '}
              ({len(Math.abs(off))} {off > 0 ? 'more' : 'less'} than drawn)
            </span>
          )}
        </span>
      )}
    </li>
  );
}

const FIT = { fits: '✓ fits', adjust: '! adjust', stop: '✗ stop', unknown: '? not known yet' } as const;

function Fits({ view }: { readonly view: SiteView }) {
  const { built, second, problems, units } = view;
  if (!built)
    return <p className="quiet">Nothing is measured yet. Type what you read below; what fits is said here at once.</p>;
  const findings = [...built.findings].sort((a, b) => RANK.indexOf(a.state) - RANK.indexOf(b.state));
  const telling = findings.filter((f) => f.state !== 'unknown');
  return (
    <section className="fits" aria-label="What fits" aria-live="polite">
      {problems.map((p) => (
        <p key={p} className="fault">
          {p}
        </p>
      ))}
      {built.bad.map((b) => (
        <p key={b.path} className="caution bad" data-testid="bad-reading">
          <b>Bad reading: {b.words}.</b> The others say {formatLength(b.expected, { units })}.
          {b.alike.length > 0 && ` It may as well be ${b.alike.join(', ')}: read both again.`} It is left out below.
        </p>
      ))}
      {[built.plan, built.heights].some((t) => t && !t.passes) && (
        <p className="fault">The readings do not agree with each other. Measure again before anything is dug or cut.</p>
      )}
      <ul className="results">
        {telling.map((f) => (
          <li key={f.rule + f.part} className={`fit ${f.state}`}>
            <b>{FIT[f.state]}</b> <b>{f.part}</b> {f.found}
            {f.remedy && <p>{f.remedy}</p>}
            <span className="quiet">{f.source}</span>
          </li>
        ))}
      </ul>
      {telling.length < findings.length && (
        <p className="quiet">
          Not known until more is measured:{' '}
          {findings
            .filter((f) => f.state === 'unknown')
            .map((f) => f.part)
            .join(', ')}
          .
        </p>
      )}
      {second && (
        <p className={second.issuable ? 'asked' : 'caution'}>
          {second.issuable ? 'As measured, every check still passes.' : 'As measured, the set is not for permit: '}
          {!second.issuable && second.reasons.join(' ')}
          {second.worse.length > 0 && ` Changed: ${second.worse.join('; ')}.`}
        </p>
      )}
    </section>
  );
}
const RANK = ['stop', 'adjust', 'fits', 'unknown'];

function Cuts({ view, len }: { view: SiteView; len: (v: number) => string }) {
  const now = new Map(view.built?.posts.map((p) => [p.post, p]));
  if (view.layout.posts.length === 0) return null;
  return (
    <section aria-label="Post lengths">
      <h4>Posts, each its own length</h4>
      <p className="help">Cut after the pier tops are measured.</p>
      <ul className="readings">
        {view.layout.posts.map((p) => {
          const n = now.get(p.post);
          return (
            <li key={p.post} className="reading">
              <span className="what">
                {p.post} on {p.footing}, {p.section}
              </span>
              <b className="should">{len(n?.now ?? p.length)}</b>
              <span className="quiet">{n?.now === undefined ? 'as drawn' : `as measured; drawn ${len(p.length)}`}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
