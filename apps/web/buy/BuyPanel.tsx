/** What to order, how to cut it, what it costs. Worked out from the placed structure on this machine. */
import { useMemo, useState } from 'react';
import type { Thorough } from '../core/api.js';
import { type Client, thorough } from '../core/client.js';
import { Downloads } from '../site/Downloads.js';
import { note, useWork, workOptions } from '../site/useWork.js';
import { openPanel, useDesk } from '../store/desk.js';
import { say, useProject } from '../store/project.js';
import { Compare, Costs } from './Costs.js';
import { CutList } from './CutList.js';
import { Lines } from './Lines.js';

const PAGES = { lines: 'To buy', cuts: 'Cut list', costs: 'Cost', papers: 'Papers' } as const;
type Page = keyof typeof PAGES;

export default function BuyPanel() {
  const [invented, setInvented] = useState(false);
  const [page, setPage] = useState<Page>('lines');
  const ask = useMemo(
    () => async (worker: Client<Thorough>, text: string) => worker.call('buy', text, await workOptions(invented)),
    [invented],
  );
  const { value: view, busy, fault } = useWork(ask);
  if (!view)
    return (
      <p className="waiting buy-view">
        {busy
          ? 'Counting and planning the cuts…'
          : (fault ?? 'Nothing can be counted: put the errors of the file right first.')}
      </p>
    );
  return (
    <div className="buy-view" aria-busy={busy}>
      <nav className="pages" aria-label="Pages of the buy view">
        {(Object.keys(PAGES) as Page[]).map((p) => (
          <button type="button" key={p} aria-pressed={p === page} onClick={() => setPage(p)}>
            {PAGES[p]}
          </button>
        ))}
      </nav>
      {view.pricesAre && <p className="caution">{view.pricesAre}</p>}
      <Picked />
      {view.open.map((o) => (
        <p key={o.path + o.what} className="asked">
          <b>Not counted:</b> {o.what} {o.serves.length > 0 && `(${o.serves.join(', ')})`}
        </p>
      ))}
      {view.mismatches.map((m) => (
        <p key={m} className="caution">
          <b>Truss order does not agree.</b> {m}
        </p>
      ))}
      {page === 'lines' && view.phases.map((p) => <Lines key={p.phase} phase={p} invented={invented} />)}
      {page === 'cuts' && (
        <>
          {!view.solver && (
            <p className="asked">
              This browser does not let the solver run; the plans are by search, and each says how far from the least it
              may be.
            </p>
          )}
          <CutList groups={view.cuts} units={view.units} />
        </>
      )}
      {page === 'costs' && (
        <>
          <Costs view={view} />
          <PriceList />
          <label className="choice">
            <input type="checkbox" checked={invented} onChange={(e) => setInvented(e.target.checked)} />
            Show with invented prices, to see how it works
          </label>
          <h4>Other ways</h4>
          <Compare invented={invented} />
        </>
      )}
      {page === 'papers' && (
        <Downloads files={['buy.pdf', 'hire.pdf', 'buy.xlsx', 'buy.csv', 'prices.csv']} invented={invented} />
      )}
    </div>
  );
}

/** The part that was picked from a line, with the way to it. */
function Picked() {
  const picked = useDesk((d) => d.picked);
  const what = useProject((p) => p.summary?.parts.find((r) => r.mark === picked)?.what);
  if (!picked) return null;
  return (
    <p className="picked-part" role="status">
      <span>
        Picked: <b>{what ?? picked}</b>
      </span>
      <button type="button" onClick={() => openPanel('part')}>
        Show the part
      </button>
    </p>
  );
}

/** Prices in from a list; out as a file among the papers. */
function PriceList() {
  const read = async (file: File): Promise<void> => {
    if (file.size > 1_000_000) return say(`${file.name} is far larger than any price list.`, 'problem');
    const { rows, problems } = await thorough().call('pricesFrom', await file.text());
    if (!rows) return say(`No price was taken. ${problems.slice(0, 3).join(' ')}`, 'problem');
    if (await note(`prices from ${file.name}`, { what: 'prices', rows }))
      say(`${rows.length} prices read from ${file.name}.`);
  };
  return (
    <>
      <Downloads files={['prices.csv']} />
      <label className="file-key">
        Read a filled price list
        <input
          type="file"
          accept=".csv,text/csv"
          data-testid="price-list"
          onChange={(e) => {
            const file = e.target.files?.[0];
            e.target.value = '';
            if (file) void read(file);
          }}
        />
      </label>
    </>
  );
}
