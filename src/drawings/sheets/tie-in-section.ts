/** Section along the ridge of a roof over the old roof, with the order of flashing keyed to it. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { OverlayPlaced, Piece } from '../../structure/model.js';
import { oldAt, overlayPoint } from '../../structure/tie-in/frame.js';
import { levelMark, slopeTriangle } from '../annotate/index.js';
import type { Primitive, Rect, ScaleName } from '../ir/index.js';
import { CAMERAS, see } from '../views/camera.js';
import { picture } from '../views/picture.js';
import type { SheetContext } from './contract.js';
import { dims, type PlacedView, placeView, scaleFor } from './parts.js';
import { axisOf } from './tie-in-lines.js';
import { notesBeside } from './tie-in-notes.js';

const SCALES: readonly ScaleName[] = ['1', '3/4', '1/2', '3/8', '1/4', '3/16'];

const UNSEEN = new Set<Piece['role']>(['footing', 'slab', 'step', 'opening', 'grade']);

export interface TieInSection {
  readonly view: PlacedView;
  readonly notes: readonly Primitive[];
  readonly bottom: number;
}

/** Keyed from the low end up: the order in which water meets it, and in which it is laid. */
function keys(ctx: SheetContext, o: OverlayPlaced): { at: Vec3; text: string; mark: string }[] {
  const { len } = ctx;
  const at = (x: number, z: number): Vec3 => overlayPoint(o.frame, x, 0, z);
  const layers = o.layers.map((l) => l.name);
  const mid = o.edge + 0.45 * (o.head - o.edge);
  const first = o.fills[0];
  const top = o.ridge;
  return [
    {
      at: at(o.start * 0.5, oldAt(o, o.start * 0.5)),
      mark: o.plane,
      text: '1. Old covering off under the whole overlay and 12" past both valleys; old sheathing looked at, mended, and left in one piece.',
    },
    {
      at: at(o.head - 10, oldAt(o, o.head - 10) + 1),
      mark: o.plates.mark,
      text: `2. ${o.plates.mark}: ${o.members.find((m) => m.mark === o.plates.mark)?.section.label ?? ''} flat on the old sheathing, outer edge bevelled, ${len(o.plates.low)} inside the valley line.`,
    },
    {
      at: at(mid, top - 6),
      mark: o.board.mark,
      text: `3. ${o.board.mark}: ${o.members.find((m) => m.mark === o.board.mark)?.section.label ?? ''}, level from the last frame, end cut to the old slope on the plates.`,
    },
    ...(first
      ? [
          {
            at: at(first.x, top - 12),
            mark: first.mark,
            text: `4. ${o.fills.length === 1 ? first.mark : `${first.mark} to ${o.fills.at(-1)!.mark}`}: fill rafters in pairs, ${o.members.find((m) => m.mark === first.mark)?.section.label ?? ''}, on the plates and against the board: cut table.`,
          },
        ]
      : []),
    {
      at: at(mid + 14, top - 0.3),
      mark: o.roof,
      text: `5. New sheathing, cut to the valleys; then from top to bottom: ${layers.filter((l) => l !== 'Allowance').join(', ')}.`,
    },
    {
      at: at(o.head, o.ridge),
      mark: 'V1',
      text: '6. Valley lining over both decks, under both coverings, laid from the foot up; its low end laps over the old covering. At the head of the valleys one piece over the end of the ridge, up under the old covering.',
    },
    {
      at: at(o.head + 9, oldAt(o, o.head + 9)),
      mark: o.plane,
      text: '7. Old covering woven in or cut back to the valley; courses above the ridge’s end relaid over the lining.',
    },
  ];
}

export function tieInSection(ctx: SheetContext, o: OverlayPlaced, box: Rect, number: string): TieInSection {
  const { style, len } = ctx;
  const h = style.note;
  const name = axisOf(o) === 'y' ? 'right' : 'rear';
  const camera = CAMERAS[name];
  const seen = (p: Vec3): Vec2 => {
    const s = see(camera, p);
    return { x: s.a, y: s.b };
  };
  const pic = picture(
    ctx.pieces.filter((p) => !UNSEEN.has(p.role)),
    camera,
    {
      layers: { fresh: 'A-SECT', existing: 'A-ELEV-EXST', cut: 'A-SECT-MCUT', pattern: 'A-SECT-PATT' },
      cutAt: see(camera, o.frame.origin).depth,
    },
  );
  const ends = [seen(overlayPoint(o.frame, o.last - 22, 0, 0)).x, seen(overlayPoint(o.frame, o.head + 24, 0, 0)).x];
  const low = o.frame.origin.z - 16;
  const frame: Rect = {
    x: Math.min(...ends),
    y: low,
    w: Math.abs(ends[0]! - ends[1]!),
    h: o.ridge + 16 - low,
  };
  const noteWidth = Math.min(box.w * 0.36, 58 * h);
  const view: Rect = { ...box, w: box.w - noteWidth - style.gutter };
  const scale = scaleFor(ctx, frame, view, { x: h * 11.5, y: h * 8 }, SCALES);
  // The notes stand to the right: the levels to the left.
  const over: Primitive[] = [];
  let last = Number.POSITIVE_INFINITY;
  for (const [what, z] of [
    ['New ridge', o.ridge],
    ['Old eave', o.frame.origin.z],
    ['New eave', o.eave],
  ] as const) {
    // Named from the outside in: what is too near to another mark stands in the table.
    if (Math.abs(last - z) < (h * 4.6) / scale.ratio) continue;
    last = z;
    over.push(
      levelMark({
        at: { x: frame.x - 3, y: z },
        side: 'left',
        name: what,
        value: len(z),
        layer: 'A-ANNO-DIMS',
        style,
      }),
    );
  }
  const a = (x: number): number => seen(overlayPoint(o.frame, x, 0, 0)).x;
  over.push(
    ...dims(ctx, {
      side: 'below',
      datum: frame.y,
      scale: scale.ratio,
      layer: 'A-ANNO-DIMS',
      tiers: [{ stations: [a(o.last), a(0), a(o.start), a(o.head)] }, { stations: [a(0), a(o.head)] }],
    }).items,
  );
  const pitch = Number((12 * o.shape.old).toFixed(2)).toString();
  const p = seen(overlayPoint(o.frame, o.head + 12, 0, oldAt(o, o.head + 12)));
  over.push(
    slopeTriangle({
      at: { x: p.x, y: p.y + (1.2 * h) / scale.ratio },
      rise: pitch,
      ratio: o.shape.old,
      up: a(1) > a(0) ? 'right' : 'left',
      layer: 'A-ANNO-SYMB',
      style,
    }),
  );
  const placed = placeView(ctx, {
    box: view,
    model: frame,
    scale,
    number,
    title: 'Section along the new ridge',
    items: pic.items,
    over,
    snug: h * 8,
  });
  const viewport = { ...placed.viewport, window: frame };
  const notes = keys(ctx, o).map((k) => ({ target: seen(k.at), text: k.text, mark: k.mark }));
  const column = notesBeside(ctx, { notes, viewport, view, box, width: noteWidth });
  return { view: { ...placed, viewport }, notes: column.items, bottom: column.bottom };
}
