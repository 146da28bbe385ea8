/** Kick-out where the flashing beside a sloping roof edge ends at the eave, seen square to the wall. */
import { FLASHING } from '../../../structure/constants.js';
import { findPanel } from '../../../structure/layers.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { facing, nearPicture, part, rect, spot, stroke } from './picture.js';
import { CLEAR, isMetal, LAP, type WallEdge } from './wall-edges.js';

/** Lengths of a step flashing piece and of the kick-out's throw, drawn only. Common practice, no source. */
const PIECE = 8;
const THROW = 4;

/** Seen square to the wall: the low end of a sloping edge. */
export function kickOut(ctx: SheetContext, e: WallEdge): Detail {
  const { structure } = ctx.input;
  const { len } = ctx;
  const { wall, house, surface, roof } = e;
  const camera = facing({ x: -wall.out.y, y: wall.out.x });
  const size = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
  const t = { x: (wall.end.x - wall.start.x) / size, y: (wall.end.y - wall.start.y) / size };
  const lowEnd = e.from.z < e.to.z ? e.from : e.to;
  const p = {
    x: wall.start.x + t.x * lowEnd.along + wall.out.x * lowEnd.out,
    y: wall.start.y + t.y * lowEnd.along + wall.out.y * lowEnd.out,
    z: lowEnd.z,
  };
  const c = spot(camera, p);
  // To the side on which the roof rises.
  const up = surface.downhill.x * camera.right.x + surface.downhill.y * camera.right.y > 0 ? -1 : 1;
  const slope = Math.tan(surface.slope);
  const run = 34;
  const spec = ctx.input.project.cover.roofs.find((r) => r.mark === roof.mark)!;
  const gutter = spec.finish.gutter ? 8 : 2;
  const [x0, x1] = up > 0 ? [c.x - gutter - THROW, c.x + run] : [c.x - run, c.x + gutter + THROW];
  const frame: Rect = { x: x0, y: c.y - 12, w: x1 - x0, h: 12 + run * slope + FLASHING + 8 };
  const depth = see(camera, p).depth;
  const cover = surface.thickness - (findPanel(spec.finish.sheathing)?.thickness ?? 0);
  const z = (s: number): number => c.y + s * slope + cover;
  const at = (s: number): number => c.x + up * s;
  const metal = isMetal(spec.finish.covering);
  const step = PIECE - LAP;
  const pieces = metal ? 1 : Math.floor(run / step);
  const items: Primitive[] = [
    ...part(rect(x0, frame.y, x1, frame.y + frame.h), 'existing', { finish: true }),
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - 4, depth + 14],
      finish: true,
      keep: (q) =>
        q.part === surface.id ||
        q.part === `${surface.id}-gutter` ||
        (q.role === 'fascia' && structure.members.some((m) => m.id === q.part && m.roof === roof.mark)),
    }),
    {
      kind: 'hatch',
      layer: 'A-DETL-PATT',
      pattern: house.build.cladding.includes('siding') ? 'siding' : 'sand',
      loops: [
        [
          { x: at(-gutter - THROW), y: z(0) + FLASHING + CLEAR },
          { x: at(0), y: z(0) + FLASHING + CLEAR },
          { x: at(run), y: z(run) + FLASHING + CLEAR },
          { x: at(run), y: frame.y + frame.h },
          { x: at(-gutter - THROW), y: frame.y + frame.h },
        ],
      ],
    },
    ...Array.from({ length: pieces }, (_, i) => {
      const s = i * step;
      const end = Math.min(run, s + (metal ? run : PIECE));
      return stroke(
        [
          { x: at(s), y: z(s) },
          { x: at(s), y: z(s) + FLASHING },
          { x: at(end), y: z(end) + FLASHING },
          { x: at(end), y: z(end) },
        ],
        'new',
        'step-flashing',
        true,
      );
    }),
    ...part(
      [
        { x: at(2), y: z(2) },
        { x: at(2), y: z(2) + FLASHING },
        { x: at(-THROW), y: z(0) + FLASHING * 0.8 },
        { x: at(-THROW), y: z(0) - 0.5 },
      ],
      'cut',
      { fill: true, finish: true },
    ),
  ];
  return {
    id: `kick-out ${roof.mark} ${wall.id}`,
    title: `Kick-out, ${roof.mark} at the ${house.name} wall`,
    views: [
      {
        frame,
        items,
        margin: { left: 5.5, right: 2, above: 2, below: 2 },
        over: (scale) =>
          dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'left',
            datum: frame.x,
            first: 3 * ctx.style.note,
            tiers: [{ stations: up > 0 ? [z(0), z(0) + FLASHING] : [z(run), z(run) + FLASHING] }],
          }).items,
        keys: [
          {
            at: { x: at(-THROW * 0.6), y: z(0) + FLASHING * 0.5 },
            text: `Kick-out: one piece, soldered or formed, the lowest of the run, ${len(FLASHING)} or more up the wall, turned out so that water falls into the gutter${spec.finish.gutter ? '' : ' or clear of the wall'} and not behind the cladding (IRC 2018 R903.2.1, recalled).`,
            off: { x: -up * 2, y: 5 },
          },
          {
            at: { x: at(PIECE * 2), y: z(PIECE * 2) + FLASHING * 0.5 },
            text: `${metal ? 'Sidewall flashing of the panel maker' : `Step flashing, a piece ${len(PIECE)} long with each course`}, ${len(FLASHING)} up and ${len(FLASHING)} out, laps ${len(LAP)}, upper piece over the lower; nailed to the deck only, above the lap.`,
            off: { x: up * 2, y: 5 },
          },
          {
            at: { x: at(20), y: z(20) + FLASHING + 3 },
            text: `Wall of the house: water barrier over the upper legs, cladding ${len(CLEAR)} clear of the roofing, cut away round the kick-out.`,
            off: { x: up * 2, y: 4 },
          },
          {
            at: { x: at(12), y: z(12) - cover - 1 },
            text: `${roof.mark}: ${surface.layers.map((l) => l.name).join('; ')}.`,
            mark: roof.mark,
            off: { x: up * 2, y: -5 },
          },
          ...(spec.finish.gutter
            ? [
                {
                  at: { x: at(-3), y: c.y - 4 },
                  text: 'Gutter stops short of the cladding with its end cap; the kick-out pours into it.',
                  off: { x: -up * 2, y: -4 },
                },
              ]
            : []),
        ],
      },
    ],
    scales: ['1-1/2', '1', '3/4'],
    call: { at: p, radius: 8 },
  };
}
