/** Rake of each roof that has one: how the sheathing runs out past the end frame, on what, and its metal. */
import type { CoverRoof } from '../../../project/model.js';
import type { Member, Surface } from '../../../structure/model.js';
import { onSurface, planeHeight } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, facing, nearPicture, spot, stroke } from './picture.js';
import { DRIP, dripEdge, edgeFacts } from './roof-edge.js';

const GABLE_END = {
  open: 'Gable end left open below the rake, as the wind loads have it.',
  closed: 'Gable end closed below the rake, as the wind loads have it: framing and cladding on the end frame.',
  unsaid:
    'Whether the gable end is open or closed below the rake is not stated: ask the owner. No closing is drawn; the wind loads take it as closed, the harder case.',
} as const;

interface Rake {
  /** Marks of the roofs whose rakes are alike. */
  readonly marks: readonly string[];
  readonly roof: CoverRoof;
  readonly surface: Surface;
  /** End frame and the one next to it. */
  readonly end: Member;
  readonly next: Member;
  /** Outlookers of this end that stand on the surface. */
  readonly lookers: readonly Member[];
  readonly barge: Member | undefined;
}

const at = (s: Surface, m: Member): number =>
  s.u.x * ((m.start.x + m.end.x) / 2 - s.origin.x) + s.u.y * ((m.start.y + m.end.y) / 2 - s.origin.y);

function rakes(ctx: SheetContext): Rake[] {
  const { structure, project } = ctx.input;
  return project.cover.roofs.flatMap((roof): Rake[] => {
    const surface = structure.surfaces.find((s) => s.roof === roof.mark);
    if (!surface || surface.shape === 'hipped' || roof.rake <= 0) return [];
    const frames = structure.members
      .filter((m) => m.roof === roof.mark && m.strips.some((t) => t.surface === surface.id) && m.role !== 'outlooker')
      .sort((p, q) => at(surface, p) - at(surface, q));
    // The end away from the house: the other one may meet its wall.
    const width = Math.max(...surface.outline.map((p) => p.x));
    const [p0, p1] = [onSurface(surface, 0, 0), onSurface(surface, width, 0)];
    const far = p1.y >= p0.y ? frames.reverse() : frames;
    const [end, next] = far;
    if (!end || !next) return [];
    const same = (m: Member): boolean => Math.abs(at(surface, m) - at(surface, end)) < roof.rake + 6;
    return [
      {
        marks: [roof.mark],
        roof,
        surface,
        end,
        next,
        lookers: structure.members.filter(
          (m) =>
            m.role === 'outlooker' && m.rake?.surface === surface.id && Math.abs(m.rake.frame - at(surface, end)) < 2,
        ),
        barge: structure.members.find((m) => m.role === 'barge' && m.roof === roof.mark && same(m)),
      },
    ];
  });
}

/** Rakes that a builder makes in the same way are one detail. */
function merged(all: readonly Rake[]): Rake[] {
  const groups = new Map<string, Rake>();
  for (const r of all) {
    const key = [
      r.surface.shape,
      r.roof.rake,
      JSON.stringify(r.roof.finish),
      r.roof.framing.spacing,
      r.end.section.label,
      r.lookers.length,
    ].join('|');
    const before = groups.get(key);
    groups.set(key, before ? { ...before, marks: [...before.marks, ...r.marks] } : r);
  }
  return [...groups.values()];
}

