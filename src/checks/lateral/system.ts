/** What holds the cover against side load in one direction, and how that is proved. */
import type { Recorder } from '../../base/trace.js';
import type { CheckContext, Finding } from '../contract.js';

export type Axis = 'x' | 'y';

export const ALONG: Readonly<Record<Axis, string>> = { x: 'along the house wall', y: 'square to the house wall' };

export const SWAY_CLAUSE = 'ASCE 7-16 1.4.3';

/** One way of resisting side load; `answer` is the finding of `sway-x` or `sway-y`. */
export interface SwaySystem {
  answer(axis: Axis, ctx: CheckContext, rec?: Recorder): Finding;
}
