import type { Issue } from '../base/issue.js';
import { fault } from './issues.js';
import type { ObjectNode } from './text/node.js';
import { parseText } from './text/parse.js';
import { placeIssue, placer } from './text/place.js';
import { upgrade } from './upgrade/index.js';

export interface Opened {
  /** Root in the present format; undefined when the text cannot be gone on with. */
  readonly root: ObjectNode | undefined;
  /** Placed. */
  readonly issues: readonly Issue[];
  readonly place: (issue: Issue, atKey?: boolean) => Issue;
}

/** Text → tree in the present format, with what is wrong with the text itself. */
export function openText(text: string): Opened {
  const parsed = parseText(text);
  const at = placer(text);
  const faults = parsed.faults.map(
    (f): Issue => ({ ...fault(f.code, f.path, f.message, f.expected, f.found), ...at(f.at) }),
  );
  const plain = (issue: Issue): Issue => ({ ...issue, ...at(0) });
  // After a slip of syntax the tree is a guess: judging its contents would bury the slip under its consequences.
  const broken = faults.some((f) => f.code === 'syntax' || f.code === 'too-large' || f.code === 'too-deep');
  if (!parsed.root || broken) return { root: undefined, issues: faults, place: plain };
  const upgraded = upgrade(parsed.root);
  const tree = parsed.root;
  const place = (issue: Issue, atKey = false) => placeIssue(issue, text, tree, at, atKey);
  return { root: upgraded.root, issues: [...faults, ...upgraded.issues.map((i) => place(i))], place };
}
