/**
 * How the work is set out on the ground, as data. Everything is measured from one home base on the line of the house wall:
 * `along` it to the right as seen looking out of the house, `out` from it, levels from the finished floor. Inches.
 */
import type { Vec2 } from '../../base/vec.js';

export type PointRole = 'home' | 'corner' | 'wall' | 'footing' | 'board' | 'benchmark';

export interface StakePoint {
  readonly name: string;
  readonly role: PointRole;
  /** From home base. */
  readonly along: number;
  readonly out: number;
  /** Above the finished floor; undefined where only the place in plan counts. */
  readonly level?: number | undefined;
  readonly note: string;
  readonly path: string;
}

/** A string stretched over a row of footings. */
export interface StringLine {
  /** Letters run along the house, figures out from it. */
  readonly name: string;
  /** `out`: square to the house wall, at a place along it; `along`: parallel to the wall. */
  readonly runs: 'out' | 'along';
  /** Distance from home base (runs out) or from the wall (runs along). */
  readonly at: number;
  /** Footings under it with their running dimension from the wall or from home base. */
  readonly stations: readonly { readonly footing: string; readonly running: number }[];
  /** Names of the nails that hold it. */
  readonly ends: readonly [string, string];
}

/** A batter board with the nail of one string. */
export interface BatterBoard {
  readonly nail: string;
  readonly along: number;
  readonly out: number;
  /** Marked on the house wall instead of on a board. */
  readonly onWall: boolean;
  readonly ground: number;
  /** Of the string above the ground there. */
  readonly height: number;
}

export interface Diagonal {
  readonly from: string;
  readonly to: string;
  readonly length: number;
}

/** Four points that form a rectangle, and its two diagonals, which must agree. */
export interface DiagonalPair {
  readonly first: Diagonal;
  readonly second: Diagonal;
  /** Difference at which a corner is out by the layout tolerance. */
  readonly mostDifference: number;
}

/** The right angle at home base by a triangle of three, four and five units. */
export interface Triangle {
  readonly along: number;
  readonly out: number;
  readonly across: number;
}

export interface PierTop {
  readonly footing: string;
  readonly post: string;
  /** Slab or ground beside it; top of concrete; bottom of the hole: all above the finished floor. */
  readonly surface: number;
  readonly top: number;
  readonly bottom: number;
  readonly depth: number;
  readonly path: string;
}

export interface PostCut {
  readonly post: string;
  readonly section: string;
  readonly footing: string;
  readonly underside: number;
  /** Concrete under the post, or the bottom of its hole; and the gap that the base makes. */
  readonly bears: number;
  readonly standoff: number;
  readonly length: number;
  readonly path: string;
}

/** A length to tape after the points stand. */
export interface CheckReading {
  readonly kind: 'along' | 'out' | 'distance' | 'level';
  readonly from: string;
  readonly to: string;
  readonly value: number;
}

export interface Advice {
  readonly text: string;
  readonly source: string;
}

export interface Layout {
  readonly home: Vec2;
  readonly homeWords: string;
  /** Level of the benchmark above the finished floor, and where it is marked. */
  readonly benchmark: { readonly level: number; readonly words: string };
  readonly stringLevel: number;
  readonly points: readonly StakePoint[];
  readonly strings: readonly StringLine[];
  readonly boards: readonly BatterBoard[];
  readonly rectangles: readonly DiagonalPair[];
  /** Lengths from the two ends of the house wall that fix points which are in no rectangle. */
  readonly ties: readonly Diagonal[];
  readonly triangle: Triangle | undefined;
  readonly piers: readonly PierTop[];
  readonly posts: readonly PostCut[];
  readonly readings: readonly CheckReading[];
  readonly advice: readonly Advice[];
  readonly cautions: readonly string[];
}
