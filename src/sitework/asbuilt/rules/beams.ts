import { ANCHOR_SOURCE, ANCHOR_TOLERANCE } from '../../layout/index.js';
import type { FitRule } from './contract.js';

/** Can one straight beam lie on all its posts? */
export const beams: FitRule = {
  id: 'beam-line',
  title: 'Beams on their posts',
  run: ({ beams, slot, len }) =>
    beams
      .filter((b) => b.posts.length > 0)
      .map((b) => {
        const off = b.posts.map((p) => ({ post: p.off.post.mark, by: p.across - b.acrossAt(p.at), drawn: p.across }));
        const most = Math.max(...off.map((p) => Math.abs(p.by)));
        const shift = Math.max(...off.map((p) => Math.abs(p.drawn)));
        const found = `Posts stand up to ${len(shift)} across from their drawn line and up to ${len(most)} from one straight line.`;
        if (most <= ANCHOR_TOLERANCE && shift <= ANCHOR_TOLERANCE)
          return { part: b.mark, state: 'fits', found, remedy: '', source: ANCHOR_SOURCE };
        if (most <= ANCHOR_TOLERANCE + slot) {
          const moves = off
            .filter((p) => Math.abs(p.by) > ANCHOR_TOLERANCE)
            .map((p) => `${p.post} by ${len(Math.min(slot, Math.abs(p.by)))}`);
          return {
            part: b.mark,
            state: 'adjust',
            found,
            remedy: `${moves.length > 0 ? `Move in their slots: ${moves.join(', ')}. ` : ''}Lay the beam straight over the posts as they stand, then look at the framing below.`,
            source: ANCHOR_SOURCE,
          };
        }
        return {
          part: b.mark,
          state: 'stop',
          found,
          remedy:
            'Stop: no straight beam bears fully on these posts. Reset the base that is farthest out, or ask the designer.',
          source: ANCHOR_SOURCE,
        };
      }),
};
