/** The results as plain data for scripts: stable keys, sensible rounding, never NaN. */
import type { Issue } from '../base/issue.js';
import type { CheckResult, Status } from '../checks/contract.js';
import type { Derived } from './derived.js';

/** Five figures: more than any limit is known to. */
export function rounded(x: number): number {
  if (!Number.isFinite(x)) return 0;
  const r = Number(x.toPrecision(5));
  // A rounding remainder is no number to print; neither is minus nothing.
  return Math.abs(r) < 1e-9 ? 0 : r;
}

export interface CheckJson {
  readonly issues: readonly Issue[];
  readonly results: readonly CheckResult[];
  readonly balance: readonly BalanceRow[];
  readonly issuable: boolean;
  readonly summary: Summary;
}

interface BalanceRow {
  readonly case: string;
  readonly applied: readonly [number, number, number];
  readonly reactions: readonly [number, number, number];
  readonly errorApplied: number;
  readonly errorReactions: number;
}

interface Summary {
  readonly counts: Readonly<Record<Status, number>>;
  /** Passing result nearest its limit. */
  readonly nearest: { readonly id: string; readonly ratio: number } | null;
  readonly reasons: readonly string[];
}

export const countByStatus = (results: readonly CheckResult[]): Readonly<Record<Status, number>> => {
  const counts: Record<Status, number> = {
    pass: 0,
    fail: 0,
    'not-applicable': 0,
    'not-evaluated': 0,
    'outside-scope': 0,
  };
  for (const r of results) counts[r.status]++;
  return counts;
};

/** Passing result with the greatest ratio; a prescriptive least size met exactly is near nothing. */
export const nearestToLimit = (results: readonly CheckResult[]): CheckResult | undefined =>
  results.reduce<CheckResult | undefined>(
    (best, r) => (r.status === 'pass' && !r.prescriptive && r.ratio > (best?.ratio ?? 0) ? r : best),
    undefined,
  );

export function checkJson(d: Derived): CheckJson {
  const nearest = nearestToLimit(d.results);
  return {
    issues: d.issues,
    results: d.results.map((r) => ({
      ...r,
      demand: rounded(r.demand),
      capacity: rounded(r.capacity),
      ratio: rounded(r.ratio),
    })),
    balance: (d.effects?.balance ?? []).map((b) => ({
      case: b.case,
      applied: [rounded(b.applied.x), rounded(b.applied.y), rounded(b.applied.z)],
      reactions: [rounded(b.reactions.x), rounded(b.reactions.y), rounded(b.reactions.z)],
      // Differences are rounding noise, which may differ between machines: only what matters is kept.
      errorApplied: Math.round(b.errorApplied * 1e6) / 1e6,
      errorReactions: Math.round(b.errorReactions * 1e6) / 1e6,
    })),
    issuable: d.verdict.issuable,
    summary: {
      counts: countByStatus(d.results),
      nearest: nearest ? { id: nearest.id, ratio: rounded(nearest.ratio) } : null,
      reasons: d.verdict.reasons,
    },
  };
}
