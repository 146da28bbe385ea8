import type { Issue } from '../../base/issue.js';
import { warning } from '../issues.js';
import { findPanel } from '../layers.js';
import { inches } from '../text.js';
import type { ProjectRule } from './contract.js';

/** Frames no farther apart than the panel's span rating. */
export const sheathingSpan: ProjectRule = ({ cover }) =>
  cover.roofs.flatMap((roof): Issue[] => {
    const panel = findPanel(roof.finish.sheathing);
    const { spacing } = roof.framing;
    if (panel === undefined || spacing <= panel.maxSpanEdgeSupported + 1e-9) return [];
    return [
      warning(
        'framing-spacing',
        `${roof.path}/framing/spacing`,
        `Frames at ${inches(spacing)} are farther apart than ${panel.name} sheathing (${panel.spanRating}) may span.`,
        {
          subject: roof.mark,
          found: inches(spacing),
          expected: `at most ${inches(panel.maxSpanEdgeSupported)} (${panel.source}), or a thicker panel`,
        },
      ),
    ];
  });
