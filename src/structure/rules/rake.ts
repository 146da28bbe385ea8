import { warning } from '../issues.js';
import { inches } from '../text.js';
import type { ProjectRule } from './contract.js';

/** Longest overhang past the end frame that sheathing and barge board carry alone. Common practice, no source. */
export const RAKE_ALONE = 12;

/** A rake that reaches farther needs outlookers. */
export const rakeCarried: ProjectRule = ({ cover }) =>
  cover.roofs
    .filter((r) => r.rakeFraming === undefined && r.rake > RAKE_ALONE + 1e-6)
    .map((r) =>
      warning(
        'rake-not-carried',
        `${r.path}/rake`,
        'Nothing but the sheathing carries the overhang past the end frames (limit: common practice, no source).',
        {
          subject: r.mark,
          found: inches(r.rake),
          expected: `at most ${inches(RAKE_ALONE)}, or "rakeFraming" with outlookers`,
        },
      ),
    );
