/** Ends of beams that the house holds: a new post inside the wall under the end, or the end fixed to the wall's face. */
import type { BeamEnd, PostFoot } from '../../project/model.js';
import { SHORTEST_POST } from '../constants.js';
import type { Ground } from '../ground.js';
import { error } from '../issues.js';
import type { Meeting } from '../joints.js';
import { type BeamPlan, type Kit, onBeam } from '../kit.js';
import type { Footing, Member, WallPlaced } from '../model.js';
import { woodAcross } from '../sections.js';
import { inches } from '../text.js';
import type { BeamPart } from './beams.js';
import { alongOfEnd, endsOf } from './holds.js';
import { type PostPart, placePost } from './posts.js';

type PostEnd = Extract<BeamEnd, { kind: 'post-in-wall' }>;

/** An end as it stands: where along its beam it bears, and the post and footing it brings along. */
export interface EndPart {
  readonly end: BeamEnd;
  /** Along the beam line, inches: centre of the post, or the very end. */
  readonly along: number;
  readonly post: Member | undefined;
  readonly footing: Footing | undefined;
}

/** A post on the house's foundation: no footing of its own, its end on the concrete's top. */
function onFoundation(
  e: PostEnd,
  foot: Extract<PostFoot, { kind: 'foundation' }>,
  plan: BeamPlan,
  along: number,
  underside: number,
  kit: Kit,
): Member | undefined {
  const section = kit.section(e.section, `${e.path}/section`);
  if (!section) return undefined;
  const length = underside - foot.top;
  if (!(length >= SHORTEST_POST)) {
    kit.issues.push(
      error(
        'post-too-short',
        e.path,
        `Between the foundation and ${plan.line.mark} the post would be ${inches(length)} long.`,
        {
          subject: e.mark,
          found: inches(length),
          expected: `${inches(SHORTEST_POST)} or more`,
        },
      ),
    );
    return undefined;
  }
  const at = onBeam(plan, along);
  return {
    id: e.mark,
    mark: e.mark,
    role: 'post',
    section,
    start: { ...at, z: foot.top },
    end: { ...at, z: underside },
    up: { x: -plan.dir.y, y: plan.dir.x, z: 0 },
    length,
    state: 'new',
    strips: [],
    notch: 0,
    cuts: ['square both ends'],
    unbraced: { top: length, bottom: length },
    path: e.path,
  };
}

export function placeEnds(plan: BeamPlan, underside: number, ground: Ground, kit: Kit): EndPart[] {
  return endsOf(plan).flatMap(([end, at]): EndPart[] => {
    const along = alongOfEnd(plan, end, at, kit);
    if (end.kind === 'on-wall') return [{ end, along, post: undefined, footing: undefined }];
    if (end.foot.kind === 'foundation') {
      const post = onFoundation(end, end.foot, plan, along, underside, kit);
      return post ? [{ end, along, post, footing: undefined }] : [];
    }
    const { footing, footingMark } = end.foot;
    const spec = { mark: end.mark, at: along, section: end.section, footing, footingMark, path: end.path };
    const part: PostPart | undefined = placePost(spec, plan, underside, ground, kit);
    return part ? [{ end, along, post: part.member, footing: part.footing }] : [];
  });
}

/** Where these ends meet the house, in the order the load comes down. */
export function endMeetings(
  plan: BeamPlan,
  parts: readonly BeamPart[],
  ends: readonly EndPart[],
  walls: readonly WallPlaced[],
): Meeting[] {
  return ends.flatMap(({ end, along, post, footing }): Meeting[] => {
    const wall = walls[end.wall];
    const part = along < plan.length / 2 ? parts[0] : parts[parts.length - 1];
    if (!wall || !part) return [];
    const none = { length: 0, width: 0 };
    const beam = part.member;
    if (!post) {
      const at = { ...onBeam(plan, along), z: beam.start.z };
      return [{ kind: 'beam-to-wall', at, parts: [beam.id, wall.id], contact: none, path: end.path }];
    }
    const width = woodAcross(plan.section, post.section.depth);
    return [
      {
        kind: 'beam-to-wall-post',
        at: post.end,
        parts: [beam.id, post.id],
        contact: { length: post.section.width, width },
        path: end.path,
      },
      footing
        ? {
            kind: 'post-to-footing',
            at: post.start,
            parts: [post.id, footing.id],
            contact: { length: post.section.d, width: post.section.b },
            path: end.path,
          }
        : {
            kind: 'post-to-house',
            at: post.start,
            parts: [post.id, wall.id],
            contact: { length: post.section.d, width: post.section.b },
            path: end.path,
          },
    ];
  });
}
