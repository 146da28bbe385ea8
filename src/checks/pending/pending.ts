/**
 * Checks that the program does not make yet. Each says when the question arises at all, why it has no answer, and what
 * will be needed for one; until then it keeps a set from being issued. None of them ever passes.
 */
import type { Check, CheckContext, Finding, Subject } from '../contract.js';
import { notApplicable, notEvaluated } from '../finding.js';

export interface Pending {
  readonly id: string;
  readonly title: string;
  readonly clause: string;
  /** What is missing, in one sentence. */
  readonly reason: string | ((ctx: CheckContext) => string);
  /** What the answer will need: `roof diaphragm, posts, their bases`. */
  readonly needs: string;
  /** Why the question does not arise here; undefined when it does. */
  unless?(ctx: CheckContext, subject: Subject): string | undefined;
  /** A definite wrong that needs no calculation. */
  wrong?(ctx: CheckContext, subject: Subject): Finding | undefined;
  subjects?(ctx: CheckContext): readonly Subject[];
}

const COVER: readonly Subject[] = [{ id: 'cover', path: '/cover' }];

export const roofSubjects = (ctx: CheckContext): readonly Subject[] =>
  ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path }));

export const pendingCheck = (p: Pending): Check => ({
  id: p.id,
  title: p.title,
  subjects: p.subjects ?? (() => COVER),
  run(subject, ctx) {
    const moot = p.unless?.(ctx, subject);
    if (moot !== undefined) return notApplicable(p.clause, moot);
    const reason = typeof p.reason === 'string' ? p.reason : p.reason(ctx);
    return p.wrong?.(ctx, subject) ?? notEvaluated(p.clause, `${reason} Needed: ${p.needs}.`);
  },
});
