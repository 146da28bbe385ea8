import type { Phase } from '../../project/model/buying.js';
import type { TakeoffContext } from '../model.js';

/** Fasteners counted one by one, before they are put together by item. */
export interface Counted {
  /** As bought: `16d common nail`. */
  readonly item: string;
  readonly count: number;
  readonly phase: Phase;
  readonly serves: readonly string[];
  /** Sold by weight: pieces in a pound. Absent: sold by the piece. */
  readonly perPound?: number;
  readonly note?: string;
}

export interface FastenerSource {
  readonly count: (ctx: TakeoffContext) => readonly Counted[];
}
