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
  const pulls = ties.map((j) =>
    j.ties[0]!.along < 1e-6
      ? {
          psf: Math.max(0, down),
          share: lever,
          text: 'pressed down outside, levered up at the next frame: over / (2·back)',
        }
      : { psf: Math.max(0, -up), share: 1 + lever, text: 'lifted outside, at the end frame: 1 + over / (2·back)' },
  );
  return {
    up: pulls.map((k) => k.psf * plan * k.share),
    area,
    pressure: up,
    parts: (i) => {
      const k = pulls[i]!;
      const size = `${p.over.toFixed(1)} in over, ${p.back.toFixed(1)} in back, ${(p.v1 - p.v0).toFixed(1)} in wide on the slope`;
      return [{ psf: k.psf, area: plan * 144, share: k.share, text: `${size}; ${k.text}` }];
    },
  };
}
