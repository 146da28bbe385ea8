/** Runs every check on every subject. Results come in the registry's order, subjects in the structure's. */
import type { Recorder } from '../base/trace.js';
import type { Check, CheckContext, CheckResult, Finding, Subject } from './contract.js';
import { notEvaluated } from './finding.js';
import { mandatoryOf } from './mandatory.js';
import { CHECKS } from './registry.js';

export const resultId = (check: string, subject: string): string => `${check}:${subject}`;

const allFinite = (f: Finding): boolean =>
  Number.isFinite(f.demand) && Number.isFinite(f.capacity) && Number.isFinite(f.ratio);

function runOne(check: Check, subject: Subject, ctx: CheckContext, mandatory: boolean): CheckResult {
  let finding = check.run(subject, ctx);
  // A result that is no number decides nothing; it must never pass for an answer.
  if (!allFinite(finding)) finding = notEvaluated(finding.clause, 'no finite number came out of this check');
  return {
    id: resultId(check.id, subject.id),
    check: check.id,
    title: check.title,
    subject: subject.id,
    path: subject.path,
    mandatory,
    ...finding,
  };
}

/** Every check on every subject; a mandatory check that found nothing to look at, or does not exist, says so itself. */
export function runChecks(ctx: CheckContext, checks: readonly Check[] = CHECKS): CheckResult[] {
  const results: CheckResult[] = [];
  const mandatory = mandatoryOf(ctx.project);
  const answered = new Set<string>();
  for (const check of checks) {
    for (const subject of check.subjects(ctx)) {
      answered.add(check.id);
      results.push(runOne(check, subject, ctx, mandatory.has(check.id)));
    }
  }
  for (const id of mandatory) {
    if (answered.has(id)) continue;
    const known = checks.find((c) => c.id === id);
    results.push({
      id: resultId(id, 'cover'),
      check: id,
      title: known?.title ?? id,
      subject: 'cover',
      path: '/cover',
      mandatory: true,
      ...notEvaluated('', known ? 'nothing was found to check' : 'this check is not part of the program'),
    });
  }
  return results;
}

/** Runs one result again with a recorder; false when no such check and subject exist. */
export function rerun(id: string, ctx: CheckContext, rec: Recorder, checks: readonly Check[] = CHECKS): boolean {
  const at = id.indexOf(':');
  const check = checks.find((c) => c.id === id.slice(0, at));
  const subject = check?.subjects(ctx).find((s) => s.id === id.slice(at + 1));
  if (!check || !subject) return false;
  check.run(subject, ctx, rec);
  return true;
}
