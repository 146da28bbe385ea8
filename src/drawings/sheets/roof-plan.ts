/**
 * Roof plan: every roof, old and new, from above: falls, ridges, valleys, hips, eaves, overhangs, gutters with their leaders,
 * and where the water lands.
 */
import { flat, type Vec2 } from '../../base/vec.js';
import type { Piece } from '../../structure/model.js';
import { type Cricket, crickets } from '../../structure/tie-in/crickets.js';
import { measure, textBlock } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { CAMERAS } from '../views/camera.js';
import { picture } from '../views/picture.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { dims, extents, northOnPlan, PLAN_SCALES, placeView, scaleFor, unique, withSideColumn } from './parts.js';
import { NEAR_HOUSE, postsOnPlan, standsOff } from './plan-base.js';
import { edgesOf, houseValleys } from './roof-edges.js';
import { annotations, leaderItems, outlines } from './roof-plan-notes.js';
import { roofWords } from './roof-plan-words.js';
import { standingItems, valleyLines, wallLines } from './tie-in-lines.js';

/** Roofs and gutters from above with what lies under others left out, and the lines in which roofs run into each other. */
function roofItems(ctx: SheetContext): Primitive[] {
  const pieces = ctx.pieces.filter((p) => SEEN.has(p.role));
  const { items } = picture(pieces, CAMERAS.plan, { layers: { fresh: 'A-ROOF', existing: 'A-ROOF-EXST' } });
  return [
    ...items,
    ...houseValleys(ctx.input.structure).map(
      ({ a, b }): Primitive => ({ kind: 'line', layer: 'A-ROOF-EXST', pen: 'existing', a, b, role: 'valley' }),
    ),
    ...(ctx.input.structure.overlays ?? []).flatMap(valleyLines),
    ...crickets(ctx.input.structure).flatMap(cricketLines),
  ];
}

/** Not built by this set: dashed, where water would stand against a wall. */
function cricketLines(c: Cricket): Primitive[] {
  const foot = { x: (c.from.x + c.to.x) / 2, y: (c.from.y + c.to.y) / 2 };
  const head = { x: foot.x + c.up.x * c.shape.run, y: foot.y + c.up.y * c.shape.run };
  return [foot, flat(c.from), flat(c.to)].map(
    (a): Primitive => ({ kind: 'line', layer: 'A-ROOF', pen: 'hidden', a, b: head, role: 'cricket' }),
  );
}

const SEEN = new Set<Piece['role']>(['house-roof', 'roof-surface', 'gutter']);

function dimensions(
  ctx: SheetContext,
  model: { x: number; y: number; w: number; h: number },
  ratio: number,
): Primitive[] {
  const { structure } = ctx.input;
  const roofs = structure.roofs;
  const beams = structure.members.filter((m) => m.role === 'beam');
  // With several roofs their edges are enough for one string; overhangs stand in the table.
  const several = roofs.length > 1;
  const xs = (r: (typeof roofs)[number]): number[] => [r.min.x, r.max.x];
  const bx = beams.flatMap((m) =>
    Math.abs(m.end.x - m.start.x) < 1 ? outer(m.start.x, m.section.width, roofs.flatMap(xs)) : [],
  );
  const by = beams.flatMap((m) =>
    Math.abs(m.end.y - m.start.y) < 1
      ? outer(
          m.start.y,
          m.section.width,
          roofs.flatMap((r) => [r.min.y, r.max.y]),
        )
      : [],
  );
  const hx = structure.walls.flatMap((w) => [w.start.x, w.end.x]);
  // Strings at the sides stand clear of the short dimensions that the strings above and below push past their ends.
  const beside = ctx.style.dimFirst * 1.8;
  const common = { scale: ratio, layer: 'A-ANNO-DIMS' } as const;
  const heads = (structure.overlays ?? []).map((o) => {
    const p = { x: o.frame.origin.x + o.frame.into.x * o.head, y: o.frame.origin.y + o.frame.into.y * o.head };
    return { p, along: Math.abs(o.frame.into.y) > 0.5 ? ('y' as const) : ('x' as const) };
  });
  // Where a roof goes on over the house, its own edge there is none: the old eave and the end of the ridge count.
  const ends = (r: (typeof roofs)[number]): number[] => {
    const o = structure.overlays?.find((x) => x.roof === r.mark);
    if (!o || Math.abs(o.frame.into.y) < 0.5) return [r.min.y, r.max.y];
    return [o.frame.into.y < 0 ? r.max.y : r.min.y, o.frame.origin.y];
  };
  const alone = structure.walls.length === 0;
  const ys = [...heads.filter((q) => q.along === 'y').map((q) => q.p.y), ...roofs.flatMap(ends), ...(alone ? [] : [0])];
  // A house whose roof is not in the file is measured by its walls.
  const old: readonly Vec2[] =
    structure.housePlanes.length > 0
      ? structure.housePlanes.flatMap((p) => p.outline.map(flat))
      : structure.walls.flatMap((w) => [w.start, w.end]);
  const oldX = old.map((q) => q.x);
  const oldY = old.map((q) => q.y);
  return [
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: model.y + model.h,
      tiers: [
        { stations: unique([...roofs.flatMap(xs), ...(several ? [] : bx)]) },
        { stations: [Math.min(...roofs.flatMap(xs)), Math.max(...roofs.flatMap(xs))] },
      ],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'right',
      first: beside,
      datum: model.x + model.w,
      tiers: [{ stations: apart([...ys, ...(several ? [] : by)]) }],
    }).items,
    ...(alone ? [] : houseDimensions()),
  ];

  function houseDimensions(): Primitive[] {
    return [
      ...dims(ctx, {
        ...common,
        side: 'below',
        datum: model.y,
        tiers: [
          { stations: unique([Math.min(...oldX), Math.min(...hx), Math.max(...hx), Math.max(...oldX)]) },
          { stations: [Math.min(...oldX), Math.max(...oldX)] },
        ],
      }).items,
      ...dims(ctx, {
        ...common,
        side: 'left',
        first: beside,
        datum: model.x,
        tiers: [
          {
            stations: unique([Math.min(...oldY), ...structure.walls.flatMap((w) => [w.start.y]), Math.max(...oldY)]),
          },
        ],
      }).items,
    ];
  }
}

