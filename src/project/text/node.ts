/**
 * The file as read: values with the place each was written at. Offsets count UTF-16 units from the start of the text,
 * so that an upgrade may move a node and every later message still points at what the author typed.
 */
export type Node = ScalarNode | ListNode | ObjectNode;

interface Placed {
  readonly start: number;
  readonly end: number;
}
export interface ScalarNode extends Placed {
  readonly kind: 'scalar';
  readonly value: string | number | boolean | null;
}
export interface ListNode extends Placed {
  readonly kind: 'list';
  readonly items: Node[];
}
export interface ObjectNode extends Placed {
  readonly kind: 'object';
  /** In the order written. Upgrade steps may change it; nothing else does. */
  readonly members: Map<string, Member>;
}
export interface Member {
  readonly keyStart: number;
  readonly value: Node;
}

/** Plain data of a node. Objects have no prototype, so no key can reach one. */
export function toValue(node: Node): unknown {
  if (node.kind === 'scalar') return node.value;
  if (node.kind === 'list') return node.items.map(toValue);
  const out = Object.create(null) as Record<string, unknown>;
  for (const [key, member] of node.members) out[key] = toValue(member.value);
  return out;
}

export type PathSegment = string | number;

/** JSON pointer (RFC 6901) of a path. */
export const pointer = (path: readonly PathSegment[]): string =>
  path.map((s) => `/${String(s).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** Path of a JSON pointer; every segment is text. */
export const segments = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((s) => s.replaceAll('~1', '/').replaceAll('~0', '~'));

export interface Found {
  /** The node at the path, or its nearest existing ancestor. */
  readonly node: Node;
  /** Where the key naming that node begins, when it has one. */
  readonly keyStart: number | undefined;
  /** True when the whole path exists. */
  readonly exact: boolean;
}

/** Walks a path as far as the file goes. */
export function find(root: Node, path: readonly PathSegment[]): Found {
  let node = root;
  let keyStart: number | undefined;
  for (const segment of path) {
    if (node.kind === 'object') {
      const member = node.members.get(String(segment));
      if (!member) return { node, keyStart, exact: false };
      node = member.value;
      keyStart = member.keyStart;
    } else if (node.kind === 'list') {
      const item = node.items[Number(segment)];
      if (!item) return { node, keyStart, exact: false };
      node = item;
      keyStart = undefined;
    } else return { node, keyStart, exact: false };
  }
  return { node, keyStart, exact: true };
}
