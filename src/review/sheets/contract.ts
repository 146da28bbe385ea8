/** Questions that a plan room asks of every drawn set, whatever it shows. They judge the drawing, not the structure. */
import type { Vec2 } from '../../base/vec.js';
import type { Rect, Sheet } from '../../drawings/ir/index.js';

/** A drawn set and what it ought to show. */
export interface DrawnSet {
  readonly sheets: readonly Sheet[];
  /** Inside of the border. */
  readonly frame: Rect;
  /** What frame and title strip leave for views and notes. */
  readonly area: Rect;
  /** Kept clear for the office's stamp. */
  readonly stamp: Rect;
  /** Marks of all placed members, footings and joints. */
  readonly marks: ReadonlySet<string>;
}

export interface SheetFault {
  /** `S-102`. */
  readonly sheet: string;
  /** What is wrong, with the text or mark concerned. */
  readonly what: string;
  /** Where on the sheet, paper inches from its lower left corner; absent when the whole sheet is meant. */
  readonly at?: Vec2;
}

export interface SheetCheck {
  /** The rule, as a sentence. */
  readonly title: string;
  /** A fault misleads nobody: it is listed, and the set may be handed in all the same. */
  readonly advice?: true;
  /** Every fault found; none when the set is right. */
  run(set: DrawnSet): readonly SheetFault[];
}

export type SheetCheckId =
  | 'inside-frame'
  | 'texts-apart'
  | 'text-height'
  | 'leaders-apart'
  | 'marks-on-plans'
  | 'marks-in-schedules'
  | 'index'
  | 'callouts'
  | 'view-marks'
  | 'scale-bars'
  | 'used'
  | 'legible'
  | 'dimensions-true'
  | 'dimensions-close'
  | 'one-size'
  | 'stamp-clear';

/** A fault with the rule it breaks. */
export interface SheetFinding extends SheetFault {
  readonly check: SheetCheckId;
  readonly rule: string;
  readonly advice?: true;
}
