import type { Advice } from './model.js';

const PRACTICE = 'common practice, no source';

/** How far an anchor may stand off before a post notices. */
export const ANCHOR_TOLERANCE = 1 / 4;
export const ANCHOR_SOURCE =
  'a metal-building builder’s page: over 1/4 in off is trouble for columns; concrete contractors’ position: 1 in for concrete, 1/8 in for steel within a group';
/** What a pier top or a post length may be off. */
export const HEIGHT_TOLERANCE = 1 / 8;
export const HEIGHT_SOURCE = 'how-to page: aim within 1/8 in, 1/4 in makes a beam rock';

export const ADVICE: readonly Advice[] = [
  {
    text: 'Measure every center from home base with a running tape, hooked once: adding up short lengths adds up their errors.',
    source: 'layout how-to pages',
  },
  {
    text: 'Home base lies on the line of the house wall where the roof meets it, not at the slab edge: slab edges wander.',
    source: 'text of a cover plan',
  },
  {
    text: 'Square first by 3-4-5 at the largest multiple that fits, then by equal diagonals of every rectangle, before a hole is dug.',
    source: 'six layout how-to pages',
  },
  {
    text: 'Hold anchors within 1/4 in of their places. Post bases that slide on their anchor, or anchors drilled after the concrete is hard, forgive more.',
    source: ANCHOR_SOURCE,
  },
  {
    text: 'Read all levels from the one benchmark with the same instrument. Swap ends to test it: turn a level end for end, and read a laser against a straight board or from two places. A cheap laser was found 1/4 in off at 12 ft.',
    source: 'builder’s blog, 2009',
  },
  {
    text: 'Cut no post before the tops of all piers are measured: each post has its own length. Write all lengths in one list, then cut.',
    source: 'builder’s journal on cut lists; trade tip on posts on uneven ground',
  },
  {
    text: 'Keep nails in the boards, not only strings: strings come off for digging and go back to the same nails.',
    source: 'layout how-to pages',
  },
];

export const LAYOUT_CAUTIONS: readonly string[] = [
  'Before a stake is driven: mark the area white and call the utility locating service, two to three business days ahead. Marks lapse: call again when they do.',
  'Not marked by the service: septic lines, your own propane and water lines, irrigation, low-voltage cable. Find them yourself.',
  'Dig by hand within 24 in to each side of a mark (common practice; the state’s rule decides). Red power, yellow gas, orange communication, blue water, green sewer, purple reclaimed water.',
  'Open holes are covered or fenced overnight. Deep or caving holes need shoring or sloping; keep people out of them.',
];

export const BOARD_REACH = 36;
export const BOARD_SOURCE = `batter boards about 3 ft beyond the corners, all at one height (${PRACTICE})`;
