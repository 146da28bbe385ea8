/** Sections of members and the wood they are of. */
/** Reference design values of the section's material, unadjusted (psi; G dimensionless), with their origin. */
export interface DesignValues {
  readonly Fb: number;
  /** Tension on the normally compressed face (unbalanced glulam); equals Fb otherwise. */
  readonly FbNeg: number;
  /** Bending about the weak axis. */
  readonly FbY: number;
  readonly Ft: number;
  readonly Fv: number;
  readonly FcPerp: number;
  readonly Fc: number;
  readonly E: number;
  readonly Emin: number;
  readonly EminY: number;
  readonly G: number;
  readonly source: string;
  readonly provenance: 'read' | 'memory';
}

export type SectionFamily = 'sawn-dimension' | 'sawn-timber' | 'glulam' | 'lvl';

export interface Section {
  /** As drawn: `6x10 DF-L No. 1`, `(3) 2x10 + (2) 1/2" ply`, `5-1/2" x 12" 24F-V4 glulam`. */
  readonly label: string;
  /** Name of the choice in the project file and its path. */
  readonly choice: string;
  readonly path: string;
  /** Overall width and depth, inches. */
  readonly width: number;
  readonly depth: number;
  /** Width that counts in strength, stiffness and bearing (plywood spacers left out). */
  readonly b: number;
  readonly d: number;
  readonly plies: number;
  /** Width of one structural ply. */
  readonly plyWidth: number;
  readonly family: SectionFamily;
  /** Nominal thickness and width of one ply for size factors, inches: 2 and 10 for a 2x10. Zero for glulam, LVL. */
  readonly nominal: { readonly thickness: number; readonly width: number };
  readonly species: string;
  readonly grade: string;
  readonly sizeClass: 'dimension' | 'beams-stringers' | 'posts-timbers' | 'glulam' | 'lvl';
  /** True when size factors are already in the tabulated values (Southern Pine Table 4B). */
  readonly sizeInTable: boolean;
  readonly values: DesignValues;
  readonly treatment: 'none' | 'above-ground' | 'ground-contact';
  readonly incised: boolean;
  readonly wet: boolean;
  /** Weight per inch of length, lb/in (all plies and spacers). */
  readonly weight: number;
}
