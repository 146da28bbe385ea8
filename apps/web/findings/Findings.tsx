/** What stands between this set and the office's stamp, gravest first. */
import type { CheckResult } from '../../../src/index.js';
import { openField } from '../store/desk.js';
import { useProject } from '../store/project.js';
import { ResultRow } from './ResultRow.js';

/** A pass within a tenth of its limit is worth knowing before anything is changed. */
const NEAR = 0.9;

interface GroupOf {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly has: (r: CheckResult) => boolean;
  readonly open: boolean;
}

const GROUPS: readonly GroupOf[] = [
  {
    id: 'fail',
    title: 'Fails',
    about: 'Each opens its steps and what would cure it.',
    has: (r) => r.status === 'fail',
    open: true,
  },
  {
    id: 'professional',
    title: 'Needs a licensed professional',
    about: 'Outside what this program works out. It gives no number here, on purpose.',
    has: (r) => r.status === 'outside-scope',
    open: true,
  },
  {
    id: 'open',
    title: 'Open',
    about: 'Something is not said yet. Answer it, and the check follows.',
    has: (r) => r.status === 'not-evaluated' && !r.id.startsWith('office-answers:'),
    open: true,
  },
  {
    id: 'near',
    title: 'Near its limit',
    about: 'Passes with less than a tenth to spare.',
    has: (r) => r.status === 'pass' && r.ratio > NEAR && !r.prescriptive,
    open: false,
  },
];

export function Findings() {
  const summary = useProject((p) => p.summary);
  if (!summary) return <p className="waiting">Checking…</p>;
  const { results, issues, questions, assumptions, verdict } = summary;
  const errors = issues.filter((i) => i.severity === 'error');
  const warnings = issues.filter((i) => i.severity === 'warning');
  return (
    <>
      <p className={verdict.issuable ? 'verdict good' : 'verdict'}>
        {verdict.issuable
          ? 'The set may be issued: every mandatory check was answered and passes.'
          : 'The set is preliminary. Every sheet says so until the points below are settled.'}
      </p>
      {errors.length > 0 && <Issues title="To put right" list={errors} />}
      {GROUPS.map((g) => {
        const list = results.filter(g.has).sort((a, b) => b.ratio - a.ratio);
        if (list.length === 0) return null;
        return (
          <details key={g.id} open={g.open} className={`findings ${g.id}`}>
            <summary>
              {g.title} <b>{list.length}</b>
            </summary>
            <p className="quiet">{g.about}</p>
            <ul className="results">
              {list.map((r) => (
                <ResultRow key={r.id} result={r} named />
              ))}
            </ul>
          </details>
        );
      })}
      {questions.length > 0 && (
        <details className="findings questions">
          <summary>
            Questions for the office <b>{questions.length}</b>
          </summary>
          <ul>
            {questions.map((q) => (
              <li key={q.path}>
                <button type="button" className="plain left" onClick={() => openField(q.path)}>
                  {q.text}
                </button>
                <p className="quiet">Meanwhile: {q.meanwhile}</p>
              </li>
            ))}
          </ul>
        </details>
      )}
      {assumptions.length > 0 && (
        <details className="findings">
          <summary>
            Assumed <b>{assumptions.length}</b>
          </summary>
          <ul>
            {assumptions.map((a) => (
              <li key={a.path + a.text}>
                <button type="button" className="plain left" onClick={() => openField(a.path)}>
                  {a.text}
                </button>
                <p className="quiet">{a.why}</p>
              </li>
            ))}
          </ul>
        </details>
      )}
      {warnings.length > 0 && <Issues title="Worth a look" list={warnings} />}
      <details className="findings">
        <summary>
          Passes <b>{results.filter((r) => r.status === 'pass').length}</b>
        </summary>
        <ul className="results">
          {results
            .filter((r) => r.status === 'pass')
            .sort((a, b) => b.ratio - a.ratio)
            .map((r) => (
              <ResultRow key={r.id} result={r} named />
            ))}
        </ul>
      </details>
    </>
  );
}

function Issues({
  title,
  list,
}: {
  title: string;
  list: readonly { code: string; path: string; message: string; expected?: string; line?: number }[];
}) {
  return (
    <details open className="findings">
      <summary>
        {title} <b>{list.length}</b>
      </summary>
      <ul>
        {list.map((i) => (
          <li key={i.code + i.path}>
            <button type="button" className="plain left" onClick={() => openField(i.path)}>
              {i.message}
            </button>
            <p className="quiet">
              {i.line === undefined ? '' : `Line ${i.line} · `}
              {i.code}
              {i.expected ? ` · write ${i.expected}` : ''}
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}
