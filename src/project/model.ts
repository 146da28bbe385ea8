/**
 * The project after reading: every length in inches, every angle in radians, every choice spelled out. Values the
 * office decides carry where they came from; values we assumed are listed once in `assumptions`. Later stages never
 * ask "was this given?": they read the value, and the cover sheet reads the lists.
 */
import type { Inches, Mph, Pcf, Pounds, Psf, Psi, Radians } from '../base/units.js';
import type { Vec2 } from '../base/vec.js';
import type { Connection } from './connections.js';
import type { PlyFastening } from './ply-fastening.js';

/**
 * A value the building department (or the site) decides. `unknown` keeps a stated placeholder in `value` so that a
 * preliminary set can be drawn; it also puts a question on the cover and keeps the set from being issuable.
 */
export interface Office<T> {
  readonly value: T;
  readonly state: 'given' | 'assumed' | 'unknown';
  /** Who said so, as printed: `county design criteria sheet`. Empty when not given. */
  readonly from: string;
  readonly path: string;
}

export interface Assumption {
  readonly path: string;
  /** What was assumed, with its value as printed: `Post base standoff 1"`. */
  readonly text: string;
  readonly why: string;
}

export interface Question {
  readonly path: string;
  /** A question for the office, printed on the cover: `What is the frost depth here?` */
  readonly text: string;
  /** Placeholder used meanwhile, as printed. */
  readonly meanwhile: string;
}

export type UnitChoice = 'us' | 'metric';
export type SheetSizeName = 'ARCH D' | 'ARCH C' | 'ANSI B' | 'ANSI D';

export interface Job {
  readonly title: string;
  readonly address: string;
  readonly owner: string;
  readonly parcel: string;
  readonly preparedBy: string;
  /** ISO date printed in the title block; the program has no clock. */
  readonly date: string;
  readonly units: UnitChoice;
  readonly sheetSize: SheetSizeName;
  /** Plain-words scope of work for the cover. */
  readonly scope: string;
}

/** A consistent set of editions; a mixed set is refused on reading. */
export interface CodeBundle {
  readonly id: '2018' | '2021';
  readonly residential: string;
  readonly building: string;
  readonly loads: '7-16' | '7-22';
  readonly wood: 'NDS 2018';
  readonly concrete: string;
}

export type Exposure = 'B' | 'C' | 'D';
export type RiskCategory = 'I' | 'II' | 'III' | 'IV';
export type SnowExposure = 'fully' | 'partially' | 'sheltered';
export type SeismicCategory = 'A' | 'B' | 'C' | 'D0' | 'D1' | 'D2' | 'E';
export type Yard = 'front' | 'rear' | 'left' | 'right' | 'street-side';
/** Edge of the new work from which the office measures a setback. */
export type ReferenceEdge = 'post' | 'eave';

export interface Basis {
  readonly codes: CodeBundle;
  readonly riskCategory: RiskCategory;
  readonly wind: {
    readonly speed: Office<Mph>;
    readonly exposure: Office<Exposure>;
    /** Topographic factor Kzt. */
    readonly topographic: Office<number>;
    /** Ground elevation above sea level, for Ke. */
    readonly elevation: Inches;
    /** Wind blockage under the roof that can occur; `both` runs clear and obstructed flow. */
    readonly flow: 'clear' | 'obstructed' | 'both';
  };
  readonly snow: { readonly ground: Office<Psf>; readonly exposure: Office<SnowExposure> };
  readonly roofLive: {
    readonly minimum: Office<Psf>;
    /** Patio-cover appendix adopted by name in this jurisdiction. */
    readonly patioAppendix: Office<boolean>;
    /** Whether the area and slope reductions may be used. */
    readonly reduce: boolean;
  };
  readonly seismic: {
    readonly category: Office<SeismicCategory>;
    /** Design accelerations SDS, SD1 and mapped S1, g, and the site class; absent when not given. */
    readonly sds?: Office<number>;
    readonly sd1?: Office<number>;
    readonly s1?: Office<number>;
    readonly siteClass?: Office<string>;
  };
  /** Which code the office applies to load added to the existing house; absent when not given. */
  readonly existingHouse?: Office<'residential' | 'existing-building'>;
  /** Rainfall of one hour that gutters are sized for, inches an hour; absent when not given. */
  readonly rainfall?: Office<number>;
  readonly frost: Office<Inches>;
  readonly soil: {
    readonly bearing: Office<Psf>;
    /** Lateral bearing, psf per foot of depth. */
    readonly lateral: Office<number>;
    /** Friction between concrete and soil, and cohesion: counted against sliding only when the office or a report gives them. */
    readonly friction?: Office<number> | undefined;
    readonly cohesion?: Office<Psf> | undefined;
    /** Friction of soil on concrete cast against it, allowable, counted against uplift only when given. */
    readonly skinFriction?: Office<Psf> | undefined;
    /** Whether 1/2 in of motion at the ground surface does the cover no harm (IBC 1806.3.4). */
    readonly halfInchMotion?: Office<boolean> | undefined;
    readonly density: Pcf;
    readonly description: string;
  };
  readonly zoning: {
    readonly coverageLimit: Office<number>;
    readonly coverageOf: 'lot' | 'rear-yard';
    readonly setbacks: Readonly<Record<Yard, Office<Inches>>>;
    readonly referenceEdge: Office<ReferenceEdge>;
    readonly heightLimit: Office<Inches>;
    /** Lowest clear height under beams and framing above the walking surface. */
    readonly headroom: Inches;
  };
  /** Rows of the design-criteria block that nothing computes with, printed as given: weathering, termite, ice barrier… */
  readonly criteria: readonly { readonly label: string; readonly value: Office<string> }[];
}

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
  readonly header?: Header | undefined;
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
  readonly path: string;
}

