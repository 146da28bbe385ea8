import { useEffect, useState } from 'react';
import type { StageCard } from '../../../src/index.js';
import { Cautions } from './Cautions.js';
import { NoteField } from './NoteField.js';
import { filledIn, TickRow } from './TickRow.js';
import { note, today } from './useWork.js';

export const RESULTS = {
  open: 'Not called yet',
  pending: 'Begun',
  passed: 'Passed',
  partial: 'Passed in part',
  failed: 'Failed',
} as const;
const SAID = ['pending', 'passed', 'partial', 'failed'] as const;

export const ticked = (c: StageCard): number => c.items.filter((i) => filledIn(c, i.id)?.done).length;

/** One stage: what must be right before the next part covers it, in this project's own numbers. */
export function Card({ card }: { readonly card: StageCard }) {
  const last = card.log.at(-1);
  const said = last?.result;
  // Shown at once; the log follows when it is written.
  const [result, setResult] = useState(said);
  useEffect(() => setResult(said), [said]);
  const visit = (set: { date?: string; result?: string; by?: string; note?: string }, words: string) =>
    note(`${card.title}: ${words}`, { what: 'visit', stage: card.id, today: today(), set });
  return (
    <article className={`card ${card.result}`} aria-label={card.title} data-stage={card.id}>
      <p className="asked">
        {card.looks === 'inspector' ? 'An inspector looks at this; offices differ.' : 'You look at this yourself.'}{' '}
        {card.when}
      </p>
      <Cautions all={card.cautions} />
      <ul className="ticks">
        {card.items.map((i) => (
          <TickRow key={i.id} card={card} item={i} />
        ))}
      </ul>
      <h4>What the inspector said</h4>
      <div className="said">
        <fieldset>
          <legend className="sr">Result of {card.title}</legend>
          {SAID.map((r) => (
            <label key={r} className="choice">
              <input
                type="radio"
                name={`result-${card.id}`}
                checked={result === r}
                onChange={() => {
                  setResult(r);
                  void visit({ result: r }, RESULTS[r].toLowerCase()).then((ok) => ok || setResult(said));
                }}
              />
              {RESULTS[r]}
            </label>
          ))}
        </fieldset>
        <div className="pair">
          <NoteField
            label="Date"
            type="date"
            value={last?.date ?? ''}
            onWrite={(date) => visit({ date: date || today() }, 'date')}
          />
          <NoteField label="Inspector" value={last?.by ?? ''} onWrite={(by) => visit({ by }, 'inspector')} />
        </div>
        <NoteField
          label="Corrections asked for, remarks"
          value={last?.note ?? ''}
          onWrite={(text) => visit({ note: text }, 'remark')}
        />
        {card.log.length > 1 && (
          <ul className="quiet">
            {card.log.slice(0, -1).map((v) => (
              <li key={v.path}>
                {v.date} {RESULTS[v.result]}
                {v.note && `: ${v.note}`}
              </li>
            ))}
          </ul>
        )}
      </div>
      <Numbers card={card} />
    </article>
  );
}

function Numbers({ card }: { readonly card: StageCard }) {
  return (
    <>
      {card.tables
        .filter((t) => t.rows.length > 0)
        .map((t) => (
          <details key={t.title} className="numbers">
            <summary>{t.title}</summary>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
            <section className="scroll" tabIndex={0} aria-label={t.title}>
              <table>
                <thead>
                  <tr>
                    {t.heads.map((h) => (
                      <th key={h} scope="col">
                        {h}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {t.rows.map((r) => (
                    <tr key={r.join('|')}>
                      {r.map((c, i) =>
                        i === 0 ? (
                          <th key={t.heads[i]} scope="row">
                            {c}
                          </th>
                        ) : (
                          <td key={t.heads[i]}>{c}</td>
                        ),
                      )}
                    </tr>
                  ))}
                </tbody>
              </table>
            </section>
          </details>
        ))}
      <details className="numbers">
        <summary>At hand, and what is usually failed</summary>
        <h4>At hand</h4>
        <ul className="plain-list">
          {card.atHand.map((a) => (
            <li key={a}>{a}</li>
          ))}
        </ul>
        <h4>Usually failed</h4>
        <ul className="plain-list">
          {card.failures.map((f) => (
            <li key={f.text}>
              {f.text} <span className="quiet">({f.source})</span>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
