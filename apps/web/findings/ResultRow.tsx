/** One result of one check: state, numbers, and on asking the steps behind it and what would cure it. */
import { useState } from 'react';
import type { CheckResult } from '../../../src/index.js';
import { Bar } from '../path/LoadPath.js';
import { openField, pick, useDesk } from '../store/desk.js';
import { Answer } from './Answer.js';
import { Remedies } from './Remedies.js';
import { Trace } from './Trace.js';

export const STATE: Readonly<Record<CheckResult['status'], readonly [shape: string, word: string]>> = {
  pass: ['●', 'passes'],
  fail: ['✕', 'fails'],
  'not-applicable': ['–', 'does not apply'],
  'not-evaluated': ['○', 'open'],
  'outside-scope': ['△', 'needs a professional'],
};

export function ResultRow({ result: r, named = false }: { readonly result: CheckResult; readonly named?: boolean }) {
  const opened = useDesk((d) => d.result === r.id);
  const [own, setOwn] = useState(false);
  const open = own || opened;
  const [shape, word] = STATE[r.status];
  return (
    <li className={`result ${r.status}`}>
      <button
        type="button"
        className="result-head"
        aria-expanded={open}
        onClick={() => {
          setOwn(!open);
          if (opened) useDesk.setState({ result: undefined });
          pick(r.subject);
        }}
      >
        <span className="shape" aria-hidden="true">
          {shape}
        </span>
        <span className="what">
          {named && <b>{r.subject}</b>} {r.title}
        </span>
        <span className="state">{word}</span>
        {r.capacity > 0 && <Bar ratio={r.ratio} />}
      </button>
      {r.note && (r.status !== 'pass' || open) && <p className="note">{r.note}</p>}
      {open && (
        <div className="result-body">
          {r.status === 'fail' && <Remedies result={r} />}
          {r.status === 'not-evaluated' && <Answer result={r} />}
          <Trace result={r} />
          {r.path && (
            <button type="button" className="plain" onClick={() => openField(r.path)}>
              Where it stands in your file
            </button>
          )}
        </div>
      )}
    </li>
  );
}
