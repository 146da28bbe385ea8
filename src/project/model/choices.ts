/** Products and materials the owner picked, the log and the prices. */
import type { Inches, Pounds, Psi } from '../../base/units.js';
import type { Connection } from '../connections.js';
import type { ApprovalKind, AsBuiltLog, Inspection } from './log.js';
import type { AnchorChoice, FootingChoice, SectionChoice } from './materials.js';

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
    /** Which office it is; undefined: told by its name. */
    readonly kind?: ApprovalKind | undefined;
    /** Days without work or a passed inspection after which it lapses; undefined: the usual. */
    readonly lapsesAfter?: number | undefined;
  }[];
  readonly inspections?: readonly Inspection[] | undefined;
  readonly asBuilt?: AsBuiltLog | undefined;
}

export interface PriceRow {
  readonly item: string;
  readonly unit: string;
  readonly price: number;
}
