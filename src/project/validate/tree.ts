/** Cautious looks at a tree that may be of any shape. */
import { find, type Node, type PathSegment } from '../text/node.js';

export const nodeAt = (root: Node, ...path: readonly PathSegment[]): Node | undefined => {
  const f = find(root, path);
  return f.exact ? f.node : undefined;
};

export const textAt = (root: Node, ...path: readonly PathSegment[]): string | undefined => {
  const node = nodeAt(root, ...path);
  return node?.kind === 'scalar' && typeof node.value === 'string' ? node.value.trim() : undefined;
};

/** Indices of a list, none when there is no list. */
export const indices = (root: Node, ...path: readonly PathSegment[]): number[] => {
  const node = nodeAt(root, ...path);
  return node?.kind === 'list' ? node.items.map((_, i) => i) : [];
};

/** Keys of an object, none when there is no object. */
export const keys = (root: Node, ...path: readonly PathSegment[]): string[] => {
  const node = nodeAt(root, ...path);
  return node?.kind === 'object' ? [...node.members.keys()] : [];
};
