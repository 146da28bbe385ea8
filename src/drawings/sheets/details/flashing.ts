/** Order of the flashing where a roof meets the wall of the house, in section. */
import { findSize } from '../../../catalog/index.js';
import type { HouseTie } from '../../../project/model.js';
import { FLASHING } from '../../../structure/constants.js';
import { findPanel } from '../../../structure/layers.js';
import { planeHeight } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { facing, nearPicture, part, rect, spot, stroke } from './picture.js';
import { CLEAR, isMetal, LAP, type WallEdge } from './wall-edges.js';

/** Membrane on the sheathing above and below the new part. Common practice, no source. */
const MEMBRANE = 6;
const ABOUT = 9;
const OUT = 20;

const tieOf = (ctx: SheetContext, e: WallEdge): HouseTie | undefined =>
  ctx.input.project.cover.houseTies?.find(
    (t) => t.roof === e.roof.mark && ctx.input.structure.walls[t.wall] === e.wall,
  );

/** Section square to the wall through the middle of the edge. */
export function flashing(ctx: SheetContext, e: WallEdge): Detail {
  const { project, structure } = ctx.input;
  const { len } = ctx;
  const { wall, house, surface, roof } = e;
  const size = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
  const t = { x: (wall.end.x - wall.start.x) / size, y: (wall.end.y - wall.start.y) / size };
  const [a0, a1] = [Math.max(0, e.from.along), Math.min(size, e.to.along)];
  const spec = project.cover.roofs.find((r) => r.mark === roof.mark)!;
  // Between two frames, so that none is cut along its length.
  const mid = (a0 + a1) / 2 + (e.sloping ? 0 : spec.framing.spacing * 0.27);
  const foot = { x: wall.start.x + t.x * mid, y: wall.start.y + t.y * mid };
  const camera = facing(wall.out);
  const x0 = spot(camera, { ...foot, z: 0 }).x;
  const out = (e.from.out + e.to.out) / 2;
  const deck = planeHeight(surface, { x: foot.x + wall.out.x * out, y: foot.y + wall.out.y * out });
  const away = surface.downhill.x * wall.out.x + surface.downhill.y * wall.out.y;
  const fall = Math.tan(surface.slope) * away;
  const top = (x: number): number => deck - (x - out) * fall;
  const cover = surface.thickness - (findPanel(spec.finish.sheathing)?.thickness ?? 0);
  const tie = tieOf(ctx, e);
  const board = tie && boardOf(ctx, tie);
  const low = deck - (board?.d ?? 9) - ABOUT / 2 - 3;
  const frame: Rect = { x: x0 - 7, y: low, w: OUT + 7, h: deck + ABOUT + 3 - low };
  const depth = see(camera, { ...foot, z: 0 }).depth;
  const clad = Math.max(house.build.claddingThickness, 0.25);
  const studs = findSize(house.build.studSize)?.d ?? 3.5;
  const sheet = 0.5;
  const high = deck + ABOUT + 3;
  const items: Primitive[] = [
    ...part(rect(x0 - sheet - studs, low, x0 - sheet, high), 'existing-cut', { finish: true }),
    ...part(rect(x0 - sheet, low, x0, high), 'existing-cut', { pattern: 'generic', finish: true }),
    ...nearPicture(ctx, {
      camera,
      frame: { ...frame, x: x0, w: OUT },
      depth: [depth - spec.framing.spacing, depth + 1],
      cutAt: depth,
      finish: true,
      keep: (p) =>
        p.part === surface.id ||
        p.role === 'ledger' ||
        ((p.role === 'rafter' || p.role === 'truss' || p.role === 'gable-truss') &&
          structure.members.some((m) => m.id === p.part && m.roof === roof.mark)),
    }),
    ...(board
      ? part(rect(x0, top(0) - board.d - 0.7, x0 + board.b, top(0) - 0.7), 'cut', {
          pattern: 'wood-cross',
          fill: true,
          finish: true,
          mark: tie.mark,
        })
      : []),
    // Cladding above and below what was opened.
    ...part(rect(x0, deck + cover + CLEAR, x0 + clad, high), 'existing-cut', { pattern: 'sand', finish: true }),
    ...part(rect(x0, low, x0 + clad, low + 3), 'existing-cut', { pattern: 'sand', finish: true }),
    stroke(
      [
        { x: x0 + 0.12, y: deck + MEMBRANE },
        { x: x0 + 0.12, y: low + 2.4 },
      ],
      'hidden',
      'membrane',
      true,
    ),
    stroke(
      [
        { x: x0 + 0.26, y: top(0) + cover + FLASHING },
        { x: x0 + 0.26, y: top(0) + cover + 0.1 },
        { x: x0 + FLASHING + out, y: top(FLASHING + out) + cover + 0.1 },
      ],
      'cut',
      'flashing',
      true,
    ),
    stroke(
      [
        { x: x0 + 0.42, y: high },
        { x: x0 + 0.42, y: top(0) + cover + FLASHING - LAP },
      ],
      'new',
      'water-barrier',
      true,
    ),
  ];
  const metal = isMetal(spec.finish.covering);
  const how = e.sloping
    ? metal
      ? 'sidewall flashing of the panel maker in one run from the eave up'
      : 'step flashing, one piece a course, each laid with its course and lapped by the next'
    : 'apron flashing over the roofing, in one run, its joints lapped and its ends turned up as dams';
  const keys = [
    {
      at: { x: x0 - sheet / 2, y: low + 5 },
      text: `Wall of the house: ${house.build.studSize} studs, sheathing sound and dry; ${house.build.cladding.replaceAll('-', ' ')} cut away to it, the water barrier kept and folded up.`,
      off: { x: -3, y: -3 },
    },
    {
      at: { x: x0 + 0.12, y: deck - 2 },
      text: `Self-adhering membrane on the sheathing, ${len(MEMBRANE)} above the roof and below the new part, its lower edge over the old water barrier.`,
      off: { x: -4, y: 1 },
    },
    {
      at: { x: x0 + (board?.b ?? 1.5) / 2, y: top(0) - (board?.d ?? 6) * 0.6 },
      text: board
        ? `${tie.mark}: nailer ${board.label} fastened through the membrane, every screw sealed by it; loads in the joint schedule.`
        : e.sloping
          ? `End frame of ${roof.mark}, standing clear of the cladding line.`
          : `Ledger or frame of ${roof.mark}, fastened through the membrane.`,
      ...(tie && { mark: tie.mark }),
      off: { x: 4, y: -4 },
    },
    {
      at: { x: x0 + 8, y: top(8) + 0.1 },
      text: 'Roof underlayment turned up the wall behind the metal, as high as its leg.',
      off: { x: 3, y: -5 },
    },
    {
      at: { x: x0 + FLASHING + out - 0.6, y: top(FLASHING + out - 0.6) + cover + 0.1 },
      text: `Metal: ${how}; ${len(FLASHING)} up the wall and ${len(FLASHING)} out on the roof (IRC 2018 R905.2.8.3, recalled).`,
      off: { x: 4, y: 3 },
    },
    {
      at: { x: x0 + 0.42, y: deck + cover + FLASHING + 2 },
      text: `Water barrier folded back down over the metal’s upper leg, lapping it ${len(LAP)} or more: each layer over the one below, never behind it (IRC 2018 R703.4, recalled).`,
      off: { x: 4, y: 2 },
    },
    {
      at: { x: x0 + clad, y: deck + cover + CLEAR + 2 },
      text: `Counterflashing or cladding last, ending ${len(CLEAR)} above the roofing so that it dries; no sealant in place of laps.`,
      off: { x: 5, y: 1 },
    },
  ];
  return {
    id: `flashing ${roof.mark} ${wall.id} ${e.sloping}`,
    title: e.sloping ? `${roof.mark} beside the ${house.name} wall` : `${roof.mark} against the ${house.name} wall`,
    views: [
      {
        frame,
        items,
        margin: { left: 2, right: 6, above: 1, below: 2 },
        over: (scale) =>
          dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'right',
            datum: x0 + FLASHING + out + 6,
            first: 2 * ctx.style.note,
            tiers: [{ stations: [top(0) + cover, top(0) + cover + CLEAR, top(0) + cover + FLASHING] }],
          }).items,
        keys,
      },
    ],
    words: [
      'Numbers are the order of work, from the wall out. Never over or through brick or stone veneer: set posts of its own before such a wall.',
      'Leave it open until the inspector has seen it.',
    ],
    scales: ['3', '1-1/2', '1'],
    call: { at: { x: foot.x + wall.out.x * 3, y: foot.y + wall.out.y * 3, z: deck }, radius: 10 },
  };
}

function boardOf(
  ctx: SheetContext,
  t: HouseTie,
): { readonly b: number; readonly d: number; readonly label: string } | undefined {
  const s = ctx.input.project.choices.sections[t.nailer];
  const size = s !== undefined && 'size' in s ? findSize(s.size) : undefined;
  return size && s && 'size' in s ? { b: size.b, d: size.d, label: `${s.size} ${s.species} ${s.grade}` } : undefined;
}
