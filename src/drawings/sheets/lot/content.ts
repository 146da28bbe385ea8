/** Everything on the lot plan at one scale, for the sheet of the set and for the letter-size booklet. */
import type { Vec2 } from '../../../base/vec.js';
import type { DrawingScale, Primitive, Rect } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { extents, inflate, SITE_SCALES, scaleFor } from '../parts.js';
import type { PlanView } from '../plans/plan-sheet.js';
import { boundaryLines, boundaryWords, cornerElevations } from './boundary.js';
import { buildingLines, buildingWords, siteItems } from './buildings.js';
import { lotDistances } from './distances.js';
import { groundLines, groundWords, streetDepth } from './ground.js';
import { lettering, lettersWithin, within } from './words.js';

export interface LotView extends PlanView {
  readonly scale: DrawingScale;
}

/** What lies off the lot by more than this is not drawn, inches: a slip of the file must not shrink the plan. */
const OFF_LOT = 480;

/** The lot with its street, and what lies little outside it: a pole across the line, a tree on the neighbor's side. */
export function lotModel(ctx: Pick<SheetContext, 'input'>): Rect {
  const { lot, project } = ctx.input;
  const line = lot.lines[project.lot.street.course];
  const depth = streetDepth(ctx);
  const street: Vec2[] = line
    ? [line.start, line.end].map((p) => ({ x: p.x - depth * line.inward.x, y: p.y - depth * line.inward.y }))
    : [];
  const { items, utilities, drainage, buildings, paving } = project.lot;
  const near = inflate(extents(lot.corners), OFF_LOT);
  const others = [
    ...items.flatMap((i) => i.outline ?? [i.at]),
    ...utilities.flatMap((u) => u.points),
    ...drainage.flatMap((d) => [d.from, d.to]),
    ...[...buildings, ...paving].flatMap((b) => b.outline),
  ];
  return extents([...lot.corners, ...street, ...others.filter((p) => within(near, p))]);
}

/** What the plan shows of the lot, to its edge and a hand beyond. */
export const lotWindow = (v: PlanView): Rect => inflate(v.model, 60);

/** View of the lot in a box at the largest engineer scale that leaves its lettering room. */
export function lotView(ctx: SheetContext, box: Rect): LotView {
  const h = ctx.style.note;
  const model = lotModel(ctx);
  const margin = { x: 6 * h, y: 7.5 * h };
  return { model, margin, scale: scaleFor(ctx, model, box, margin, SITE_SCALES) };
}

export function lotContent(
  ctx: SheetContext,
  { model, scale, margin }: LotView,
): { readonly items: readonly Primitive[]; readonly over: readonly Primitive[] } {
  const items = [...groundLines(ctx), ...boundaryLines(ctx), ...buildingLines(ctx)];
  const over: Primitive[] = [];
  boundaryWords(ctx, over);
  over.push(...lotDistances(ctx, scale.ratio));
  const bounds = {
    x: model.x - margin.x / scale.ratio,
    y: model.y - margin.y / scale.ratio,
    w: model.w + (2 * margin.x) / scale.ratio,
    h: model.h + (2 * margin.y) / scale.ratio,
  };
  // A hatch is no line to keep clear of; what is lettered first has its choice of place.
  const l = lettersWithin(lettering(ctx.style, scale.ratio, over, items, bounds), model);
  buildingWords(ctx, l);
  cornerElevations(ctx, l);
  groundWords(ctx, l, scale.ratio);
  siteItems(ctx, l);
  return { items, over };
}
