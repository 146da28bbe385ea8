/** Plan of a roof over the old roof: valleys, plates, fill rafters with their marks, and the dimensions they are set out by. */
import type { Vec2 } from '../../base/vec.js';
import { flat } from '../../base/vec.js';
import type { Member, OverlayPlaced, Structure } from '../../structure/model.js';
import { overlayPoint } from '../../structure/tie-in/frame.js';
import { overlaySolid } from '../../structure/tie-in/pieces.js';
import { placeNote, placeTags, sectionMark, slopeArrow, type TagWish } from '../annotate/index.js';
import type { LayerName, PenName, Primitive, Rect, ScaleName } from '../ir/index.js';
import { hull } from '../views/cut.js';
import type { SheetContext } from './contract.js';
import { bar } from './frame-parts.js';
import { dims, extents, northOnPlan, type PlacedView, placeView, scaleFor, titleBand, unique } from './parts.js';

const SCALES: readonly ScaleName[] = ['1', '3/4', '1/2', '3/8', '1/4', '3/16', '1/8'];

/** How much of the cover and of the old roof round it the plan shows, inches. */
const ABOUT = 30;

const poly = (points: readonly Vec2[], layer: LayerName, pen: PenName, mark?: string, fill?: 'paper'): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  points,
  closed: true,
  ...(mark !== undefined && { mark }),
  ...(fill && { fill }),
});

/** Outline of a cut member seen from above. */
export function planOfMember(o: OverlayPlaced, m: Member): Vec2[] {
  const solid = overlaySolid(o, m);
  return solid ? hull(solid.vertices.map(flat)) : [];
}

/** House axis the new ridge runs along, and the coordinate on it of a distance up the old slope. */
export const axisOf = (o: OverlayPlaced): 'x' | 'y' => (Math.abs(o.frame.into.y) > 0.5 ? 'y' : 'x');
export const along = (o: OverlayPlaced, x: number): number => {
  const axis = axisOf(o);
  return o.frame.origin[axis] + o.frame.into[axis] * x;
};

/** Walls of the house below its roof. */
export const wallLines = (structure: Structure): Primitive[] =>
  structure.walls.map((w): Primitive => ({ kind: 'line', layer: 'A-WALL-EXST', pen: 'hidden', a: w.start, b: w.end }));

/** Chimneys, vents and skylights. */
export function standingItems(ctx: SheetContext): Primitive[] {
  return ctx.input.project.house.roofs.flatMap((r) =>
    (r.standing ?? []).map((t): Primitive => {
      const [w, d] = [t.width / 2, t.depth / 2];
      return poly(
        [
          { x: t.at.x - w, y: t.at.y - d },
          { x: t.at.x + w, y: t.at.y - d },
          { x: t.at.x + w, y: t.at.y + d },
          { x: t.at.x - w, y: t.at.y + d },
        ],
        'A-ROOF-EXST',
        'existing-cut',
        t.name,
        'paper',
      );
    }),
  );
}

/** Old roof, what stands on it, and the wall below it. */
const oldRoofItems = (ctx: SheetContext): Primitive[] => [
  ...ctx.input.structure.housePlanes.map((p) => poly(p.outline.map(flat), 'A-ROOF-EXST', 'existing', p.id)),
  ...wallLines(ctx.input.structure),
  ...standingItems(ctx),
];

/** Valleys as heavy lines. */
export const valleyLines = (o: OverlayPlaced): Primitive[] =>
  o.valleys.map(
    (v): Primitive => ({
      kind: 'line',
      layer: 'A-ROOF',
      pen: 'profile',
      a: flat(v.foot),
      b: flat(v.head),
      mark: v.mark,
      role: 'valley',
    }),
  );

/** Ridge and valleys. */
const seams = (o: OverlayPlaced): Primitive[] => [
  ...valleyLines(o),
  {
    kind: 'line',
    layer: 'A-ROOF',
    pen: 'new',
    a: flat(overlayPoint(o.frame, o.edge, 0, 0)),
    b: flat(overlayPoint(o.frame, o.head, 0, 0)),
    role: 'ridge',
  },
];

