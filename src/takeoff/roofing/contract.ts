import type { RoofCovering } from '../../catalog/index.js';
import type { CoverRoof } from '../../project/model.js';
import type { Surface } from '../../structure/model.js';
import type { RoofEdge } from '../edges.js';
import type { Line, TakeoffContext } from '../model.js';

/** One roof as a roofer sees it. */
export interface RoofArea {
  readonly roof: CoverRoof;
  readonly covering: RoofCovering;
  readonly surfaces: readonly Surface[];
  readonly edges: readonly RoofEdge[];
  /** Area on the slope, square feet. */
  readonly area: number;
  /** Hips or valleys: more is lost to cuts. */
  readonly cutUp: boolean;
}

/** What a covering is bought as, beside underlayment and flashings, which all have. */
export interface RoofingSystem {
  readonly lines: (r: RoofArea, ctx: TakeoffContext) => readonly Line[];
  /** Edges get a metal drip edge. */
  readonly dripEdge: boolean;
}

/** Square feet of a square, the roofer's unit. */
export const SQUARE = 100;
export const feet = (inches: number): number => inches / 12;
