import type { Check } from '../contract.js';
import { overlayRafter, overlayRafterDeflection } from './fill-rafter.js';
import { overlayBase, overlayWater } from './overlay-base.js';
import { overlayJoints, overlayThrust } from './overlay-joints.js';
import { overlayLoad, overlayPoint } from './overlay-load.js';
import { overlaySide, overlayUplift } from './overlay-wind.js';

/** Asked where a roof goes on over the house. */
export const OVERLAY_CHECKS: readonly Check[] = [
  overlayRafter,
  overlayRafterDeflection,
  overlayLoad,
  overlayPoint,
  overlayThrust,
  overlayJoints,
  overlayUplift,
  overlaySide,
  overlayBase,
  overlayWater,
];
