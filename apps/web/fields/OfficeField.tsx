/** A value somebody else decides: what it is, who said so, or “I don't know”, which is an answer and becomes a question. */
import { useEffect, useId, useState } from 'react';
import { edit, useProject } from '../store/project.js';
import { innerOf, type Node } from './schema.js';

interface Props {
  readonly path: string;
  readonly node: Node;
  readonly value: unknown;
  readonly label: string;
  readonly help?: string;
  readonly done?: () => void;
}

export function OfficeField({ path, node, value, label, help, done }: Props) {
  const id = useId();
  const inner = innerOf(node);
  const whole =
    typeof value === 'object' && value !== null ? (value as { value?: unknown; from?: unknown }) : undefined;
  const bare = whole ? whole.value : value;
  const unknown = bare === 'unknown' || bare === undefined;
  const text = unknown ? '' : String(bare);
  const source = whole && typeof whole.from === 'string' ? whole.from : '';
  const [typed, setTyped] = useState(text);
  const [from, setFrom] = useState(source);
  useEffect(() => setTyped(text), [text]);
  useEffect(() => setFrom(source), [source]);
  const question = useProject((p) => p.summary?.questions.find((q) => q.path === path));
  const issue = useProject((p) => p.summary?.issues.find((i) => i.path.startsWith(path) && i.severity === 'error'));

  const asWritten = (t: string): unknown =>
    inner.type === 'boolean'
      ? t === 'true'
      : inner.type === 'number' && t.trim() !== '' && Number.isFinite(Number(t))
        ? Number(t)
        : t;
  const keep = async (t: string, f: string): Promise<void> => {
    if (t === text && f === source) return;
    const v = t.trim() === '' ? 'unknown' : { value: asWritten(t), from: f.trim() === '' ? 'not said by whom' : f };
    if (await edit(`${label}: ${t.trim() === '' ? 'not known' : t}`, [{ path, value: v }])) done?.();
  };
  const options = inner.enum ?? (inner.type === 'boolean' ? [true, false] : undefined);
  return (
    <div className={unknown ? 'field office open' : 'field office'}>
      <label htmlFor={id}>{label}</label>
      <div className="office-row">
        {options ? (
          <select
            id={id}
            value={text}
            aria-describedby={`${id}-help`}
            onChange={(e) => void keep(e.target.value, from)}
          >
            <option value="">I don’t know</option>
            {options.map((o) => (
              <option key={String(o)} value={String(o)}>
                {o === true ? 'yes' : o === false ? 'no' : String(o)}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            value={typed}
            placeholder={`e.g. ${String(inner.examples?.[0] ?? '')}`}
            aria-describedby={`${id}-help`}
            aria-invalid={issue !== undefined}
            onChange={(e) => setTyped(e.target.value)}
            onBlur={() => void keep(typed, from)}
            onKeyDown={(e) => e.key === 'Enter' && void keep(typed, from)}
          />
        )}
        {!unknown && (
          <button
            type="button"
            className="plain"
            onClick={() => void edit(`${label}: not known`, [{ path, value: 'unknown' }])}
          >
            I don’t know
          </button>
        )}
      </div>
      {!unknown && (
        <label className="from">
          Who said so
          <input
            value={from}
            placeholder="e.g. county design criteria sheet"
            onChange={(e) => setFrom(e.target.value)}
            onBlur={() => void keep(typed, from)}
            onKeyDown={(e) => e.key === 'Enter' && void keep(typed, from)}
          />
        </label>
      )}
      <p id={`${id}-help`} className="help">
        {help ?? inner.description}
      </p>
      {unknown && question && (
        <p className="asked">
          <b>To ask:</b> {question.text} Until you know, {question.meanwhile} is used and the set stays preliminary.
        </p>
      )}
      {issue && (
        <p className="fault" role="alert">
          {issue.message}
          {issue.expected ? ` Write ${issue.expected}.` : ''}
        </p>
      )}
    </div>
  );
}
