/** The two pictures of a frame on its bearing: along the frame, and along the bearing. */
import { servedBy } from '../../../checks/joints/serving.js';
import type { CoverRoof } from '../../../project/model.js';
import { findPanel } from '../../../structure/layers.js';
import type { Joint, Member, Piece } from '../../../structure/model.js';
import { planeHeight } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { DetailView } from './contract.js';
import { broken, facing, nearPicture, part, planDirection, rect, spot, stroke } from './picture.js';

/** Model inches shown outside and inside the bearing. */
const OUT = 15;
const IN = 17;
/** Thickness of a block between frames: lumber of the framing, common practice, no source. */
export const BLOCK = 1.5;

export interface Seat {
  readonly joint: Joint;
  readonly frame: Member;
  readonly beam: Member;
  readonly roof: CoverRoof;
  readonly high: boolean;
  /** Marks of end frames that are borne alike. */
  readonly alike: readonly string[];
}

export interface SeatPlace {
  readonly sheathing: number;
  /** Underside of the sheathing over the middle of the bearing. */
  readonly deck: number;
}

export function placeOf(ctx: SheetContext, s: Seat): SeatPlace {
  const surface = ctx.input.structure.surfaces.find((x) => x.id === s.frame.strips[0]?.surface);
  const all = ctx.input.structure.surfaces.filter((x) => s.frame.strips.some((t) => t.surface === x.id));
  const sheathing = findPanel(s.roof.finish.sheathing)?.thickness ?? 0;
  // Of a truss's two slopes the one over this bearing is the lower there.
  const heights = all.map((x) => planeHeight(x, s.joint.at));
  const top = surface ? Math.min(...heights) : s.joint.at.z + s.frame.section.depth;
  return { sheathing, deck: top - sheathing / Math.cos(surface?.slope ?? 0) };
}

/** Level direction from the ridge or house out to the eave. */
function outward(s: Seat): { x: number; y: number } {
  const { frame, joint } = s;
  const d = planDirection(frame);
  if (!frame.truss) return { x: -d.x, y: -d.y };
  const along = joint.ties[0]!.along;
  return along > frame.length / 2 ? d : { x: -d.x, y: -d.y };
}

export interface SeatNotes {
  readonly beam: string;
  readonly frame: string;
  readonly tie: string;
  readonly block: string;
  readonly deck: string;
}

export function alongFrame(ctx: SheetContext, s: Seat, p: SeatPlace, notes: SeatNotes): DetailView {
  const { joint, frame, beam } = s;
  const camera = facing(outward(s));
  const c = spot(camera, joint.at);
  const under = c.y - beam.section.depth;
  const rise = Math.tan(ctx.input.structure.surfaces.find((x) => x.id === frame.strips[0]?.surface)?.slope ?? 0);
  const view: Rect = { x: c.x - IN, y: under - 1, w: IN + OUT, h: p.deck + IN * rise + 3.5 - under + 1 };
  const depth = see(camera, joint.at).depth + frame.section.b / 2 + 0.05;
  const ends = [see(camera, frame.start).a, see(camera, frame.end).a];
  const tail = Math.max(...ends);
  // Held at the face a hand can reach: inside at the eave, outside at a ridge or high beam.
  const heldAt = spot(camera, beam.start).x + (s.high ? 0.5 : -0.5) * beam.section.width;
  const items: Primitive[] = [
    ...nearPicture(ctx, {
      camera,
      frame: view,
      depth: [depth - 3, depth + 0.1],
      cutAt: depth,
      keep: (q) => q.part === frame.id || q.part === beam.id || isEdge(ctx, s, q),
    }),
    ...holder(ctx, s, heldAt, c.y),
  ];
  if (s.roof.finish.nailing?.heel)
    items.push(
      ...part(rect(c.x - BLOCK / 2, c.y, c.x + BLOCK / 2, p.deck - (BLOCK / 2) * rise), 'cut', {
        pattern: 'wood-block',
        fill: true,
      }),
    );
  const half = beam.section.width / 2;
  const bears = joint.contact.length;
  return {
    name: 'Along the frame',
    frame: view,
    items,
    margin: { left: 5.5, right: 2, above: 1, below: 6.5 },
    over: (scale) => [
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: view.y,
        first: 3.6 * ctx.style.note,
        tiers: [
          {
            stations: [
              c.x - bears / 2,
              c.x + bears / 2,
              ...(tail < view.x + view.w - 1 && tail > c.x + half + 1 ? [tail] : []),
            ],
          },
        ],
      }).items,
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'left',
        datum: view.x,
        first: 3.2 * ctx.style.note,
        tiers: [{ stations: [under, c.y, p.deck] }],
      }).items,
      ...(Math.min(...ends) < view.x
        ? broken(ctx, { x: view.x, y: c.y + 1 }, { x: view.x, y: view.y + view.h - 1 })
        : []),
    ],
    keys: [
      { at: { x: c.x, y: under + beam.section.depth * 0.35 }, text: notes.beam, mark: beam.mark, off: { x: -5, y: 1 } },
      { at: { x: heldAt, y: c.y - 2 }, text: notes.tie, mark: joint.mark, off: { x: -3, y: -3 } },
      {
        at: { x: c.x + half + 4, y: p.deck - (half + 4) * rise - 2 },
        text: notes.frame,
        mark: frame.mark,
        off: { x: 2, y: -4 },
      },
      ...(s.roof.finish.nailing?.heel
        ? [{ at: { x: c.x, y: (c.y + p.deck) / 2 }, text: notes.block, off: { x: -4, y: 5 } }]
        : []),
      s.high
        ? { at: { x: c.x + 8, y: p.deck - 8 * rise + p.sheathing / 2 }, text: notes.deck, off: { x: 2, y: 4 } }
        : { at: { x: c.x - 8, y: p.deck + 8 * rise + p.sheathing / 2 }, text: notes.deck, off: { x: -2, y: 3 } },
    ],
  };
}

