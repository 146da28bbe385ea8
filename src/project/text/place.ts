import type { Issue } from '../../base/issue.js';
import { find, type Node, segments } from './node.js';

export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Turns an offset into a 1-based line and column. A line ends with LF, CR LF or CR. */
export function placer(text: string): (offset: number) => Place {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}

/** A piece of the file on one line, cut short for a message. */
export function excerpt(text: string, node: Node): string {
  const s = text.slice(node.start, Math.min(node.end, node.start + 200)).replace(/\s+/g, ' ');
  return s.length > 60 ? `${s.slice(0, 57)}…` : s;
}

/**
 * Fills line and column from the issue's pointer, and `found` where the value exists and none is stated. A path that
 * is not in the file takes the place of its nearest ancestor; `atKey` points at the key instead of the value.
 */
export function placeIssue(
  issue: Issue,
  text: string,
  root: Node,
  at: (offset: number) => Place,
  atKey = false,
): Issue {
  const f = find(root, segments(issue.path));
  const offset = (atKey || !f.exact) && f.keyStart !== undefined ? f.keyStart : f.node.start;
  const found =
    issue.found === undefined && f.exact && f.node.kind === 'scalar' ? { found: excerpt(text, f.node) } : {};
  return { ...issue, ...found, ...at(offset) };
}
