/** One part: what it is, its checks with their steps, and the chain of parts that carries its load to the soil. */
import { useEffect, useState } from 'react';
import type { PathAnswer, Why } from '../../../src/index.js';
import { quick } from '../core/client.js';
import { Field } from '../fields/Field.js';
import { ResultRow } from '../findings/ResultRow.js';
import { LoadPath } from '../path/LoadPath.js';
import { pick, useDesk } from '../store/desk.js';
import { useProject } from '../store/project.js';
import { cautionOf } from './cautions.js';

export default function PartPanel() {
  const picked = useDesk((d) => d.picked);
  const summary = useProject((p) => p.summary);
  const [why, setWhy] = useState<Why>();
  const [path, setPath] = useState<PathAnswer>();
  useEffect(() => {
    let here = true;
    setWhy(undefined);
    setPath(undefined);
    if (picked && summary?.drawable) {
      void quick.call('why', picked).then((w) => here && setWhy(w));
      void quick.call('path', picked).then((p) => here && setPath(p));
    }
    return () => {
      here = false;
    };
  }, [picked, summary]);
  const choose = (
    <label>
      Part
      <select value={picked ?? ''} onChange={(e) => pick(e.target.value || undefined)}>
        <option value="">choose a mark, or click one on a sheet</option>
        {summary?.parts.map((p) => (
          <option key={p.mark} value={p.mark}>
            {p.mark} – {p.what}
          </option>
        ))}
      </select>
    </label>
  );
  if (!picked) return choose;
  const part = summary?.parts.find((p) => p.mark === picked);
  const caution = cautionOf(part?.what ?? '');
  const results = summary?.results.filter((r) => r.subject === picked) ?? [];
  return (
    <>
      {choose}
      {why && <p className="section-words">{why.section}</p>}
      {part?.path && (
        <details>
          <summary>Change it</summary>
          <Field path={part.path} shallow />
          {why?.paths
            .filter((p) => p !== part.path)
            .map((p) => (
              <details key={p}>
                <summary>{p.startsWith('/choices') ? 'Its size and material (shared by all that use it)' : p}</summary>
                <Field path={p} />
              </details>
            ))}
        </details>
      )}
      {caution && <p className="asked">{caution}</p>}
      {path && <LoadPath path={path} />}
      <h3>Checks of {picked}</h3>
      {results.length === 0 ? (
        <p className="quiet">No check speaks of {picked} by itself.</p>
      ) : (
        <ul className="results">
          {[...results]
            .sort((a, b) => b.ratio - a.ratio)
            .map((r) => (
              <ResultRow key={r.id} result={r} />
            ))}
        </ul>
      )}
      {why && why.forces.length > 0 && (
        <details>
          <summary>Forces by combination</summary>
          <section className="scroll" aria-label="Forces by combination">
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
            <div tabIndex={0}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">Combination</th>
                    {why.forces[0]!.values.map((v) => (
                      <th scope="col" key={v.symbol}>
                        {v.symbol}, {v.unit}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {why.forces.map((f) => (
                    <tr key={f.combination}>
                      <th scope="row">{f.combination}</th>
                      {f.values.map((v) => (
                        <td key={v.symbol}>{Math.round(v.value).toLocaleString('en-US')}</td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          </section>
        </details>
      )}
    </>
  );
}
