/** Load cases and combinations. Forces act on the roof surfaces' own frames; nothing here is distributed to members yet. */
import type { Vec2, Vec3 } from '../base/vec.js';

/** `E` is the horizontal earthquake effect with its redundancy or overstrength factor in it. */
export type LoadKind = 'D' | 'Lr' | 'S' | 'W' | 'E';

/**
 * How an area load acts:
 *  - `slope`: vertical, per unit of sloping area (dead load of layers);
 *  - `plan`: vertical, per unit of horizontal projection (roof live, snow);
 *  - `normal`: square to the surface, positive pushing onto its top face (wind net pressure).
 */
export type LoadAction = 'slope' | 'plan' | 'normal';

export interface AreaLoad {
  readonly surface: string;
  /** Part of the surface in its own (u, v) frame; absent = the whole surface. Convex, counter-clockwise. */
  readonly region?: readonly Vec2[];
  readonly psf: number;
  readonly acts: LoadAction;
}

/** Line load along an edge v = const of a surface, lb/in, acting down: fascia, gutter. */
export interface EdgeLoad {
  readonly surface: string;
  readonly v: number;
  readonly weight: number;
}

/**
 * The same area load said on the plan of a whole roof, without surfaces or regions, so that the balance can integrate
 * it from the project's own numbers. `from` and `to` are horizontal distances from the windward edge of the roof along
 * `toward`, inches; absent = the whole roof.
 */
export interface PlanLoad {
  readonly roof: string;
  readonly psf: number;
  /** Value at `zone.to` where the load runs straight from `psf` at `zone.from` (a drift); absent = even. */
  readonly psfTo?: number;
  readonly acts: LoadAction;
  readonly zone?: { readonly toward: WindDirection; readonly from: number; readonly to: number };
}

/** Direction the wind blows toward, house axes. */
export type WindDirection = '+x' | '-x' | '+y' | '-y';

export interface LoadCase {
  /** Short and stable: `D`, `Lr`, `S`, `S·drift+y·leeward`, `W+y·A·clear`. */
  readonly id: string;
  readonly kind: LoadKind;
  readonly title: string;
  readonly areas: readonly AreaLoad[];
  /** `areas` said roof by roof on the plan; what the design criteria print and the balance integrates. */
  readonly plan?: readonly PlanLoad[];
  readonly edges: readonly EdgeLoad[];
  /** Weight of members (dead case only). */
  readonly selfWeight: boolean;
  /** Horizontal wind on edges, fascia and gable ends not on a roof surface: a force at a point of a roof, lb. */
  readonly side: readonly { readonly roof: string; readonly at: Vec3; readonly force: Vec3; readonly why: string }[];
  /** True where a vertical load changes along a roof's ridge, so that no beam's load may be taken as even. */
  readonly unevenAlong?: boolean;
  /** Reactions of sealed truss sheets instead of loads on the roof; the analysis puts them on the bearings. */
  readonly papers?: 'gravity' | 'uplift';
  /** True for a load on some spans only: it meets the wind only where the wind presses hardest (combinations.ts). */
  readonly pattern?: boolean;
  readonly clause: string;
}

export interface Combination {
  /** `D+0.6W (W+y·A·clear)`. */
  readonly id: string;
  /** Family without the case: `D + 0.6W`. */
  readonly label: string;
  /** Factor for each case, by index into the case list. */
  readonly terms: readonly { readonly case: number; readonly factor: number }[];
  /** Load duration factor of its shortest load (NDS Table 2.3.2). */
  readonly CD: number;
  readonly clause: string;
  /** True for the combinations whose purpose is uplift (0.6D + 0.6W). */
  readonly uplift: boolean;
}

/** Numbers behind the cases, printed in the design criteria and reached by `why`. */
export interface LoadBasis {
  readonly rows: readonly {
    readonly symbol: string;
    readonly meaning: string;
    readonly value: number;
    readonly unit: string;
    readonly clause: string;
    readonly from: readonly string[];
    readonly provenance?: 'read' | 'memory';
  }[];
}

export type SnowQuestion = 'drift' | 'sliding' | 'unbalanced' | 'partial';

/** What became of one way the snow may lie on one roof. */
export interface SnowAnswer {
  readonly question: SnowQuestion;
  readonly roof: string;
  /** `included`: carried as the cases named; `none`: the provisions ask for nothing; `outside`: not covered here. */
  readonly outcome: 'included' | 'none' | 'outside';
  /** Ids of its cases; empty unless included. */
  readonly cases: readonly string[];
  /** Greatest load above the even snow beside it, psf; 0 unless included. */
  readonly peak: number;
  readonly clause: string;
  /** One sentence: what is carried, or why nothing is. */
  readonly note: string;
}

/** What became of the wind on a roof that touches the house. */
export interface AttachedWindAnswer {
  readonly roof: string;
  /** `unknown`: the house is not described well enough to say. */
  readonly outcome: 'included' | 'outside' | 'unknown';
  readonly cases: readonly string[];
  /** Effective wind area the coefficients were read at, in². */
  readonly area: number;
  /** Net pressures carried, psf: `up` negative. */
  readonly up: number;
  readonly down: number;
  readonly clause: string;
  readonly note: string;
}

/** What became of the earthquake. */
export interface SeismicAnswer {
  /** `unknown`: something is not given; `outside`: the standard does not permit the system named. */
  readonly outcome: 'exempt' | 'included' | 'outside' | 'unknown';
  readonly cases: readonly string[];
  /** Largest force on one roof, lb. */
  readonly force: number;
  readonly clause: string;
  readonly note: string;
}

export interface Loads {
  readonly cases: readonly LoadCase[];
  /** Allowable-stress combinations. */
  readonly combinations: readonly Combination[];
  /** Strength combinations for concrete. */
  readonly strength: readonly Combination[];
  readonly basis: LoadBasis;
  /** Load questions outside the provisions' range: each blocks issue. */
  readonly outside: readonly { readonly about: string; readonly why: string }[];
  /** One answer for each roof and snow question; empty without ground snow. */
  readonly snow?: readonly SnowAnswer[];
  /** One answer for each roof that touches the house. */
  readonly attachedWind?: readonly AttachedWindAnswer[];
  readonly seismic?: SeismicAnswer;
}
