import { hasErrors, type Issue, type Outcome } from '../base/issue.js';
import { complete } from './complete/index.js';
import { bundleOf } from './editions.js';
import { type Draft, fromZod, missing, unknownKey } from './issues.js';
import type { Project } from './model.js';
import { openText } from './open.js';
import { OPTIONAL_PARTS, PART_NAMES, PARTS, ROOT_KEYS, type Written } from './schema/index.js';
import { type ObjectNode, toValue } from './text/node.js';
import { validate } from './validate/index.js';

const EMPTY: Partial<Record<string, unknown>> = { prices: [], buying: {}, log: {}, submittal: {} };

function readParts(root: ObjectNode): { readonly written: Partial<Written>; readonly drafts: readonly Draft[] } {
  const written: Record<string, unknown> = {};
  const drafts: Draft[] = [];
  const known = [...ROOT_KEYS, ...PART_NAMES];
  for (const key of root.members.keys()) {
    if (!known.includes(key)) drafts.push({ issue: unknownKey([key], known), atKey: true });
  }
  for (const name of PART_NAMES) {
    const member = root.members.get(name);
    if (!member) {
      if (OPTIONAL_PARTS.has(name)) written[name] = EMPTY[name];
      else drafts.push({ issue: missing([name], `"${name}": { … }`) });
      continue;
    }
    const r = PARTS[name].safeParse(toValue(member.value));
    if (r.success) written[name] = r.data;
    else for (const z of r.error.issues) drafts.push(...fromZod(z, name, PARTS[name], root));
  }
  return { written: written as Partial<Written>, drafts };
}

const isWhole = (w: Partial<Written>): w is Written => PART_NAMES.every((name) => w[name] !== undefined);

const inFileOrder = (a: Issue, b: Issue): number => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);

/**
 * Reads a project file: JSON with comments and trailing commas, format version 1 or older. Every problem is reported
 * at once, each with code, JSON pointer, line, column, what was found and what would be right. There is a value exactly
 * when there is no error; notes (a value without source, an older format) come along with it.
 */
export function read(text: string): Outcome<Project> {
  const { root, issues: opened, place } = openText(text);
  if (!root) return { value: undefined, issues: opened };
  const { written, drafts } = readParts(root);
  const issues = [
    ...opened,
    ...drafts.map((d) => place(d.issue, d.atKey)),
    ...validate(root, written).map((issue) => place(issue)),
  ];
  if (hasErrors(issues) || !isWhole(written)) return { value: undefined, issues: issues.sort(inFileOrder) };
  const codes = bundleOf(written.basis.codes);
  if (!codes.ok) throw new Error('editions were validated but do not make a bundle');
  const { project, note } = complete(written, codes.bundle);
  issues.push(...note.issues.map((issue) => place(issue)));
  return { value: project, issues: issues.sort(inFileOrder) };
}

/**
 * Fills line and column of issues from later stages by their JSON pointers: the value itself, or its nearest ancestor
 * in the file. Issues that have a place keep it.
 */
export function locate(text: string, issues: readonly Issue[]): readonly Issue[] {
  if (issues.every((i) => i.line !== undefined)) return issues;
  const { root, place } = openText(text);
  return root ? issues.map((i) => (i.line === undefined ? place(i) : i)) : issues;
}
