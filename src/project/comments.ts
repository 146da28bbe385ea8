/** Comments of reviewers from a file of their own: the list that also stands at `submittal.comments` of a project file. */
import type { Outcome } from '../base/issue.js';
import { completeSubmittal } from './complete/submittal.js';
import { fault, fromZod } from './issues.js';
import type { ReviewComment } from './model.js';
import { openText } from './open.js';
import { submittal } from './schema/submittal.js';
import { toValue } from './text/node.js';

const EXPECTED = '[{ "number": "1", "text": "…", "answer": "…", "sheet": "S-601", "place": "row J1" }]';

/** Reads the bare list, with comments and trailing commas allowed; places of issues are in that file. */
export function readComments(text: string): Outcome<readonly ReviewComment[]> {
  if (!text.trimStart().startsWith('['))
    return { value: undefined, issues: [fault('wrong-type', [], 'a list of comments should stand here', EXPECTED)] };
  // Read as the part of a project it would be; the wrapping stands on the first line, so lines stay those of the file.
  const { root, issues, place } = openText(`{ "eavewright": 1, "submittal": { "comments": ${text} } }`);
  const part = root?.members.get('submittal')?.value;
  if (!root || !part) return { value: undefined, issues };
  const r = submittal.safeParse(toValue(part));
  if (r.success) return { value: completeSubmittal(r.data).comments, issues };
  const drafts = r.error.issues.flatMap((z) => fromZod(z, 'submittal', submittal, root));
  return { value: undefined, issues: [...issues, ...drafts.map((d) => place(d.issue, d.atKey))] };
}