function wishesOf(ctx: SheetContext, o: OverlayPlaced): TagWish[] {
  const { style } = ctx;
  const h = style.note;
  const layer = 'S-ANNO-SYMB' as const;
  const at = (x: number, y: number): Vec2 => flat(overlayPoint(o.frame, x, y, 0));
  const side = { x: o.frame.side.x, y: o.frame.side.y };
  const fills = o.fills.map(
    (f): TagWish => ({
      kind: 'rafter',
      text: f.mark,
      at: at(f.x, -0.55 * f.run),
      off: { x: -o.frame.into.x * h * 2.6, y: -o.frame.into.y * h * 2.6 },
      layer,
      style,
      path: `${o.path}/rafter`,
    }),
  );
  const v = o.valleys[0]!;
  const mid = { x: v.foot.x + 0.72 * (v.head.x - v.foot.x), y: v.foot.y + 0.72 * (v.head.y - v.foot.y) };
  return [
    ...fills,
    {
      kind: 'rafter',
      text: o.plates.mark,
      at: { x: mid.x - side.x * 4, y: mid.y - side.y * 4 },
      off: { x: side.x * h * 6, y: side.y * h * 6 },
      layer,
      style,
      path: `${o.path}/plate`,
    },
    {
      kind: 'rafter',
      text: o.board.mark,
      at: at(o.edge + 0.3 * (o.head - o.edge), 0),
      off: { x: side.x * h * 4, y: side.y * h * 4 },
      layer,
      style,
      path: `${o.path}/ridge`,
    },
  ];
}

