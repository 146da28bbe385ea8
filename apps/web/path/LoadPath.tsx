import type { PathAnswer } from '../../../src/index.js';
import { openResult, pick } from '../store/desk.js';

const WAYS = ['down', 'up', 'side'] as const;
const ARROW = { down: '↓', up: '↑', side: '↔' } as const;
const WORD = { down: 'Down', up: 'Up', side: 'Sideways' } as const;

const figure = (x: number): string => Math.round(x).toLocaleString('en-US');

/** The chain from the roof to the soil, one link below another: what is asked of it over what it can do. */
export function LoadPath({ path }: { readonly path: PathAnswer }) {
  return (
    <section className="load-path" aria-label={`Load path through ${path.mark}`}>
      <h3>From roof to soil through {path.mark}</h3>
      {path.breaks.map((b) => (
        <p key={b} className="fault">
          {b}
        </p>
      ))}
      <ol>
        {path.steps.map((s) => (
          <li key={`${s.from}${s.to}${s.mark}`}>
            <div className="link">
              <button
                type="button"
                onClick={() => pick(s.from)}
                aria-current={s.from === path.mark ? 'true' : undefined}
              >
                {s.from}
              </button>
              <span aria-hidden="true">→</span>
              <button type="button" onClick={() => pick(s.to)} aria-current={s.to === path.mark ? 'true' : undefined}>
                {s.to}
              </button>
              <span className="quiet">
                {s.mark && `${s.mark}, `}
                {s.what}
                {s.count > 1 ? ` (${s.count})` : ''}
              </span>
            </div>
            <ul>
              {WAYS.map((w) => {
                const share = s.shares.find((x) => x.way === w);
                if (!share) return null;
                const open = share.ratio === undefined;
                const over = share.ratio !== undefined && share.ratio > 1;
                return (
                  <li key={w} className={open ? 'open' : over ? 'over' : ''}>
                    <span aria-hidden="true">{ARROW[w]}</span> <span className="way">{WORD[w]}</span>
                    <span className="numbers">
                      {figure(share.demand)}
                      {share.capacity === undefined ? '' : ` / ${figure(share.capacity)}`} {share.unit}
                    </span>
                    <Bar ratio={share.ratio} />
                    <button
                      type="button"
                      className="by"
                      disabled={share.result === ''}
                      onClick={() => openResult(share.result, s.mark || s.from)}
                    >
                      {open ? 'open: ' : ''}
                      {share.by}
                    </button>
                  </li>
                );
              })}
            </ul>
          </li>
        ))}
      </ol>
      <p className="quiet">Ends at {path.ends.join(', ')}.</p>
    </section>
  );
}

export function Bar({ ratio }: { readonly ratio: number | undefined }) {
  if (ratio === undefined) return <span className="bar none">not stated</span>;
  return (
    <span className={ratio > 1 ? 'bar over' : ratio > 0.9 ? 'bar near' : 'bar'}>
      <i style={{ width: `${Math.min(100, ratio * 100)}%` }} />
      <em>{ratio >= 99 ? 'nothing holds' : `${Math.round(ratio * 100)} %`}</em>
    </span>
  );
}
