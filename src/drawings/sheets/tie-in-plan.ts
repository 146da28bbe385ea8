/** Plan of a roof over the old roof: valleys, plates, fill rafters with their marks, and the dimensions they are set out by. */
import { flat, type Vec2 } from '../../base/vec.js';
import type { Member, OverlayPlaced } from '../../structure/model.js';
import { overlayPoint } from '../../structure/tie-in/frame.js';
import { placeTags, sectionMark } from '../annotate/index.js';
import type { Primitive, Rect, ScaleName } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { bar } from './frame-parts.js';
import { dims, extents, northOnPlan, type PlacedView, placeView, scaleFor, titleBand, unique } from './parts.js';
import { labels, valleyAngle, valleyWords, wishesOf } from './tie-in-labels.js';
import { along, axisOf, oldRoofItems, planOfMember, poly, seams } from './tie-in-lines.js';

const SCALES: readonly ScaleName[] = ['1', '3/4', '1/2', '3/8', '1/4', '3/16', '1/8'];

/** How much of the cover and of the old roof round it the plan shows, inches. */
const ABOUT = 30;

function dimensions(ctx: SheetContext, o: OverlayPlaced, model: Rect, scale: number): Primitive[] {
  const upright = axisOf(o) === 'y';
  const common = { scale, layer: 'S-ANNO-DIMS' } as const;
  const c = (x: number): number => along(o, x);
  const across = (y: number): number => {
    const p = overlayPoint(o.frame, o.last, y, 0);
    return upright ? p.x : p.y;
  };
  const [far, near] = upright ? ([model.x + model.w, model.x] as const) : ([model.y + model.h, model.y] as const);
  // The last frame of the cover, the fill, the end of the ridge; the old eave stands in the string on the other side.
  const set = [c(o.last), ...o.fills.map((f) => c(f.x)), c(o.head)];
  const runs = [c(o.last), c(0), c(o.start), c(o.head)];
  const feet = [across(-o.half), across(0), across(o.half)];
  const outer = o.frame.into[upright ? 'y' : 'x'] < 0;
  return [
    ...dims(ctx, { ...common, side: upright ? 'right' : 'above', datum: far, tiers: [{ stations: unique(set) }] })
      .items,
    ...dims(ctx, {
      ...common,
      side: upright ? 'left' : 'below',
      datum: near,
      tiers: [{ stations: unique(runs) }, { stations: unique([c(0), c(o.head)]) }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: upright ? (outer ? 'above' : 'below') : outer ? 'right' : 'left',
      datum: upright ? (outer ? model.y + model.h : model.y) : outer ? model.x + model.w : model.x,
      tiers: [{ stations: unique(feet) }, { stations: unique([feet[0]!, feet[2]!]) }],
    }).items,
  ];
}

/** What of the plan is shown, in house axes. */
export function tieInFrame(o: OverlayPlaced): Rect {
  const p = (x: number, y: number): Vec2 => flat(overlayPoint(o.frame, x, y, 0));
  return extents([
    p(o.last - ABOUT, -o.half - 20),
    p(o.last - ABOUT, o.half + 20),
    p(o.head + ABOUT / 2, -o.half - 20),
    p(o.head + ABOUT / 2, o.half + 20),
  ]);
}

/** Note heights kept above and below the plan for its strings. */
const ROUND = 9;

/** Paper the plan takes from the top of its box, title and bar scale included. */
export const planHeight = (ctx: SheetContext, o: OverlayPlaced, placed: PlacedView): number =>
  tieInFrame(o).h * placed.scale.ratio + 2 * ROUND * ctx.style.note + titleBand(ctx);

export function tieInPlan(
  ctx: SheetContext,
  o: OverlayPlaced,
  box: Rect,
  number: string,
  section: { readonly number: string; readonly sheet: string },
): PlacedView {
  const { structure, lot } = ctx.input;
  const { style } = ctx;
  const h = style.note;
  const model = tieInFrame(o);
  const scale = scaleFor(ctx, model, box, { x: h * 11, y: h * ROUND }, SCALES);
  const members = (role: Member['role']) => o.members.filter((m) => m.role === role);
  const surfaces = structure.surfaces.filter((s) => s.roof === o.roof);
  const items: Primitive[] = [
    ...oldRoofItems(ctx),
    ...structure.members
      .filter((m) => m.roof === o.roof && m.strips.length > 0)
      .map((m) => bar(m, 'S-FRAM', 'new-fine')),
    ...structure.members.filter((m) => m.role === 'beam').map((m) => bar(m, 'S-BEAM', 'hidden')),
    ...surfaces.map((s) =>
      poly(
        s.outline.map((q) => ({
          x: s.origin.x + s.u.x * q.x + s.v.x * q.y,
          y: s.origin.y + s.u.y * q.x + s.v.y * q.y,
        })),
        'A-ROOF-OTLN',
        'new-fine',
        s.roof,
      ),
    ),
    ...o.faces.map((f) => poly(f.outline.map(flat), 'A-ROOF', 'new', o.roof)),
    ...members('valley-plate').map((m) => poly(planOfMember(o, m), 'S-FRAM', 'new-fine', m.mark, 'paper')),
    ...members('fascia').map((m) => poly(planOfMember(o, m), 'S-FRAM', 'new-fine', m.mark)),
    ...members('fill-rafter').map((m) => poly(planOfMember(o, m), 'S-FRAM', 'new', m.mark, 'paper')),
    ...members('ridge').map((m) => poly(planOfMember(o, m), 'S-FRAM', 'new', m.mark, 'paper')),
    ...seams(o),
  ];
  const over: Primitive[] = [...valleyAngle(ctx, o), ...dimensions(ctx, o, model, scale.ratio)];
  const ends = [overlayPoint(o.frame, o.last - ABOUT + 4, 0, 0), overlayPoint(o.frame, o.head + ABOUT / 2, 0, 0)];
  over.push(
    ...sectionMark({
      a: flat(ends[0]!),
      b: flat(ends[1]!),
      look: lookOf(o),
      ...section,
      ends: 'b',
      layer: 'S-ANNO-SYMB',
      style,
    }),
  );
  over.push(...labels(ctx, o, scale.ratio, over, items));
  over.push(...valleyWords(ctx, o, scale.ratio, over, items));
  over.push(...placeTags(wishesOf(ctx, o), scale.ratio, over, items));
  const placed = placeView(ctx, {
    box,
    model,
    scale,
    number,
    title: 'Roof over the old roof',
    items,
    over,
    north: northOnPlan(lot.north),
    snug: h * ROUND,
  });
  return { ...placed, viewport: { ...placed.viewport, window: model } };
}

/** The section looks to −x, or to −y: to the left or right of the way up the old slope. */
const lookOf = (o: OverlayPlaced): 1 | -1 => {
  const { into } = o.frame;
  const away = axisOf(o) === 'y' ? { x: -1, y: 0 } : { x: 0, y: -1 };
  return -into.y * away.x + into.x * away.y > 0 ? 1 : -1;
};
