import type { Issue } from '../../base/issue.js';
import { warning } from '../issues.js';
import { inches } from '../text.js';
import type { StructureRule } from './contract.js';

/** How much wider than its post a beam may be and still fit a stock cap, inches. Common practice, no source. */
const CAP_TOLERANCE = 1 / 8;

/** Posts as wide as the beam on them, piers as wide as the post. */
export const postFit: StructureRule = ({ structure }) => {
  const issues: Issue[] = [];
  const members = new Map(structure.members.map((m) => [m.id, m]));
  const footings = new Map(structure.footings.map((f) => [f.id, f]));
  const told = new Set<string>();
  for (const j of structure.joints) {
    const upper = members.get(j.ties[0]!.part);
    const lower = j.ties[1]!.part;
    if (upper === undefined || told.has(`${j.kind}${lower}`)) continue;
    if (j.kind === 'beam-to-post' || j.kind === 'beam-to-wall-post') {
      const post = members.get(lower)!;
      if (upper.section.width <= post.section.depth + CAP_TOLERANCE) continue;
      told.add(`${j.kind}${lower}`);
      issues.push(
        warning(
          'post-narrower-than-beam',
          post.path,
          `Beam ${upper.mark} (${inches(upper.section.width)}) is wider than the post under it.`,
          {
            subject: post.mark,
            found: inches(post.section.depth),
            expected: `a post ${inches(upper.section.width)} wide or wider`,
          },
        ),
      );
    }
    if (j.kind === 'post-to-footing') {
      const f = footings.get(lower)!;
      const room = f.pierDiameter > 0 ? f.pierDiameter : f.size;
      const needs =
        f.pierDiameter > 0
          ? Math.hypot(upper.section.width, upper.section.depth)
          : Math.max(upper.section.width, upper.section.depth);
      if (room >= needs) continue;
      issues.push(
        warning('pier-narrower-than-post', f.path, `The post stands over the edge of its pier (${inches(room)}).`, {
          subject: f.mark,
          expected: `${inches(needs)} or more`,
        }),
      );
    }
  }
  return issues;
};
