/** House, other buildings and the new roof on the lot, with their sizes; wells, tanks, trees and the like. */
import type { Vec2 } from '../../../base/vec.js';
import type { SiteItem, SiteItemKind } from '../../../project/model.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { extents } from '../parts.js';
import { feet, type Lettering, readable, word } from './words.js';

/** Walls shorter than this are not dimensioned on the lot plan, inches. */
const SHORT = 24;

export const houseOutline = (ctx: SheetContext): Vec2[] => ctx.input.project.house.walls.map((w) => w.start);

const roofRing = (r: { readonly min: Vec2; readonly max: Vec2 }): Vec2[] => [
  r.min,
  { x: r.max.x, y: r.min.y },
  r.max,
  { x: r.min.x, y: r.max.y },
];

export function buildingLines(ctx: SheetContext): Primitive[] {
  const { project, structure } = ctx.input;
  const out: Primitive[] = [
    { kind: 'polyline', layer: 'C-BLDG-EXST', pen: 'profile', points: houseOutline(ctx), closed: true, fill: 'tint' },
  ];
  for (const b of project.lot.buildings)
    out.push({
      kind: 'polyline',
      layer: 'C-BLDG-EXST',
      pen: 'existing-cut',
      points: b.outline,
      closed: true,
      fill: 'tint',
    });
  for (const r of structure.roofs) {
    const ring = roofRing(r);
    out.push({ kind: 'hatch', layer: 'C-BLDG', pattern: 'generic', loops: [ring], mark: r.mark, spacing: 1.6 });
    out.push({ kind: 'polyline', layer: 'C-BLDG', pen: 'new', points: ring, closed: true, mark: r.mark });
  }
  for (const f of structure.footings)
    out.push({
      kind: 'circle',
      layer: 'C-BLDG',
      center: f.at,
      radius: Math.max(6, f.pierDiameter / 2),
      pen: 'new-fine',
      fill: 'paper',
      mark: f.mark,
    });
  for (const i of project.lot.items)
    if (i.outline) out.push({ kind: 'polyline', layer: 'C-UTIL', pen: 'hidden', points: i.outline, closed: true });
  return out;
}

/** Lengths of walls along their inner side, names and sizes. */
export function buildingWords(ctx: SheetContext, l: Lettering): void {
  const { project, structure } = ctx.input;
  const h = ctx.style.note;
  for (const r of structure.roofs) {
    const size = `${feet(r.max.x - r.min.x)} x ${feet(r.max.y - r.min.y)}`;
    const name = structure.roofs.length > 1 ? r.mark : `New patio roof ${r.mark}`;
    const b = extents(roofRing(r));
    l.box({ content: `${name}\n${size}`, face: 'bold', mark: r.mark }, b);
  }
  const { stories } = project.house;
  l.box({ content: `Existing house\n${stories} ${stories === 1 ? 'story' : 'stories'}` }, extents(houseOutline(ctx)));
  for (const w of project.house.walls) {
    const length = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
    if (length < SHORT) continue;
    const angle = readable(Math.atan2(w.end.y - w.start.y, w.end.x - w.start.x));
    // Walls run clockwise: the house lies to their right, so the inner side is tried first.
    const beside = [-1.3 * h, 1.3 * h];
    l.along({ content: feet(length), angle, path: w.path }, w.start, w.end, [0.5, 0.35, 0.65, 0.22, 0.78], beside);
  }
  for (const b of project.lot.buildings) {
    const e = extents(b.outline);
    l.box({ content: `${b.name}\n${feet(e.w)} x ${feet(e.h)}` }, e);
  }
}

/** A sign for what is drawn as a point. */
function itemSymbol(kind: SiteItemKind, h: number): Primitive[] {
  const layer = 'C-UTIL' as const;
  const ring: Primitive = {
    kind: 'circle',
    layer,
    center: { x: 0, y: 0 },
    radius: 0.55 * h,
    pen: 'symbol',
    fill: 'paper',
  };
  const line = (x0: number, y0: number, x1: number, y1: number): Primitive => ({
    kind: 'line',
    layer,
    pen: 'symbol',
    a: { x: x0 * h, y: y0 * h },
    b: { x: x1 * h, y: y1 * h },
  });
  if (kind === 'well') return [{ ...ring, radius: 0.8 * h }, ring];
  if (kind === 'tree') return [{ ...ring, radius: 1.3 * h }, line(-0.5, 0, 0.5, 0), line(0, -0.5, 0, 0.5)];
  if (kind === 'septic-tank' || kind === 'tank')
    return [
      {
        kind: 'polyline',
        layer,
        pen: 'symbol',
        closed: true,
        fill: 'paper',
        points: [
          { x: -1.2 * h, y: -0.6 * h },
          { x: 1.2 * h, y: -0.6 * h },
          { x: 1.2 * h, y: 0.6 * h },
          { x: -1.2 * h, y: 0.6 * h },
        ],
      },
    ];
  return [ring];
}

const named = (ctx: SheetContext, i: SiteItem): string =>
  i.kind === 'tree' || i.kind === 'well' || i.outline === undefined ? i.label : `${i.label}\n${sizeOf(ctx, i)}`;

const sizeOf = (_ctx: SheetContext, i: SiteItem): string => {
  const e = extents(i.outline ?? [i.at]);
  return `${feet(e.w)} x ${feet(e.h)}`;
};

/** Wells, tanks, meters, trees. */
export function siteItems(ctx: SheetContext, l: Lettering): void {
  const h = ctx.style.note;
  const { items } = ctx.input.project.lot;
  for (const i of items)
    if (!i.outline) l.sign(i.at, { kind: 'symbol', layer: 'C-UTIL', at: i.at, items: itemSymbol(i.kind, h) });
  items.forEach((i, k) => {
    const w = { content: named(ctx, i), layer: 'C-UTIL' as const, path: `/lot/items/${k}` };
    if (i.outline) {
      l.box(w, extents(i.outline));
      return;
    }
    const half = 0.31 * i.label.length * h + 1.6 * h;
    const ways = [
      [half, 0],
      [-half, 0],
      [0, 2.4],
      [0, -2.4],
      [half, 1.6],
      [-half, -1.6],
      [half, -1.6],
      [-half, 1.6],
      [half, 3.2],
      [half, -3.2],
    ] as const;
    l.set(
      w,
      i.at,
      ways.map(([x, y]) => word(w, i.at, h, Math.abs(x) > 0 ? x : 0, y === 0 ? 0 : y * h)),
    );
  });
}
