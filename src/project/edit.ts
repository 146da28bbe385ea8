/**
 * Changes of the file's own text. The author's comments, order and spellings stay: only what a change names is rewritten,
 * so that a file edited on a screen is still the file its author knows.
 */
import type { Outcome } from '../base/issue.js';
import { openText } from './open.js';
import { VERSION_KEY } from './schema/index.js';
import { find, type Node, type ObjectNode, segments, toValue } from './text/node.js';
import { parseText } from './text/parse.js';
import { CURRENT_VERSION } from './upgrade/index.js';

/** One change: the value put at a JSON pointer. Without `value` the key or list item is taken out. */
export interface TextEdit {
  readonly path: string;
  readonly value?: unknown;
}

/** The file as plain data in the present format; undefined when the text cannot be read that far. */
export function treeOf(text: string): unknown {
  const { root } = openText(text);
  return root && toValue(root);
}

/** Short values on one line with spaces, as the starters write them; long ones spread out under their key. */
function written(value: unknown, indent: string): string {
  const flat = JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ').replace(/\[ /g, '[').replace(/ \]/g, ']');
  if (flat.length <= 100) return flat;
  return JSON.stringify(value, null, 2).replaceAll('\n', `\n${indent}`);
}

/** White space before the first sign of the line that an offset stands in. */
function indentAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(start, offset))![0];
}

const splice = (text: string, from: number, to: number, put: string): string =>
  text.slice(0, from) + put + text.slice(to);

/** Takes out what stands from..to with the comma that belongs to it. */
function cut(text: string, from: number, to: number): string {
  const after = /^\s*,/.exec(text.slice(to));
  if (after) return splice(text, from, to + after[0].length, '').replace(/[ \t]+\n/, '\n');
  const before = /,\s*$/.exec(text.slice(0, from));
  return splice(text, before ? from - before[0].length : from, to, '');
}

function insert(text: string, parent: Node, key: string, value: unknown): string | undefined {
  if (parent.kind === 'scalar') return undefined;
  const head = parent.kind === 'object' ? `${JSON.stringify(key)}: ` : '';
  const last =
    parent.kind === 'object' ? [...parent.members.values()].at(-1)?.value : (parent.items.at(-1) ?? undefined);
  if (parent.kind === 'list' && key !== '-' && Number(key) !== parent.items.length) return undefined;
  const outer = indentAt(text, parent.start);
  if (!last) return splice(text, parent.start + 1, parent.end - 1, ` ${head}${written(value, `${outer}  `)} `);
  const lineBreak = text.slice(parent.start, last.end).includes('\n');
  const indent = indentAt(text, last.end);
  return splice(text, last.end, last.end, `,${lineBreak ? `\n${indent}` : ' '}${head}${written(value, indent)}`);
}

function applied(text: string, root: Node, { path, value }: TextEdit): string | undefined {
  const way = segments(path);
  const last = way.at(-1);
  if (last === undefined) return undefined;
  const parent = find(root, way.slice(0, -1));
  if (!parent.exact) {
    // Objects and lists on the way that are not there yet are made with the value inside.
    if (value === undefined) return text;
    return applied(text, root, {
      path: path.slice(0, path.lastIndexOf('/')),
      value: last === '-' ? [value] : { [last]: value },
    });
  }
  const here = find(root, way);
  if (!here.exact) return value === undefined ? text : insert(text, parent.node, last, value);
  const from = here.keyStart !== undefined && parent.node.kind === 'object' ? here.keyStart : here.node.start;
  if (value === undefined) return cut(text, from, here.node.end);
  return splice(text, here.node.start, here.node.end, written(value, indentAt(text, from)));
}

/** A file of an older format written out in the present one, so that pointers mean what they say. */
function present(text: string, root: ObjectNode): string {
  const raw = parseText(text).root;
  const version = raw?.kind === 'object' ? raw.members.get(VERSION_KEY)?.value : undefined;
  if (version?.kind === 'scalar' && version.value === CURRENT_VERSION) return text;
  return `${JSON.stringify({ ...(toValue(root) as object), [VERSION_KEY]: CURRENT_VERSION }, null, 2)}\n`;
}

/**
 * Applies changes in order. There is a value when the text could be read and every place exists or could be made; the new
 * values themselves are judged by `read`, not here. Issues: those of the text, or `unknown-place`.
 */
export function editText(text: string, edits: readonly TextEdit[]): Outcome<string> {
  const opened = openText(text);
  if (!opened.root) return { value: undefined, issues: opened.issues };
  let out = present(text, opened.root);
  for (const edit of edits) {
    const root = parseText(out).root;
    const next = root && applied(out, root, edit);
    if (next === undefined) {
      const message = 'there is no such place in the file to change';
      return { value: undefined, issues: [{ code: 'unknown-place', severity: 'error', path: edit.path, message }] };
    }
    out = next;
  }
  return { value: out, issues: [] };
}
