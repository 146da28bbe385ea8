/** The lot in house axes and what zoning asks of it. */
import type { Vec2 } from '../base/vec.js';
import type { Yard } from '../project/model.js';
import type { Separation } from './separations.js';

export interface LotLine {
  readonly name: string;
  readonly yard: Yard;
  readonly start: Vec2;
  readonly end: Vec2;
  /** Record azimuth (radians clockwise from north) and distance (in). */
  readonly azimuth: number;
  readonly distance: number;
  /** Unit normal pointing into the lot. */
  readonly inward: Vec2;
  readonly path: string;
}

export interface SetbackLine {
  readonly line: string;
  readonly yard: Yard;
  readonly required: number;
  readonly start: Vec2;
  readonly end: Vec2;
}

export interface LineDistance {
  readonly line: string;
  readonly yard: Yard;
  readonly required: number;
  /** Least distance from the lot line to the outermost posts, to the outermost eave or rake, and to the house. */
  readonly toPost: number;
  readonly toEave: number;
  readonly toHouse: number;
  /** The one the office measures. */
  readonly governing: number;
  readonly nearestPost: Vec2;
  readonly nearestEave: Vec2;
}

export interface LotResult {
  /** Corners in order; corner 0 is the point of beginning. */
  readonly corners: readonly Vec2[];
  readonly lines: readonly LotLine[];
  readonly setbacks: readonly SetbackLine[];
  /** Angle of north, radians counter-clockwise from the house x axis. */
  readonly north: number;
  /**
   * Error of closure in inches, its azimuth from the last corner reached toward the point of beginning, and `ratio`, the
   * error over the perimeter (0 for a perfect traverse).
   */
  readonly closure: {
    readonly error: number;
    readonly perimeter: number;
    readonly ratio: number;
    readonly azimuth: number;
  };
  /** Square inches. */
  readonly area: number;
  readonly coverage: {
    readonly basis: number;
    readonly existing: number;
    readonly proposed: number;
    readonly limit: number;
    readonly rows: readonly { readonly name: string; readonly area: number; readonly state: 'existing' | 'new' }[];
  };
  readonly distances: readonly LineDistance[];
  /** New work and house to other buildings, wells and septic parts. */
  readonly separations: readonly Separation[];
  readonly easements: readonly { readonly name: string; readonly outline: readonly Vec2[] }[];
}
