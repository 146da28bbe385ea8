/** The desk: title strip above, sheets in the middle, one panel beside or below. */
import { lazy, Suspense } from 'react';
import { SheetView } from '../sheets/SheetView.js';
import { Welcome } from '../start/Welcome.js';
import { useDesk } from '../store/desk.js';
import { useProject } from '../store/project.js';
import { Damaged } from './Damaged.js';
import { Mishap } from './Mishap.js';
import { NoticeBar } from './NoticeBar.js';
import { Panel, PanelKeys } from './Panel.js';
import { SheetTabs } from './SheetTabs.js';
import { TopBar } from './TopBar.js';

const Model = lazy(() => import('../model/ModelView.js'));

export function App() {
  const open = useProject((p) => p.history !== undefined);
  const summary = useProject((p) => p.summary);
  const busy = useProject((p) => p.busy);
  const main = useDesk((d) => d.main);
  if (!open)
    return (
      <>
        <NoticeBar />
        <Welcome />
      </>
    );
  const desk =
    main === 'model' && summary?.drawable ? (
      <Suspense fallback={<p className="waiting">Setting up the model…</p>}>
        <Model />
      </Suspense>
    ) : summary?.sheet ? (
      <SheetView sheet={summary.sheet} />
    ) : summary ? (
      <Damaged />
    ) : (
      <p className="waiting">Working out the structure…</p>
    );
  return (
    <div className="app">
      <a className="skip" href="#panel">
        Skip to the panel
      </a>
      <TopBar />
      <NoticeBar />
      <main aria-busy={busy} aria-label="Drawing set">
        <div className="desk">
          <Mishap about="This view">{desk}</Mishap>
        </div>
        <SheetTabs />
      </main>
      <Panel />
      <PanelKeys />
    </div>
  );
}
