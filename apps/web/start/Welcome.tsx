/** The empty desk: begin, go on, look at an example. */
import { useEffect, useRef, useState } from 'react';
import { quick } from '../core/client.js';
import { fileText } from '../core/files.js';
import { openFile } from '../outputs/files.js';
import { begin, open } from '../store/project.js';
import { list, type ProjectRow, remove } from '../store/storage.js';
import { EXAMPLES } from './examples.js';

const ROOFS = [
  { kind: 'shed-attached', title: 'One slope, held by the house', picture: 'M4 30V8l40 8v14M4 8v22' },
  { kind: 'gable-attached', title: 'Two slopes, held by the house', picture: 'M4 18 24 6l20 12M9 16v14M39 16v14' },
  { kind: 'shed-free', title: 'One slope, standing free', picture: 'M6 12l38 6M10 13v17M40 17v13' },
  { kind: 'gable-free', title: 'Two slopes, standing free', picture: 'M4 18 24 6l20 12M9 16v14M39 16v14M24 6v4' },
] as const;

export function Welcome() {
  const [kept, setKept] = useState<readonly ProjectRow[]>([]);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    void list().then(setKept, () => setKept([]));
  }, []);
  return (
    <main className="welcome">
      <header>
        <p className="eyebrow">Eavewright</p>
        <h1>A roof over your patio, approved the first time</h1>
        <p>
          You measure and say what you want. Out come the drawings a plan reviewer asks for, with every number behind
          them. Everything is worked out on this machine: <b>nothing you enter leaves it</b>.
        </p>
      </header>
      <section aria-labelledby="begin">
        <h2 id="begin">Begin with a roof</h2>
        <p className="quiet">
          Not sure? Take the nearest. The first six questions tell you whether it can be had, and you can change it
          later.
        </p>
        <ul className="roofs">
          {ROOFS.map((r) => (
            <li key={r.kind}>
              <button
                type="button"
                data-roof={r.kind}
                onClick={async () => begin(await quick.call('starter', r.kind), `began: ${r.title.toLowerCase()}`)}
              >
                <svg viewBox="0 0 48 34" aria-hidden="true">
                  {r.kind.endsWith('attached') && <path className="house" d="M0 4h4v26H0z" />}
                  <path d={r.picture} />
                  <path className="ground" d="M0 31h48" />
                </svg>
                {r.title}
              </button>
            </li>
          ))}
        </ul>
      </section>
      {kept.length > 0 && (
        <section aria-labelledby="kept">
          <h2 id="kept">Go on with yours</h2>
          <ul className="kept-list">
            {kept.map((k) => (
              <li key={k.id}>
                <button type="button" onClick={() => void open(k.id)}>
                  <b>{k.title}</b>
                  <span className="quiet">
                    {new Date(k.changed).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })} ·{' '}
                    {k.count} {k.count === 1 ? 'state' : 'states'}
                  </span>
                </button>
                <button
                  type="button"
                  className="plain"
                  onClick={async () => {
                    if (
                      !confirm(`Forget “${k.title}” and all its states? A saved project file stays where you put it.`)
                    )
                      return;
                    await remove(k.id);
                    setKept(await list());
                  }}
                >
                  Forget it
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="open">
        <h2 id="open">Open</h2>
        <button type="button" onClick={() => input.current?.click()}>
          A project file…
        </button>
        <input
          ref={input}
          type="file"
          accept=".json,application/json"
          hidden
          data-testid="open-file"
          onChange={(e) => {
            const f = e.target.files?.[0];
            if (f) void openFile(f);
            e.target.value = '';
          }}
        />
        <h3>or an example</h3>
        <ul className="examples">
          {EXAMPLES.map((x) => (
            <li key={x.name}>
              <button
                type="button"
                data-example={x.name}
                onClick={async () => begin(await fileText(`examples/${x.name}.json`), `example: ${x.title}`)}
              >
                {x.title}
              </button>
              <span className="quiet">{x.about}</span>
            </li>
          ))}
        </ul>
      </section>
      <footer className="quiet">
        It helps prepare a submittal and certifies nothing. Local codes and the authority having jurisdiction decide;
        trusses are designed and sealed by the truss plant’s engineer.
      </footer>
    </main>
  );
}
