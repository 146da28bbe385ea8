/** A value of the project file with its explanation, or a group of them. Built from the published schema alone. */
import { useEffect, useId, useState } from 'react';
import { edit, useProject } from '../store/project.js';
import { OfficeField } from './OfficeField.js';
import { SayForm } from './SayForm.js';
import { child, innerOf, isOffice, type Node, nodeAt, schema, valueAt, words } from './schema.js';

let known: Node | undefined;

export function useSchema(): Node | undefined {
  const [node, setNode] = useState(known);
  useEffect(() => {
    if (!known)
      void schema().then((n) => {
        known = n;
        setNode(n);
      });
  }, []);
  return node;
}

interface Props {
  readonly path: string;
  readonly label?: string;
  readonly help?: string;
  /** Only values of the group itself, not of groups inside it. */
  readonly shallow?: boolean;
  readonly done?: () => void;
}

export function Field({ path, label, help, shallow = false, done }: Props) {
  const root = useSchema();
  const tree = useProject((p) => p.summary?.tree);
  if (!root || tree === undefined) return null;
  const node = nodeAt(root, tree, path);
  const value = valueAt(tree, path);
  if (!node) return <p>This is worked out from other values; it is not written in the file.</p>;
  const name = label ?? words(path.split('/').at(-1) ?? '');
  if (isOffice(node))
    return (
      <OfficeField
        path={path}
        node={node}
        value={value}
        label={name}
        {...(help ? { help } : {})}
        {...(done ? { done } : {})}
      />
    );
  if (node.type === 'object' && node.properties)
    return <Group path={path} node={node} value={value} shallow={shallow} />;
  if (node.type === 'object') return <Names path={path} value={value} shallow={shallow} />;
  if (node.type === 'array') return <List path={path} node={node} value={value} label={name} shallow={shallow} />;
  return (
    <Scalar
      path={path}
      node={node}
      value={value}
      label={name}
      {...(help ? { help } : {})}
      {...(done ? { done } : {})}
    />
  );
}

const isLeaf = (n: Node): boolean => isOffice(n) || (n.type !== 'object' && n.type !== 'array' && !n.oneOf);

function Group({ path, node, value, shallow }: { path: string; node: Node; value: unknown; shallow: boolean }) {
  const entries = Object.entries(node.properties ?? {});
  const has = (k: string): boolean => typeof value === 'object' && value !== null && k in value;
  const shown = entries.filter(([k, n]) =>
    shallow ? isLeaf(n) && k !== 'mark' && n.const === undefined : n.const === undefined,
  );
  const present = shown.filter(([k]) => has(k) || node.required?.includes(k));
  const absent = shown.filter(([k]) => !has(k) && !node.required?.includes(k));
  return (
    <div className="field-group">
      {!shallow && node.description && <p className="quiet">{node.description}</p>}
      {present.map(([k, n]) =>
        isLeaf(n) ? (
          <Field key={k} path={child(path, k)} />
        ) : (
          <details key={k}>
            <summary>{words(k)}</summary>
            <Field path={child(path, k)} />
          </details>
        ),
      )}
      {!shallow && absent.map(([k, n]) => <Absent key={k} path={child(path, k)} name={words(k)} node={n} />)}
    </div>
  );
}

/** Something the file may say and does not yet. */
function Absent({ path, name, node }: { path: string; name: string; node: Node }) {
  return (
    <details className="absent">
      <summary>
        {name} <span className="quiet">not said</span>
      </summary>
      {node.type === 'object' && node.properties ? (
        <SayForm node={node} label={name} edits={(value) => [{ path, value }]} rest={sample} />
      ) : (
        <>
          <p className="quiet">{node.description}</p>
          <button type="button" onClick={() => void edit(`${name} added`, [{ path, value: sample(node) }])}>
            Say it (starts from an example)
          </button>
        </>
      )}
    </details>
  );
}

const CLAIMS: ReadonlySet<string> = new Set(['from', 'source', 'basis']);

/** An example of a whole value, from the examples of its leaves; the owner puts own numbers in their place. */
export function sample(node: Node, key = ''): unknown {
  // Who said so is never made up.
  if (CLAIMS.has(key)) return 'not said yet';
  if (isOffice(node)) return 'unknown';
  if (node.const !== undefined) return node.const;
  if (node.type === 'object' && node.properties)
    return Object.fromEntries(
      Object.entries(node.properties)
        .filter(([k]) => node.required?.includes(k))
        .map(([k, n]) => [k, sample(n, k)]),
    );
  if (node.prefixItems) return node.prefixItems.map((n) => sample(n));
  if (node.type === 'array') return node.items && (node as { minItems?: number }).minItems ? [sample(node.items)] : [];
  if (node.oneOf ?? node.anyOf) return sample((node.oneOf ?? node.anyOf)![0]!);
  return node.examples?.[0] ?? node.enum?.[0] ?? '';
}

function Names({ path, value, shallow }: { path: string; value: unknown; shallow: boolean }) {
  const keys = typeof value === 'object' && value !== null ? Object.keys(value) : [];
  if (shallow) return null;
  return (
    <>
      {keys.map((k) => (
        <details key={k}>
          <summary>{k}</summary>
          <Field path={child(path, k)} />
        </details>
      ))}
    </>
  );
}

function List({
  path,
  node,
  value,
  label,
  shallow,
}: {
  path: string;
  node: Node;
  value: unknown;
  label: string;
  shallow: boolean;
}) {
  const items = Array.isArray(value) ? value : [];
  if (node.prefixItems)
    return (
      <fieldset className="pair">
        <legend>{label}</legend>
        {node.prefixItems.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what the field is
          <Field key={i} path={child(path, i)} label={i === 0 ? 'Along the house (x)' : 'Out from the wall (y)'} />
        ))}
      </fieldset>
    );
  if (shallow) return null;
  const titleOf = (v: unknown, i: number): string => {
    const o = v as Record<string, unknown>;
    const t = o?.mark ?? o?.name ?? o?.label ?? o?.product ?? o?.body;
    return typeof t === 'string' && t !== '' ? t : `${label} ${i + 1}`;
  };
  const item = node.items;
  return (
    <div className="field-list">
      {items.map((v, i) =>
        item && isLeaf(item) ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what the field is
          <Field key={i} path={child(path, i)} label={`${label} ${i + 1}`} />
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what the field is
          <details key={i}>
            <summary>{titleOf(v, i)}</summary>
            <Field path={child(path, i)} />
            <button
              type="button"
              className="plain"
              onClick={() => void edit(`${titleOf(v, i)} taken out`, [{ path: child(path, i) }])}
            >
              Take out {titleOf(v, i)}
            </button>
          </details>
        ),
      )}
      {item && (
        <button
          type="button"
          className="plain"
          onClick={() => void edit(`${label} added`, [{ path: child(path, '-'), value: sample(item) }])}
        >
          Add one to {label.toLowerCase()}
        </button>
      )}
    </div>
  );
}

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

export { innerOf };
