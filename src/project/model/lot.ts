/** The lot as surveyed. */
import type { Inches, Radians } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';
import type { Yard } from './basis.js';

export interface Course {
  readonly azimuth: Radians;
  readonly distance: Inches;
  readonly yard: Yard;
  readonly name: string;
  /** Ground at the corner where the course begins, above the datum; absent when nobody measured it. */
  readonly elevation?: Inches | undefined;
  readonly path: string;
}

export interface Easement {
  readonly name: string;
  /** Index of the course it runs along, inside the lot. */
  readonly course: number;
  readonly width: Inches;
}

export type SiteItemKind =
  | 'septic-tank'
  | 'leach-field'
  | 'reserve-field'
  | 'well'
  | 'meter'
  | 'gas-meter'
  | 'water-meter'
  | 'service-drop'
  | 'pole'
  | 'tank'
  | 'tree'
  | 'air-conditioner'
  | 'window-well'
  | 'cleanout';

export type UtilityKind = 'electric' | 'gas' | 'water' | 'sewer' | 'septic' | 'storm' | 'communication' | 'irrigation';

/** A buried or overhead line as known, drawn on the lot plan. */
export interface UtilityLine {
  readonly kind: UtilityKind;
  readonly points: readonly Vec2[];
  readonly overhead: boolean;
  readonly label: string;
}

export interface SiteItem {
  readonly kind: SiteItemKind;
  readonly at: Vec2;
  readonly label: string;
  /** Ground it takes up, e.g. a leach field; absent for what is drawn as a point. */
  readonly outline?: readonly Vec2[] | undefined;
}

export interface Lot {
  /** Traverse in order round the lot from the point of beginning. */
  readonly courses: readonly Course[];
  /** House origin (x=0, y=0) from the point of beginning, east and north. */
  readonly origin: { readonly east: Inches; readonly north: Inches };
  /** Azimuth of the house y axis (out from the wall). */
  readonly outward: Radians;
  readonly easements: readonly Easement[];
  /** Other buildings that count in coverage, corners in house axes. */
  readonly buildings: readonly { readonly name: string; readonly outline: readonly Vec2[]; readonly counts: boolean }[];
  readonly items: readonly SiteItem[];
  readonly street: {
    readonly name: string;
    readonly course: number;
    /** Width of the right of way, and from the lot line to the edge of the pavement; absent when not measured. */
    readonly rightOfWay?: Inches | undefined;
    readonly toPavement?: Inches | undefined;
  };
  /** Existing driveway and other paving outlines, drawn on the lot plan. */
  readonly paving: readonly { readonly name: string; readonly outline: readonly Vec2[] }[];
  readonly utilities: readonly UtilityLine[];
  /** Ways the ground sheds water, from high to low. */
  readonly drainage: readonly { readonly from: Vec2; readonly to: Vec2; readonly label: string }[];
  /** What corner elevations are measured from; empty when there are none. */
  readonly datum: string;
}
