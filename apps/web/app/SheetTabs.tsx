import { useEffect, useRef } from 'react';
import { showMain, useDesk } from '../store/desk.js';
import { showSheet, useProject } from '../store/project.js';

/** The edge of the set: one tab a sheet, turned by click, arrow keys, or Page Up and Page Down anywhere. */
export function SheetTabs() {
  const index = useProject((p) => p.summary?.index) ?? [];
  const sheet = useDesk((d) => d.sheet);
  const main = useDesk((d) => d.main);
  const strip = useRef<HTMLDivElement>(null);
  const turn = (id: string): void => {
    useDesk.setState({ sheet: id, main: 'sheets' });
    void showSheet(id);
  };
  useEffect(() => {
    strip.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });
  useEffect(() => {
    const key = (e: KeyboardEvent): void => {
      if (e.key !== 'PageDown' && e.key !== 'PageUp') return;
      if (e.target instanceof HTMLElement && e.target.closest('.panel, input')) return;
      const { sheet: now } = useDesk.getState();
      const list = useProject.getState().summary?.index ?? [];
      const n = list.findIndex((s) => s.id === now) + (e.key === 'PageDown' ? 1 : -1);
      const next = list[n];
      if (next) turn(next.id);
      e.preventDefault();
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  });
  const step = (e: React.KeyboardEvent, n: number): void => {
    const to =
      e.key === 'ArrowRight'
        ? n + 1
        : e.key === 'ArrowLeft'
          ? n - 1
          : e.key === 'Home'
            ? 0
            : e.key === 'End'
              ? index.length - 1
              : undefined;
    const next = to === undefined ? undefined : index[to];
    if (!next) return;
    e.preventDefault();
    turn(next.id);
    strip.current?.querySelectorAll<HTMLElement>('[role="tab"]')[to!]?.focus();
  };
  return (
    <div className="sheet-tabs">
      <nav className="views" aria-label="What lies on the desk">
        <button type="button" aria-pressed={main === 'sheets'} onClick={() => showMain('sheets')}>
          Sheets
        </button>
        <button type="button" aria-pressed={main === 'model'} onClick={() => showMain('model')}>
          Model
        </button>
      </nav>
      <div className="strip" role="tablist" aria-label="Sheets of the set" ref={strip}>
        {index.map((s, n) => (
          <button
            type="button"
            role="tab"
            key={s.id}
            aria-selected={s.id === sheet}
            tabIndex={s.id === sheet ? 0 : -1}
            onClick={() => turn(s.id)}
            onKeyDown={(e) => step(e, n)}
          >
            <b>{s.id}</b> {s.title}
          </button>
        ))}
      </div>
    </div>
  );
}
