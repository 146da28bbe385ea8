import type { Issue } from '../../base/issue.js';
import { formatSlope } from '../../base/quantity/index.js';
import { warning } from '../issues.js';
import type { ProjectRule } from './contract.js';

/** Slabs and grade fall away from the house and stay below the floor. */
export const water: ProjectRule = ({ patio }) => {
  const issues: Issue[] = [];
  for (const s of patio.slabs) {
    if (s.state === 'removed') continue;
    if (s.fall <= 0)
      issues.push(
        warning(
          'slab-slopes-to-house',
          `${s.path}/fall`,
          s.fall < 0
            ? 'The slab falls towards the house: water runs to the wall.'
            : 'The slab is level: water stands on it.',
          {
            subject: s.mark,
            found: formatSlope(s.fall),
            expected: 'away from the house, e.g. "1/4 in/ft"',
          },
        ),
      );
    if (s.topAtHouse > 0)
      issues.push(
        warning('slab-above-floor', `${s.path}/topAtHouse`, 'The slab stands above the finished floor at the house.', {
          subject: s.mark,
          expected: 'below the floor, e.g. "-4 in"',
        }),
      );
  }
  if (patio.grade.fall < 0)
    issues.push(
      warning('grade-slopes-to-house', '/patio/grade/fall', 'The ground falls towards the house.', {
        found: formatSlope(patio.grade.fall),
        expected: 'away from the house',
      }),
    );
  return issues;
};
