import type { Issue } from '../../base/issue.js';
import { contains } from '../../base/plane.js';
import { error } from '../issues.js';
import type { StructureRule } from './contract.js';
import { postOutline } from './plan.js';

/** Posts and roofs stay on the lot. Yards and setbacks are the zoning check's affair. */
export const lotLines: StructureRule = ({ structure, site }) => {
  const lot = site.lotCorners;
  if (lot === undefined || lot.length < 3) return [];
  const issues: Issue[] = [];
  for (const m of structure.members) {
    if (m.role === 'post' && !postOutline(m).every((p) => contains(lot, p)))
      issues.push(
        error('post-outside-lot', m.path, 'The post stands outside the lot.', {
          subject: m.mark,
          expected: 'a place inside the lot lines',
        }),
      );
  }
  for (const r of structure.roofs) {
    const corners = [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }];
    if (!corners.every((p) => contains(lot, p)))
      issues.push(
        error('roof-outside-lot', r.path, 'The roof reaches over a lot line.', {
          subject: r.mark,
          expected: 'a roof inside the lot lines',
        }),
      );
  }
  return issues;
};
