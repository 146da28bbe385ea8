/** Distances on the lot plan: from the new work to every line by the edge the office measures, and to what stands near. */
import { contains } from '../../../base/plane.js';
import type { Vec2 } from '../../../base/vec.js';
import { touchesText } from '../../annotate/index.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { houseOutline } from './buildings.js';
import { between, feet, readable } from './words.js';

export interface Measured {
  readonly from: Vec2;
  readonly foot: Vec2;
  readonly distance: number;
  readonly line: string;
}

/** A roof edge this far off its outline, a fascia outside it, is the same edge, inches. */
const EDGE = 12;

/** Places on the same edge at the same distance from a parallel line: the middle of the roof's side. */
function alike(ctx: SheetContext, from: Vec2, inward: Vec2): Vec2[] {
  const along = { x: -inward.y, y: inward.x };
  return ctx.input.structure.roofs.flatMap((r) => {
    const c = { x: (r.min.x + r.max.x) / 2, y: (r.min.y + r.max.y) / 2 };
    const s = (c.x - from.x) * along.x + (c.y - from.y) * along.y;
    const p = { x: from.x + s * along.x, y: from.y + s * along.y };
    const out = Math.max(r.min.x - p.x, p.x - r.max.x, r.min.y - p.y, p.y - r.max.y);
    return Math.abs(out) <= EDGE ? [p] : [];
  });
}

/** Distances to the lot lines that stand on the plan; one that runs through the house stands in the table only. */
export function measuredLines(ctx: SheetContext): Measured[] {
  const { lot, project } = ctx.input;
  const house = houseOutline(ctx);
  const byPost = project.basis.zoning.referenceEdge.value === 'post';
  return lot.distances.flatMap((d) => {
    const line = lot.lines.find((l) => l.name === d.line)!;
    const nearest = byPost ? d.nearestPost : d.nearestEave;
    const foot = (p: Vec2): Vec2 => ({ x: p.x - line.inward.x * d.governing, y: p.y - line.inward.y * d.governing });
    const far = (p: Vec2): number => (p.x - line.start.x) * line.inward.x + (p.y - line.start.y) * line.inward.y;
    const places = [
      ...(byPost ? [] : alike(ctx, nearest, line.inward).filter((p) => Math.abs(far(p) - d.governing) < 1 / 8)),
      nearest,
    ];
    const free = places.find(
      (p) => ![0.05, 0.25, 0.5, 0.75, 0.95].some((t) => contains(house, between(p, foot(p), t))),
    );
    return free ? [{ from: free, foot: foot(free), distance: d.governing, line: d.line }] : [];
  });
}

const dimension = (a: Vec2, b: Vec2, value: number, height: number): Primitive => ({
  kind: 'dimension',
  layer: 'C-ANNO-DIMS',
  a,
  b,
  angle: readable(Math.atan2(b.y - a.y, b.x - a.x)),
  base: b,
  offset: 0,
  value,
  text: feet(value),
  height,
  noExtensionA: true,
  noExtensionB: true,
});

/** At a smaller scale than 1" = 20' they would crowd the plan: the table has them. */
const LEAST_SCALE = 1 / 240;
/** Shorter separations than this have no room for their figure on the plan, paper inches; the table has them all. */
const ROOM = 5;

/** Dimensions to the lines, and to buildings, wells and septic parts near the new roof. */
export function lotDistances(ctx: SheetContext, ratio: number): Primitive[] {
  const { lot } = ctx.input;
  const h = ctx.style.note;
  const out: Primitive[] = measuredLines(ctx).map((m) => dimension(m.foot, m.from, m.distance, h));
  for (const s of lot.separations) {
    if (ratio < LEAST_SCALE - 1e-9 || !s.newWork || s.distance * ratio <= ROOM * h || s.to === 'House') continue;
    const d = dimension(s.a, s.b, s.distance, h);
    if (!touchesText(d, ratio, out)) out.push(d);
  }
  return out;
}
