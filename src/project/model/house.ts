/** The existing house. */
import type { Inches, Psf, Radians } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';
import type { Office } from './base.js';

export type Cladding = 'lap-siding' | 'stucco' | 'panel-siding' | 'brick-veneer' | 'stone-veneer' | 'concrete-masonry';

export interface WallBuild {
  readonly name: string;
  readonly studSize: string;
  readonly studSpacing: Inches;
  readonly cladding: Cladding;
  readonly claddingThickness: Inches;
  readonly sheathing: string;
  /** Floor band at the height where something could be fastened, verified or not. */
  readonly verified: Office<boolean>;
}

export interface HouseWall {
  readonly name: string;
  /** Left end as seen from inside; the wall runs to the next wall's start (corners clockwise seen from above). */
  readonly start: Vec2;
  readonly end: Vec2;
  /** Top plate above finished floor. */
  readonly plate: Inches;
  readonly stories: number;
  readonly build: WallBuild;
  /** Side load the cover may hand to it, as somebody who can judge the house states it; absent when nobody has. */
  readonly sideLoad?: WallSideLoad;
  readonly path: string;
}

/** Allowable-stress side load on a wall of the house: along it, lb, and square to it, lb per inch of what is fastened. */
export interface WallSideLoad {
  readonly along: Office<number>;
  readonly square: Office<number>;
  readonly path: string;
}

export type OpeningKind = 'window' | 'door' | 'sliding-door' | 'french-door' | 'vent' | 'garage-door';

export interface Opening {
  readonly mark: string;
  readonly kind: OpeningKind;
  readonly wall: number;
  /** From the wall's left end as seen from inside to the near jamb. */
  readonly offset: Inches;
  readonly width: Inches;
  readonly sill: Inches;
  readonly head: Inches;
  readonly room: string;
  readonly escape: boolean;
  /** Shares of the opening that are glass and that open to the outdoors, and how a door moves; absent when not stated. */
  readonly glass?: number | undefined;
  readonly opens?: number | undefined;
  readonly swing?: DoorSwing | undefined;
  readonly header?: Header | undefined;
  readonly path: string;
}

export type DoorSwing = 'in' | 'out' | 'slides';

/** Uses as the residential code tells them apart: all but `service` (halls, baths, closets, garages) are habitable. */
export type RoomUse = 'living' | 'sleeping' | 'eating' | 'cooking' | 'service';

/** A room behind the cover, by its clear floor. */
export interface Room {
  readonly name: string;
  readonly use: RoomUse;
  readonly outline: readonly Vec2[];
  readonly path: string;
}

export type EquipmentKind =
  | 'flue'
  | 'dryer-vent'
  | 'exhaust-vent'
  | 'plumbing-vent'
  | 'air-intake'
  | 'gas-meter'
  | 'gas-regulator'
  | 'electric-meter'
  | 'air-conditioner'
  | 'hose-bibb';

/** A vent, meter or the like on a wall of the house, with the clearance new work must keep from it. */
export interface Equipment {
  readonly label: string;
  readonly kind: EquipmentKind;
  readonly wall: number;
  readonly offset: Inches;
  /** Center above the finished floor. */
  readonly height: Inches;
  readonly clearance: Office<Inches>;
  readonly path: string;
}

export type HouseRoofKind = 'gable' | 'hip' | 'shed';

export interface HouseRoof {
  readonly kind: HouseRoofKind;
  /** Wall-line rectangle it covers, before overhangs. */
  readonly min: Vec2;
  readonly max: Vec2;
  /** Direction of the ridge (gable, hip) or of the fall (shed falls along +y or -y, +x or -x). */
  readonly ridge: 'x' | 'y';
  readonly fall?: '+x' | '-x' | '+y' | '-y';
  readonly pitch: Radians;
  readonly plate: Inches;
  readonly overhang: Inches;
  readonly rake: Inches;
  readonly covering: string;
  /** Plumb height of the top of its sheathing above the plate, over the wall line; 0 where it was not measured. */
  readonly heel?: Inches | undefined;
  /** What carries it and lies on it; absent until someone has looked. */
  readonly framing?: HouseRoofFraming | undefined;
  /** Whether its eave has a gutter; absent where nobody said. */
  readonly gutter?: boolean | undefined;
  /** What stands on it: chimneys, vents, skylights. */
  readonly standing?: readonly OnHouseRoof[] | undefined;
  readonly path: string;
}

export interface HouseRoofFraming {
  readonly kind: 'rafters' | 'trusses';
  /** Nominal size of a rafter or top chord; they run up the slope. */
  readonly size: string;
  readonly spacing: Inches;
  /** In words, as found. */
  readonly sheathing: string;
  /** Dead load it carries today, on the plan, everything old counted. */
  readonly dead: Psf;
}

export interface OnHouseRoof {
  readonly name: string;
  readonly kind: 'chimney' | 'vent' | 'skylight';
  /** Centre, and size along x and y. */
  readonly at: Vec2;
  readonly width: Inches;
  readonly depth: Inches;
}

export interface House {
  readonly walls: readonly HouseWall[];
  readonly openings: readonly Opening[];
  readonly roofs: readonly HouseRoof[];
  readonly stories: number;
  readonly rooms: readonly Room[];
  readonly equipment: readonly Equipment[];
  /** Year it was built; absent when not stated. */
  readonly built?: number | undefined;
  /** The footing the house wall stands on; absent until someone has looked. */
  readonly footing?: HouseFooting | undefined;
}

export interface HouseFooting {
  /** Underside below the finished grade at the house, and how far the footing stands out past the wall line. */
  readonly bottom: Office<Inches>;
  readonly projection: Office<Inches>;
}

/** The header over an opening, as far as it is known. */
export interface Header {
  /** Whether somebody qualified found header and jacks able to take the load shown. */
  readonly verified: Office<boolean>;
  /** What it is made of; absent when it was not seen. */
  readonly made?:
    | {
        readonly plies: number;
        readonly size: string;
        readonly species: string;
        readonly grade: string;
        /** Studs under each end. */
        readonly jacks: number;
        /** What it carries already, lb/in. */
        readonly existing: number;
      }
    | undefined;
  readonly path: string;
}
