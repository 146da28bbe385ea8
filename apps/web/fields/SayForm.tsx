/** Something said for the first time: every value is typed by the owner. Examples stand beside, none is put in by itself. */
import { useId, useState } from 'react';
import type { TextEdit } from '../../../src/index.js';
import { edit } from '../store/project.js';
import { isOffice, type Node, words } from './schema.js';

interface Props {
  readonly node: Node;
  readonly label: string;
  /** Changes of the file that put the whole value in its place. */
  readonly edits: (value: unknown) => readonly TextEdit[];
  /** Values of the keys that are not asked for here. */
  readonly rest: (node: Node, key: string) => unknown;
}

const asks = (n: Node): boolean =>
  !isOffice(n) && n.const === undefined && n.type !== 'object' && n.type !== 'array' && !n.oneOf;

export function SayForm({ node, label, edits, rest }: Props) {
  const id = useId();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [missing, setMissing] = useState(false);
  const needed = Object.entries(node.properties ?? {}).filter(([k]) => node.required?.includes(k));
  const asked = needed.filter(([, n]) => asks(n));
  const submit = async (e: React.FormEvent): Promise<void> => {
    e.preventDefault();
    const open = asked.some(([k, n]) => (typed[k] ?? '').trim() === '' && !n.enum?.includes(''));
    setMissing(open);
    if (open) return;
    const value = Object.fromEntries(needed.map(([k, n]) => [k, asks(n) ? read(n, typed[k] ?? '') : rest(n, k)]));
    await edit(`${label} said`, edits(value));
  };
  return (
    <form className="remedies" onSubmit={submit}>
      {node.description && <p>{node.description}</p>}
      {asked.map(([k, n]) => {
        const options = n.enum ?? (n.type === 'boolean' ? [true, false] : undefined);
        const put = (v: string): void => setTyped((t) => ({ ...t, [k]: v }));
        return (
          <div className="field" key={k}>
            <label htmlFor={`${id}-${k}`}>{words(k)}</label>
            {options ? (
              <select id={`${id}-${k}`} name={k} value={typed[k] ?? ''} onChange={(e) => put(e.target.value)}>
                <option value="">choose</option>
                {options
                  .filter((o) => o !== '')
                  .map((o) => (
                    <option key={String(o)} value={String(o)}>
                      {o === true ? 'yes' : o === false ? 'no' : String(o)}
                    </option>
                  ))}
              </select>
            ) : (
              <input
                id={`${id}-${k}`}
                name={k}
                value={typed[k] ?? ''}
                placeholder={`e.g. ${String(n.examples?.[0] ?? '')}`}
                onChange={(e) => put(e.target.value)}
              />
            )}
            <p className="help">{n.description}</p>
          </div>
        );
      })}
      {missing && (
        <p className="fault" role="alert">
          Each of these has to be said; what you do not know yet is better left open.
        </p>
      )}
      <button type="submit" className="main">
        Say it: {label.toLowerCase()}
      </button>
    </form>
  );
}

function read(n: Node, text: string): unknown {
  if (n.type === 'boolean') return text === 'true';
  const number = (n.type === 'number' || n.type === 'integer') && Number.isFinite(Number(text));
  return number ? Number(text) : text;
}