export interface House {
  readonly walls: readonly HouseWall[];
  readonly openings: readonly Opening[];
  readonly roofs: readonly HouseRoof[];
  readonly stories: number;
  /** The footing the house wall stands on; absent until someone has looked. */
  readonly footing?: HouseFooting | undefined;
}

export interface HouseFooting {
  /** Underside below the finished grade at the house, and how far the footing stands out past the wall line. */
  readonly bottom: Office<Inches>;
  readonly projection: Office<Inches>;
}

export type WorkState = 'existing' | 'new' | 'removed';

export interface Slab {
  readonly mark: string;
  readonly state: WorkState;
  readonly outline: readonly Vec2[];
  readonly thickness: Inches;
  /** Top of slab at y = 0, relative to finished floor (negative is below). */
  readonly topAtHouse: Inches;
  /** Fall per inch of y, away from the house; positive drains away. */
  readonly fall: number;
  readonly path: string;
}

export interface Step {
  readonly outline: readonly Vec2[];
  readonly risers: number;
  readonly top: Inches;
  readonly state: WorkState;
  readonly path: string;
}

export interface Patio {
  readonly slabs: readonly Slab[];
  readonly steps: readonly Step[];
  readonly grade: { readonly atHouse: Inches; readonly fall: number };
}

export type Treatment = 'none' | 'above-ground' | 'ground-contact';

export interface WoodChoice {
  readonly species: string;
  readonly grade: string;
  readonly treatment: Treatment;
  readonly incised: boolean;
  /** In-service moisture: wet is over 19 % (16 % for glulam). */
  readonly service: 'dry' | 'wet';
}

export type SectionChoice =
  | ({ readonly kind: 'solid'; readonly size: string } & WoodChoice)
  | ({
      readonly kind: 'built-up';
      readonly plies: number;
      readonly ply: string;
      /** Plywood strips between the plies: weight and width only. */
      readonly spacers: number;
      readonly spacerThickness: Inches;
      readonly fastening: string;
      readonly plyFastening?: PlyFastening | undefined;
    } & WoodChoice)
  | {
      readonly kind: 'glulam';
      readonly combination: string;
      readonly width: Inches;
      readonly depth: Inches;
      readonly treatment: Treatment;
      readonly service: 'dry' | 'wet';
    }
  | {
      readonly kind: 'lvl';
      readonly grade: string;
      readonly plies: number;
      readonly thickness: Inches;
      readonly depth: Inches;
      readonly fastening: string;
      readonly plyFastening?: PlyFastening | undefined;
      readonly treatment: Treatment;
      readonly service: 'dry' | 'wet';
    };

export type SectionKind = SectionChoice['kind'];

