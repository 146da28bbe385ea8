import type { Bearing, Leg } from '../roofs/contract.js';

/** One slope as its rafters see it: `s` is 1 where it rises with roof coordinate `a`, −1 where against it. */
export interface Slope {
  readonly leg: Leg;
  readonly s: 1 | -1;
  readonly low: Bearing;
  /** Absent where the rafters meet on a ridge board, which carries nothing. */
  readonly high: Bearing | undefined;
  /** Where the rafter's upper end is cut: the ridge line, or the face of a ridge board. */
  readonly end: number;
  readonly lowTop: number;
  readonly highTop: number;
  /** Height of the rafter's top edge. */
  topEdge(a: number): number;
  /** Place where the bottom edge meets a beam's top: the uphill end of the seat. */
  uphill(b: Bearing): number;
}
