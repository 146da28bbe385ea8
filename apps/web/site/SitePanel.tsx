/** The work on the ground, for a phone held with gloves on: cards to tick, lengths to type, what fits. All offline. */
import { useState } from 'react';
import type { Thorough } from '../core/api.js';
import type { Client } from '../core/client.js';
import { Card, RESULTS, ticked } from './Card.js';
import { Clock, Order } from './Clock.js';
import { Downloads } from './Downloads.js';
import { Stake } from './Stake.js';
import { today, useWork } from './useWork.js';

const ask = (worker: Client<Thorough>, text: string) => worker.call('site', text, today());

const PAGES = { stages: 'Stages', stake: 'Stake out', order: 'Order', papers: 'Permits' } as const;
type Page = keyof typeof PAGES;

export default function SitePanel() {
  const { value: view, busy, fault } = useWork(ask);
  const [page, setPage] = useState<Page>('stages');
  const [opened, setOpened] = useState<string>();
  if (!view)
    return (
      <p className="waiting site-view">
        {busy
          ? 'Working out stakes and cards…'
          : (fault ?? 'Nothing can be laid out: put the errors of the file right first.')}
      </p>
    );
  const next = view.cards.find((c) => c.result !== 'passed')?.id;
  const shown = opened ?? next;
  return (
    <div className="site-view" aria-busy={busy}>
      <nav className="pages" aria-label="Pages of the site view">
        {(Object.keys(PAGES) as Page[]).map((p) => (
          <button type="button" key={p} aria-pressed={p === page} onClick={() => setPage(p)}>
            {PAGES[p]}
          </button>
        ))}
      </nav>
      {page === 'stages' && (
        <ol className="stages">
          {view.cards.map((c) => (
            <li key={c.id} className={c.result}>
              <h3>
                <button
                  type="button"
                  aria-expanded={shown === c.id}
                  onClick={() => setOpened(shown === c.id ? '' : c.id)}
                  data-card={c.id}
                >
                  <span className="mark" aria-hidden="true">
                    {c.result === 'passed' ? '✓' : c.result === 'failed' ? '✗' : c.id === next ? '►' : ''}
                  </span>
                  <span className="what">{c.title}</span>
                  <span className="state">
                    {ticked(c)} of {c.items.length}
                    <br />
                    {RESULTS[c.result]}
                  </span>
                </button>
              </h3>
              {shown === c.id && <Card card={c} />}
            </li>
          ))}
        </ol>
      )}
      {page === 'stake' && <Stake view={view} />}
      {page === 'order' && <Order view={view} />}
      {page === 'papers' && (
        <>
          <Clock view={view} />
          <h4>To print and take along</h4>
          <Downloads files={['stake.pdf', 'stages.pdf', 'stake.csv', 'stages.csv']} />
        </>
      )}
      <p className="quiet">The inspector of your office decides; the cards help you be ready for the visit.</p>
    </div>
  );
}
