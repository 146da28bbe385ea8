/** Beam ends, ledger fasteners and headers agree with the rest of the file. */
import type { Issue } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import { fault } from '../issues.js';
import type { WrittenCover } from '../schema/cover.js';

type Beam = WrittenCover['beams'][number];
type Ledger = WrittenCover['ledgers'][number];
type Place = readonly (string | number)[];

export const heldByHouse = (b: Beam): boolean => b.ends?.start !== undefined || b.ends?.end !== undefined;

/** How far beams of one roof may differ in length where the house holds an end: one runs into the wall, one stops at it. */
export const INTO_WALL = 8;

/** One post is enough only where the house holds an end. */
export function endIssues(b: Beam, path: Place): Issue[] {
  const issues: Issue[] = [];
  if (b.posts.length + (b.shared?.length ?? 0) < 2 && !heldByHouse(b))
    issues.push(
      fault(
        'beam-needs-two-posts',
        [...path, 'posts'],
        `beam ${b.mark} stands on fewer than two posts and no end of it is held by the house`,
        'two posts, shared ones counted, or "ends" that say how the house holds it',
      ),
    );
  return issues;
}

export function fasteningIssues(l: Ledger, path: Place): Issue[] {
  const f = l.fastening;
  if (!f) return [];
  const issues: Issue[] = [];
  const at = [...path, 'fastening'];
  if (f.rows.some((r, i) => i > 0 && r <= f.rows[i - 1]!))
    issues.push(
      fault('contradiction', [...at, 'rows'], 'the rows are not in order from the top down', '["2 in", "8 in"]'),
    );
  if (f.into !== 'band') return issues;
  for (const key of ['bottom', 'top'] as const)
    if (f.framing[key] === undefined)
      issues.push(fault('missing', [...at, 'framing', key], `the ${key} of the floor band is missing`, '"9 ft 2 in"'));
  const { bottom, top } = f.framing;
  if (bottom !== undefined && top !== undefined && bottom >= top)
    issues.push(
      fault(
        'contradiction',
        [...at, 'framing', 'top'],
        'the top of the floor band is not above its bottom',
        `more than ${formatLength(bottom)}`,
      ),
    );
  return issues;
}
