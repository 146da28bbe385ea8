import { anchors } from './anchors.js';
import { beams } from './beams.js';
import type { FitRule } from './contract.js';
import { framing } from './framing.js';
import { postLengths } from './posts.js';
import { struts } from './struts.js';

/** In the order the parts are put up. */
export const FIT_RULES: readonly FitRule[] = [anchors, postLengths, beams, struts, framing];
