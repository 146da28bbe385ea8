/** Eave of each roof: overhang, fascia, gutter, drip edge and the order of the layers. */
import type { Vec3 } from '../../../base/vec.js';
import { gutterOf } from '../../../checks/roof/gutter.js';
import type { CoverRoof } from '../../../project/model.js';
import type { Member, Surface } from '../../../structure/model.js';
import { onSurface } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, facing, nearPicture, part, rect, spot, stroke } from './picture.js';
import { DRIP, dripEdge, edgeFacts } from './roof-edge.js';

/** Model inches shown inside the outer face of the bearing. */
const IN = 9;

interface Eave {
  /** Marks of the roofs whose eaves are alike. */
  readonly marks: readonly string[];
  readonly roof: CoverRoof;
  readonly surface: Surface;
  readonly frame: Member;
  readonly bearing: Member | undefined;
}

function eaves(ctx: SheetContext): Eave[] {
  const { structure, project } = ctx.input;
  return project.cover.roofs.flatMap((roof): Eave[] => {
    const surface = structure.surfaces.find((s) => s.roof === roof.mark);
    const frames = structure.members.filter(
      (m) =>
        m.roof === roof.mark &&
        m.strips.some((t) => t.surface === surface?.id) &&
        m.role !== 'outlooker' &&
        m.role !== 'hip',
    );
    // One from the middle of the row: jacks and end frames are not typical.
    const frame = frames[Math.floor(frames.length / 2)];
    if (!surface || !frame) return [];
    const o = surface.downhill;
    const seat = structure.joints
      .filter((j) => j.ties[0]?.part === frame.id && /-to-beam$/.test(j.kind))
      .sort((p, q) => q.at.x * o.x + q.at.y * o.y - (p.at.x * o.x + p.at.y * o.y))[0];
    return [
      {
        marks: [roof.mark],
        roof,
        surface,
        frame,
        bearing: structure.members.find((m) => m.id === seat?.ties.at(-1)?.part),
      },
    ];
  });
}

/** Eaves that a builder makes in the same way are one detail. */
const likeness = ({ roof, frame, bearing }: Eave): string =>
  [
    roof.pitchText,
    roof.eave,
    JSON.stringify(roof.finish),
    frame.section.label,
    frame.truss?.heel,
    bearing?.section.label,
  ].join('|');

function merged(all: readonly Eave[]): Eave[] {
  const groups = new Map<string, Eave>();
  for (const e of all) {
    const before = groups.get(likeness(e));
    groups.set(likeness(e), before ? { ...before, marks: [...before.marks, ...e.marks] } : e);
  }
  return [...groups.values()];
}

