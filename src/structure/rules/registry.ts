import { beamEnds } from './beam-ends.js';
import { braceHeadroom } from './brace-headroom.js';
import type { ProjectRule, StructureRule } from './contract.js';
import { footingsApart } from './footings-apart.js';
import { headroom } from './headroom.js';
import { houseFootprint } from './house-footprint.js';
import { houseRoofs } from './house-roofs.js';
import { ledgerWall } from './ledger-wall.js';
import { lotLines } from './lot-lines.js';
import { marks } from './marks.js';
import { openings } from './openings.js';
import { overlays } from './overlay.js';
import { postFit } from './post-fit.js';
import { rakeCarried } from './rake.js';
import { coveringSlope, pitchInRange } from './roof-slope.js';
import { roofsMeet } from './roofs-meet.js';
import { sheathingSpan } from './sheathing-span.js';
import { water } from './water.js';

/** What placing relies on: when one of these fails nothing is placed. */
export const PRECONDITIONS: readonly ProjectRule[] = [marks, pitchInRange];
/** In the order their issues are told. */
export const PROJECT_RULES: readonly ProjectRule[] = [coveringSlope, sheathingSpan, water, ledgerWall, rakeCarried];
export const STRUCTURE_RULES: readonly StructureRule[] = [
  lotLines,
  houseFootprint,
  beamEnds,
  openings,
  houseRoofs,
  overlays,
  roofsMeet,
  footingsApart,
  postFit,
  headroom,
  braceHeadroom,
];
