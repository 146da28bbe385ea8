/**
 * Beams that stand on a post of another beam: a corner post under two beams. Their undersides must be level there and
 * the post's centre on both lines. Where both beams cover the same wood of the post they are mitred: each has half of it.
 */
import { area, clipConvex } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { SharedPost } from '../../project/model.js';
import { error } from '../issues.js';
import { type BeamPlan, type Kit, onBeam } from '../kit.js';
import type { Member } from '../model.js';
import { beamOutline, postOutline } from '../rules/plan.js';
import { feet, inches } from '../text.js';
import type { BeamPart } from './beams.js';
import type { PostPart } from './posts.js';

/** How far a shared post's centre may lie from the point its second beam names, inches. */
const OFF = 0.5;
/** How far apart the two undersides may be: what a shim takes up, inches. Common practice, no source. */
const SHIM = 1 / 8;

const common = (p: readonly Vec2[], q: readonly Vec2[]): number => {
  const both = clipConvex(p, q);
  return both.length < 3 ? 0 : area(both);
};

/** Area of a post's top that a beam has: what it covers, less half of what another beam covers too. */
export function shareOfPost(beam: Member, others: readonly Member[], post: Member): number {
  const top = postOutline(post);
  const mine = clipConvex(top, beamOutline(beam));
  if (mine.length < 3) return 0;
  return others.reduce((left, o) => left - common(mine, beamOutline(o)) / 2, area(mine));
}

interface Stage {
  readonly beamParts: ReadonlyMap<string, readonly BeamPart[]>;
  readonly postParts: ReadonlyMap<string, PostPart>;
}

function check(plan: BeamPlan, shared: SharedPost, index: number, stage: Stage, kit: Kit): void {
  const path = `${plan.line.path}/shared/${index}`;
  const post = stage.postParts.get(shared.post)?.member;
  const parts = stage.beamParts.get(plan.line.mark);
  if (plan.line.posts.some((p) => p.mark === shared.post) || post === undefined) {
    if (kit.project.cover.beams.some((b) => b.posts.some((p) => p.mark === shared.post)) && post === undefined) return;
    kit.issues.push(
      error('shared-post-unknown', `${path}/post`, 'No other beam has this post.', {
        subject: plan.line.mark,
        found: shared.post,
        expected: 'the mark of a post that is listed with another beam',
      }),
    );
    return;
  }
  const at = onBeam(plan, shared.at);
  const off = Math.hypot(at.x - post.start.x, at.y - post.start.y);
  if (off > OFF)
    kit.issues.push(
      error('shared-post-off-beam', `${path}/at`, `Post ${shared.post} does not stand under this point of the beam.`, {
        subject: plan.line.mark,
        found: `${inches(off)} away`,
        expected: 'the centre of the post',
      }),
    );
  const under = parts && parts[0]!.member.start.z - plan.section.depth / 2;
  if (under !== undefined && Math.abs(under - post.end.z) > SHIM)
    kit.issues.push(
      error('beams-at-two-heights-on-post', path, `The two beams on post ${shared.post} are not level underneath.`, {
        subject: plan.line.mark,
        found: feet(under),
        expected: `${feet(post.end.z)}: another bearing height, or another depth of beam`,
      }),
    );
}

export function checkSharedPosts(stage: Stage, kit: Kit): void {
  for (const plan of kit.beams.values()) {
    if (!stage.beamParts.has(plan.line.mark)) continue;
    for (const [i, shared] of (plan.line.shared ?? []).entries()) check(plan, shared, i, stage, kit);
  }
}
