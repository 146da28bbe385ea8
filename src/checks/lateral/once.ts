/** The links of a load path are asked by themselves and again by the sway checks: worked out once for the same context. */
import type { Check, CheckContext, Finding } from '../contract.js';

export function once(check: Check): Check {
  const made = new WeakMap<CheckContext, Map<string, Finding>>();
  return {
    ...check,
    run(subject, ctx, rec) {
      if (rec) return check.run(subject, ctx, rec);
      const known = made.get(ctx) ?? new Map<string, Finding>();
      made.set(ctx, known);
      let finding = known.get(subject.id);
      if (!finding) {
        finding = check.run(subject, ctx);
        known.set(subject.id, finding);
      }
      return finding;
    },
  };
}
