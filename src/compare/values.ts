/** What was changed in the project file itself, value by value, as written. */
import { openText } from '../project/open.js';
import { pointer, toValue } from '../project/text/node.js';

export interface ValueChange {
  /** JSON pointer: in the new file, or in the old one for what is gone. */
  readonly path: string;
  /** As written; absent when it was not there. */
  readonly before?: string;
  readonly after?: string;
}

type Path = readonly (string | number)[];

const shown = (v: unknown): string => (typeof v === 'string' ? v : JSON.stringify(v));

const isObject = (v: unknown): v is Readonly<Record<string, unknown>> =>
  typeof v === 'object' && v !== null && !Array.isArray(v);

/** What a row of a list is known by, when it has a name of its own. */
function nameOf(row: unknown): string | undefined {
  if (!isObject(row)) return undefined;
  for (const key of ['mark', 'name', 'number', 'label', 'item', 'body']) {
    const v = row[key];
    if (typeof v === 'string' && v !== '') return `${key} ${v}`;
  }
  return undefined;
}

/** Rows of two lists beside each other: by their names when all rows have different ones, else by their places. */
function pairs(
  a: readonly unknown[],
  b: readonly unknown[],
): { readonly i: number | undefined; readonly j: number | undefined }[] {
  const names = [a, b].map((list) => list.map(nameOf));
  const usable = names.every((l) => l.every((n) => n !== undefined) && new Set(l).size === l.length);
  if (!usable) {
    return Array.from({ length: Math.max(a.length, b.length) }, (_, k) => ({
      i: k < a.length ? k : undefined,
      j: k < b.length ? k : undefined,
    }));
  }
  const [old, now] = names as [string[], string[]];
  return [
    ...now.map((n, j) => ({ i: old.includes(n) ? old.indexOf(n) : undefined, j })),
    ...old.flatMap((n, i) => (now.includes(n) ? [] : [{ i, j: undefined }])),
  ];
}

function walk(a: unknown, b: unknown, path: Path, out: ValueChange[]): void {
  if (a === undefined && b === undefined) return;
  if (a === undefined) out.push({ path: pointer(path), after: shown(b) });
  else if (b === undefined) out.push({ path: pointer(path), before: shown(a) });
  else if (isObject(a) && isObject(b)) {
    for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) walk(a[key], b[key], [...path, key], out);
  } else if (Array.isArray(a) && Array.isArray(b)) {
    for (const { i, j } of pairs(a, b))
      walk(i === undefined ? undefined : a[i], j === undefined ? undefined : b[j], [...path, j ?? i!], out);
  } else if (shown(a) !== shown(b)) out.push({ path: pointer(path), before: shown(a), after: shown(b) });
}

/** Values that differ, in the order of the new file. A file that cannot be read has none. */
export function changedValues(before: string, after: string): ValueChange[] {
  const [a, b] = [before, after].map((t) => openText(t).root);
  if (!a || !b) return [];
  const out: ValueChange[] = [];
  walk(toValue(a), toValue(b), [], out);
  return out;
}
