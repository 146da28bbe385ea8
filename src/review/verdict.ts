/** Issuable or preliminary. One failed, unanswered or out-of-range question is enough for PRELIMINARY. */
import { hasErrors, type Issue } from '../base/issue.js';
import type { CheckResult, Status } from '../checks/contract.js';
import type { Verdict } from './model.js';

const blocks = (r: CheckResult): boolean =>
  r.status === 'fail' || r.status === 'outside-scope' || (r.status === 'not-evaluated' && r.mandatory);

const WORDS: Readonly<Partial<Record<Status, string>>> = {
  fail: 'does not pass',
  'outside-scope': 'outside scope, needs a licensed professional',
  'not-evaluated': 'not evaluated',
};

/** Worst first: what fails, what is out of range, what is still open. */
const ORDER: readonly Status[] = ['fail', 'outside-scope', 'not-evaluated'];

/** `P1, P2, P3 and 4 more`. */
function list(names: readonly string[], most = 6): string {
  const unique = [...new Set(names)];
  const shown = unique.slice(0, most).join(', ');
  return unique.length > most ? `${shown} and ${unique.length - most} more` : shown;
}

/**
 * Decides from issues and results. `complete` is false when a stage could not run at all. Reasons are grouped, one per
 * check and status, each with the subjects it concerns and their common note.
 */
export function judge(issues: readonly Issue[], results: readonly CheckResult[], complete: boolean): Verdict {
  const reasons: string[] = [];
  for (const issue of issues) {
    if (issue.severity === 'error') reasons.push(`Project file ${issue.path || '/'}: ${issue.message}`);
  }
  if (!complete && !hasErrors(issues)) reasons.push('The structure could not be worked out, so nothing was checked.');
  for (const status of ORDER) {
    const groups = new Map<string, CheckResult[]>();
    for (const r of results) {
      if (r.status !== status || !blocks(r)) continue;
      const group = groups.get(r.check);
      if (group) group.push(r);
      else groups.set(r.check, [r]);
    }
    for (const group of groups.values()) {
      const first = group[0]!;
      // One note speaks for several subjects only when it is the same for all of them.
      const same = group.every((r) => r.note === first.note);
      const note =
        first.note && same
          ? `: ${first.note}`
          : same
            ? ''
            : ': each for its own reason, see the results and schedules.';
      reasons.push(`${first.title} (${list(group.map((r) => r.subject))}) ${WORDS[status] ?? status}${note}`);
    }
  }
  return { issuable: complete && reasons.length === 0, reasons };
}
