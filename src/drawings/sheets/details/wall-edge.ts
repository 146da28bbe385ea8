/** Roof edges at the wall of the house: order of the flashing in section, and the kick-out where a sloping edge ends. */
import { findSize, ROOF_COVERINGS } from '../../../catalog/index.js';
import type { HouseTie, HouseWall } from '../../../project/model.js';
import { FLASHING } from '../../../structure/constants.js';
import { type EdgeAtWall, edgesAtWalls } from '../../../structure/describe.js';
import { findPanel } from '../../../structure/layers.js';
import type { RoofPlaced } from '../../../structure/model.js';
import { planeHeight } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { facing, nearPicture, part, rect, spot, stroke } from './picture.js';

/** Cladding ends this far above the roof; water barrier laps the upper leg by this. Common practice, no source. */
const CLEAR = 2;
const LAP = 2;
/** Membrane on the sheathing above and below the new part. Common practice, no source. */
const MEMBRANE = 6;
const ABOUT = 9;
const OUT = 20;

interface Edge extends EdgeAtWall {
  readonly house: HouseWall;
  readonly roof: RoofPlaced;
  /** Runs up the slope beside the wall; else the wall stands at its high or low side. */
  readonly sloping: boolean;
}

function edgesOf(ctx: SheetContext): Edge[] {
  const { structure, project } = ctx.input;
  return edgesAtWalls(structure.surfaces, structure.walls).flatMap((e): Edge[] => {
    const house = project.house.walls[structure.walls.indexOf(e.wall)];
    const roof = structure.roofs.find((r) => r.mark === e.surface.roof);
    // Where the wall is lower than the roof there is nothing to flash against.
    if (!house || !roof || Math.min(e.from.z, e.to.z) > e.wall.plate + 24) return [];
    return [{ ...e, house, roof, sloping: Math.abs(e.from.z - e.to.z) > 0.5 }];
  });
}

/** Of edges alike, the first; a gable's two slopes are alike. */
const each = (edges: readonly Edge[]): Edge[] =>
  edges.filter(
    (e, i) => edges.findIndex((o) => o.roof === e.roof && o.wall === e.wall && o.sloping === e.sloping) === i,
  );

const tieOf = (ctx: SheetContext, e: Edge): HouseTie | undefined =>
  ctx.input.project.cover.houseTies?.find(
    (t) => t.roof === e.roof.mark && ctx.input.structure.walls[t.wall] === e.wall,
  );

/** Panels whose maker gives the flashing beside them, in one run instead of by courses. */
const isMetal = (covering: string): boolean =>
  (ROOF_COVERINGS.find((c) => c.id === covering)?.name ?? '').toLowerCase().includes('metal');

/** Section square to the wall through the middle of the edge. */
function flashing(ctx: SheetContext, e: Edge): Detail {
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

/** Lengths of a step flashing piece and of the kick-out's throw, drawn only. Common practice, no source. */
const PIECE = 8;
const THROW = 4;

/** Seen square to the wall: the low end of a sloping edge. */
function kickOut(ctx: SheetContext, e: Edge): Detail {
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

export const wallEdgeDetails = (ctx: SheetContext): readonly Detail[] => {
  const edges = each(edgesOf(ctx));
  return [
    ...edges.filter((e) => !e.sloping).map((e) => flashing(ctx, e)),
    ...edges.filter((e) => e.sloping).flatMap((e) => [flashing(ctx, e), kickOut(ctx, e)]),
  ];
};
