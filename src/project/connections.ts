/** Connections proved by calculation: what is bolted, screwed, nailed or borne at a joint, and which way it holds. */
import type { Inches, Psi } from '../base/units.js';

/**
 * A direction at a joint as seen from the part that is carried (the first one tied). `lengthwise` is level along that
 * part in plan, `crosswise` level and square to it; of a post, along and square to the depth of its section. `push` and
 * `pull` are along the part itself, such as a brace, or along the brace that carries it; where a connection names them, the
 * others are what is left.
 */
export type ConnectionWay = 'down' | 'up' | 'lengthwise' | 'crosswise' | 'push' | 'pull';
export type FastenerAxis = 'lengthwise' | 'crosswise' | 'plumb';

/** Fasteners in one member, laid out by its grain. */
export interface FastenerPattern {
  readonly alongGrain: number;
  readonly acrossGrain: number;
  /** Centre to centre; zero where there is one only. */
  readonly spacingAlong: Inches;
  readonly spacingAcross: Inches;
  /** From the nearest fastener's centre to the end of the member. */
  readonly end: Inches;
  /** From the nearest fastener's centre to the edge that faces the other member, or to the nearer edge. */
  readonly edge: Inches;
}

/**
 * Pieces that lie across the joint on one or both sides, fastened to both members. `end` is what is left of the piece
 * beyond the outermost fastener's centre.
 */
export type ConnectionPlates =
  | { readonly material: 'wood'; readonly count: 1 | 2; readonly end: Inches; readonly section: string }
  | {
      readonly material: 'steel';
      readonly count: 1 | 2;
      readonly end: Inches;
      readonly thickness: Inches;
      readonly width: Inches;
      readonly Fy: Psi;
      readonly Fu: Psi;
    };

interface DowelCommon {
  readonly takes: readonly ConnectionWay[];
  readonly axis: FastenerAxis;
  readonly plates: ConnectionPlates | undefined;
  readonly upper: FastenerPattern;
  readonly lower: FastenerPattern;
  /** Wood left where a member is cut for the joint; undefined when it is whole. */
  readonly upperThickness: Inches | undefined;
  readonly lowerThickness: Inches | undefined;
}

export interface Bolts extends DowelCommon {
  readonly kind: 'bolts';
  readonly size: string;
  /** Outer diameter of the round washers; zero where they are to carry nothing. */
  readonly washer: Inches;
}

export interface DrivenDowels extends DowelCommon {
  readonly kind: 'lag-screws' | 'wood-screws' | 'nails';
  readonly size: string;
  readonly length: Inches;
  /** Member that holds the head where there is no plate. */
  readonly head: 'upper' | 'lower';
}

export interface ToeNails {
  readonly kind: 'toe-nails';
  readonly takes: readonly ConnectionWay[];
  readonly size: string;
  readonly count: number;
}

/** Wood pressing on wood over a stated face. */
export interface WoodBearing {
  readonly kind: 'bearing';
  readonly takes: readonly ConnectionWay[];
  readonly length: Inches;
  readonly width: Inches;
}

export type ConnectionPart = Bolts | DrivenDowels | ToeNails | WoodBearing;
export type ConnectionPartKind = ConnectionPart['kind'];

export interface Connection {
  /** Joint marks or kinds, as for products. */
  readonly serves: readonly string[];
  /** Wood is 19 % moist or drier when the connection is made. */
  readonly madeDry: boolean;
  readonly parts: readonly ConnectionPart[];
  readonly path: string;
}
