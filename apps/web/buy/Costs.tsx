import { useEffect, useState } from 'react';
import type { Compared } from '../../../src/index.js';
import { thorough } from '../core/client.js';
import type { BuyView } from '../core/work-api.js';
import { workOptions } from '../site/useWork.js';
import { present } from '../store/history.js';
import { say, textNow, useProject } from '../store/project.js';
import { money } from './Lines.js';

/** What it costs by phase and by who does it; what has no price is said, never taken for nothing. */
export function Costs({ view }: { readonly view: BuyView }) {
  const { totals } = view;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="scroll" tabIndex={0} aria-label="Cost by phase">
        <table>
          <thead>
            <tr>
              {['Phase', 'Material', 'Work'].map((h) => (
                <th key={h} scope="col">
                  {h}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {view.phases.map(({ phase, name, cost }) => (
              <tr key={phase}>
                <th scope="row">{name}</th>
                <td>
                  {money(cost?.material ?? 0)}
                  {cost && cost.unpriced > 0 && <span className="fault"> + {cost.unpriced} open</span>}
                </td>
                <td>
                  {cost?.by === 'own' ? (
                    'own'
                  ) : cost?.work === undefined ? (
                    <span className="fault">ask</span>
                  ) : (
                    money(cost.work)
                  )}
                </td>
              </tr>
            ))}
            <tr className="sum">
              <th scope="row">Sum</th>
              <td>{money(totals.material)}</td>
              <td>{money(totals.work)}</td>
            </tr>
          </tbody>
        </table>
      </section>
      {(totals.unpriced > 0 || totals.unknownWork.length > 0) && (
        <p className="asked">
          The sum is too low: {totals.unpriced} lines have no price
          {totals.unknownWork.length > 0 && `, and the work is not priced for ${totals.unknownWork.join(', ')}`}.
        </p>
      )}
    </>
  );
}

/** Other ways to build it, each worked out by the whole flow, priced and checked. */
export function Compare({ invented }: { readonly invented: boolean }) {
  const [rows, setRows] = useState<readonly Compared[]>();
  const [busy, setBusy] = useState(false);
  const text = useProject((p) => (p.history ? present(p.history).text : ''));
  // What was compared is of another project as soon as this one changes.
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are the reason, not the means
  useEffect(() => setRows(undefined), [text, invented]);
  const run = async (): Promise<void> => {
    setBusy(true);
    try {
      setRows(await thorough().call('compared', textNow(), await workOptions(invented)));
    } catch (e) {
      say(`That could not be compared: ${e instanceof Error ? e.message.split('\n')[0] : String(e)}`, 'problem');
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <button type="button" disabled={busy} onClick={() => void run()} data-testid="compare">
        {busy ? 'Building each of them…' : 'Compare other ways to build it'}
      </button>
      {rows && (
        <ul className="compared">
          {rows.map((r) => (
            <li key={r.id}>
              <b>{r.title}</b> <span className="quiet">{r.words}</span>
              {r.refused ? (
                <p className="fault">Cannot be built so: {r.refused}</p>
              ) : (
                <p>
                  {money(r.total)}
                  {r.id !== 'as-drawn' && ` (${r.difference < 0 ? '−' : '+'}${money(Math.abs(r.difference))})`}
                  {r.unpriced > 0 && <span className="fault"> {r.unpriced} lines without a price</span>}
                  {r.failing.length > 0 && <span className="fault"> fails: {r.failing.join(', ')}</span>}
                  {r.open > 0 && <span className="quiet"> {r.open} checks not evaluated</span>}
                </p>
              )}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
