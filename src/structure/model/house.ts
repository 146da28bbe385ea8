/** What of the house is placed. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Opening, WorkState } from '../../project/model.js';

export interface WallPlaced {
  readonly id: string;
  readonly name: string;
  readonly start: Vec2;
  readonly end: Vec2;
  /** Unit outward normal. */
  readonly out: Vec2;
  readonly base: number;
  readonly plate: number;
  readonly openings: readonly Opening[];
  readonly path: string;
}

export interface HousePlane {
  readonly id: string;
  readonly outline: readonly Vec3[];
  readonly state: WorkState;
}
