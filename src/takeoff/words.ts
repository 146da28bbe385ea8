import type { Phase } from '../project/model/buying.js';

export const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  footings: 'Footings',
  slab: 'Slab',
  'posts-and-beams': 'Posts and beams',
  framing: 'Roof framing',
  sheathing: 'Sheathing',
  roofing: 'Roofing',
  finish: 'Finish',
};
