import { Suspense } from 'react';
import { openPanel, useDesk } from '../store/desk.js';
import { Mishap } from './Mishap.js';
import { PANELS } from './panels.js';

/** The panel beside the sheet (below it on a phone). */
export function Panel() {
  const panel = useDesk((d) => d.panel);
  const shown = PANELS[panel];
  if (!shown) return <aside id="panel" className="panel closed" aria-label="Panel" />;
  const { Component, title } = shown;
  return (
    <aside id="panel" className="panel" aria-label={title}>
      <div className="panel-head">
        <h2 tabIndex={-1}>{title}</h2>
        <button type="button" className="close" aria-label={`Close ${title}`} onClick={() => openPanel('')}>
          ×
        </button>
      </div>
      <div className="panel-body" key={panel}>
        <Mishap about={title}>
          <Suspense fallback={<p className="waiting">One moment…</p>}>
            <Component />
          </Suspense>
        </Mishap>
      </div>
    </aside>
  );
}

export function PanelKeys() {
  const panel = useDesk((d) => d.panel);
  return (
    <nav className="panel-keys" aria-label="Panels">
      {Object.entries(PANELS).map(([id, p]) => (
        <button type="button" key={id} aria-pressed={panel === id} onClick={() => openPanel(panel === id ? '' : id)}>
          {p.short}
        </button>
      ))}
    </nav>
  );
}