function detailOf(ctx: SheetContext, { marks, roof, surface, frame, bearing }: Eave): Detail {
  const { structure } = ctx.input;
  const { len } = ctx;
  const camera = facing(surface.downhill);
  const along = { x: (frame.start.x + frame.end.x) / 2, y: (frame.start.y + frame.end.y) / 2 };
  const u = surface.u.x * (along.x - surface.origin.x) + surface.u.y * (along.y - surface.origin.y);
  const corner = onSurface(surface, u, 0);
  const edge = spot(camera, corner);
  const slope = Math.tan(surface.slope);
  const fascia = structure.members.find(
    (m) => m.role === 'fascia' && m.roof === roof.mark && Math.abs(see(camera, m.start).a - edge.x) < 3,
  );
  const out = fascia?.section.b ?? 0;
  const face = bearing ? see(camera, bearing.start).a + bearing.section.width / 2 : edge.x - roof.eave;
  const hung = gutterOf(ctx.input, roof.mark);
  const gutter = hung ? hung.gutter + 0.5 : 1;
  const facts = edgeFacts(roof);
  const left = Math.min(face - IN, edge.x - 16);
  const down = Math.max(9, fascia ? fascia.section.d + 4 : 0);
  const frameRect: Rect = {
    x: left,
    y: edge.y - down,
    w: edge.x + out + gutter + 1 - left,
    h: down + (edge.x - left) * slope + 3.5,
  };
  const depth = see(camera, corner).depth + frame.section.b / 2 + 0.05;
  const deck = surface.thickness - facts.thickness;
  const cos = Math.cos(surface.slope);
  // Its top at the underside of the sheathing.
  const under = edge.y - facts.thickness / cos;
  const felt = (x: number): number => edge.y + (edge.x - x) * slope + 0.12;
  const items: Primitive[] = [
    ...nearPicture(ctx, {
      camera,
      frame: frameRect,
      depth: [depth - 3, depth + 0.1],
      cutAt: depth,
      finish: true,
      keep: (p) =>
        p.part === frame.id ||
        p.part === bearing?.id ||
        (p.role === 'roof-surface' && p.part === surface.id) ||
        p.part === fascia?.id,
    }),
    ...(hung
      ? part(rect(edge.x + out, under - hung.gutter, edge.x + out + hung.gutter, under), 'new', {
          finish: true,
          mark: 'gutter',
        })
      : []),
    dripEdge(edge, slope, out),
    stroke(
      [
        { x: left, y: felt(left) },
        { x: edge.x + out, y: felt(edge.x + out) },
      ],
      'hidden',
      'underlayment',
      true,
    ),
  ];
  return {
    id: `eave ${roof.mark}`,
    title: `Eave of ${marks.join(', ')}`,
    views: [
      {
        frame: frameRect,
        items,
        margin: { left: 1.5, right: 5.5, above: 3, below: 6.5 },
        over: (scale) => [
          ...dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'below',
            datum: frameRect.y,
            first: 3.4 * ctx.style.note,
            tiers: [{ stations: [face, edge.x, ...(out > 0 ? [edge.x + out] : [])] }],
          }).items,
          ...(fascia
            ? dims(ctx, {
                scale,
                layer: 'A-ANNO-DIMS',
                side: 'right',
                datum: frameRect.x + frameRect.w,
                first: 3 * ctx.style.note,
                tiers: [
                  {
                    stations: [
                      spot(camera, fascia.start).y - fascia.section.d / 2,
                      spot(camera, fascia.start).y + fascia.section.d / 2,
                    ],
                  },
                ],
              }).items
            : []),
          ...broken(
            ctx,
            { x: left, y: edge.y + (edge.x - left) * slope - 4 },
            { x: left, y: frameRect.y + frameRect.h - 0.5 },
          ),
        ],
        keys: [
          {
            at: { x: edge.x - 3, y: edge.y + 3 * slope + deck / cos / 2 + 0.1 },
            text: `${facts.covering}: ${facts.panels ? 'panels hooked over the drip edge or its cleat' : 'starter over the drip edge'}, overhang as its maker says; ${facts.panels ? 'seams, clips' : 'courses'} and fasteners by the maker’s instructions.`,
            off: { x: 1, y: 5 },
          },
          {
            at: { x: left + 4, y: felt(left + 4) },
            text: `Underlayment, ${facts.underlayment}${facts.double ? ', two layers at this slope' : ''}: laid from the eave up, over the drip edge here and under it at rakes.`,
            off: { x: 2, y: 5 },
          },
          {
            at: { x: edge.x + out + 0.1, y: edge.y - out * slope - 0.8 },
            text: `Drip edge: ${len(DRIP.down)} or more below the sheathing, ${len(DRIP.back)} back on it, laps ${len(DRIP.lap)}, fasteners no farther than ${len(DRIP.fasteners)} (IRC 2018 R905.2.8.5).`,
            off: { x: 3, y: 4 },
          },
          {
            at: { x: edge.x - 7, y: edge.y + 7 * slope - facts.thickness / cos / 2 },
            text: `${facts.sheathing}, edges supported; ${frame.mark} below it, ${frame.truss ? 'tail by the plant, plumb cut' : `${frame.section.label}, tail plumb cut`}.`,
            mark: frame.mark,
            off: { x: -2, y: -5 },
          },
          ...(fascia
            ? [
                {
                  at: { x: edge.x + out / 2, y: edge.y - fascia.section.d * 0.6 },
                  text: `${fascia.mark}: fascia ${fascia.section.label}, ${len(fascia.length)} long, nailed to every tail; face ${len(roof.eave + out)} from the bearing’s outer face.`,
                  mark: fascia.mark,
                  off: { x: -3, y: -4 },
                },
              ]
            : []),
          ...(roof.finish.gutter
            ? [
                {
                  at: { x: edge.x + out + (hung?.gutter ?? 3) * 0.7, y: under - (hung?.gutter ?? 3) * 0.8 },
                  text: `Gutter${hung ? ` ${len(hung.gutter)} wide or larger` : ''} hung on the fascia behind the drip edge’s leg, falling to its leader; water led clear of footings and neighbours. Its size is checked with the calculations.`,
                  off: { x: 2, y: -4 },
                },
              ]
            : [
                {
                  at: { x: edge.x + out, y: edge.y - 2 },
                  text: 'No gutter: water drips free; keep the ground below it paved or drained.',
                  off: { x: 3, y: -3 },
                },
              ]),
        ],
      },
    ],
    scales: ['3', '1-1/2', '1', '3/4'],
    call: { at: { ...corner, z: corner.z - 2 }, alike: alongEaves(ctx, marks), radius: 9 },
  };
}

/** Points along the eaves of some roofs, a frame apart or nearer. */
const alongEaves = (ctx: SheetContext, marks: readonly string[]): Vec3[] =>
  ctx.input.structure.surfaces
    .filter((s) => marks.includes(s.roof))
    .flatMap((s) => {
      const low = s.outline.filter((p) => Math.abs(p.y) < 1).map((p) => p.x);
      const [u0, u1] = [Math.min(...low), Math.max(...low)];
      return Array.from({ length: 9 }, (_, i) => {
        const p = onSurface(s, u0 + ((i + 0.5) * (u1 - u0)) / 9, 0);
        return { ...p, z: p.z - 2 };
      });
    });

export const eaveDetails = (ctx: SheetContext): readonly Detail[] => merged(eaves(ctx)).map((e) => detailOf(ctx, e));