/** Stations in order, those nearer to the wall line than a ledger is thick taken as on it. */
const apart = (ys: readonly number[]): number[] => unique(ys.map((y) => (Math.abs(y) < 4 ? 0 : y)));

/** Outer face of a beam, from which the overhang is measured: the one nearer to the roof's edge. */
function outer(at: number, width: number, edges: readonly number[]): number[] {
  const mid = (Math.min(...edges) + Math.max(...edges)) / 2;
  return [at + (Math.sign(at - mid) * width) / 2];
}

/** How far past the roofs slabs are shown, inches: gutters and walls at the edge stay whole. */
const PAST = 9;

const within = (r: Rect, p: Vec2): boolean => p.x >= r.x && p.x <= r.x + r.w && p.y >= r.y && p.y <= r.y + r.h;

/**
 * What the plan shows: a cover far off the house stands alone on it, or its own words would have no room. The footing plan and
 * the lot plan show where it stands.
 */
function shownOf(ctx: SheetContext): SheetContext {
  const { project, structure } = ctx.input;
  if (!standsOff(structure)) return ctx;
  const near = structure.slabs.filter((s) => s.outline.some((p) => p.y > NEAR_HOUSE / 2));
  return {
    ...ctx,
    pieces: ctx.pieces.filter((p) => p.role !== 'house-roof'),
    input: {
      ...ctx.input,
      project: { ...project, house: { ...project.house, roofs: [] } },
      structure: { ...structure, housePlanes: [], walls: [], slabs: near },
    },
  };
}

function draw(whole: SheetContext): SheetBody[] {
  const ctx = shownOf(whole);
  const { structure, lot } = ctx.input;
  const { style, area } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.33, 66 * h), style.gutter);
  const all = outlines(structure);
  const model = extents([
    ...all.flatMap((o) => o.points),
    ...structure.housePlanes.flatMap((p) => p.outline.map(flat)),
    ...structure.walls.map((w) => w.start),
  ]);
  const margin = { x: h * 12, y: h * 9 };
  const scale = scaleFor(ctx, model, main, margin, [...PLAN_SCALES, '1:10', '1:20']);
  const edges = edgesOf(structure);
  const items: Primitive[] = [
    ...wallLines(structure),
    ...standingItems(ctx),
    ...structure.slabs.map(
      (s): Primitive => ({ kind: 'polyline', layer: 'S-SLAB-EXST', pen: 'hidden', points: s.outline, closed: true }),
    ),
    ...roofItems(ctx),
    // Not dashed though below the roof: so small a square would be corners without sides.
    ...postsOnPlan(structure, { pen: 'new-fine' }),
  ];
  const leaders = leaderItems(ctx);
  const over = [...leaders, ...dimensions(ctx, model, scale.ratio)];
  over.push(...annotations(ctx, edges, scale.ratio, [...items, ...leaders]));
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Roof plan',
    items,
    over,
    north: northOnPlan(lot.north),
    snug: margin.y,
    plan: true,
  });
  const notes = textBlock(measure(roofWords(whole), side.w, style), { x: side.x, y: side.y + side.h });
  // A slab may run on far past the roofs.
  const seen = { x: model.x - PAST, y: model.y - PAST, w: model.w + 2 * PAST, h: model.h + 2 * PAST };
  const runsOn = structure.slabs.some((s) => s.outline.some((p) => !within(seen, p)));
  const viewport = runsOn ? { ...view.viewport, window: seen } : view.viewport;
  return [
    {
      title: 'Roof plan',
      scaleNote: view.scale.label,
      viewports: [viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

export const roofPlan: SheetKind = { title: 'Roof plan', discipline: 'A', needed: () => true, draw };
