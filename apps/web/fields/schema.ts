/** The published schema of the project file, walked by JSON pointer, so that every field can explain itself. */
import { fileText } from '../core/files.js';

export interface Node {
  readonly type?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly prefixItems?: readonly Node[];
  readonly additionalProperties?: Node | boolean;
  readonly minimum?: number;
  readonly maximum?: number;
}

let asked: Promise<Node> | undefined;
export const schema = (): Promise<Node> => {
  asked ??= fileText('schema.json').then((t) => JSON.parse(t) as Node);
  return asked;
};

export const segments = (path: string): string[] =>
  path
    .split('/')
    .slice(1)
    .map((s) => s.replaceAll('~1', '/').replaceAll('~0', '~'));
export const child = (path: string, key: string | number): string =>
  `${path}/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;

export function valueAt(tree: unknown, path: string): unknown {
  let v = tree;
  for (const s of segments(path)) {
    if (typeof v !== 'object' || v === null) return undefined;
    v = (v as Record<string, unknown>)[s];
  }
  return v;
}

const isObject = (v: unknown): v is Readonly<Record<string, unknown>> =>
  typeof v === 'object' && v !== null && !Array.isArray(v);

/** The member of a choice that a value is written as, told by the words it must hold. */
function branch(node: Node, value: unknown): Node {
  const options = node.oneOf ?? node.anyOf;
  if (!options || isOffice(node)) return node;
  const fits = (n: Node): boolean =>
    isObject(value) && n.properties !== undefined
      ? Object.entries(n.properties).every(([k, p]) => p.const === undefined || value[k] === p.const) &&
        Object.keys(value).every((k) => n.properties![k] !== undefined)
      : n.type === (Array.isArray(value) ? 'array' : typeof value);
  return options.find(fits) ?? options[0] ?? node;
}

/** A value that the office decides: with its source, bare, or unknown. */
export const isOffice = (node: Node): boolean =>
  node.anyOf?.some((n) => n.const === 'unknown') === true && node.anyOf.some((n) => n.properties?.from !== undefined);

/** Schema of the inner value of one that the office decides. */
export const innerOf = (node: Node): Node => {
  const value = node.anyOf?.find((n) => n.properties?.from)?.properties?.value;
  return {
    ...(value?.anyOf?.find((n) => n.const === undefined) ?? {}),
    ...(value?.description ? { description: value.description } : {}),
  };
};

export function nodeAt(root: Node, tree: unknown, path: string): Node | undefined {
  let node: Node | undefined = root;
  let value = tree;
  for (const s of segments(path)) {
    if (!node) return undefined;
    const n: Node = branch(node, value);
    const list = Array.isArray(value) || n.type === 'array';
    node = list
      ? (n.prefixItems?.[Number(s)] ?? n.items)
      : (n.properties?.[s] ?? (typeof n.additionalProperties === 'object' ? n.additionalProperties : undefined));
    value = isObject(value) || Array.isArray(value) ? (value as Record<string, unknown>)[s] : undefined;
  }
  return node && branch(node, value);
}

/** A first sentence is the label's explanation; the rest says what may be written. */
export const words = (key: string): string =>
  key
    .replace(/([A-Z])/g, ' $1')
    .replace(/^./, (c) => c.toUpperCase())
    .replace(/ ([A-Z])/g, (m) => m.toLowerCase());