/** Sheathing, fascia and gutter of the seat's own roof. */
const isEdge = (ctx: SheetContext, s: Seat, p: Piece): boolean =>
  p.role === 'roof-surface'
    ? ctx.input.structure.surfaces.some((x) => x.id === p.part && x.roof === s.roof.mark)
    : p.role === 'fascia' || p.role === 'gutter';

/** What holds the frame down, at a face of it: the place of a bought tie, or toe-nails through its side. */
function holder(ctx: SheetContext, { joint }: Seat, x: number, z: number): Primitive[] {
  const served = servedBy(ctx.input.project.choices, joint.mark, joint.kind);
  if (served?.by !== 'connection')
    return [
      {
        kind: 'polyline',
        layer: 'S-JNTS',
        pen: 'hidden',
        closed: true,
        points: rect(x - 0.5, z - 4, x + 1, z + 4),
        mark: joint.mark,
      },
    ];
  const nails = served.connection.parts.some((p) => p.kind === 'toe-nails');
  return nails
    ? [-0.4, 0.8].map((d) =>
        stroke(
          [
            { x: x + d, y: z + 1.2 },
            { x: x + d + 0.9, y: z - 1.6 },
          ],
          'new',
          'toe-nail',
        ),
      )
    : [];
}

export const bought = (ctx: SheetContext, { joint }: Seat): boolean =>
  servedBy(ctx.input.project.choices, joint.mark, joint.kind)?.by === 'product';

export function alongBearing(ctx: SheetContext, s: Seat, p: SeatPlace, notes: SeatNotes): DetailView {
  const { joint, frame, beam, roof } = s;
  const o = outward(s);
  // Seen from outside: the eave's outside is toward the viewer.
  const camera = facing({ x: -o.y, y: o.x });
  const c = spot(camera, joint.at);
  const depth = see(camera, joint.at).depth;
  const under = c.y - beam.section.depth;
  const { spacing } = roof.framing;
  const stations = ctx.input.structure.joints
    .filter((j) => j.kind === joint.kind && j.ties.at(-1)?.part === beam.id)
    .map((j) => spot(camera, j.at).x)
    .sort((a, b) => a - b);
  const next = stations.find((x) => x > c.x + 1) ?? stations.filter((x) => x < c.x - 1).at(-1) ?? c.x + spacing;
  const [x0, x1] = [Math.min(c.x, next), Math.max(c.x, next)];
  const view: Rect = { x: x0 - 5, y: under - 1, w: x1 - x0 + 10, h: p.deck - under + 4 };
  const b = frame.section.b / 2;
  const heel = roof.finish.nailing?.heel;
  const items: Primitive[] = [
    ...nearPicture(ctx, {
      camera,
      frame: view,
      depth: [depth - 1, depth + 1],
      cutAt: depth,
      keep: (q) => q.part === beam.id || (q.mark === frame.mark && q.role === frame.role) || isEdge(ctx, s, q),
    }),
    ...[x0, x1].flatMap((x) => holder(ctx, s, x - b, c.y)),
  ];
  if (heel) {
    items.push(...part(rect(x0 + b, c.y, x1 - b, p.deck), 'cut', { pattern: 'wood-grain', fill: true }));
    // Toe-nails: spread over the bay as counted, half from each face.
    for (let i = 0; i < heel.count; i++) {
      const x = x0 + b + ((i + 0.5) * (x1 - x0 - 2 * b)) / heel.count;
      items.push(
        stroke(
          [
            { x, y: c.y + 1.2 },
            { x: x + 0.5, y: c.y - 1.3 },
          ],
          'new',
          'toe-nail',
        ),
      );
    }
  }
  return {
    name: 'Along the bearing',
    frame: view,
    items,
    margin: { left: 2, right: 2, above: 1, below: 6.5 },
    over: (scale) => [
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: view.y,
        first: 3.6 * ctx.style.note,
        tiers: [{ stations: [x0, x1] }],
      }).items,
    ],
    keys: [
      { at: { x: x1 - b, y: c.y + 2 }, text: notes.tie, mark: joint.mark, off: { x: -3, y: -4.5 } },
      ...(heel ? [{ at: { x: (x0 + x1) / 2, y: (c.y + p.deck) / 2 }, text: notes.block, off: { x: -3, y: 4 } }] : []),
      {
        at: { x: x0 + b + 3, y: under + beam.section.depth * 0.4 },
        text: notes.beam,
        mark: beam.mark,
        off: { x: 2, y: -2 },
      },
    ],
  };
}
