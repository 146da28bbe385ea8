/** Everything on the lot plan at one scale, for the sheet of the set and for the letter-size booklet. */
import type { Vec2 } from '../../../base/vec.js';
import type { DrawingScale, Primitive, Rect } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { extents, SITE_SCALES, scaleFor } from '../parts.js';
import type { PlanView } from '../plans/plan-sheet.js';
import { boundaryLines, boundaryWords, cornerElevations } from './boundary.js';
import { buildingLines, buildingWords, siteItems } from './buildings.js';
import { lotDistances } from './distances.js';
import { groundLines, groundWords, streetDepth } from './ground.js';
import { lettering } from './words.js';

export interface LotView extends PlanView {
  readonly scale: DrawingScale;
}

/** The lot with its street. */
export function lotModel(ctx: SheetContext): Rect {
  const { lot, project } = ctx.input;
  const line = lot.lines[project.lot.street.course];
  const depth = streetDepth(ctx);
  const street: Vec2[] = line
    ? [line.start, line.end].map((p) => ({ x: p.x - depth * line.inward.x, y: p.y - depth * line.inward.y }))
    : [];
  return extents([...lot.corners, ...street]);
}

/** View of the lot in a box at the largest engineer scale that leaves its lettering room. */
export function lotView(ctx: SheetContext, box: Rect): LotView {
  const h = ctx.style.note;
  const model = lotModel(ctx);
  const margin = { x: 6 * h, y: 7.5 * h };
  return { model, margin, scale: scaleFor(ctx, model, box, margin, SITE_SCALES) };
}

export function lotContent(
  ctx: SheetContext,
  { scale }: LotView,
): { readonly items: readonly Primitive[]; readonly over: readonly Primitive[] } {
  const items = [...groundLines(ctx), ...boundaryLines(ctx), ...buildingLines(ctx)];
  const over: Primitive[] = [];
  boundaryWords(ctx, over);
  over.push(...lotDistances(ctx, scale.ratio));
  // A hatch is no line to keep clear of; what is lettered first has its choice of place.
  const l = lettering(ctx.style, scale.ratio, over, items);
  buildingWords(ctx, l);
  cornerElevations(ctx, l);
  groundWords(ctx, l, scale.ratio);
  siteItems(ctx, l);
  return { items, over };
}
