import { useEffect, useState } from 'react';
import type { CheckResult, TraceLine } from '../../../src/index.js';
import { quick } from '../core/client.js';

const figure = (x: number): string => {
  const r = Math.abs(x) >= 1000 ? Math.round(x) : Number(x.toPrecision(4));
  return (r === 0 ? 0 : r).toLocaleString('en-US', { maximumFractionDigits: 6 });
};

/** Formula, numbers, result and clause, step by step: the same function run again with a recorder. */
export function Trace({ result }: { readonly result: CheckResult }) {
  const [steps, setSteps] = useState<readonly TraceLine[]>();
  useEffect(() => {
    let here = true;
    void quick.call('explain', result.id).then((s) => here && setSteps(s.steps));
    return () => {
      here = false;
    };
  }, [result]);
  if (!steps) return <p className="quiet">Going through the steps…</p>;
  return (
    <div className="trace">
      {result.capacity > 0 && (
        <p>
          <b>{figure(result.demand)}</b> of <b>{figure(result.capacity)}</b> {result.unit}
          {result.combination && <> under {result.combination}</>} · {result.clause}
        </p>
      )}
      {steps.length > 0 && (
        <ol>
          {steps.map((s, n) =>
            s.kind === 'heading' ? (
              // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other name than their place
              <li key={n} className="heading">
                {s.text}
              </li>
            ) : (
              // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other name than their place
              <li key={n}>
                <p className="formula">
                  <var>{s.symbol}</var> = {s.formula}
                </p>
                {s.substituted && s.substituted !== s.formula && <p className="numbers">= {s.substituted}</p>}
                <p className="numbers">
                  = <b>{figure(s.value)}</b> {s.unit}
                </p>
                <p className="quiet">
                  {s.meaning} · {s.clause}
                  {s.note ? ` · ${s.note}` : ''}
                </p>
              </li>
            ),
          )}
        </ol>
      )}
    </div>
  );
}
