/** Check results whose answer or ratio is no longer what it was. */
import type { CheckResult, Status } from '../checks/contract.js';

export interface ResultChange {
  readonly id: string;
  readonly title: string;
  readonly subject: string;
  readonly before?: { readonly status: Status; readonly ratio: number };
  readonly after?: { readonly status: Status; readonly ratio: number };
}

/** A ratio is printed with two places: less than that is the same number. */
const SAME = 0.005;

const answer = (r: CheckResult) => ({ status: r.status, ratio: r.ratio });

/** Results that differ; what changed its status comes first. */
export function changedResults(before: readonly CheckResult[], after: readonly CheckResult[]): ResultChange[] {
  // A version that could not be checked says nothing of what changed.
  if (before.length === 0 || after.length === 0) return [];
  const old = new Map(before.map((r) => [r.id, r]));
  const now = new Map(after.map((r) => [r.id, r]));
  const out: ResultChange[] = [];
  for (const id of new Set([...now.keys(), ...old.keys()])) {
    const [a, b] = [old.get(id), now.get(id)];
    if (a && b && a.status === b.status && Math.abs(a.ratio - b.ratio) < SAME) continue;
    const { title, subject } = (b ?? a)!;
    out.push({ id, title, subject, ...(a && { before: answer(a) }), ...(b && { after: answer(b) }) });
  }
  const turned = (c: ResultChange): number => (c.before?.status === c.after?.status ? 1 : 0);
  return out.sort((a, b) => turned(a) - turned(b));
}
