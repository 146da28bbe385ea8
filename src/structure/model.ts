/**
 * The placed structure: every part in three dimensions with a short stable mark. House axes (src/base/vec.ts).
 * Nothing here knows a load; nothing after this stage branches on a roof or framing kind, it reads these properties.
 */
import type { Vec2, Vec3 } from '../base/vec.js';
import type { FootingKind, Opening, WorkState } from '../project/model.js';
import type { OverlayShape } from './tie-in/overlay-shape.js';

/** Convex solid; faces list vertex indices counter-clockwise seen from outside. */
export interface Solid {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

export type MaterialClass =
  | 'wood'
  | 'engineered-wood'
  | 'concrete'
  | 'covering'
  | 'sheathing'
  | 'metal'
  | 'earth'
  | 'house-wall'
  | 'house-roof'
  | 'glass';

/** Reference design values of the section's material, unadjusted (psi; G dimensionless), with their origin. */
export interface DesignValues {
  readonly Fb: number;
  /** Tension on the normally compressed face (unbalanced glulam); equals Fb otherwise. */
  readonly FbNeg: number;
  /** Bending about the weak axis. */
  readonly FbY: number;
  readonly Ft: number;
  readonly Fv: number;
  readonly FcPerp: number;
  readonly Fc: number;
  readonly E: number;
  readonly Emin: number;
  readonly EminY: number;
  readonly G: number;
  readonly source: string;
  readonly provenance: 'read' | 'memory';
}

export type SectionFamily = 'sawn-dimension' | 'sawn-timber' | 'glulam' | 'lvl';

export interface Section {
  /** As drawn: `6x10 DF-L No. 1`, `(3) 2x10 + (2) 1/2" ply`, `5-1/2" x 12" 24F-V4 glulam`. */
  readonly label: string;
  /** Name of the choice in the project file and its path. */
  readonly choice: string;
  readonly path: string;
  /** Overall width and depth, inches. */
  readonly width: number;
  readonly depth: number;
  /** Width that counts in strength, stiffness and bearing (plywood spacers left out). */
  readonly b: number;
  readonly d: number;
  readonly plies: number;
  /** Width of one structural ply. */
  readonly plyWidth: number;
  readonly family: SectionFamily;
  /** Nominal thickness and width of one ply for size factors, inches: 2 and 10 for a 2x10. Zero for glulam, LVL. */
  readonly nominal: { readonly thickness: number; readonly width: number };
  readonly species: string;
  readonly grade: string;
  readonly sizeClass: 'dimension' | 'beams-stringers' | 'posts-timbers' | 'glulam' | 'lvl';
  /** True when size factors are already in the tabulated values (Southern Pine Table 4B). */
  readonly sizeInTable: boolean;
  readonly values: DesignValues;
  readonly treatment: 'none' | 'above-ground' | 'ground-contact';
  readonly incised: boolean;
  readonly wet: boolean;
  /** Weight per inch of length, lb/in (all plies and spacers). */
  readonly weight: number;
}

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

export type JointKind =
  | 'rafter-to-ledger'
  | 'rafter-to-beam'
  | 'jack-to-hip'
  | 'hip-to-beam'
  | 'hip-to-ridge'
  | 'truss-to-beam'
  | 'rafter-to-ridge'
  | 'tie-to-rafter'
  | 'outlooker-to-frame'
  | 'beam-to-post'
  | 'beam-splice'
  | 'strut-to-post'
  | 'brace-to-beam'
  | 'brace-to-post'
  | 'post-to-footing'
  | 'ledger-to-house'
  | 'beam-to-wall-post'
  | 'beam-to-wall'
  | 'post-to-house'
  | 'fascia-to-framing';

export interface Tie {
  /** Member id, footing id, or house wall id. */
  readonly part: string;
  /** Distance of the joint along that member's axis from its start; 0 for a footing or wall. */
  readonly along: number;
}

export interface Joint {
  /** Unique: `J3-07`. */
  readonly id: string;
  /** As drawn and scheduled; every joint of one kind between the same marks of section shares it: `J3`. */
  readonly mark: string;
  readonly kind: JointKind;
  readonly at: Vec3;
  /** Load comes down from the first to the last. */
  readonly ties: readonly Tie[];
  /** Length and width of the wood-to-wood or wood-to-plate contact, inches; 0 when load goes through a connector only. */
  readonly contact: { readonly length: number; readonly width: number };
  readonly path: string;
}

/**
 * A roof plane. Local frame: `origin`, unit `u` horizontal along the eave, unit `v` up the slope, `n = u × v` outward (up).
 * `outline` is in (u, v) inches, counter-clockwise. Strips of framing members tile it exactly.
 */
export interface Surface {
  readonly id: string;
  readonly mark: string;
  readonly roof: string;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly n: Vec3;
  readonly outline: readonly Vec2[];
  /** Radians from horizontal. */
  readonly slope: number;
  /** Horizontal unit vector pointing down the slope. */
  readonly downhill: Vec2;
  /** Layers from top to bottom; psf on the slope. */
  readonly layers: readonly {
    readonly name: string;
    readonly psf: number;
    readonly source: string;
    /** Hangs under the framing: a ceiling, which a truss carries on its bottom chord. */
    readonly under?: true;
  }[];
  readonly slippery: boolean;
  readonly sheathed: boolean;
  /** Thickness of sheathing and covering above the framing's top edge, square to the slope. */
  readonly thickness: number;
  /** Aerodynamic shape of the whole roof it belongs to (ASCE 7 Figs. 27.3-4 to 27.3-7; none of them is of a hip). */
  readonly shape: 'monoslope' | 'pitched' | 'troughed' | 'hipped';
  /** Edge weights along v = const edges, lb/in: fascia, gutter. */
  readonly edges: readonly { readonly name: string; readonly v: number; readonly weight: number }[];
  /** Its edge at this u is none: the roof goes on over the house (tie-in). */
  readonly onto?: number;
  readonly path: string;
}

export interface RoofPlaced {
  readonly mark: string;
  readonly surfaces: readonly string[];
  /** Mean roof height above the adjacent grade, inches (ASCE 7 26.2). */
  readonly meanHeight: number;
  /** Plan extents including overhangs. */
  readonly min: Vec2;
  readonly max: Vec2;
  /** Ridge direction, or the direction across the fall for a shed. */
  readonly ridgeAxis: 'x' | 'y';
  readonly slope: number;
  readonly highestPoint: number;
  readonly lowestEave: number;
  /** Part of it touching the house wall line, so that wind cannot pass under that side freely. */
  readonly attached: boolean;
  /** Other roofs of the cover whose water or slopes meet its own; absent where it stands alone. */
  readonly neighbours?: readonly RoofNeighbour[];
  readonly path: string;
}

/** `drains-onto`: its eave sheds on the other; `drains-against`: into the other's side, which stands higher; `valley`, `ridge`: two slopes meet low side or high side on. */
export interface RoofNeighbour {
  readonly roof: string;
  readonly how: 'drains-onto' | 'drains-against' | 'valley' | 'ridge';
}

export interface Footing {
  readonly id: string;
  readonly mark: string;
  readonly kind: FootingKind;
  readonly at: Vec2;
  /** Top of concrete (pier top, or pad top), bottom of concrete, adjacent grade or slab surface: z, inches. */
  readonly top: number;
  readonly bottom: number;
  readonly surface: number;
  /** Bearing area on soil, square inches, and its plan size (diameter or side). */
  readonly bearingArea: number;
  readonly size: number;
  readonly round: boolean;
  readonly pierDiameter: number;
  readonly padThickness: number;
  /** Concrete volume in cubic inches; soil resting on the pad, cubic inches. */
  readonly concrete: number;
  readonly soilOver: number;
  /** A post that runs down into the hole: its foot, the width that presses sideways on the soil, what surrounds it. */
  readonly embedded?: EmbeddedFoot | undefined;
  /** Slab that carries the post without a footing, and its thickness. */
  readonly onSlab?: { readonly slab: string; readonly thickness: number } | undefined;
  /** The owner's statement that a rigid slab holds it at the surface. */
  readonly slabHolds?: boolean | undefined;
  readonly fc: number;
  readonly steel: string;
  readonly choice: string;
  readonly path: string;
}

export interface EmbeddedFoot {
  /** z of the post's foot, inches. */
  readonly foot: number;
  /** Diameter of cast concrete, or the diagonal of the post in other backfill, inches. */
  readonly width: number;
  /** Diagonal of the post, inches. */
  readonly diagonal: number;
  /** Concrete is cast round the post, so that it hangs on it; else sand or soil is tamped in. */
  readonly cast: boolean;
  readonly backfill: 'concrete' | 'sand' | 'soil';
}

/** z = z0 + gx·x + gy·y */
export interface Incline {
  readonly z0: number;
  readonly gx: number;
  readonly gy: number;
}

export interface SlabPlaced {
  readonly mark: string;
  readonly state: WorkState;
  readonly outline: readonly Vec2[];
  readonly top: Incline;
  readonly thickness: number;
  readonly path: string;
}

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

/** What a picture needs of a part: convex pieces with the mark they belong to. */
export interface Piece {
  readonly part: string;
  readonly mark: string;
  readonly role:
    | MemberRole
    | 'footing'
    | 'slab'
    | 'step'
    | 'wall'
    | 'opening'
    | 'house-roof'
    | 'roof-surface'
    | 'grade';
  readonly state: WorkState;
  readonly material: MaterialClass;
  readonly solid: Solid;
}

/**
 * Frame of a gable placed on top of an old roof slope: `x` up the old slope from the old eave edge under the new ridge, `y` level from the ridge to a side.
 */
export interface OverlayFrame {
  /** Old eave edge under the new ridge, at the top of the old sheathing. */
  readonly origin: Vec3;
  /** Level unit vectors: up the old slope, and from the ridge to the first side. */
  readonly into: Vec2;
  readonly side: Vec2;
}

export interface OverlayPlaced {
  readonly roof: string;
  /** Slope of the house roof it lies on. */
  readonly plane: string;
  readonly frame: OverlayFrame;
  /** Valleys and fill, from the line of the valleys' feet. */
  readonly shape: OverlayShape;
  /** Along x: the last frame of the cover, where its own roof surface ends, the valleys' feet, the end of the ridge. */
  readonly last: number;
  readonly edge: number;
  readonly start: number;
  readonly head: number;
  /** Heights of the new ridge, of the new eaves (top of sheathing), of the old roof's ridge. */
  readonly ridge: number;
  readonly eave: number;
  readonly oldRidge: number;
  /** Level distance from ridge to new eave. */
  readonly half: number;
  /** New sheathing, and with the covering, square to the slope. */
  readonly sheathing: number;
  readonly thickness: number;
  readonly layers: Surface['layers'];
  readonly faces: readonly OverlayFace[];
  readonly valleys: readonly Valley[];
  /** Valley plates, ridge board, fill rafters, fascia; none of them stands among the members of the structure. */
  readonly members: readonly Member[];
  readonly fills: readonly Fill[];
  readonly plates: PlateCut;
  readonly board: BoardCut;
  readonly path: string;
}

/** A piece of new roof surface cut by the valley; its outline lies at the top of the new sheathing. */
export interface OverlayFace {
  readonly id: string;
  readonly mark: string;
  /** +1 on the side that `frame.side` points to, −1 on the other. */
  readonly sign: 1 | -1;
  readonly outline: readonly Vec3[];
  /** On the slope, and on plan, square inches. */
  readonly area: number;
  readonly planArea: number;
  /** Out of the plane, upward. */
  readonly normal: Vec3;
  readonly slope: number;
}

export interface Valley {
  readonly mark: string;
  readonly sign: 1 | -1;
  readonly foot: Vec3;
  readonly head: Vec3;
  readonly length: number;
}

/** One pair of fill rafters, left hand and right hand. */
export interface Fill {
  readonly mark: string;
  readonly x: number;
  /** Plan area both carry, square inches. */
  readonly area: number;
  /** Level run from the centre of the ridge to the tip of its upper edge, at the rafter's centre. */
  readonly run: number;
  /** Upper edge to its longest point (downhill face); lower edge, 0 where the seat takes all of it. */
  readonly long: number;
  readonly short: number;
  /** Level length of its seat on the plate. */
  readonly seat: number;
}

export interface PlateCut {
  readonly mark: string;
  readonly long: number;
  readonly width: number;
  readonly thick: number;
  /** From the valley line, on the old slope and square to it: lower and upper outer edge. */
  readonly low: number;
  readonly high: number;
  /** Bevel of its outer edge from square, and angle of the cut at the ridge from square to its length. */
  readonly bevel: number;
  readonly ridgeCut: number;
}

export interface BoardCut {
  readonly mark: string;
  readonly long: number;
  readonly short: number;
  /** Cut along the old slope, from its edge. */
  readonly cut: number;
}

export interface Structure {
  readonly attachment: 'attached' | 'free-standing';
  readonly roofs: readonly RoofPlaced[];
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly surfaces: readonly Surface[];
  readonly footings: readonly Footing[];
  readonly slabs: readonly SlabPlaced[];
  readonly walls: readonly WallPlaced[];
  readonly housePlanes: readonly HousePlane[];
  /** Roofs that go on over a slope of the house: their own members stand here, for the old roof carries them. */
  readonly overlays?: readonly OverlayPlaced[];
  readonly grade: Incline;
}
// Convex pieces for pictures are made on demand by `piecesOf(structure, project)` in pieces/index.ts: derive does not pay for them.
