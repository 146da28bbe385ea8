/** Rafters that meet at a ridge board, and the ties that keep their feet from spreading. */
import type { Vec2 } from '../../../base/vec.js';
import { findFastener } from '../../../catalog/index.js';
import type { Joint, JointKind, Member } from '../../../structure/model.js';
import type { Rect } from '../../ir/index.js';
import { type Camera, see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { briefly, needText } from '../joint-text.js';
import { dims } from '../parts.js';
import type { Detail, Key } from './contract.js';
import { broken, facing, nearPicture, planDirection, spot } from './picture.js';

/** Model inches shown round the joint. */
const ABOUT = 16;

interface Place {
  readonly joint: Joint;
  /** The parts tied, in the order the load comes down. */
  readonly upper: Member;
  readonly lower: Member;
  /** Rafter whose plane is shown. */
  readonly rafter: Member;
}

/** The first joint of each mark of a kind that lies away from the ends of the roof. */
function places(ctx: SheetContext, kind: JointKind): Place[] {
  const { joints, members } = ctx.input.structure;
  const found = new Map<string, Place>();
  for (const mark of new Set(joints.filter((j) => j.kind === kind).map((j) => j.mark))) {
    const all = joints.filter((j) => j.mark === mark);
    const joint = all[Math.min(2, all.length - 1)]!;
    const [upper, lower] = [joint.ties[0], joint.ties.at(-1)].map((t) => members.find((m) => m.id === t?.part));
    const rafter = [upper, lower].find((m) => m?.role === 'rafter');
    if (upper && lower && rafter) found.set(mark, { joint, upper, lower, rafter });
  }
  return [...found.values()];
}

/** Along the rafter, from the side on which its tie lies. */
function cameraOf({ upper, rafter }: Place): Camera {
  const d = planDirection(rafter);
  const camera = facing(d);
  const behind = upper.role === 'tie' && see(camera, upper.start).depth < see(camera, rafter.start).depth;
  return behind ? facing({ x: -d.x, y: -d.y }) : camera;
}

function detailOf(ctx: SheetContext, p: Place, title: string, keys: (c: Vec2, camera: Camera) => Key[]): Detail {
  const { joint, upper, lower, rafter } = p;
  const { structure } = ctx.input;
  const camera = cameraOf(p);
  const c = spot(camera, joint.at);
  const frame: Rect = { x: c.x - ABOUT, y: c.y - ABOUT * 0.75, w: 2 * ABOUT, h: ABOUT * 1.4 };
  const depth =
    see(camera, joint.at).depth + rafter.section.b / 2 + (upper.role === 'tie' ? upper.section.b : 0) + 0.05;
  const tie = upper.role === 'tie' ? upper : undefined;
  const beams = structure.members.filter((m) => m.role === 'beam');
  const top = beams[0] ? beams[0].start.z + beams[0].section.depth / 2 : 0;
  const under = tie ? tie.start.z - tie.section.d / 2 : 0;
  return {
    id: `tied-rafters ${joint.mark}`,
    title,
    views: [
      {
        frame,
        items: nearPicture(ctx, {
          camera,
          frame,
          depth: [depth - 5, depth],
          cutAt: depth,
          keep: (q) =>
            q.part === upper.id ||
            q.part === lower.id ||
            q.role === 'ridge' ||
            q.role === 'beam' ||
            (q.role === 'rafter' && q.mark === rafter.mark) ||
            (q.role === 'roof-surface' && structure.surfaces.some((s) => s.id === q.part && s.roof === rafter.roof)),
        }),
        margin: { left: 2, right: 5.5, above: 2, below: 2 },
        over: (scale) => {
          const part = tie ?? structure.members.find((m) => m.role === 'ridge');
          if (!part) return [];
          const z = part.start.z;
          const string = dims(ctx, {
            scale,
            layer: 'S-ANNO-DIMS',
            side: 'right',
            datum: frame.x + frame.w,
            first: 3.2 * ctx.style.note,
            tiers: [{ stations: [z - part.section.d / 2, z + part.section.d / 2] }],
          });
          const ends = tie ? [see(camera, tie.start).a, see(camera, tie.end).a] : [];
          const far = ends
            .map((x) => (x > c.x ? frame.x + frame.w : frame.x))
            .find((x) => ends.some((e) => Math.abs(e - c.x) > ABOUT && Math.sign(e - c.x) === Math.sign(x - c.x)));
          return [
            ...string.items,
            ...(tie && far !== undefined
              ? broken(ctx, { x: far, y: z - tie.section.d }, { x: far, y: z + tie.section.d })
              : []),
          ];
        },
        keys: keys(c, camera),
      },
    ],
    words: tie
      ? [
          `Underside of the tie ${ctx.len(under - top)} above the top of the beams. No tie is left out or cut: without it the rafters push the beams apart.`,
        ]
      : [],
    scales: ['1-1/2', '1', '3/4'],
    call: { at: joint.at, alike: structure.joints.filter((j) => j.mark === joint.mark).map((j) => j.at), radius: 10 },
  };
}

export const tiedRafterDetails = (ctx: SheetContext): readonly Detail[] => [
  ...places(ctx, 'rafter-to-ridge').map((p) =>
    detailOf(ctx, p, `${p.rafter.mark} at ridge board ${p.lower.mark}`, (c) => [
      {
        at: { x: c.x, y: c.y },
        text: `${p.lower.mark}: ridge board ${p.lower.section.label}; it carries nothing, rafters stand against each other in pairs on it.`,
        mark: p.lower.mark,
        off: { x: 4, y: -5 },
      },
      {
        at: { x: c.x - 6, y: c.y - 3 },
        text: `${p.rafter.mark}: ${p.rafter.section.label}, plumb cut, full depth on the board.`,
        mark: p.rafter.mark,
        off: { x: -3, y: -5 },
      },
      {
        at: { x: c.x - 1, y: c.y + 1 },
        text: `${p.joint.mark} ${needText(ctx, p.joint.mark)}: ${briefly(ctx, p.joint.mark)}.`,
        mark: p.joint.mark,
        off: { x: -5, y: 5 },
      },
    ]),
  ),
  ...places(ctx, 'tie-to-rafter').map((p) => {
    const n = p.upper.nails;
    return detailOf(ctx, p, `Tie ${p.upper.mark} on ${p.rafter.mark}`, (c, camera) => [
      {
        at: { x: c.x, y: c.y },
        text: `${p.joint.mark} ${needText(ctx, p.joint.mark)}: ${n ? `(${n.count}) ${findFastener(n.nail)?.name ?? n.nail} through the tie into the rafter, spread over the lap` : briefly(ctx, p.joint.mark)}.`,
        mark: p.joint.mark,
        off: { x: 3, y: 5 },
      },
      {
        at: {
          x: c.x + Math.sign((see(camera, p.upper.end).a + see(camera, p.upper.start).a) / 2 - c.x) * 10,
          y: c.y,
        },
        text: `${p.upper.mark}: ${p.upper.section.label}, ${ctx.len(p.upper.length)} long, one on each pair of rafters.`,
        mark: p.upper.mark,
        off: { x: 2, y: -5 },
      },
    ]);
  }),
];
