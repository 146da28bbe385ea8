import { ANCHOR_SOURCE, ANCHOR_TOLERANCE } from '../../layout/index.js';
import type { FitRule } from './contract.js';

/** What concrete work is held to: past it the footing is not where it was drawn (concrete contractors' position). */
const CONCRETE_TOLERANCE = 1;

const way = (d: number, plus: string, minus: string, len: (v: number) => string): string =>
  Math.abs(d) < 1 / 32 ? '' : `${len(Math.abs(d))} ${d > 0 ? plus : minus}`;

/** Do anchors and bases stand where the posts want them? */
export const anchors: FitRule = {
  id: 'anchor-place',
  title: 'Anchors and post bases',
  run: ({ posts, slot, len }) =>
    posts.map(({ footing, post, off, point }) => {
      const part = `${footing}, base of ${post.mark}`;
      if (!off || !point.plan)
        return {
          part,
          state: 'unknown',
          found: 'The readings do not fix its place.',
          remedy: 'Measure its offset along the wall, its offset out, and two diagonals.',
          source: '',
        };
      const d = Math.hypot(off.x, off.y);
      const words = [
        way(off.x, 'too far right', 'too far left', len),
        way(off.y, 'too far out', 'too near the house', len),
      ]
        .filter((w) => w !== '')
        .join(' and ');
      const sigma = Math.max(point.plan.sigmaAlong, point.plan.sigmaOut);
      const found = `${words === '' ? 'In place' : words[0]!.toUpperCase() + words.slice(1)} (known within about ${len(2 * sigma)}).`;
      if (d <= ANCHOR_TOLERANCE) return { part, state: 'fits', found, remedy: '', source: ANCHOR_SOURCE };
      if (d <= ANCHOR_TOLERANCE + slot)
        return {
          part,
          state: 'adjust',
          found,
          remedy: `Move the base ${len(Math.min(slot, d))} in its slot, back toward its place, before the nut is tightened.`,
          source: ANCHOR_SOURCE,
        };
      if (d <= CONCRETE_TOLERANCE)
        return {
          part,
          state: 'adjust',
          found,
          remedy: `${slot > 0 ? `Move the base all ${len(slot)} of its slot. ` : ''}Leave the post plumb over its base: never lean it. The loads are worked out again with the measured place; see beam and framing below.`,
          source: ANCHOR_SOURCE,
        };
      return {
        part,
        state: 'stop',
        found,
        remedy:
          'Stop: past what concrete work is held to. A new footing, or the answer of the designer and the building office, before the post stands.',
        source: 'concrete contractors’ position: 1 in for concrete work',
      };
    }),
};
