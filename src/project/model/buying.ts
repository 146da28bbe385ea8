/** How the material is bought and who does the work; nothing here is designed with. */
import type { Inches } from '../../base/units.js';

/** Activities in the order they are built: deliveries and costs follow them. */
export const PHASES = ['footings', 'slab', 'posts-and-beams', 'framing', 'sheathing', 'roofing', 'finish'] as const;
export type Phase = (typeof PHASES)[number];

/** What a waste allowance can be stated for. */
export const WASTES = [
  'concrete',
  'gravel',
  'steel',
  'fasteners',
  'nails',
  'roofing',
  'underlayment',
  'flashing',
  'ceiling',
  'paint',
  'forms',
  'gutter',
] as const;
export type WasteOf = (typeof WASTES)[number];

export type WorkBy = 'own' | 'subcontract';

export interface Buying {
  /** Lengths the yard sells of a size, such as `2x10` or `6x6`; a size without a row has the usual ones. */
  readonly stock: readonly { readonly size: string; readonly lengths: readonly Inches[] }[];
  /** Width of the saw's cut, and what is cut off every board before use. */
  readonly kerf: Inches;
  readonly trim: Inches;
  readonly concrete: {
    readonly by: 'bags' | 'ready-mix';
    /** Weight of the bags, lb. */
    readonly bag: number;
    /** Least load the plant brings, and below which it asks more for a short load, cubic yards; undefined until asked. */
    readonly leastLoad: number | undefined;
    readonly shortLoad: number | undefined;
  };
  readonly waste: readonly { readonly of: WasteOf; readonly fraction: number; readonly from: string }[];
  /** Who does a phase, and what the work alone costs; undefined: not known. */
  readonly work: readonly {
    readonly phase: Phase;
    readonly by: WorkBy;
    readonly price: number | undefined;
    readonly from: string;
  }[];
  /** Things to buy that the model does not hold: wraps, fans, lamps. */
  readonly extras: readonly {
    readonly item: string;
    readonly unit: string;
    readonly quantity: number;
    readonly phase: Phase;
  }[];
  /** For plants and yards, in words. */
  readonly delivery: { readonly date: string; readonly access: string; readonly contact: string };
  readonly bids: readonly Bid[];
}

/** A bid as received: what its writer says of each line of the scope. */
export interface Bid {
  /** Trade asked, by the scope's name: `concrete`, `framing`, `roofing`. */
  readonly trade: string;
  readonly bidder: string;
  readonly date: string;
  readonly total: number;
  /** Asked before work begins. */
  readonly deposit: number;
  readonly lines: readonly {
    /** Number of the scope's line. */
    readonly line: string;
    readonly says: 'included' | 'excluded' | 'different';
    readonly price: number | undefined;
    readonly note: string;
  }[];
  readonly path: string;
}
