/** Paints what has changed since the last time, and nothing when nothing has. */
import type { PackedSheet } from '../core/pack.js';
import { dirtyBoxes } from './dirty.js';
import { type Look, MARGIN, paint } from './paint.js';

/** What the canvas shows. */
export interface Painted {
  readonly sheet: PackedSheet;
  readonly look: Look;
}

const alike = (a: Look, b: Look): boolean =>
  a.camera === b.camera &&
  a.size.w === b.size.w &&
  a.size.h === b.size.h &&
  a.dpr === b.dpr &&
  a.ink === b.ink &&
  a.picked === b.picked &&
  a.role === b.role;

/** @param last what the canvas shows now; undefined when it is blank or its lettering is not that of the sheet */
export function repaint(
  ctx: CanvasRenderingContext2D,
  sheet: PackedSheet,
  look: Look,
  last: Painted | undefined,
): Painted {
  if (last && alike(last.look, look)) {
    if (last.sheet !== sheet) paint(ctx, sheet, look, dirtyBoxes(last.sheet, sheet, MARGIN + 4 / look.camera.zoom));
  } else paint(ctx, sheet, look);
  return { sheet, look };
}
