import type { Issue } from '../../base/issue.js';
import { error } from '../issues.js';
import type { Footing } from '../model.js';
import { inches } from '../text.js';
import type { StructureRule } from './contract.js';

/** Clear distance between two footings in plan, negative when they overlap. */
function gap(a: Footing, b: Footing): number {
  const dx = Math.abs(a.at.x - b.at.x);
  const dy = Math.abs(a.at.y - b.at.y);
  const reach = (a.size + b.size) / 2;
  if (a.round && b.round) return Math.hypot(dx, dy) - reach;
  return Math.max(dx, dy) - reach;
}

export const footingsApart: StructureRule = ({ structure }) => {
  const issues: Issue[] = [];
  // Sorted along x, only neighbours within reach are compared: many posts stay cheap.
  const sorted = [...structure.footings].sort((p, q) => p.at.x - q.at.x);
  const most = sorted.reduce((m, f) => Math.max(m, f.size), 0);
  for (let i = 0; i < sorted.length; i++) {
    for (let j = i + 1; j < sorted.length && sorted[j]!.at.x - sorted[i]!.at.x < most; j++) {
      const between = gap(sorted[i]!, sorted[j]!);
      if (between >= 0) continue;
      const [a, b] = [sorted[i]!, sorted[j]!];
      issues.push(
        error('footing-overlap', a.path, `Footings ${a.mark} and ${b.mark} overlap by ${inches(-between)}.`, {
          subject: a.mark,
          expected: 'footings clear of each other',
        }),
      );
    }
  }
  return issues;
};
