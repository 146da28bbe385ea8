import { useState } from 'react';
import { goTo, nameVersion, useProject } from './project.js';

const time = (t: number): string => new Date(t).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Every state there was. Going back loses nothing; only a change made after going back leaves the undone states behind. */
export default function HistoryPanel() {
  const history = useProject((p) => p.history);
  const [name, setName] = useState('');
  if (!history) return null;
  const rows = history.entries.map((e, n) => ({ e, n })).reverse();
  return (
    <>
      <form
        className="row"
        onSubmit={(e) => {
          e.preventDefault();
          if (name.trim() !== '') nameVersion(name.trim());
          setName('');
        }}
      >
        <label className="grow">
          Name what is on the desk now
          <input value={name} placeholder="e.g. as handed in" onChange={(e) => setName(e.target.value)} />
        </label>
        <button type="submit">Keep name</button>
      </form>
      <ol className="changes" reversed>
        {rows.map(({ e, n }) => (
          <li key={n} aria-current={n === history.at ? 'step' : undefined}>
            <button type="button" onClick={() => goTo(n)}>
              {e.version && <b>{e.version}</b>} {e.name} <span className="quiet">{time(e.when)}</span>
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}
