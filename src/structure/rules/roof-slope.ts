import type { Issue } from '../../base/issue.js';
import { formatPitch } from '../../base/quantity/index.js';
import { findCovering } from '../../catalog/index.js';
import { error } from '../issues.js';
import type { ProjectRule } from './contract.js';

/** Steepest roof the program places: 12 in 12. Beyond it rafters are nearly walls. */
const STEEPEST = Math.PI / 4;

export const pitchInRange: ProjectRule = ({ cover }) =>
  cover.roofs
    .filter((roof) => !(roof.pitch > 0 && roof.pitch <= STEEPEST + 1e-9))
    .map((roof) =>
      error('pitch-out-of-range', `${roof.path}/pitch`, "The pitch is outside the program's range.", {
        subject: roof.mark,
        found: roof.pitchText,
        expected: 'above 0 and up to "12/12"',
      }),
    );

/** No flatter than the covering allows. */
export const coveringSlope: ProjectRule = ({ cover }) =>
  cover.roofs.flatMap((roof): Issue[] => {
    const covering = findCovering(roof.finish.covering);
    // A pitch of exactly the least slope passes whatever the last digit of its tangent.
    if (covering === undefined || 12 * Math.tan(roof.pitch) >= covering.minSlope - 1e-9) return [];
    return [
      error('low-slope-covering', `${roof.path}/pitch`, `${covering.name} must not be laid this flat.`, {
        subject: roof.mark,
        found: formatPitch(roof.pitch),
        expected: `${covering.minSlope}/12 or steeper (${covering.source}), or another covering`,
      }),
    ];
  });
