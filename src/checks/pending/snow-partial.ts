/** Snow taken off some spans of a continuous beam and left on others (ASCE 7-16 7.5). */
import { pendingCheck } from './pending.js';

export const snowPartial = pendingCheck({
  id: 'snow-partial',
  title: 'Snow on some spans only',
  clause: 'ASCE 7-16 7.5',
  reason: 'Half of the balanced snow taken off single spans of a continuous beam is not worked out yet.',
  needs: 'partial snow patterns on every beam that runs over a post or past one',
  unless: (ctx) => {
    if (ctx.project.basis.snow.ground.value <= 0) return 'there is no ground snow here';
    const continuous = ctx.structure.members.some(
      (m) => m.role === 'beam' && (ctx.effects.members.get(m.id)?.spans.length ?? 2) > 1,
    );
    return continuous ? undefined : 'no beam runs over a post or past one';
  },
});