function detailOf(ctx: SheetContext, r: Rake): Detail {
  const { roof, surface, end, next, lookers, barge } = r;
  const { len } = ctx;
  const [ue, un] = [at(surface, end), at(surface, next)];
  const sign = ue > un ? 1 : -1;
  const width = Math.max(...surface.outline.map((p) => p.x));
  const tall = Math.max(...surface.outline.map((p) => p.y));
  const look = lookers[Math.floor(lookers.length / 2)];
  const v = look ? vOf(surface, look) : 0.4 * tall;
  const edgeAt = onSurface(surface, sign > 0 ? width : 0, v);
  const camera = facing({ x: sign * surface.u.x, y: sign * surface.u.y });
  const e = spot(camera, edgeAt);
  const a = (m: Member): number => see(camera, m.start).a;
  const facts = edgeFacts(roof);
  const depth = see(camera, edgeAt).depth;
  const tallFrame = end.truss ? 8 : end.section.depth;
  const left = Math.max(a(next) - 4, e.x - 44);
  const frame: Rect = { x: left, y: e.y - tallFrame - 3.5, w: e.x + 3.5 - left, h: tallFrame + 7 };
  const felt = e.y + 0.12;
  const items: Primitive[] = [
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - 3, depth + 3],
      cutAt: depth,
      finish: true,
      keep: (p) =>
        (p.role === 'roof-surface' && p.part === surface.id) ||
        p.part === end.id ||
        p.part === next.id ||
        p.part === barge?.id ||
        lookers.some((m) => m.id === p.part),
    }),
    stroke(
      [
        { x: left, y: felt },
        { x: e.x - 0.3, y: felt },
      ],
      'hidden',
      'underlayment',
      true,
    ),
    dripEdge({ x: e.x, y: e.y + 0.2 }, 0, 0),
  ];
  const what = look
    ? `${look.mark}: outlooker ${look.section.label}, ${look.rake!.lay === 'flat' ? 'flat' : 'on edge'}, ${lookers.length} on this slope${spacingText(ctx, surface, lookers)}, ${len(look.length)} long: from the next frame over the lowered end frame to the barge board.`
    : `No outlookers: sheathing alone runs ${len(Math.abs(e.x - a(end)))} past the end frame’s center, its face grain across the frames and over at least two bays; nails at ${len(roof.finish.nailing?.boundary ?? roof.finish.nailing?.edge ?? 6)} into the end frame.`;
  const underside = planeHeight(surface, edgeAt);
  return {
    id: `rake ${roof.mark}`,
    title: `Rake of ${r.marks.join(', ')}`,
    views: [
      {
        frame,
        items,
        margin: { left: 1.5, right: 2, above: 3, below: 6.5 },
        over: (scale) => [
          ...dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'below',
            datum: frame.y,
            first: 3.4 * ctx.style.note,
            tiers: [{ stations: [...(a(next) > left ? [a(next)] : []), a(end), e.x] }],
          }).items,
          ...broken(ctx, { x: left, y: e.y - 4 }, { x: left, y: e.y + 2.5 }),
        ],
        keys: [
          {
            at: { x: (a(end) + e.x) / 2, y: look ? underside - facts.thickness - 1 : e.y - facts.thickness / 2 },
            text: what,
            ...(look && { mark: look.mark }),
            off: { x: 2, y: -5 },
          },
          {
            at: { x: a(end), y: e.y - tallFrame * 0.6 },
            text: `${end.mark}: end frame${end.truss ? ', a gable truss by the plant' : `, ${end.section.label}`}; the next one ${len(Math.abs(ue - un))} back.`,
            mark: end.mark,
            off: { x: -4, y: -2 },
          },
          ...(barge
            ? [
                {
                  at: {
                    x: a(barge),
                    y: e.y - facts.thickness - barge.section.d / 2,
                  },
                  text: `${barge.mark}: barge board ${barge.section.label}, nailed to the end of every outlooker.`,
                  mark: barge.mark,
                  off: { x: 3, y: -4 },
                },
              ]
            : []),
          {
            at: { x: e.x + 0.1, y: e.y - 0.6 },
            text: `Drip edge at the rake goes over the underlayment (IRC 2018 R905.2.8.5), ${len(DRIP.back)} back on the deck, laps ${len(DRIP.lap)} with the upper piece over the lower, fasteners no farther than ${len(DRIP.fasteners)}.`,
            off: { x: 3, y: 3 },
          },
          {
            at: { x: (a(end) + left) / 2, y: felt },
            text: `Underlayment, ${facts.underlayment}${facts.double ? ', two layers at this slope' : ''}, to the edge of the deck; ${facts.covering} above it.`,
            off: { x: 2, y: 4.5 },
          },
        ],
      },
    ],
    words: [GABLE_END[roof.finish.gableEnd ?? 'unsaid']].slice(surface.shape === 'pitched' ? 0 : 1),
    scales: ['3', '1-1/2', '1', '3/4'],
    call: { at: { ...edgeAt, z: edgeAt.z - 2 }, runs: { x: surface.u.x, y: surface.u.y }, radius: 9 },
  };
}

/** Place of a member up the slope. */
const vOf = (s: Surface, m: Member): number => {
  const p = {
    x: (m.start.x + m.end.x) / 2 - s.origin.x,
    y: (m.start.y + m.end.y) / 2 - s.origin.y,
    z: (m.start.z + m.end.z) / 2 - s.origin.z,
  };
  return s.v.x * p.x + s.v.y * p.y + s.v.z * p.z;
};

function spacingText(ctx: SheetContext, s: Surface, lookers: readonly Member[]): string {
  const vs = lookers.map((m) => vOf(s, m)).sort((p, q) => p - q);
  return vs.length > 1 ? ` at ${ctx.len(vs[1]! - vs[0]!)} along the slope` : '';
}

export const rakeDetails = (ctx: SheetContext): readonly Detail[] => merged(rakes(ctx)).map((r) => detailOf(ctx, r));
