/** Component wind on one outlooker: the rake lies in the roof's outermost zone, and only its overhang is counted. */
import { isOutOfScope, type OutOfScope } from '../../loads/codes/asce7/index.js';
import type { Joint, Member, RakePatch } from '../../structure/model.js';
import { effectiveArea, type TieLift } from './framing-wind.js';
import { componentPressure, type WindSource } from './zone-wind.js';

/** Effective wind area of an outlooker, in²: its overhang by the larger of its width and a third of the overhang. */
export const rakeArea = (p: RakePatch): number => effectiveArea(p.over, p.v1 - p.v0);

/** Lift at the end frame under suction, at the next frame under pressure from above; in the order of the joints. */
export function rakeLift(
  ctx: WindSource,
  member: Member,
  p: RakePatch,
  ties: readonly Joint[],
): TieLift | OutOfScope | undefined {
  const area = rakeArea(p);
  const up = componentPressure(ctx, member.roof ?? '', 'minus', area);
  const down = componentPressure(ctx, member.roof ?? '', 'plus', area);
  if (up === undefined || isOutOfScope(up)) return up;
  if (down === undefined || isOutOfScope(down)) return down;
  const slope = ctx.structure.surfaces.find((s) => s.id === p.surface)?.slope ?? 0;
  const plan = (p.over * (p.v1 - p.v0) * Math.cos(slope)) / 144;
  const lever = p.over / (2 * p.back);
  return {
    up: ties.map((j) =>
      j.ties[0]!.along < 1e-6 ? Math.max(0, down) * plan * lever : Math.max(0, -up) * plan * (1 + lever),
    ),
    area,
    pressure: up,
  };
}
