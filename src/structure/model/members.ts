/** Members: what each is for, what of the roof it carries, where it stands. */
import type { Vec3 } from '../../base/vec.js';
import type { WorkState } from '../../project/model.js';
import type { Section } from './sections.js';

export type MemberRole =
  | 'rafter'
  | 'hip'
  | 'truss'
  | 'gable-truss'
  | 'ledger'
  | 'beam'
  | 'post'
  | 'strut'
  | 'brace'
  | 'tie'
  | 'ridge'
  | 'fascia'
  | 'gutter'
  | 'blocking'
  | 'outlooker'
  | 'barge'
  | 'fill-rafter'
  | 'valley-plate';

/** Part of a roof surface a framing member carries: the strip u0..u1 along the eave direction, full height of the surface. */
export interface Strip {
  readonly surface: string;
  readonly u0: number;
  readonly u1: number;
  /**
   * Part of the strip's load that comes to the member; absent: all of it. A rake carried by outlookers presses the end frame
   * with more than its load and lifts the next frame by the difference; the shares of one strip add up to 1.
   */
  readonly share?: number;
}

/** Roof that one outlooker carries: from the roof's edge (u0) to the end frame (u1), between v0 and v1. u1 may be the smaller. */
export interface RakePatch {
  readonly surface: string;
  readonly edge: number;
  readonly frame: number;
  readonly v0: number;
  readonly v1: number;
  /** From the end frame to the next one, and to the roof's edge, inches. */
  readonly back: number;
  readonly over: number;
  /** Barge board on its end: weight, lb, and distance past the end frame. */
  readonly barge: { readonly weight: number; readonly at: number };
  readonly lay: 'flat' | 'edge';
}

export interface TrussShape {
  readonly kind: 'common-truss' | 'scissor-truss';
  readonly span: number;
  readonly topPitch: number;
  readonly bottomPitch: number;
  readonly heel: number;
  readonly overhang: readonly [number, number];
  readonly chordDepth: number;
  /** Width of the beam it bears on; the span is measured over the outer faces of both. */
  readonly bearing: number;
  /** Bearing that is free to slide along the truss, first or second; absent: both are fastened. */
  readonly slides?: 0 | 1;
  /** Total weight of one truss, lb, as assumed for the order. */
  readonly weight: number;
  /** Overall height from bearing to peak, inches. */
  readonly height: number;
}

export interface Member {
  /** Unique: `P1`, `B1`, `RF1-07`, `T1-03`. */
  readonly id: string;
  /** As drawn and scheduled: equal members of a repeated row share one, e.g. `RF1`, `T1`. */
  readonly mark: string;
  readonly role: MemberRole;
  readonly section: Section;
  /** Axis through the section's centre. Posts run up; framing runs from the low or left bearing side upward. */
  readonly start: Vec3;
  readonly end: Vec3;
  /** Unit vector of the depth direction (perpendicular to the axis). */
  readonly up: Vec3;
  /** Cut length to buy and cut, inches (long point to long point). */
  readonly length: number;
  readonly state: WorkState;
  /** Strips of roof surface carried directly; empty for all but framing. */
  readonly strips: readonly Strip[];
  readonly truss?: TrussShape;
  /** Dead load it carries beside its own, spread over its axis, lb/in: outlookers and barge boards. May lift. */
  readonly hung?: number;
  readonly rake?: RakePatch;
  /** Roof it belongs to, when it does. */
  readonly roof?: string;
  /** Depth of a seat cut over the low or outer bearing, measured square to the axis; 0 when none. */
  readonly notch: number;
  /** Cut list geometry as printed: bevels at both ends in degrees, seat cut. */
  readonly cuts: readonly string[];
  /** Nails at each end that the project file names with the member itself (ties). */
  readonly nails?: { readonly nail: string; readonly count: number };
  /** Distance between points where the compression edge is held, top edge and bottom edge; 0 = held throughout. */
  readonly unbraced: { readonly top: number; readonly bottom: number };
  /** How the foot of a post is held; absent: pinned where it starts. */
  readonly foot?: PostFoot;
  readonly path: string;
}

/**
 * `at` is the level (z, inches) at which the foot counts as held: the base of a `fixed` post; of an `embedded` one a third
 * of its depth below the surface. That is more moment than a rigid post has in soil that stiffens with depth, where the load
 * acts a quarter of the depth or more above ground (src/analysis/side-load-properties.test.ts); the yielding of the soil
 * itself is not in the frame.
 */
export interface PostFoot {
  readonly kind: 'pinned' | 'fixed' | 'embedded';
  readonly at: number;
}
