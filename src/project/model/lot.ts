/** The lot as surveyed. */
import type { Inches, Radians } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';
import type { Yard } from './basis.js';

export interface Course {
  readonly azimuth: Radians;
  readonly distance: Inches;
  readonly yard: Yard;
  readonly name: string;
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
  | 'well'
  | 'meter'
  | 'service-drop'
  | 'tree'
  | 'air-conditioner'
  | 'cleanout';

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
  readonly items: readonly { readonly kind: SiteItemKind; readonly at: Vec2; readonly label: string }[];
  readonly street: { readonly name: string; readonly course: number };
  /** Existing driveway and other paving outlines, drawn on the lot plan. */
  readonly paving: readonly { readonly name: string; readonly outline: readonly Vec2[] }[];
}
