import { useEffect, useId, useState } from 'react';
import { edit, useProject } from '../store/project.js';
import { type Node, valueAt } from './schema.js';

/** One plain value: text with a unit, number, word of a list, yes or no. Kept when Enter is pressed or the field is left. */
export function Scalar({
  path,
  node,
  value,
  label,
  help,
  done,
}: {
  path: string;
  node: Node;
  value: unknown;
  label: string;
  help?: string;
  done?: () => void;
}) {
  const id = useId();
  const text = value === undefined ? '' : String(value);
  const [typed, setTyped] = useState(text);
  useEffect(() => setTyped(text), [text]);
  const keep = async (next: string): Promise<void> => {
    if (next === text) return;
    const asNumber = node.type === 'number' || node.type === 'integer';
    const v =
      node.type === 'boolean'
        ? next === 'true'
        : asNumber && next.trim() !== '' && Number.isFinite(Number(next))
          ? Number(next)
          : next;
    if (await edit(`${label}: ${next}`, [{ path, value: v }])) done?.();
  };
  const issue = useProject((p) => p.summary?.issues.find((i) => i.path === path && i.severity === 'error'));
  const options = node.enum ?? (node.type === 'boolean' ? [true, false] : undefined);
  const names = useNames(path);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {options ? (
        <select id={id} value={text} aria-describedby={`${id}-help`} onChange={(e) => void keep(e.target.value)}>
          {!options.some((o) => String(o) === text) && <option value={text}>{text || 'choose'}</option>}
          {options.map((o) => (
            <option key={String(o)} value={String(o)}>
              {o === '' ? 'none' : o === true ? 'yes' : o === false ? 'no' : String(o)}
            </option>
          ))}
        </select>
      ) : (
        <>
          <input
            id={id}
            value={typed}
            list={names.length > 0 ? `${id}-names` : undefined}
            aria-describedby={`${id}-help`}
            aria-invalid={issue !== undefined}
            onChange={(e) => setTyped(e.target.value)}
            onBlur={() => void keep(typed)}
            onKeyDown={(e) => e.key === 'Enter' && void keep(typed)}
          />
          {names.length > 0 && (
            <datalist id={`${id}-names`}>
              {names.map((n) => (
                <option key={n} value={n} />
              ))}
            </datalist>
          )}
        </>
      )}
      <p id={`${id}-help`} className="help">
        {help ?? node.description}
      </p>
      {issue && (
        <p className="fault" role="alert">
          {issue.message}
          {issue.expected ? ` Write ${issue.expected}.` : ''}
        </p>
      )}
    </div>
  );
}

/** Names that a reference may take: sections and footings under choices. */
function useNames(path: string): readonly string[] {
  const tree = useProject((p) => p.summary?.tree);
  const key = path.split('/').at(-1);
  const pot = key === 'section' ? '/choices/sections' : key === 'footing' ? '/choices/footings' : undefined;
  const at = pot && valueAt(tree, pot);
  return typeof at === 'object' && at !== null ? Object.keys(at) : [];
}
