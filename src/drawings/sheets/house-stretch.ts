/**
 * How much of the house the plans show: near a long wall only the stretch by the new work, between break lines, when that
 * gives a larger scale. What is measured from a corner beyond a break line keeps its true value.
 */
import type { Structure } from '../../structure/model.js';
import { breakLine } from '../annotate/index.js';
import { chooseScale, type Dimension, type DrawingScale, type Primitive, type Rect, SCALES } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { dims, PLAN_SCALES, scaleFor, titleBand, unique } from './parts.js';
import { coverExtents, houseCorners, housePlan, planExtents, planMargin, WALL } from './plan-base.js';

/** House shown past the new work, inches, the most first; the first gives way when a shorter one earns a larger scale. */
const REACHES = [Number.POSITIVE_INFINITY, 72, 54, 36] as const;

/** A corner this little beyond a cut is shown instead, inches. */
const SPARE = 24;

/** A cut keeps this far off an opening, inches: openings are shown whole. */
const JAMB = 6;

export interface Stretch {
  readonly model: Rect;
  readonly margin: { readonly x: number; readonly y: number };
  readonly scale: DrawingScale;
  /** House axis x of the break lines, where there are any. */
  readonly cuts: { readonly low?: number; readonly high?: number };
}

/** Extent along the house of all that is new or stands by it. */
function newWork(structure: Structure): readonly [number, number] {
  const xs = [
    ...structure.roofs.flatMap((r) => [r.min.x, r.max.x]),
    ...structure.slabs.flatMap((s) => s.outline.map((p) => p.x)),
    ...structure.footings.flatMap((f) => [f.at.x - f.size / 2, f.at.x + f.size / 2]),
    ...structure.members.filter((m) => m.role !== 'gutter').flatMap((m) => [m.start.x, m.end.x]),
  ];
  return [Math.min(...xs), Math.max(...xs)];
}

/** The cut moved outward past an opening it would run through. */
export function clearOfOpenings(structure: Structure, x: number, out: 1 | -1): number {
  for (const w of structure.walls) {
    if (Math.abs(w.start.y) > 1 || Math.abs(w.end.y) > 1) continue;
    const way = Math.sign(w.end.x - w.start.x);
    for (const o of w.openings) {
      const [a, b] = [w.start.x + way * o.offset, w.start.x + way * (o.offset + o.width)];
      const [low, high] = [Math.min(a, b) - JAMB, Math.max(a, b) + JAMB];
      if (x > low && x < high) return out > 0 ? high : low;
    }
  }
  return x;
}

function cutsAt(structure: Structure, reach: number): Stretch['cuts'] {
  if (!Number.isFinite(reach)) return {};
  const [from, to] = newWork(structure);
  const xs = houseCorners(structure).map((c) => c.x);
  const low = clearOfOpenings(structure, from - reach, -1);
  const high = clearOfOpenings(structure, to + reach, 1);
  return {
    ...(Math.min(...xs) < low - SPARE && { low }),
    ...(Math.max(...xs) > high + SPARE && { high }),
  };
}

/** The view of a plan that shows the house, at the largest scale its box allows; `above` is paper kept free over and under it beside the strings. */
export function houseStretch(ctx: SheetContext, box: Rect, above = 0): Stretch {
  const { structure } = ctx.input;
  const views = REACHES.map((reach): Stretch => {
    const cuts = cutsAt(structure, reach);
    const all = planExtents(structure, 30);
    const x = cuts.low ?? all.x;
    const model = { ...all, x, w: (cuts.high ?? all.x + all.w) - x };
    const marginAt = (scale: number) => {
      const { x: side, y } = planMargin(ctx, model, scale);
      return { x: side, y: y + above };
    };
    // The strings beside the cover stand before the house wall: the larger the scale, the more room they have there.
    const name =
      PLAN_SCALES.find((n) => {
        const m = marginAt(SCALES[n].ratio);
        const room = { w: box.w - 2 * m.x, h: box.h - titleBand(ctx) - 2 * m.y };
        return chooseScale(model, room, [n]) !== undefined;
      }) ?? PLAN_SCALES.at(-1)!;
    const scale = SCALES[name];
    return { model, margin: marginAt(scale.ratio), cuts, scale };
  });
  return views.reduce((best, v) => (v.scale.ratio > best.scale.ratio + 1e-9 ? v : best));
}

/** The view of a plan above the footings where the house is too far off to be shown. */
export function coverView(ctx: SheetContext, box: Rect, above: number): Stretch {
  const model = coverExtents(ctx.input.structure, 30);
  const { x, y } = planMargin(ctx, model);
  const margin = { x, y: y + above };
  return { model, margin, cuts: {}, scale: scaleFor(ctx, model, box, margin, PLAN_SCALES) };
}

/** Walls of the stretch shown, and the break lines at its ends. */
export function stretchPlan(ctx: SheetContext, s: Stretch): Primitive[] {
  const { structure } = ctx.input;
  const { low, high } = s.cuts;
  // The walls reach a wall's thickness past what is seen: not so at a cut.
  const x0 = s.model.x + (low === undefined ? 0 : WALL);
  const x1 = s.model.x + s.model.w - (high === undefined ? 0 : WALL);
  const lines = [low, high].flatMap((x) =>
    x === undefined
      ? []
      : breakLine({
          a: { x, y: -2.5 * WALL },
          b: { x, y: 1.5 * WALL },
          layer: 'A-WALL-EXST',
          style: ctx.style,
        }),
  );
  return [...housePlan(structure, 30, { ...s.model, x: x0, w: x1 - x0 }), ...lines];
}

/** The string along the house: corners a tape can be hooked on and what is laid out from them, true also past a cut. */
export function alongHouse(
  ctx: SheetContext,
  s: Stretch,
  o: Omit<Parameters<typeof dims>[1], 'tiers' | 'side' | 'datum'>,
  stations: readonly number[],
): readonly Dimension[] {
  const corners = houseCorners(ctx.input.structure).map((c) => c.x);
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = s.cuts;
  const shown = corners.filter((c) => c >= low && c <= high);
  const ends = [...(Number.isFinite(low) ? [low] : []), ...(Number.isFinite(high) ? [high] : [])];
  const string = dims(ctx, {
    ...o,
    side: 'below',
    datum: s.model.y,
    tiers: [{ stations: unique([...shown, ...stations, ...ends]) }],
  });
  const past = (d: Dimension, key: 'a' | 'b', cut: number, corner: number): Dimension =>
    Math.abs(d[key].x - cut) > 1e-6
      ? d
      : {
          ...d,
          value: d.value + Math.abs(cut - corner),
          beyond: (d.beyond ?? 0) + Math.abs(cut - corner),
          text: `${ctx.len(d.value + Math.abs(cut - corner))} to corner`,
        };
  // Of several corners beyond a cut the nearest, the one the layout is measured from.
  const left = Math.max(...corners.filter((c) => c < low));
  const right = Math.min(...corners.filter((c) => c > high));
  return string.items.map((d) => past(past(d, 'a', low, left), 'b', high, right));
}
