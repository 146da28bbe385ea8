import { formatLength } from '../../base/quantity/index.js';
import type { Structure } from '../../structure/model.js';
import { byMark } from '../line.js';
import type { ScopeInput } from './model.js';

export const len = (x: number): string => formatLength(x);

/** Spacings and thicknesses: never split into feet. */
export const inch = (x: number): string => formatLength(x, { style: 'inches' });

/** `F1, F2, F3`. */
export const list = (marks: readonly string[]): string => [...new Set(marks)].sort(byMark).join(', ');

/** Lines bought in some groups, as `14 sheets 7/16 OSB …; 2 rolls …`. */
export const bought = ({ takeoff }: ScopeInput, ...groups: readonly string[]): string =>
  takeoff.lines
    .filter((l) => groups.includes(l.group))
    .map((l) => `${l.buy.quantity} ${l.buy.unit} ${l.item}`)
    .join('; ');

/** Members of some roles, grouped by what is alike: `4 posts 6x6 …`. */
export function alike(
  structure: Structure,
  ...roles: readonly string[]
): { label: string; marks: string; count: number }[] {
  const groups = new Map<string, { marks: string[]; count: number }>();
  for (const m of structure.members) {
    if (m.state !== 'new' || !roles.includes(m.role)) continue;
    const g = groups.get(m.section.label) ?? { marks: [], count: 0 };
    groups.set(m.section.label, { marks: [...g.marks, m.mark], count: g.count + 1 });
  }
  return [...groups].map(([label, g]) => ({ label, marks: list(g.marks), count: g.count }));
}
