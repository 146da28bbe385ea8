/** The flow run twice: which results changed between the structure as designed and as measured. */
import type { CheckResult, Status } from '../../checks/contract.js';

export interface Rerun {
  readonly id: string;
  readonly title: string;
  readonly subject: string;
  readonly was: { readonly status: Status; readonly ratio: number };
  readonly now: { readonly status: Status; readonly ratio: number };
  readonly note: string;
}

/** A ratio that moved by less than this is the same to a reader. */
const MOVED = 0.01;

/** Results that answer otherwise or whose ratio moved, those that no longer pass first, then by the size of the move. */
export function rerunOf(designed: readonly CheckResult[], measured: readonly CheckResult[]): readonly Rerun[] {
  const before = new Map(designed.map((r) => [r.id, r]));
  const changed = measured.flatMap((r): Rerun[] => {
    const was = before.get(r.id);
    if (!was || (was.status === r.status && Math.abs(was.ratio - r.ratio) < MOVED)) return [];
    return [
      {
        id: r.id,
        title: r.title,
        subject: r.subject,
        was: { status: was.status, ratio: was.ratio },
        now: { status: r.status, ratio: r.ratio },
        note: r.note,
      },
    ];
  });
  const rank = (c: Rerun): number => (c.was.status !== c.now.status ? 1000 : 0) + Math.abs(c.now.ratio - c.was.ratio);
  return changed.sort((a, b) => rank(b) - rank(a) || (a.id < b.id ? -1 : 1));
}