/** True length along each valley, outside of it, over the old roof, where it touches nothing. */
function valleyWords(
  ctx: SheetContext,
  o: OverlayPlaced,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const v of o.valleys) {
    let read = Math.atan2(v.head.y - v.foot.y, v.head.x - v.foot.x);
    if (read > Math.PI / 2 + 1e-9) read -= Math.PI;
    else if (read <= -Math.PI / 2 + 1e-9) read += Math.PI;
    const outward = { x: o.frame.side.x * v.sign, y: o.frame.side.y * v.sign };
    const up = { x: -Math.sin(read), y: Math.cos(read) };
    const k = up.x * outward.x + up.y * outward.y > 0 ? 1 : -1;
    const [first, ...more] = [1.6, 3.2].flatMap((off) =>
      [0.42, 0.55, 0.3, 0.68, 0.2].map(
        (t): Primitive => ({
          kind: 'symbol',
          layer: 'S-ANNO-NOTE',
          at: { x: v.foot.x + t * (v.head.x - v.foot.x), y: v.foot.y + t * (v.head.y - v.foot.y) },
          mark: v.mark,
          path: o.path,
          items: [
            {
              kind: 'text',
              layer: 'S-ANNO-NOTE',
              at: { x: up.x * k * h * off, y: up.y * k * h * off },
              content: `${v.mark} ${ctx.len(v.length)} true`,
              height: h,
              angle: read,
              align: 'center',
              valign: 'middle',
            },
          ],
        }),
      ),
    );
    out.push(placeNote([first!, ...more], 0.4 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

/** Plan angle at the end of the ridge, with its arc, on the first side. */
function valleyAngle(ctx: SheetContext, o: OverlayPlaced): Primitive[] {
  const h = ctx.style.note;
  const v = o.valleys[0]!;
  const down = Math.atan2(-o.frame.into.y, -o.frame.into.x);
  const toFoot = Math.atan2(v.foot.y - v.head.y, v.foot.x - v.head.x);
  const r = Math.min(40, 0.4 * o.shape.run);
  const turn = Math.atan2(Math.sin(toFoot - down), Math.cos(toFoot - down));
  const [start, end] = turn > 0 ? [down, down + turn] : [down + turn, down];
  const mid = down + turn * 0.55;
  return [
    { kind: 'arc', layer: 'S-ANNO-DIMS', center: flat(v.head), radius: r, start, end, pen: 'dimension' },
    {
      kind: 'text',
      layer: 'S-ANNO-DIMS',
      at: { x: v.head.x + Math.cos(mid) * r * 1.3, y: v.head.y + Math.sin(mid) * r * 1.3 },
      content: `${((o.shape.planAngle * 180) / Math.PI).toFixed(1)}°`,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
    },
  ];
}

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

/** Falls of old and new slopes, and names of the lines that are not the new work's. */
function labels(
  ctx: SheetContext,
  o: OverlayPlaced,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const { style, input } = ctx;
  const h = style.note;
  const at = (x: number, y: number): Vec2 => flat(overlayPoint(o.frame, x, y, 0));
  const out: Primitive[] = [];
  const put = (first: Primitive, ...more: Primitive[]): void => {
    out.push(placeNote([first, ...more], 0.4 * h, ratio, [...over, ...out], lines));
  };
  const arrow = (p: Vec2, way: Vec2, text: string): Primitive =>
    slopeArrow({ at: p, angle: Math.atan2(way.y, way.x), text, layer: 'A-ANNO-SYMB', style });
  const pitch = input.project.cover.roofs.find((r) => r.mark === o.roof)?.pitchText ?? '';
  const fall = { x: -o.frame.into.x, y: -o.frame.into.y };
  const old = `old ${Number((12 * o.shape.old).toFixed(2))}/12`;
  const [one, ...others] = [-0.8, 0.8, -0.95, 0.95, -0.65, 0.65].flatMap((k) =>
    [-8, 4, -20, -32].map((back) => arrow(at(o.head + back, k * o.half), fall, old)),
  );
  put(one!, ...others);
  for (const f of o.faces) {
    const way = { x: o.frame.side.x * f.sign, y: o.frame.side.y * f.sign };
    const places = [0.4, 0.55, 0.3].flatMap((k) => [0.5, 0.25, 0.75].map((t) => ({ k, t })));
    const [first, ...more] = places.map(({ k, t }) => {
      const x = o.edge + t * (o.start - o.edge) + (t > 0.6 ? 14 : 4);
      return arrow(at(x, f.sign * k * o.half), way, pitch);
    });
    put(first!, ...more);
  }
  const level = axisOf(o) === 'y' ? 0 : Math.PI / 2;
  const name = (x: number, content: string): void => {
    const [first, ...more] = [0.82, -0.82, 0.6, -0.6, 0.35, -0.35]
      .flatMap((k) => [-1.1, 1.1].map((up) => ({ k, up })))
      .map(
        ({ k, up }): Primitive => ({
          kind: 'symbol',
          layer: 'A-ANNO-NOTE',
          at: at(x, k * o.half),
          items: [
            {
              kind: 'text',
              layer: 'A-ANNO-NOTE',
              at: level === 0 ? { x: 0, y: up * h } : { x: up * h, y: 0 },
              content,
              height: h,
              angle: level,
              align: 'center',
              valign: 'middle',
              mask: true,
            },
          ],
        }),
      );
    put(first!, ...more);
  };
  name(0, 'old eave edge');
  const wall = input.structure.walls.find((w) => Math.abs(w.out.x * fall.x + w.out.y * fall.y - 1) < 1e-6);
  // On a small plan the valleys' own words come first.
  if (wall && 2 * o.half * ratio > 32 * h)
    name((o.frame.origin.x - wall.start.x) * fall.x + (o.frame.origin.y - wall.start.y) * fall.y, 'house wall below');
  return out;
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
    plan: true,
  });
  return { ...placed, viewport: { ...placed.viewport, window: model } };
}

/** The section looks to −x, or to −y: to the left or right of the way up the old slope. */
const lookOf = (o: OverlayPlaced): 1 | -1 => {
  const { into } = o.frame;
  const away = axisOf(o) === 'y' ? { x: -1, y: 0 } : { x: 0, y: -1 };
  return -into.y * away.x + into.x * away.y > 0 ? 1 : -1;
};
