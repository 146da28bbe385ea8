/** Roofs, their framing and finish. */
import type { Inches, Pounds, Psf, Radians } from '../../base/units.js';
import type { Office } from './base.js';
import type { WoodChoice } from './materials.js';

export type FramingChoice =
  | {
      readonly kind: 'common-truss' | 'scissor-truss';
      readonly spacing: Inches;
      /** Nominal chord size and lumber assumed for weight and drawing; the truss plant's engineer decides. */
      readonly chord: string;
      readonly wood: WoodChoice;
      /** Plumb height of the top chord's upper edge above the bearing at the outer face of the beam. */
      readonly heel: Inches;
      readonly bottomPitch: Radians;
      /** Most the bearings of a scissor truss may move apart; undefined: the check's own limit. */
      readonly spreadLimit?: Inches | undefined;
      /** Bearing whose connector lets the truss slide along itself: the one with the smaller x (or y) is left. */
      readonly slides?: 'left' | 'right' | undefined;
      /** Weight of one truss per foot of span, as printed on the order. */
      readonly weight: number;
    }
  | {
      readonly kind: 'rafter';
      readonly spacing: Inches;
      readonly section: string;
      /** Ties across each pair of rafters below a ridge board; absent where beams or a ledger carry both ends. */
      readonly ties?: RafterTies | undefined;
    };

/** What keeps the feet of rafters that meet at a ridge board from spreading: one tie on each pair. */
export interface RafterTies {
  readonly section: string;
  /** Underside of the tie above the top of the beams. */
  readonly height: Inches;
  /** Greatest distance between braces that keep ties from buckling sideways; absent when there are none. */
  readonly braced?: Inches | undefined;
  /** Section of the ridge board the rafters meet on. */
  readonly ridgeBoard: string;
  /** Catalogue id of the nail, and how many at each end, driven square through the tie into the rafter. */
  readonly nail: string;
  readonly nails: number;
}

export type FramingKind = FramingChoice['kind'];

export interface RoofFinish {
  /** Catalogue id of the covering. */
  readonly covering: string;
  readonly underlayment: string;
  /** Catalogue id of the sheathing panel; empty when none (then it is no diaphragm). */
  readonly sheathing: string;
  /** Catalogue id of a ceiling on the underside; empty when open. */
  readonly ceiling: string;
  /** Other dead load on the slope (lights, fans, future solar): psf. */
  readonly allowance: Psf;
  readonly fascia: string;
  readonly gutter: boolean;
  /** How the sheathing is nailed to the framing; absent until the owner has said. */
  readonly nailing?: Nailing | undefined;
  /** What the covering's maker says it holds; absent until the owner has read it. */
  readonly coveringRating?: CoveringRating | undefined;
  /** Whether the gable ends are left open below the rake; closed where not said, which the wind pushes harder. */
  readonly gableEnd?: 'open' | 'closed' | undefined;
}

export interface Nailing {
  /** Catalogue id of the nail: `common-8d`. Other words are kept as written and answered by the checks. */
  readonly nail: string;
  /** Spacing along the framing at panel ends and edges, and elsewhere. */
  readonly edge: Inches;
  readonly field: Inches;
  /** Spacing along the roof's outer edges; the edge spacing when not given. */
  readonly boundary?: Inches | undefined;
  /** Blocking under every panel edge that lies between frames. */
  readonly blocked?: boolean | undefined;
  /** Toe-nails from each block between the frames into the bearing below it. */
  readonly heel?: HeelBlocking | undefined;
}

export interface HeelBlocking {
  /** Catalogue id of the nail. */
  readonly nail: string;
  /** Toe-nails in each bay. */
  readonly count: number;
}

export interface CoveringRating {
  /** Allowable uplift of the covering as it is fastened here, safety factor already taken. */
  readonly uplift: Psf;
  readonly from: string;
}

/** How the roof past the end frames is carried: short members from the next frame in, over the end frame, to a barge board. */
export interface RakeFraming {
  /** Name of the outlookers' section: one piece of dimension lumber. */
  readonly section: string;
  /** On its wide face over the end frame, or on its narrow one. */
  readonly lay: 'flat' | 'edge';
  /** Greatest distance between outlookers along the slope. */
  readonly spacing: Inches;
  /** Section of the barge board at their ends. */
  readonly barge: string;
  /** Section of the end rafters, shallower so that the outlookers pass over them; absent with trusses. */
  readonly endFrame?: string | undefined;
}

