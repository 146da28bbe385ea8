/** Posts, braces, beams and how they meet the house. */
import type { Inches, Psi } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';
import type { Office } from './base.js';

export interface PostSpec {
  readonly mark: string;
  /** Distance of the post centre from the beam's start. */
  readonly at: Inches;
  readonly section: string;
  readonly footing: string;
  readonly footingMark: string;
  /** Footing it was drawn with, where one as measured stands in for it: its joints stay alike, and keep their marks. */
  readonly drawnFooting?: string | undefined;
  /** How the foot is held; left out: pinned. */
  readonly base?: PostBase | undefined;
  /** Knee braces from this post up to its own beam. */
  readonly braces?: readonly BraceSpec[] | undefined;
  readonly path: string;
}

/** `pinned` turns freely, `fixed` is held by a base with a published moment, `embedded` stands in the ground. */
export type PostBase = 'pinned' | 'fixed' | 'embedded';

/**
 * A knee brace by its working points: `run` from the centre of the post along the beam (or strut) to where the brace's
 * centre line meets its underside; `rise` from that underside down to where the line meets the centre of the post.
 */
export interface KneeSpec {
  readonly section: string;
  readonly run: Inches;
  readonly rise: Inches;
}

export interface BraceSpec extends KneeSpec {
  /** End of the beam it leans toward. */
  readonly toward: 'start' | 'end';
  readonly path: string;
}

/** A cross member between two facing posts, its top level with the lower of their tops. */
export interface StrutSpec {
  readonly mark: string;
  /** Marks of the posts. */
  readonly from: string;
  readonly to: string;
  readonly section: string;
  /** A knee brace at each end; none when left out. */
  readonly braces?: KneeSpec | undefined;
  readonly path: string;
}

export interface SharedPost {
  /** Mark of the post, listed with the beam it belongs to. */
  readonly post: string;
  /** Distance of its centre from this beam's start. */
  readonly at: Inches;
}

export interface BeamLine {
  readonly mark: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly section: string;
  readonly posts: readonly PostSpec[];
  /** Posts of other beams that this one stands on too, such as a corner post where two beams meet. */
  readonly shared?: readonly SharedPost[] | undefined;
  /** Distances from the start where the beam is spliced; each must be over a post. */
  readonly splices: readonly Inches[];
  /** Ends that the house holds; absent when the beam stands on posts of the yard alone. */
  readonly ends?: { readonly start?: BeamEnd | undefined; readonly end?: BeamEnd | undefined } | undefined;
  readonly path: string;
}

/** What stands behind the wall's face where something is fastened. */
export type WallFraming = 'post' | 'studs' | 'blocking' | 'band' | 'single-stud' | 'fascia' | 'cantilever' | 'unknown';

/** Where a post inside the house wall stands. */
export type PostFoot =
  | { readonly kind: 'footing'; readonly footing: string; readonly footingMark: string }
  | {
      readonly kind: 'foundation';
      /** Top of the existing concrete above finished floor. */
      readonly top: Inches;
      /** Strength of its concrete; undefined when nobody knows. */
      readonly fc?: Psi | undefined;
      /** Whether the foundation was seen and can take the load. */
      readonly verified: Office<boolean>;
    };

/** How one end of a beam is held by the house. */
export type BeamEnd =
  | {
      readonly kind: 'post-in-wall';
      /** Index into house.walls. */
      readonly wall: number;
      readonly mark: string;
      readonly section: string;
      readonly foot: PostFoot;
      /** Whether the wall was opened there and holds nothing that is in the way. */
      readonly verified: Office<boolean>;
      readonly path: string;
    }
  | {
      readonly kind: 'on-wall';
      readonly wall: number;
      readonly into: WallFraming;
      /** Species of that framing; undefined when nobody read its stamp. */
      readonly species?: string | undefined;
      readonly verified: Office<boolean>;
      readonly path: string;
    };

/** How a ledger is fastened to the framing of the house. */
export interface LedgerFastening {
  readonly kind: 'lag' | 'screw' | 'bolt';
  readonly diameter: Inches;
  /** Under the head. */
  readonly length: Inches;
  /** Outside diameter of the washer (of the head, for a screw). */
  readonly washer: Inches;
  /** Places along the ledger, centre to centre. */
  readonly spacing: Inches;
  /** From each end of the ledger to its first place; undefined: all places centred. */
  readonly end?: Inches | undefined;
  /** Depth of each fastener of one place below the ledger's top, from the uppermost down. */
  readonly rows: readonly Inches[];
  readonly into: 'studs' | 'band';
  /** Sheathing left between ledger and framing. */
  readonly through: Inches;
  /** Spacers that hold the ledger off the sheathing. */
  readonly standoff: Inches;
  readonly framing: {
    readonly species: string;
    /** Wood behind the sheathing, measured into the house. */
    readonly depth: Inches;
    /** Lower and upper edge of the band above finished floor; undefined for studs. */
    readonly bottom: Inches | undefined;
    readonly top: Inches | undefined;
  };
  /** What somebody proportioned it by, in words; printed, never computed with. */
  readonly basis: string;
  readonly verified: Office<boolean>;
  readonly path: string;
}

export interface LedgerSpec {
  readonly mark: string;
  /** Index into house.walls. */
  readonly wall: number;
  /** Extent along the house axis its wall runs along: x of a wall facing the yard, y of a wing's side wall. */
  readonly from: Inches;
  readonly to: Inches;
  readonly section: string;
  readonly fastening?: LedgerFastening | undefined;
  readonly path: string;
}
