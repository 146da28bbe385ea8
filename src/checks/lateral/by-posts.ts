/** Side load held by the posts: knee braces, or posts fixed at their feet. */
import { notEvaluated } from '../finding.js';
import { ALONG, SWAY_CLAUSE, type SwaySystem } from './system.js';

const pending = (what: string): SwaySystem => ({
  answer: (axis) =>
    notEvaluated(
      SWAY_CLAUSE,
      `Side load ${ALONG[axis]} is to be held by ${what}; that path is not worked out yet. Needed: the resisting frame, its joints and its footings.`,
    ),
});

export const byKneeBraces = pending('knee braces');
export const byFixedPosts = pending('posts fixed at their feet');
