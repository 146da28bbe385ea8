/** Footings in words for schedules and details, from what was placed. */
import type { Footing } from '../../structure/model.js';

type Len = (inches: number) => string;

/** `30" square x 12"`, `16" dia.`, `hole 18" dia., post set in concrete, 8" concrete under it`, `4" slab S1`. */
export function footingSize(f: Footing, len: Len): string {
  if (f.onSlab) return `${len(f.onSlab.thickness)} slab ${f.onSlab.slab}`;
  if (f.embedded) {
    const under = f.embedded.foot - f.bottom;
    const fill = f.embedded.cast ? 'concrete' : `tamped ${f.embedded.backfill}`;
    return `hole ${len(f.size)} dia., ${fill} round the post, ${under > 0 ? `${len(under)} concrete` : 'none'} under it`;
  }
  if (f.round) return `${len(f.size)} dia.`;
  return `${len(f.size)} square${f.padThickness ? ` x ${len(f.padThickness)}` : ''}`;
}

export const pierSize = (f: Footing, len: Len): string =>
  f.pierDiameter > 0 && !f.embedded ? `${len(f.pierDiameter)} dia.` : '–';

/** How the foot of the post stands there. */
export function footOfPost(f: Footing, foot: number, len: Len): string {
  if (f.embedded)
    return `post set in the ground, its foot ${len(f.surface - f.embedded.foot)} below the surface; the top of the backfill sloped away from the post.`;
  const where = f.onSlab ? 'fastened to the slab' : 'set in the concrete';
  return `post base with ${len(foot - f.top)} standoff, ${where}; allowable load in the joint schedule.`;
}
