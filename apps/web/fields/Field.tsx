/** A value of the project file with its explanation, or a group of them. Built from the published schema alone. */
import { useEffect, useState } from 'react';
import { edit, useProject } from '../store/project.js';
import { OfficeField } from './OfficeField.js';
import { SayForm } from './SayForm.js';
import { Scalar } from './Scalar.js';
import { sample } from './sample.js';
import { child, isOffice, type Node, nodeAt, schema, valueAt, words } from './schema.js';

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
