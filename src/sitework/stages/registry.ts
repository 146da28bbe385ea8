import type { StageId } from '../../project/model.js';
import { beams } from './beams.js';
import type { Stage } from './contract.js';
import { electrical } from './electrical.js';
import { final } from './final.js';
import { footing } from './footing.js';
import { locate } from './locate.js';
import { posts } from './posts.js';
import { roofFraming } from './roof-framing.js';
import { roofing } from './roofing.js';
import { setback } from './setback.js';
import { sheathing } from './sheathing.js';
import { slab } from './slab.js';

/** In the order of the work. */
export const STAGES: Readonly<Record<StageId, Stage>> = {
  locate,
  setback,
  footing,
  slab,
  posts,
  beams,
  'roof-framing': roofFraming,
  sheathing,
  roofing,
  electrical,
  final,
};
