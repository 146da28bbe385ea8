import type { Vec3 } from '../../base/vec.js';
import { SLACK } from '../constants.js';
import { error } from '../issues.js';
import { type BeamPlan, type Kit, onBeam, standsAt } from '../kit.js';
import type { Member } from '../model.js';
import { inches } from '../text.js';
import { holdsOf } from './holds.js';

/** What framing does to a beam: its top's height and the greatest spacing of what holds its top edge. */
export interface BeamLoad {
  readonly top: number;
  readonly spacing: number;
}

/** A piece of a beam line between ends and splices; `from`, `to` are distances along the line. */
export interface BeamPart {
  readonly member: Member;
  readonly from: number;
  readonly to: number;
}

/** How far a splice may lie from the centre of its post, inches: each end still gets its share of the post. */
const SPLICE_TOLERANCE = 0.5;

/** Greatest distance between held points of a stretch, overhangs included. */
const longestBay = (from: number, to: number, posts: readonly number[]): number => {
  const at = [from, ...posts.filter((p) => p > from && p < to), to];
  let most = 0;
  for (let i = 1; i < at.length; i++) most = Math.max(most, at[i]! - at[i - 1]!);
  return most;
};

/** A beam line as members: one, or one between each pair of splices, each simply cut over its post. */
export function placeBeam(plan: BeamPlan, load: BeamLoad, kit: Kit): BeamPart[] {
  const { line, section, length } = plan;
  checkPosts(plan, kit);
  const cuts = [...line.splices].sort((a, b) => a - b);
  const ends = [0, ...cuts, length];
  const posts = holdsOf(plan, kit);
  const z = load.top - section.depth / 2;
  const point = (along: number): Vec3 => ({ ...onBeam(plan, along), z });
  const parts: BeamPart[] = [];
  for (let i = 0; i + 1 < ends.length; i++) {
    const [from, to] = [ends[i]!, ends[i + 1]!];
    parts.push({
      from,
      to,
      member: {
        id: cuts.length === 0 ? line.mark : `${line.mark}-${i + 1}`,
        mark: line.mark,
        role: 'beam',
        section,
        start: point(from),
        end: point(to),
        up: { x: 0, y: 0, z: 1 },
        length: to - from,
        state: 'new',
        strips: [],
        notch: 0,
        cuts: ['square both ends'],
        unbraced: { top: load.spacing, bottom: longestBay(from, to, posts) },
        path: line.path,
      },
    });
  }
  return parts;
}

function checkPosts(plan: BeamPlan, kit: Kit): void {
  const { line, length } = plan;
  const centres = standsAt(line);
  if (holdsOf(plan, kit).length < 2)
    kit.issues.push(
      error(
        'beam-needs-two-posts',
        `${line.path}/posts`,
        'A beam is held in two places or more: posts, or the house.',
        {
          subject: line.mark,
          found: String(centres.length),
        },
      ),
    );
  for (const post of line.posts) {
    if (post.at >= -SLACK && post.at <= length + SLACK) continue;
    kit.issues.push(
      error('post-off-beam', `${post.path}/at`, `The post stands past the end of beam ${line.mark}.`, {
        subject: post.mark,
        found: inches(post.at),
        expected: `between 0" and ${inches(length)} from the beam's start`,
      }),
    );
  }
  for (let i = 1; i < centres.length; i++) {
    if (centres[i]! - centres[i - 1]! < 12)
      kit.issues.push(
        error('posts-too-close', `${line.path}/posts`, 'Two posts of one beam stand in one place.', {
          subject: line.mark,
          found: inches(centres[i]! - centres[i - 1]!),
          expected: '12" apart or more',
        }),
      );
  }
  for (const [i, splice] of line.splices.entries()) {
    const inside = splice > SLACK && splice < length - SLACK;
    if (inside && centres.some((at) => Math.abs(at - splice) <= SPLICE_TOLERANCE)) continue;
    kit.issues.push(
      error('splice-off-post', `${line.path}/splices/${i}`, 'A beam may be spliced over the centre of a post only.', {
        subject: line.mark,
        found: inches(splice),
        expected: `one of ${centres.map(inches).join(', ')}`,
      }),
    );
  }
}
