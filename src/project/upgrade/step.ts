import type { Member, Node, ObjectNode } from '../text/node.js';

/** One numbered step from a version of the file format to the next. */
export interface UpgradeStep {
  readonly from: number;
  /** What changed, for the note a reader gets. */
  readonly summary: string;
  /**
   * Rearranges the tree in place. Nodes keep where they were written, so messages after the upgrade still point there.
   * A step meets files of any quality: what it does not find it leaves alone, and the reader reports it.
   */
  readonly apply: (root: ObjectNode) => void;
}

export const objectAt = (node: Node | undefined, ...path: readonly string[]): ObjectNode | undefined => {
  let at = node;
  for (const key of path) at = at?.kind === 'object' ? at.members.get(key)?.value : undefined;
  return at?.kind === 'object' ? at : undefined;
};

/** Gives a member another key in the same place; nothing happens when the new key is taken. */
export function rename(object: ObjectNode, from: string, to: string): void {
  const member = object.members.get(from);
  if (!member || object.members.has(to)) return;
  object.members.delete(from);
  object.members.set(to, member);
}

/** Moves members into a new object under `to`, placed where the first of them was written. */
export function gather(object: ObjectNode, keys: readonly string[], to: string): void {
  if (object.members.has(to)) return;
  const taken = keys.flatMap((key): [string, Member][] => {
    const m = object.members.get(key);
    return m ? [[key, m]] : [];
  });
  if (taken.length === 0) return;
  for (const [key] of taken) object.members.delete(key);
  const first = taken[0]![1];
  const value: ObjectNode = { kind: 'object', members: new Map(taken), start: first.keyStart, end: first.value.end };
  object.members.set(to, { keyStart: first.keyStart, value });
}
