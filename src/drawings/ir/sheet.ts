import type { Vec2 } from '../../base/vec.js';
import type { Discipline } from './layer.js';
import type { Primitive } from './primitive.js';

/** Rectangle by its lower left corner. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/**
 * Trimmed sheet sizes, landscape but for the last, inches. ARCH and ANSI sizes per a plan room's published list; ISO A
 * sizes converted from millimetres.
 */
export const SHEET_SIZES = {
  'ARCH A': { w: 12, h: 9 },
  'ARCH B': { w: 18, h: 12 },
  'ARCH C': { w: 24, h: 18 },
  'ARCH D': { w: 36, h: 24 },
  'ARCH E1': { w: 42, h: 30 },
  'ARCH E': { w: 48, h: 36 },
  'ANSI A': { w: 11, h: 8.5 },
  'ANSI B': { w: 17, h: 11 },
  'ANSI C': { w: 22, h: 17 },
  'ANSI D': { w: 34, h: 22 },
  'ANSI E': { w: 44, h: 34 },
  'ISO A4': { w: 297 / 25.4, h: 210 / 25.4 },
  'ISO A3': { w: 420 / 25.4, h: 297 / 25.4 },
  'ISO A2': { w: 594 / 25.4, h: 420 / 25.4 },
  'ISO A1': { w: 841 / 25.4, h: 594 / 25.4 },
  'ISO A0': { w: 1189 / 25.4, h: 841 / 25.4 },
  /** Upright, for list pages; no sheet of a set. */
  Letter: { w: 8.5, h: 11 },
} as const satisfies Record<string, { w: number; h: number }>;
export type SheetSize = keyof typeof SHEET_SIZES;

/**
 * A window from the sheet into model space: paper = at + (model − from) · scale.
 * `items` are clipped to `window` when there is one; `over` (dimensions, tags, notes) is placed but never clipped.
 */
export interface Viewport {
  readonly name: string;
  /** Paper point on which the model point `from` falls. */
  readonly at: Vec2;
  readonly from: Vec2;
  /** Paper inches per model inch, e.g. 1/48 for 1/4" = 1'-0". */
  readonly scale: number;
  /** Model rectangle shown. */
  readonly window?: Rect;
  readonly items: readonly Primitive[];
  readonly over?: readonly Primitive[];
  /** The view is a plan in house axes: views of several sheets may be laid over one another. */
  readonly plan?: boolean;
}

/** One sheet: paper inches, origin in the lower left corner. Viewports are drawn first, then `items`. */
export interface Sheet {
  /** `S-101`: discipline letter, hyphen, type digit, two-digit sequence. */
  readonly id: string;
  readonly title: string;
  readonly discipline: Discipline;
  readonly size: SheetSize;
  readonly viewports: readonly Viewport[];
  readonly items: readonly Primitive[];
  /** As the title block prints it: `1/4" = 1'-0"`, `As noted`, `Not to scale`. */
  readonly scaleNote: string;
  /** File of its own in which offices ask for it; absent: with the drawings. */
  readonly file?: SeparateFile;
}

/** What offices ask to be handed in apart from the drawings. */
export type SeparateFile = 'site-plan' | 'calculations' | 'trusses';

export const toPaper = (v: Pick<Viewport, 'at' | 'from' | 'scale'>, p: Vec2): Vec2 => ({
  x: v.at.x + (p.x - v.from.x) * v.scale,
  y: v.at.y + (p.y - v.from.y) * v.scale,
});

export const toModel = (v: Pick<Viewport, 'at' | 'from' | 'scale'>, p: Vec2): Vec2 => ({
  x: v.from.x + (p.x - v.at.x) / v.scale,
  y: v.from.y + (p.y - v.at.y) / v.scale,
});

/** Viewport whose model rectangle is centred in a paper box at a given scale. */
export function centeredViewport(o: {
  readonly name: string;
  readonly box: Rect;
  readonly model: Rect;
  readonly scale: number;
  readonly items: readonly Primitive[];
  readonly over?: readonly Primitive[];
  readonly window?: Rect;
}): Viewport {
  const { name, box, model, scale, items, over, window } = o;
  return {
    name,
    scale,
    items,
    at: { x: box.x + box.w / 2, y: box.y + box.h / 2 },
    from: { x: model.x + model.w / 2, y: model.y + model.h / 2 },
    ...(over && { over }),
    ...(window && { window }),
  };
}
