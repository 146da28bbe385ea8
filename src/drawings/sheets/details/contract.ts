/**
 * A construction detail: one or more views of a place at one scale, with keyed notes. Views are cuts and projections of the
 * placed pieces near the place; layers that are not placed (flashing, membranes) are drawn from stated sizes and say so.
 */
import type { Vec2, Vec3 } from '../../../base/vec.js';
import type { Primitive, Rect, ScaleName } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';

/** What a keyed note points at, in the coordinates of its view. */
export interface Key {
  readonly at: Vec2;
  /** The note; equal texts in several views share a number. */
  readonly text: string;
  readonly mark?: string | undefined;
  readonly path?: string | undefined;
  /** Where the number would like to stand, in note heights from the point. */
  readonly off?: Vec2;
}

/** Paper kept free round a view for its dimension strings, in note heights. */
export interface Margin {
  readonly left: number;
  readonly right: number;
  readonly above: number;
  readonly below: number;
}

export interface DetailView {
  /** Printed over the view when the detail has several. */
  readonly name?: string;
  /** Model inches shown; the picture is cut off at it. */
  readonly frame: Rect;
  readonly items: readonly Primitive[];
  readonly margin: Margin;
  /** Dimension strings and break lines, never cut off. `scale` is paper over model. */
  readonly over?: (scale: number) => readonly Primitive[];
  readonly keys: readonly Key[];
}

/** Where a plan or a section shows the bubble that names the detail. */
export interface Call {
  /** The place drawn. */
  readonly at: Vec3;
  /** Places made alike, the drawn one among them or not: a section shows the nearest to its plane. */
  readonly alike?: readonly Vec3[];
  /** Direction in plan in which the detail's picture runs: a section that runs across it does not show its parts. */
  readonly runs?: Vec2;
  /** Of the dashed circle in a section, inches. */
  readonly radius: number;
}

export interface Detail {
  /** Unique in the set: `post-beam J3 end`. */
  readonly id: string;
  readonly title: string;
  /** Side by side, left to right. */
  readonly views: readonly DetailView[];
  /** Bullets below the keyed notes: order of work, cautions, practice. */
  readonly words?: readonly string[];
  readonly scales: readonly ScaleName[];
  readonly call: Call;
}

/** Details of one sort that the placed structure asks for; none when it has no such place. */
export type DetailMaker = (ctx: SheetContext) => readonly Detail[];
