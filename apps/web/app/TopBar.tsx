import { useEffect, useState } from 'react';
import { putAway, redo, undo, useProject } from '../store/project.js';
import { Stamp } from './Stamp.js';

const KEPT: Readonly<Record<string, string>> = {
  saved: 'Kept on this machine',
  saving: 'Keeping…',
  'not-kept': 'Not kept: this browser allows no storage here. Save a file.',
  conflict: 'Not kept: changed in another tab',
};

export function TopBar() {
  const title = useProject((p) => p.summary?.title);
  const history = useProject((p) => p.history);
  const saved = useProject((p) => p.saved);
  const before = history && history.at > 0 ? history.entries[history.at]!.name : undefined;
  const after = history?.entries[history.at + 1]?.name;
  return (
    <header className="top">
      <div className="title">
        <button type="button" className="home" onClick={putAway} aria-label="Put this project away; it is kept">
          <Mark />
        </button>
        <h1>{title || 'Eavewright'}</h1>
        <span className={`kept ${saved}`}>{KEPT[saved]}</span>
      </div>
      <Stamp />
      <div className="tools">
        <button
          type="button"
          disabled={!before}
          onClick={undo}
          aria-label={before ? `Undo: ${before}` : 'Nothing to undo'}
          title={before && `Undo: ${before}`}
        >
          <span aria-hidden="true">↶</span> <span className="word">Undo</span>
        </button>
        <button
          type="button"
          disabled={!after}
          onClick={redo}
          aria-label={after ? `Redo: ${after}` : 'Nothing to redo'}
          title={after && `Redo: ${after}`}
        >
          <span aria-hidden="true">↷</span> <span className="word">Redo</span>
        </button>
        <Theme />
      </div>
    </header>
  );
}

const Mark = () => (
  <svg viewBox="0 0 48 36" width="36" height="27" aria-hidden="true">
    <path className="ink" d="M4 33V14h7v19z" />
    <path className="accent" d="M9 5 44 18v4L9 10z" />
    <path className="accent" d="M36 20h4v13h-4z" />
    <path className="ink" d="M0 33h48v3H0z" />
  </svg>
);

function Theme() {
  const [theme, setTheme] = useState(() => localStorage.getItem('theme') ?? 'auto');
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
    localStorage.setItem('theme', theme);
  }, [theme]);
  const dark = theme === 'dark' || (theme === 'auto' && matchMedia('(prefers-color-scheme: dark)').matches);
  return (
    <button
      type="button"
      onClick={() => setTheme(dark ? 'light' : 'dark')}
      aria-label={dark ? 'Light paper' : 'Dark paper for the evening'}
    >
      <span aria-hidden="true">{dark ? '☀' : '☾'}</span>
    </button>
  );
}