export type FootingChoice =
  | {
      readonly kind: 'round-pier';
      readonly diameter: Inches;
      readonly bottom: Inches;
      readonly top: Inches;
      /** The owner says a rigid slab is poured against it all round, so that it cannot move at the surface. */
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      readonly kind: 'square-pad';
      readonly width: Inches;
      readonly thickness: Inches;
      readonly bottom: Inches;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      readonly kind: 'pier-on-pad';
      readonly diameter: Inches;
      readonly width: Inches;
      readonly thickness: Inches;
      readonly bottom: Inches;
      readonly top: Inches;
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      /** A post set in a drilled hole. */
      readonly kind: 'embedded-post';
      /** Diameter of the hole. */
      readonly diameter: Inches;
      readonly bottom: Inches;
      /** Concrete under the foot of the post; 0 when it stands on the soil. */
      readonly under: Inches;
      readonly backfill: 'concrete' | 'sand' | 'soil';
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      /** No footing: the post base stands on the patio slab (patio-cover appendix). */
      readonly kind: 'slab';
      readonly fc: number;
      readonly steel: string;
    };
// `bottom` is the depth of the underside below the adjacent finished grade or slab top; `top` is how far the pier
// stands above that surface (0 = flush). A square pad without pier carries its post base at `bottom - thickness`.

export type FootingKind = FootingChoice['kind'];

/** One headed bolt cast in the middle of the footing. */
export interface AnchorChoice {
  /** Nominal diameter. */
  readonly bolt: Inches;
  /** Effective embedment: from the concrete's surface to the bearing face of the head. */
  readonly embedment: Inches;
  /** Specified tensile and yield strength of the bolt's steel. */
  readonly fu: Psi;
  readonly fy: Psi;
}

export interface PostSpec {
  readonly mark: string;
  /** Distance of the post centre from the beam's start. */
  readonly at: Inches;
  readonly section: string;
  readonly footing: string;
  readonly footingMark: string;
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

interface RoofCommon {
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

/**
 * What serves a joint, with the allowable loads published for it. One row a joint: loads of different products are not
 * added, since a table seldom allows it.
 */
export interface JointProduct {
  /** Joint marks (`J3`) or joint kinds (`truss-to-beam`); a row that names the mark outranks one that names the kind. */
  readonly serves: readonly string[];
  readonly product: string;
  /** Pieces at each joint; the ratings below are for one piece. */
  readonly count: number;
  /** Allowable loads of one piece, lb; undefined when not rated that way. */
  readonly down: Pounds | undefined;
  readonly up: Pounds | undefined;
  /** Sideways along the house wall (house x). */
  readonly along: Pounds | undefined;
  /** Sideways square to the house wall (house y). */
  readonly across: Pounds | undefined;
  /** Allowable moment of a post base, lb·in; undefined when not rated that way. */
  readonly moment?: number | undefined;
  /** Load duration factor CD the ratings are for. */
  readonly duration: number;
  /** Wood the ratings are for, in words, and its specific gravity. */
  readonly species: string;
  readonly G: number;
  /** Moisture in service the ratings are for. */
  readonly service: 'dry' | 'wet';
  /** A seat as wide as the beam it hangs, with fasteners through both of its faces: every ply bears. */
  readonly seat?: boolean | undefined;
  /** Concrete strength the ratings are for; undefined when the product does not stand on concrete. */
  readonly concrete: Psi | undefined;
  readonly source: string;
  readonly path: string;
}

export interface Choices {
  readonly sections: Readonly<Record<string, SectionChoice>>;
  readonly footings: Readonly<Record<string, FootingChoice>>;
  /** Cast-in anchor bolts of post bases, by the name of the footing choice they stand in. */
  readonly anchors?: Readonly<Record<string, AnchorChoice>> | undefined;
  /** Gap between post end and concrete made by the post base. */
  readonly standoff: Inches;
  /** Deflection limits as span divisors. */
  readonly deflection: {
    readonly live: number;
    readonly total: number;
    /** Sideways movement of the roof under wind, as a divisor of the post height; left out: the usual figure. */
    readonly drift?: number | undefined;
  };
  readonly joints: readonly JointProduct[];
  readonly connections: readonly Connection[];
}

export interface Log {
  readonly revisions: readonly { readonly number: string; readonly date: string; readonly note: string }[];
  readonly approvals: readonly {
    readonly body: string;
    readonly state: 'needed' | 'applied' | 'granted' | 'refused';
    readonly date: string;
    readonly note: string;
  }[];
}

export interface PriceRow {
  readonly item: string;
  readonly unit: string;
  readonly price: number;
}

export interface Project {
  readonly version: 1;
  readonly job: Job;
  readonly basis: Basis;
  readonly lot: Lot;
  readonly house: House;
  readonly patio: Patio;
  readonly cover: Cover;
  readonly choices: Choices;
  readonly prices: readonly PriceRow[];
  readonly log: Log;
  readonly assumptions: readonly Assumption[];
  readonly questions: readonly Question[];
}
