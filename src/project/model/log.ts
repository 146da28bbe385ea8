/** What was measured and what inspectors said on the site. */
import type { Inches } from '../../base/units.js';

/** `along` the house wall, square `out` from it, a level `distance` between two points, a `level` above another point. */
export type ReadingKind = 'along' | 'out' | 'distance' | 'level';

export type Instrument = 'tape' | 'steel-tape' | 'laser-distance' | 'line-laser' | 'water-level' | 'optical-level';

/** One reading as it was taken. Lengths between points have no sign; a level is negative when `to` lies lower. */
export interface Reading {
  readonly kind: ReadingKind;
  /** Name of the point measured from; undefined: home base, the wall, or the benchmark, as the kind has it. */
  readonly from?: string | undefined;
  readonly to: string;
  readonly value: Inches;
  readonly date: string;
  readonly instrument: Instrument;
  /** Standard deviation of the reading; undefined: the usual one of its instrument. */
  readonly sigma?: Inches | undefined;
  readonly path: string;
}

export interface AsBuiltLog {
  readonly readings: readonly Reading[];
  /** How far a post base can be moved on its anchor in any direction; undefined: nobody has said, so not at all. */
  readonly slot?: Inches | undefined;
  /** Posts that are cut already, with their lengths. */
  readonly cut: readonly { readonly post: string; readonly length: Inches; readonly path: string }[];
}

/** The stages of the work at which somebody looks. */
export const STAGE_IDS = [
  'locate',
  'setback',
  'footing',
  'slab',
  'posts',
  'beams',
  'roof-framing',
  'sheathing',
  'roofing',
  'electrical',
  'final',
] as const;
export type StageId = (typeof STAGE_IDS)[number];

export type InspectionResult = 'passed' | 'partial' | 'failed' | 'pending';

export interface Inspection {
  readonly stage: StageId;
  readonly date: string;
  readonly result: InspectionResult;
  /** Who inspected, as on the card; empty when nobody has. */
  readonly by: string;
  readonly note: string;
  readonly items: readonly InspectedItem[];
  readonly path: string;
}

/** One line of a stage card as it was filled in. */
export interface InspectedItem {
  readonly item: string;
  readonly done: boolean;
  readonly measured: string;
  readonly note: string;
  /** Name of a picture file. */
  readonly photo: string;
}

/** Offices whose word the work needs. */
export const APPROVAL_KINDS = ['zoning', 'association', 'health', 'building', 'electrical'] as const;
export type ApprovalKind = (typeof APPROVAL_KINDS)[number];
