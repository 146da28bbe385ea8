import type { Phase } from '../../project/model/buying.js';
import type { Cut, CuttingPlan } from '../cutting/index.js';

/** A piece with the part it belongs to: a member's id, or the roof a block stands in. */
export interface PartCut extends Cut {
  readonly part: string;
  /** How its ends and seats are cut, as the drawings say; empty: square. */
  readonly ends?: string;
  /** Blocks: over a bearing, where toe-nails hold it, or under a panel edge. */
  readonly use?: 'heel' | 'edge';
}

export type StockKind = 'lumber' | 'engineered' | 'bar' | 'tube';

/** Everything that is cut from one stock: one size, species, grade and treatment. */
export interface StockSpec {
  readonly kind: StockKind;
  /** As bought, without its length: `2x10 DF-L No. 2, treated above ground`. */
  readonly item: string;
  /** Before and after a length in the name of a board: `2x10` and ` DF-L No. 2`. */
  readonly head: string;
  readonly tail: string;
  readonly lengths: readonly number[];
  /** Where the lengths come from, as printed. */
  readonly lengthsFrom: string;
  readonly kerf: number;
  readonly trim: number;
  /** Ordered piece by piece to length: no piece is cut from another's. */
  readonly single: boolean;
}

export interface CutGroup extends StockSpec {
  readonly phase: Phase;
  readonly cuts: readonly PartCut[];
  readonly plan: CuttingPlan;
  /** True when boards were compared by price, false by length. */
  readonly priced: boolean;
}

/** A piece before it is planned. */
export interface LooseCut {
  readonly spec: StockSpec;
  readonly phase: Phase;
  readonly cut: PartCut;
}
