import { HEIGHT_SOURCE, HEIGHT_TOLERANCE } from '../../layout/index.js';
import type { FitRule } from './contract.js';

/** Most that may be packed under a beam with steel plates or hardwood over the whole post. Common practice, no source. */
const PACK = 1 / 2;

/** Is each post as long as its own pier asks? */
export const postLengths: FitRule = {
  id: 'post-length',
  title: 'Post lengths',
  run: ({ lengths, len }) =>
    lengths.map(({ post, designed, now, sigma, cut }) => {
      if (now === undefined)
        return {
          part: post,
          state: 'unknown',
          found: 'The level of its pier was not read.',
          remedy: 'Read the top of the concrete from the benchmark, twice, before the post is cut.',
          source: '',
        };
      const change = now - designed;
      const found = `By its own pier ${len(now)} (drawn ${len(designed)}; known within about ${len(2 * sigma)}).`;
      if (cut === undefined)
        return Math.abs(change) <= 1 / 32
          ? { part: post, state: 'fits', found, remedy: '', source: HEIGHT_SOURCE }
          : {
              part: post,
              state: 'adjust',
              found,
              remedy: `Cut it ${len(now)} long, not ${len(designed)}.`,
              source: HEIGHT_SOURCE,
            };
      const over = cut - now;
      const was = `${found} Cut to ${len(cut)}.`;
      if (Math.abs(over) <= HEIGHT_TOLERANCE)
        return { part: post, state: 'fits', found: was, remedy: '', source: HEIGHT_SOURCE };
      if (over > 0)
        return {
          part: post,
          state: 'adjust',
          found: was,
          remedy: `Trim ${len(over)} off its top.`,
          source: HEIGHT_SOURCE,
        };
      if (-over <= PACK)
        return {
          part: post,
          state: 'adjust',
          found: was,
          remedy: `Pack ${len(-over)} between post and beam with steel plate over the whole top of the post, held by the post cap. No wood wedges.`,
          source: 'packing: common practice, no source',
        };
      return {
        part: post,
        state: 'stop',
        found: was,
        remedy: `Stop: ${len(-over)} too short to pack. A new post of ${len(now)}.`,
        source: 'packing: common practice, no source',
      };
    }),
};
