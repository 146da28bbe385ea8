/**
 * The shape of a catalogue row. Every row says which document its numbers come from, in which edition, and whether
 * they were read there or recalled; a recalled value is printed with a request to confirm it.
 */

/** `read`: seen in a copy of the document; `memory`: recalled from it, to be confirmed against the printed page. */
export type Provenance = 'read' | 'memory';

export interface Sourced {
  /** Document and table, e.g. `NDS Supplement Table 4A`; `common practice, no source` for a fact of the trade. */
  readonly source: string;
  /** Edition the numbers belong to; `-` where the source has none. */
  readonly edition: string;
  readonly provenance: Provenance;
  /** Anything a user must know before relying on the row. */
  readonly note?: string;
}

export type DesignTable = '4A' | '4B' | '4D' | '5A' | 'SCL';
export type SizeClass = 'dimension' | 'beams-stringers' | 'posts-timbers' | 'glulam' | 'lvl';

/** Reference design values of one grade, psi, for dry service and normal load duration unless `note` says otherwise. */
export interface WoodGrade extends Sourced {
  /** Unique, e.g. `douglas-fir-larch/no-2/4A`. */
  readonly id: string;
  readonly species: string;
  readonly grade: string;
  readonly table: DesignTable;
  readonly sizeClass: SizeClass;
  /** Bending; for glued-laminated timber about x-x with the tension zone stressed in tension. */
  readonly Fb: number;
  /** Glulam bending about x-x with the compression zone stressed in tension (cantilevers, uplift). */
  readonly FbNeg?: number;
  /** Glulam bending about y-y. */
  readonly FbY?: number;
  /** Tension parallel to grain. */
  readonly Ft?: number;
  /** Shear parallel to grain (about x-x for glulam). */
  readonly Fv: number;
  readonly FvY?: number;
  /** Compression perpendicular to grain (on the tension face for glulam). */
  readonly FcPerp: number;
  readonly FcPerpY?: number;
  /** Compression parallel to grain. */
  readonly Fc?: number;
  readonly E: number;
  readonly Emin: number;
  readonly EY?: number;
  readonly EminY?: number;
  /** Specific gravity for connection design. */
  readonly G: number;
  /** Nominal width the row is for, inches; table 4B only, whose values already contain the size factor. */
  readonly width?: number;
}

/** Stable id part from a printed name: `No. 1 & Btr` → `no-1-btr`. */
export const slug = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
