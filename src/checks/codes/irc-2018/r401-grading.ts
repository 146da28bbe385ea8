/** IRC R401.3: ground and slabs beside the house fall away from it. Slopes are rise over run. */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Ground falls at least 6 in within the first 10 ft from the foundation. */
export const GRADE_FALL = 6;
export const GRADE_DISTANCE = 120;
/** Slabs, walks and other hard surfaces within 10 ft fall at least 2 percent away from the building. */
export const IMPERVIOUS_SLOPE = 0.02;

/**
 * Least fall in inches of bare ground over `distance` inches from the foundation; the full 6 in from 10 ft on.
 * IRC 2018 R401.3.
 */
export const requiredGradeFall = (distance: number): number =>
  GRADE_FALL * Math.min(Math.max(distance, 0) / GRADE_DISTANCE, 1);

/**
 * Least fall in inches of a patio slab `depth` inches deep out from the house; only the first 10 ft are counted.
 * IRC 2018 R401.3.
 */
export function requiredSlabFall(depth: number, rec?: Recorder): number {
  const run = Math.min(Math.max(depth, 0), GRADE_DISTANCE);
  const fall = IMPERVIOUS_SLOPE * run;
  rec?.step({
    symbol: 'fall',
    meaning: 'least fall of the slab away from the house',
    formula: '2 % of the depth within 10 ft',
    substituted: `0.02 · ${say(run)}`,
    value: fall,
    unit: 'in',
    clause: 'IRC 2018 R401.3',
  });
  return fall;
}
