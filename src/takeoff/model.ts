/** The take-off: lines to buy, each with what it is for, what is lost, and how it is sold. */
import type { Buying, Phase, WasteOf } from '../project/model/buying.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { CutGroup } from './cuts/model.js';
import type { Solve } from './cutting/index.js';
import type { PanelLayout } from './panels/model.js';

export interface TakeoffContext {
  readonly project: Project;
  readonly structure: Structure;
  readonly buying: Buying;
  readonly solve: Solve | undefined;
  /** Lumber, bars and tubes with their cutting plans. */
  readonly cuts: readonly CutGroup[];
  /** Sheathing panels of each roof that has them. */
  readonly panels: readonly PanelLayout[];
}

/** What is bought over the net quantity, and why. */
export interface Waste {
  /** Fraction of net; what a cutting plan or a panel layout leaves over is worked out, not allowed for. */
  readonly fraction: number;
  /** `10 % allowance`, `as the cutting plan leaves over`. */
  readonly rule: string;
  readonly source: string;
}

export interface Buy {
  readonly quantity: number;
  readonly unit: string;
  /** Of the line's own unit in one of them, and the least part of one that is sold. */
  readonly holds: number;
  readonly step: number;
  readonly rule: string;
}

export interface Line {
  /** Stable and unique in a take-off: group, phase and item. */
  readonly id: string;
  readonly group: GroupId;
  readonly phase: Phase;
  /** As bought and priced: `2x10x12 DF-L No. 2`. */
  readonly item: string;
  /** What the model holds, in `unit`. */
  readonly net: number;
  readonly unit: string;
  readonly waste: Waste;
  /** Net with waste, in `unit`. */
  readonly gross: number;
  /** Units as sold, and how they follow from the gross quantity. */
  readonly buy: Buy;
  /** Marks of the parts it serves. */
  readonly serves: readonly string[];
  /** One sentence where the line needs it; empty otherwise. */
  readonly note: string;
}

export const GROUPS = {
  concrete: 'Concrete, forms and steel',
  anchors: 'Anchors',
  lumber: 'Lumber',
  engineered: 'Glulam and veneer lumber',
  trusses: 'Trusses',
  strips: 'Plywood strips between plies',
  connectors: 'Connectors and fasteners',
  sheathing: 'Roof sheathing',
  roofing: 'Roofing',
  gutter: 'Gutter',
  finish: 'Ceiling, paint and trim',
  extras: 'Entered by hand',
} as const;
export type GroupId = keyof typeof GROUPS;

/** One kind of thing counted; a file each, listed in `registry.ts`. */
export interface ItemKind {
  readonly count: (ctx: TakeoffContext) => readonly Line[];
}

/** Something the take-off could not count: said on the list, never guessed. */
export interface Open {
  readonly what: string;
  readonly serves: readonly string[];
  readonly path: string;
}

export interface Takeoff {
  readonly lines: readonly Line[];
  readonly open: readonly Open[];
  readonly cuts: readonly CutGroup[];
  readonly panels: readonly PanelLayout[];
}

export type { WasteOf };
