/** Two details of a roof over the old roof: the valley cut square to itself, and one fill rafter with its cuts. */
import { formatAngle } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import type { OverlayPlaced } from '../../structure/model.js';
import { inOverlay } from '../../structure/tie-in/frame.js';
import { fillCuts } from '../../structure/tie-in/overlay-shape.js';
import { overlaySolid } from '../../structure/tie-in/pieces.js';
import { alignedDimension } from '../annotate/index.js';
import type { PatternName, PenName, Primitive, Rect, ScaleName } from '../ir/index.js';
import { hull } from '../views/cut.js';
import type { SheetContext } from './contract.js';
import { dims, extents, type PlacedView, placeView, scaleFor } from './parts.js';
import { notesBeside } from './tie-in-notes.js';

export interface Detail {
  readonly view: PlacedView;
  readonly notes: readonly Primitive[];
}

const SCALES: readonly ScaleName[] = ['3', '1-1/2', '1', '3/4', '1/2', '3/8'];

/** Depth of old roof drawn under its sheathing line, and length of both coverings shown, inches. */
const UNDER = 2.5;
const SHOWN = 14;
/** Half of a 24 in open valley lining, inches (IRC 2018 R905.2.8.2). */
const LINING = 12;

function part(points: readonly Vec2[], pen: PenName, mark: string, pattern?: PatternName, angle = 0): Primitive[] {
  return [
    { kind: 'polyline', layer: 'S-DETL', points, closed: true, fill: 'paper' },
    ...(pattern ? [{ kind: 'hatch' as const, layer: 'S-DETL-PATT' as const, pattern, loops: [points], angle }] : []),
    { kind: 'polyline', layer: pen === 'cut' ? 'S-DETL-MCUT' : 'S-DETL', pen, closed: true, points, mark },
  ];
}

/** The valley square to itself: x along the old slope toward the new ridge, y out of it. */
export function valleyDetail(ctx: SheetContext, o: OverlayPlaced, box: Rect, number: string): Detail {
  const { style, len } = ctx;
  const h = style.note;
  const { between } = o.shape;
  const [cos, sin] = [Math.cos(between), Math.sin(between)];
  const { low, high, width, thick } = o.plates;
  const ts = o.sheathing;
  const up = (d: number, off: number): Vec2 => ({ x: d * cos - off * sin, y: d * sin + off * cos });
  const reach = low + width + 4;
  const end = reach / cos;
  const skin = o.thickness - o.sheathing;
  const items: Primitive[] = [
    ...part(
      [
        { x: -SHOWN, y: -UNDER },
        { x: reach, y: -UNDER },
        { x: reach, y: 0 },
        { x: -SHOWN, y: 0 },
      ],
      'existing-cut',
      o.plane,
      'existing',
    ),
    ...part(
      [
        { x: low, y: 0 },
        { x: low + width, y: 0 },
        { x: low + width, y: thick },
        { x: high, y: thick },
      ],
      'cut',
      o.plates.mark,
      'wood-cross',
    ),
    ...part([up(0, 0), { x: ts / sin, y: 0 }, up(end, -ts), up(end, 0)], 'cut', o.roof, 'plywood', between),
    // Lining over both decks, coverings cut back from the valley.
    {
      kind: 'polyline',
      layer: 'S-DETL',
      pen: 'profile',
      role: 'flashing',
      points: [{ x: -LINING, y: 0.15 }, { x: -0.1, y: 0.15 }, up(LINING, 0.15)],
    },
    ...part(
      [
        { x: -SHOWN, y: 0.3 },
        { x: -3, y: 0.3 },
        { x: -3, y: 0.3 + skin },
        { x: -SHOWN, y: 0.3 + skin },
      ],
      'existing-cut',
      o.plane,
    ),
    ...part([up(3, 0.3), up(end, 0.3), up(end, 0.3 + skin), up(3, 0.3 + skin)], 'new', o.roof),
  ];
  const frame = extents([
    { x: -SHOWN, y: -UNDER },
    { x: reach, y: up(end, 1).y },
  ]);
  const noteWidth = Math.min(box.w * 0.42, 34 * h);
  const view: Rect = { ...box, w: box.w - noteWidth - style.gutter };
  const scale = scaleFor(ctx, frame, view, { x: h * 0.3, y: h * 6 }, SCALES);
  const over: Primitive[] = [
    ...dims(ctx, {
      side: 'below',
      datum: -UNDER,
      scale: scale.ratio,
      layer: 'S-ANNO-DIMS',
      tiers: [{ stations: [0, low, low + width] }],
    }).items,
  ];
  const placed = placeView(ctx, {
    box: view,
    model: frame,
    scale,
    number,
    title: 'Valley, cut square to it',
    items,
    over,
    snug: h * 6,
  });
  const notes = [
    { target: up(end * 0.8, 0.4), text: 'New covering, cut 3" back from the valley, over underlayment.', mark: o.roof },
    { target: up(end * 0.55, -ts / 2), text: `New sheathing ${len(ts)}, its edge on the old sheathing.`, mark: o.roof },
    {
      target: { x: (low + high) / 2 + 0.2, y: thick / 2 },
      text: `${o.plates.mark}: edge bevelled ${formatAngle(between)}; every old rafter crossed fastened.`,
      mark: o.plates.mark,
    },
    {
      target: { x: -6, y: 0.15 },
      text: 'Lining, 12" or more each way, both coverings over it.',
      mark: 'V1',
    },
    {
      target: { x: -9, y: 0.4 },
      text: 'Old covering, cut back to lay the lining, edges relaid over it.',
      mark: o.plane,
    },
    { target: { x: -4, y: -1 }, text: 'Old sheathing stays whole.', mark: o.plane },
  ];
  const column = notesBeside(ctx, { notes, viewport: placed.viewport, view, box, width: noteWidth });
  return { view: placed, notes: column.items };
}