export interface RoofCommon {
  readonly mark: string;
  readonly pitch: Radians;
  /** Rise per foot as the file gave it, for printing. */
  readonly pitchText: string;
  /** Top of the (high-side) bearing above finished floor. */
  readonly bearing: Inches;
  readonly framing: FramingChoice;
  readonly finish: RoofFinish;
  /** Horizontal overhang past the outer beam face (eave) and past the end frame (rake). */
  readonly eave: Inches;
  readonly rake: Inches;
  readonly rakeFraming?: RakeFraming | undefined;
  readonly path: string;
}

export interface GableRoof extends RoofCommon {
  readonly kind: 'gable';
  /** The two beam lines it bears on, parallel to the ridge: left and right of the ridge looking along +ridge axis. */
  readonly beams: readonly [string, string];
  readonly ridge: 'x' | 'y';
  /** Beam under the ridge that rafters bear on; absent with trusses, and with ties below a ridge board. */
  readonly ridgeBeam?: string | undefined;
  /** First and last frame centre along the ridge axis. */
  readonly from: Inches;
  readonly to: Inches;
  /** How it goes on over the house; absent: it stops in front of it. */
  readonly meetsHouse?: Overlay | undefined;
}

/** The gable runs on over a slope of the house roof, framed on top of it; its ridge dies into the old slope. */
export interface Overlay {
  readonly kind: 'overlay';
  /** Slope of the house roof, as marked on the roof plan: `HR1-2`. */
  readonly plane: string;
  /** Names of sections: fill rafters, valley plates laid flat, ridge board. */
  readonly rafter: string;
  readonly plate: string;
  readonly ridge: string;
  readonly spacing: Inches;
  /** Whether the old covering comes off under it and under the valleys. */
  readonly oldCovering: 'removed' | 'kept';
  /** What a named professional states of the old roof; absent until he has. */
  readonly statement?: OverlayStatement | undefined;
}

/** Allowable-stress level, on the plan of the old roof. */
export interface OverlayStatement {
  /** Dead load it may be given beside what it carries, and uplift it may be given. */
  readonly down: Office<Psf>;
  readonly up: Office<Psf>;
  /** Largest load on one old rafter or truss where a valley plate crosses it, lb. */
  readonly point: Office<Pounds>;
  /** That the house may take the side load of the cover through the joined sheathing. */
  readonly side: Office<boolean>;
  /** Outward push of a fill rafter at its seat that plate, fasteners and old framing may be given, lb; absent: not stated. */
  readonly thrust?: Office<Pounds> | undefined;
  /** How valley plates and the end of the ridge board are fastened to the old framing, as the statement says. */
  readonly fastening: string;
  /** How the pieces are fastened to each other; absent: not stated. */
  readonly rafterToPlate?: string | undefined;
  readonly rafterToRidge?: string | undefined;
  readonly ridgeToFrame?: string | undefined;
}

export type ShedFall = '+x' | '-x' | '+y';

export interface ShedRoof extends RoofCommon {
  readonly kind: 'shed';
  /** Direction it falls in, house axes; absent = away from the rear wall, +y. */
  readonly fall?: ShedFall | undefined;
  /** High side: a ledger or a beam. Low side: a beam. */
  readonly high: { readonly ledger: string } | { readonly beam: string };
  readonly low: string;
  /** First and last rafter centre along the house axis square to the fall. */
  readonly from: Inches;
  readonly to: Inches;
  /** Overhang past the high support (beam only), horizontal. */
  readonly highOverhang: Inches;
}

/** Four slopes over a rectangle of beams; no rake. `from` and `to` are the centres of the end beams along the ridge. */
export interface HipRoof extends RoofCommon {
  readonly kind: 'hip';
  /** Beams along the ridge, and those square to it. */
  readonly beams: readonly [string, string];
  readonly ends: readonly [string, string];
  readonly ridge: 'x' | 'y';
  readonly ridgeBeam: string;
  /** Section of the hip rafters. */
  readonly hip: string;
  readonly from: Inches;
  readonly to: Inches;
}

export type CoverRoof = GableRoof | ShedRoof | HipRoof;

export type RoofKind = CoverRoof['kind'];
