import type { Vec2 } from '../../base/vec.js';
import type { FaceName } from './faces.js';
import type { LayerName } from './layer.js';
import type { PatternName } from './pattern.js';
import type { FillName, InkName, PenName } from './pen.js';

/**
 * Drawing primitives: plain readonly data. Coordinates are inches, y up: paper inches on a sheet, model inches inside a
 * viewport. Whatever a reader must be able to read stays in PAPER inches everywhere: text heights, dash lengths, hatch
 * spacing, the contents of a `symbol`, the offset of a `dimension`.
 */
export interface Common {
  readonly layer: LayerName;
  /** Mark of the part drawn (`F1`, `B2`): back-ends carry it through, so a click finds the part. */
  readonly mark?: string;
  /** What the primitive is for, in one word, e.g. `ridge`; free text for tests and pickers. */
  readonly role?: string;
  /** JSON pointer of the project-file value shown, so that a click can edit it. */
  readonly path?: string;
}

export interface Line extends Common {
  readonly kind: 'line';
  readonly a: Vec2;
  readonly b: Vec2;
  readonly pen: PenName;
}

export interface Polyline extends Common {
  readonly kind: 'polyline';
  readonly points: readonly Vec2[];
  readonly closed?: boolean;
  /** Absent: filled without an outline. */
  readonly pen?: PenName;
  readonly fill?: FillName;
}

export interface Circle extends Common {
  readonly kind: 'circle';
  readonly center: Vec2;
  readonly radius: number;
  readonly pen?: PenName;
  readonly fill?: FillName;
}

/** Circular arc, counter-clockwise from `start` to `end` (radians). */
export interface Arc extends Common {
  readonly kind: 'arc';
  readonly center: Vec2;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
  readonly pen: PenName;
}

export type HAlign = 'left' | 'center' | 'right';
/** `top` and `middle` refer to the capitals: a text of height h reaches from its baseline to h above it. */
export type VAlign = 'baseline' | 'middle' | 'top';

export interface Text extends Common {
  readonly kind: 'text';
  readonly at: Vec2;
  /** One line; wrap with `wrapText` or `textBlock`. */
  readonly content: string;
  /** Cap height in paper inches, as drafters state it. */
  readonly height: number;
  readonly face?: FaceName;
  readonly align?: HAlign;
  readonly valign?: VAlign;
  /** Radians, counter-clockwise. */
  readonly angle?: number;
  readonly ink?: InkName;
  /** Clears the paper behind the text (for text over hatch or lines). */
  readonly mask?: boolean;
}

/** Material pattern in closed loops, filled even-odd; the outline is drawn separately, with its own pen. */
export interface Hatch extends Common {
  readonly kind: 'hatch';
  readonly loops: readonly (readonly Vec2[])[];
  readonly pattern: PatternName;
  /** Turns the pattern, radians. */
  readonly angle?: number;
  /** Multiplies the pattern's paper spacing; 1 by default. */
  readonly spacing?: number;
}

/**
 * Linear dimension kept as data (the DXF file writes a true dimension); `explodeDimension` makes its strokes.
 * Measured along `angle` between the projections of `a` and `b`. The dimension line passes `offset` paper inches from
 * `base`, to the left of the direction `angle` for a positive offset.
 */
export interface Dimension extends Common {
  readonly kind: 'dimension';
  readonly a: Vec2;
  readonly b: Vec2;
  readonly angle: number;
  readonly base: Vec2;
  readonly offset: number;
  /** Model inches shown, after the chain's rounding. */
  readonly value: number;
  readonly text: string;
  /** Model inches that a break line between the ends leaves out of the view; part of `value`. */
  readonly beyond?: number;
  readonly height: number;
  /** Paper inches by which the text leaves its place over the middle of the segment: along the line and away from it. */
  readonly shift?: Vec2;
  /** Draw no extension line at an end (a neighbour in the chain draws it). */
  readonly noExtensionA?: boolean;
  readonly noExtensionB?: boolean;
}

/** Paper-size contents (tag, bubble, arrowhead, note) anchored at a point of the drawing. */
export interface PaperSymbol extends Common {
  readonly kind: 'symbol';
  readonly at: Vec2;
  readonly angle?: number;
  /** In paper inches from the anchor. */
  readonly items: readonly Primitive[];
}

export type Primitive = Line | Polyline | Circle | Arc | Text | Hatch | Dimension | PaperSymbol;
export type PrimitiveKind = Primitive['kind'];