/** The first fill rafter from its downhill face, its tip to the left, so that no leader crosses the length over it. */
export function fillDetail(ctx: SheetContext, o: OverlayPlaced, box: Rect, number: string): Detail | undefined {
  const { style, len } = ctx;
  const h = style.note;
  const fill = o.fills[0];
  const m = o.members.find((x) => x.mark === fill?.mark);
  const solid = m && overlaySolid(o, m);
  if (!fill || !m || !solid) return undefined;
  // The face downhill is the longer one.
  const near = Math.min(...solid.vertices.map((p) => inOverlay(o.frame, p).x));
  const ring = hull(
    solid.vertices
      .filter((p) => inOverlay(o.frame, p).x < near + 1e-6)
      .map((p) => ({ x: -Math.abs(inOverlay(o.frame, p).y), y: p.z })),
  );
  const frame = extents(ring);
  const noteWidth = Math.min(box.w * 0.34, 26 * h);
  const view: Rect = { ...box, w: box.w - noteWidth - style.gutter };
  const scale = scaleFor(ctx, frame, view, { x: h * 2, y: h * 10 }, SCALES);
  const tip = ring.reduce((p, q) => (q.x < p.x ? q : p));
  const top = ring.reduce((p, q) => (q.y > p.y + 1e-6 ? q : p));
  const seat = ring.filter((p) => Math.abs(p.y - tip.y) < 1e-6).reduce((p, q) => (q.x > p.x ? q : p));
  const cuts = fillCuts(o.shape);
  const over: Primitive[] = [
    alignedDimension({
      a: tip,
      b: top,
      offset: style.dimFirst * 0.8,
      layer: 'S-ANNO-DIMS',
      style,
      text: len(fill.long),
      scale: scale.ratio,
    }),
    ...dims(ctx, {
      side: 'below',
      datum: frame.y,
      scale: scale.ratio,
      layer: 'S-ANNO-DIMS',
      tiers: [{ stations: [top.x, seat.x, tip.x] }],
    }).items,
  ];
  const placed = placeView(ctx, {
    box: view,
    model: frame,
    scale,
    number,
    title: `Fill rafter ${fill.mark}, downhill face`,
    items: [{ kind: 'polyline', layer: 'S-DETL', pen: 'new', closed: true, points: ring, mark: fill.mark }],
    over,
    snug: h * 10,
  });
  const low = { x: top.x, y: Math.min(...ring.filter((p) => Math.abs(p.x - top.x) < 1e-6).map((p) => p.y)) };
  const notes = [
    {
      target: { x: seat.x - 0.2 * (seat.x - tip.x), y: tip.y },
      text: `Seat level, ${formatAngle(cuts.seat)} from the edge; saw tilted ${formatAngle(cuts.bevel)}, so that the uphill face is the shorter.`,
      mark: fill.mark,
    },
    {
      target: { x: top.x, y: (top.y + low.y) / 2 },
      text: `Plumb cut ${formatAngle(cuts.plumb)}, square across, against ${o.board.mark}.`,
      mark: fill.mark,
    },
  ];
  const column = notesBeside(ctx, { notes, viewport: placed.viewport, view, box, width: noteWidth });
  return { view: placed, notes: column.items };
}
