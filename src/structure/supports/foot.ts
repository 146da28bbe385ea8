/** How the foot of a placed post is held. */
import type { PostSpec } from '../../project/model.js';
import { SLACK } from '../constants.js';
import { error } from '../issues.js';
import type { Kit } from '../kit.js';
import type { PostFoot } from '../model.js';

/**
 * Share of the depth in the ground at which an embedded post counts as held. Common practice puts it between a quarter
 * and two thirds; why a third does not understate the moment: see `PostFoot`.
 */
const FIXITY = 1 / 3;

/** `bottom` is where the post ends, `surface` the ground or slab beside it; z, inches. */
export function footOf(spec: PostSpec, bottom: number, surface: number, kit: Kit): { readonly foot?: PostFoot } {
  const embedded = bottom < surface - SLACK;
  const fits = embedded ? spec.base === undefined || spec.base === 'embedded' : spec.base !== 'embedded';
  if (!fits) {
    kit.issues.push(
      error('base-and-footing', `${spec.path}/base`, 'The foot of the post and its footing do not go together.', {
        subject: spec.mark,
        found: spec.base ?? 'pinned',
        expected: embedded
          ? '"embedded", as this footing takes the post into the ground'
          : 'a footing that takes the post into the ground',
      }),
    );
    return {};
  }
  if (embedded) return { foot: { kind: 'embedded', at: surface - FIXITY * (surface - bottom) } };
  return spec.base === 'fixed' ? { foot: { kind: 'fixed', at: bottom } } : {};
}
