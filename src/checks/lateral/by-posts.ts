/**
 * Side load held by the posts: knee braces, or posts held at their feet. The frame is in the effects (analysis/idealise.ts);
 * members, joints and footings answer for their forces in their own checks. Here: that the system is there on every line,
 * that the roof does not move too far, and that the weight on the leaning posts does not matter.
 */
import type { Recorder } from '../../base/trace.js';
import type { CheckContext, Finding } from '../contract.js';
import { failed, measured, notEvaluated, RATIO_CAP } from '../finding.js';
import { bracedPosts, heldPosts, holdsIn, membersById } from './holding.js';
import { overloadOf, recordOverload } from './p-delta.js';
import { type Moved, movedMost, recordMoved } from './roof-drift.js';
import { ALONG, type Axis, SWAY_CLAUSE, type SwaySystem } from './system.js';

/** Beam lines none of whose posts holds. */
const linesWithout = (ctx: CheckContext, holding: ReadonlySet<string>): readonly string[] =>
  ctx.project.cover.beams.filter((b) => !b.posts.some((p) => holding.has(p.mark))).map((b) => b.mark);

/** Parts that press on the house in this direction, whatever the file names: the house takes their share. */
function leansOnHouse(ctx: CheckContext, axis: Axis): string | undefined {
  const members = membersById(ctx);
  const walls = new Set(ctx.structure.walls.map((w) => w.id));
  for (const j of ctx.structure.joints) {
    const upper = members.get(j.ties[0]!.part);
    if (!upper) continue;
    const lower = j.ties.at(-1)!.part;
    const onHouse = walls.has(lower) || members.get(lower)?.role === 'ledger';
    if (!onHouse || upper.role === 'ledger') continue;
    if (holdsIn(axis, upper.end.x - upper.start.x, upper.end.y - upper.start.y)) return upper.mark;
  }
  return undefined;
}

function answerBy(
  what: string,
  missing: string,
  holding: (ctx: CheckContext, axis: Axis) => ReadonlySet<string>,
): SwaySystem {
  return {
    answer(axis, ctx, rec): Finding {
      if (ctx.effects.failure !== undefined)
        return notEvaluated(SWAY_CLAUSE, `The frame could not be worked out: ${ctx.effects.failure}.`);
      const leans = leansOnHouse(ctx, axis);
      if (leans !== undefined)
        return notEvaluated(
          SWAY_CLAUSE,
          `${leans} runs to the house and pushes on it ${ALONG[axis]}, so posts alone do not hold that direction: name "house" for it.`,
        );
      const without = linesWithout(ctx, holding(ctx, axis));
      if (without.length > 0)
        return failed(
          SWAY_CLAUSE,
          `Side load ${ALONG[axis]} is to be held by ${what}, but ${without.join(', ')} has none in that direction: ${missing}.`,
        );
      const moved = movedMost(ctx, axis);
      if (!moved) return notEvaluated(SWAY_CLAUSE, `No load case pushes the roof ${ALONG[axis]}.`);
      return judge(axis, ctx, moved, rec);
    },
  };
}

function judge(axis: Axis, ctx: CheckContext, moved: Moved, rec?: Recorder): Finding {
  recordMoved(ctx, moved, rec);
  const overload = overloadOf(ctx, axis);
  recordOverload(overload, rec);
  const tooLoose = overload.ratio > moved.ratio;
  return measured(
    {
      demand: tooLoose ? overload.theta : moved.move,
      capacity: tooLoose ? overload.limit : moved.limit,
      unit: tooLoose ? '' : 'in',
      combination: moved.combination.id,
      clause: tooLoose ? overload.clause : `${SWAY_CLAUSE}; drift limit: common practice, no source`,
      formula: tooLoose ? 'θ / limit' : 'Δ / limit',
      ratio: Math.min(Math.max(moved.ratio, overload.ratio), RATIO_CAP),
      note: 'slip of the joints and yielding of the soil are not in the movement',
      remedy: `The posts are too loose ${ALONG[axis]}: ${moved.post} moves ${moved.move.toFixed(2)} in where ${moved.limit.toFixed(2)} in is the limit, stability coefficient ${overload.theta.toFixed(3)}. Use thicker posts, larger knee braces or more posts.`,
    },
    rec,
  );
}

export const byKneeBraces = answerBy(
  'knee braces',
  'add knee braces to its posts, or to a cross member between posts',
  (ctx, axis) => bracedPosts(ctx, axis),
);
export const byFixedPosts = answerBy(
  'posts fixed at their feet',
  'set "base" of its posts to "embedded", or to "fixed" with a base of published moment',
  (ctx) => heldPosts(ctx),
);
