/** The cover as a whole: roofs, supports, what holds it sideways, sealed papers. */

import type { Inches, Pounds, Radians } from '../../base/units.js';
import type { Office } from './base.js';
import type { Electrical } from './electrical.js';
import type { CoverRoof } from './roofs.js';
import type { BeamLine, LedgerSpec, StrutSpec } from './supports.js';

export type LateralSystem = 'house' | 'knee-braces' | 'fixed-posts' | 'none' | 'unknown';

/** What the fasteners of a house tie go into; the last two are named only to be refused. */
export type TieBacking = 'studs' | 'band' | 'plate' | 'fascia' | 'cantilevered-floor';

/** A line of fasteners that hands a roof's side load to a house wall. */
export interface HouseTie {
  readonly mark: string;
  readonly roof: string;
  /** Index into house.walls. */
  readonly wall: number;
  /** First and last fastener along the house x axis. */
  readonly from: Inches;
  readonly to: Inches;
  /** Height of the line above finished floor; undefined: at the roof's lowest bearing. */
  readonly level: Inches | undefined;
  /** Section of a board of its own flat against the wall under the sheathing's edge; empty: the roof's end frame. */
  readonly nailer: string;
  readonly fastener: {
    readonly kind: 'lag' | 'screw';
    readonly diameter: Inches;
    readonly length: Inches;
    /** Centre to centre along the line, and fasteners over each other at each place. */
    readonly spacing: Inches;
    readonly rows: number;
  };
  readonly into: TieBacking;
  /** From the back of the board or frame to the face of the studs, band or plate: wall sheathing and packing. */
  readonly gap: Inches;
  /** Specific gravity of the house's framing. */
  readonly G: number;
  readonly verified: Office<boolean>;
  readonly path: string;
}

export interface Cover {
  readonly attachment: 'attached' | 'free-standing';
  readonly roofs: readonly CoverRoof[];
  readonly beams: readonly BeamLine[];
  readonly ledgers: readonly LedgerSpec[];
  /** Cross members between facing posts of two beams. */
  readonly struts?: readonly StrutSpec[] | undefined;
  /** What resists side load in each direction. */
  readonly lateral: { readonly x: LateralSystem; readonly y: LateralSystem };
  /** Ties of roofs to the house that are no ledger. */
  readonly houseTies?: readonly HouseTie[];
  readonly use: 'recreation' | 'carport' | 'storage' | 'other';
  /** Sealed truss designs, one a mark; absent until they are there. */
  readonly trussPapers?: readonly TrussPaper[];
  /** Stated electrical work; absent when the set says nothing of it. */
  readonly electrical?: Electrical;
  /** What the office lets be handed in later. */
  readonly deferred?: Office<readonly 'trusses'[]>;
}

/** What the truss plant's sealed sheet says, as copied from it. It stands beside our numbers and never replaces them. */
export interface TrussPaper {
  readonly mark: string;
  readonly from: string;
  /** Empty while not sealed. */
  readonly sealedBy: string;
  readonly span: Inches;
  readonly pitch: Radians;
  readonly bottomPitch: Radians;
  readonly heel: Inches;
  readonly overhang: Inches;
  readonly spacing: Inches;
  readonly bearingWidth: Inches;
  readonly reactions: readonly {
    /** `left` is the bearing with the smaller x (smaller y where the ridge runs along x). */
    readonly bearing: 'left' | 'right';
    readonly kind: 'gravity' | 'uplift';
    /** Size without sign; `side` pushes outward. */
    readonly amount: Pounds;
    readonly side: Pounds;
    readonly duration: number;
  }[];
  readonly bracing: string;
  readonly deflection: string;
  /** Pull or push along the top chord by side load on the roof that the sheet is designed for; 0 when it says nothing. */
  readonly chordForce: Pounds;
  /** Set when the papers' reactions are not to be used below, with the reason. */
  readonly govern?: { readonly set: 'ours'; readonly why: string } | undefined;
  readonly path: string;
}
