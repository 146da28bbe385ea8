/** Mandatory questions that do not arise here, each with its reason: a reviewer sees that none was forgotten. */
import type { CheckResult } from '../../checks/contract.js';
import { markList } from '../../report/path/table.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

/** Results to list: mandatory, answered with not applicable and a reason, and without numbers shown elsewhere. */
const notAsked = (results: readonly CheckResult[]): readonly CheckResult[] =>
  // Conditions for a professional are notes to the owner, on the cover sheet.
  results.filter(
    (r) => r.mandatory && r.status === 'not-applicable' && r.ratio === 0 && r.check !== 'engineer-triggers',
  );

/** One row for each question and reason; parts with the same reason share it. */
export function notAskedTable(ctx: SheetContext): Block {
  const groups = new Map<string, CheckResult[]>();
  for (const r of notAsked(ctx.input.results)) {
    const key = `${r.title}|${r.note}`;
    const known = groups.get(key);
    if (known) known.push(r);
    else groups.set(key, [r]);
  }
  // Questions of the same parts with the same reason stand on one row: sliding, overturning and depth of one footing.
  const rows = new Map<string, { titles: string[]; of: string; why: string }>();
  for (const group of groups.values()) {
    const { title, note } = group[0]!;
    const of = markList(group.map((g) => g.subject));
    const row = rows.get(`${of}|${note}`);
    if (row) row.titles.push(title);
    else rows.set(`${of}|${note}`, { titles: [title], of, why: note });
  }
  return {
    kind: 'table',
    title: 'Not asked here, and why',
    columns: [
      { head: 'Question', max: 22 * ctx.style.note },
      { head: 'Of', max: 10 * ctx.style.note },
      { head: 'Why', grow: true },
    ],
    rows: [...rows.values()].map((r): TableRow => [r.titles.join('; '), r.of, r.why]),
  };
}
