import { useEffect, useState } from 'react';
import type { CheckResult, Remedy } from '../../../src/index.js';
import { thorough } from '../core/client.js';
import { edit, textNow } from '../store/project.js';

/** What it adds to the whole cover, in words. */
function cost(r: Remedy): string {
  const parts = [
    Math.abs(r.wood) >= 1 && `${Math.round(r.wood)} lb of wood`,
    Math.abs(r.concrete) >= 0.05 && `${r.concrete.toFixed(1)} cu ft of concrete`,
  ].filter(Boolean);
  return parts.length === 0 ? 'adds next to nothing' : `adds ${parts.join(' and ')}`;
}

/** What would cure it, found by trying: each change is made to a copy, everything is worked out again, and only cures are shown. */
export function Remedies({ result }: { readonly result: CheckResult }) {
  const [rows, setRows] = useState<readonly Remedy[]>();
  useEffect(() => {
    let here = true;
    void (async () => {
      const worker = thorough();
      await worker.call('derive', textNow(), undefined);
      const found = await worker.call('remedies', result.id);
      if (here) setRows(found);
    })();
    return () => {
      here = false;
    };
  }, [result]);
  if (!rows)
    return (
      <p className="quiet" role="status">
        Trying what would help…
      </p>
    );
  if (rows.length === 0)
    return (
      <p className="quiet">
        No single change of a size, spacing or count that was tried cures this. The words above say what is wanted.
      </p>
    );
  return (
    <div className="remedies">
      <h4>What would help, least material first</h4>
      <ul>
        {rows.map((r) => (
          <li key={r.text}>
            <button type="button" onClick={() => void edit(r.text, r.edits)}>
              {r.text}
            </button>
            <span className="quiet">
              {cost(r)}
              {r.ratio > 0 ? ` · then ${Math.round(r.ratio * 100)} %` : ''}
              {r.fixes > 1 ? ` · cures ${r.fixes} findings` : ''}
              {r.breaks > 0 ? ` · but ${r.breaks} other${r.breaks > 1 ? 's' : ''} would then fail` : ''}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
