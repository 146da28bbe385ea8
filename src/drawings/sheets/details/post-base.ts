/** Foot of a post: base, standoff, what lies round it, clearances, and how a wrap stops short of it. */
import { OVER_CONCRETE, OVER_EARTH } from '../../../checks/durability/rows.js';
import { markList } from '../../../report/path/table.js';
import { heightAt, slabAt } from '../../../structure/ground.js';
import { type Standing, standings } from '../../../structure/lookup.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { footOfPost } from '../footing-words.js';
import { briefly, needText } from '../joint-text.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, facing, nearPicture, part, rect, soilIn, spot, stroke } from './picture.js';

/** Thickness of a wrap board, the gap behind it and the gap below it, inches. Common practice, no source. */
const BOARD = 0.75;
const AIR = 0.25;
const FOOT_GAP = 0.5;

interface Foot extends Standing {
  /** Marks of joints whose feet are made in the same way. */
  readonly marks: readonly string[];
}

/** One foot of each way of making it, the first in the file. */
function feet(ctx: SheetContext): Foot[] {
  const { structure } = ctx.input;
  const found = new Map<string, Foot>();
  for (const { joint, post, footing } of standings(structure)) {
    if (footing.embedded) continue;
    const key = [
      briefly(ctx, joint.mark),
      post.section.label,
      post.foot?.kind ?? 'pinned',
      footing.kind,
      footing.pierDiameter,
      footing.pierDiameter > 0 ? '' : footing.size,
      footing.choice in (ctx.input.project.choices.anchors ?? {}) ? footing.choice : '',
    ].join('|');
    const before = found.get(key);
    if (!before) found.set(key, { marks: [joint.mark], joint, post, footing });
    else if (!before.marks.includes(joint.mark)) found.set(key, { ...before, marks: [...before.marks, joint.mark] });
  }
  return [...found.values()];
}

function detailOf(ctx: SheetContext, { marks, joint, post, footing }: Foot): Detail {
  const { structure, project } = ctx.input;
  const { len } = ctx;
  const camera = facing({ x: 0, y: 1 });
  const c = spot(camera, { x: footing.at.x, y: footing.at.y, z: post.start.z });
  const depth = see(camera, { ...footing.at, z: 0 }).depth;
  const half = post.section.width / 2;
  const wide =
    Math.max(footing.pierDiameter, footing.size > 0 && footing.padThickness === 0 ? footing.size : 0, 2 * half) / 2;
  const reach = Math.max(wide + 6, 13);
  const frame: Rect = { x: c.x - reach, y: footing.top - 11, w: 2 * reach, h: post.start.z + 13 - footing.top + 11 };
  const standoff = post.start.z - footing.top;
  const anchor = project.choices.anchors?.[footing.choice];
  const foot = post.start.z;
  const slab = slabAt(structure, footing.at);
  const items: Primitive[] = [
    ...(slab ? [] : soilIn(ctx, depth, frame)),
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - 30, depth + 30],
      cutAt: depth,
      finish: true,
      keep: (p) => p.part === post.id || p.part === footing.id || (p.role === 'slab' && p.state !== 'removed'),
    }),
    // Plate and stirrup of the base: their place only.
    {
      kind: 'polyline',
      layer: 'S-JNTS',
      pen: 'hidden',
      closed: true,
      points: rect(c.x - half - 0.3, footing.top, c.x + half + 0.3, foot + 4.5),
      mark: joint.mark,
    },
    ...(anchor
      ? [
          ...part(
            rect(
              c.x - anchor.bolt / 2,
              footing.top - anchor.embedment,
              c.x + anchor.bolt / 2,
              footing.top + Math.max(0.4, standoff * 0.6),
            ),
            'new',
            { fill: true, mark: joint.mark },
          ),
          ...part(
            rect(
              c.x - anchor.bolt,
              footing.top - anchor.embedment - anchor.bolt * 0.7,
              c.x + anchor.bolt,
              footing.top - anchor.embedment,
            ),
            'new',
            { fill: true, mark: joint.mark },
          ),
        ]
      : []),
    // A wrap, where one is wanted: boards off the post, stopped above the concrete.
    ...[-1, 1].map((s) =>
      stroke(
        rect(
          c.x + s * (half + AIR + 0.3),
          footing.top + FOOT_GAP,
          c.x + s * (half + AIR + 0.3 + BOARD),
          frame.y + frame.h,
        ).concat([{ x: c.x + s * (half + AIR + 0.3), y: footing.top + FOOT_GAP }]),
        'hidden',
        'wrap',
        true,
      ),
    ),
  ];
  const ground = footing.surface;
  // All posts whose foot is made so: a section's bubble may stand at any of them.
  const alike = structure.members
    .filter((m) => structure.joints.some((j) => marks.includes(j.mark) && j.ties[0]?.part === m.id))
    .map((m) => m.mark);
  return {
    id: `post-base ${joint.mark} ${footing.choice}`,
    title: alike.length > 1 ? `Foot of ${markList(alike)}` : `Foot of ${post.mark} on ${footing.mark}`,
    views: [
      {
        frame,
        items,
        margin: { left: 6, right: 6, above: 1, below: 6.5 },
        over: (scale) => [
          ...dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'left',
            datum: frame.x,
            first: 3.2 * ctx.style.note,
            tiers: [{ stations: [...(anchor ? [footing.top - anchor.embedment] : []), footing.top, foot] }],
          }).items,
          ...(slab
            ? []
            : dims(ctx, {
                scale,
                layer: 'A-ANNO-DIMS',
                side: 'right',
                datum: frame.x + frame.w,
                first: 3.2 * ctx.style.note,
                tiers: [{ stations: [ground, foot] }],
              }).items),
          ...(wide > half
            ? dims(ctx, {
                scale,
                layer: 'A-ANNO-DIMS',
                side: 'below',
                datum: frame.y,
                first: 3.4 * ctx.style.note,
                tiers: [{ stations: [c.x - wide, c.x + wide] }],
              }).items
            : []),
          ...broken(ctx, { x: c.x - half - 3, y: frame.y + frame.h }, { x: c.x + half + 3, y: frame.y + frame.h }),
        ],
        keys: [
          {
            at: { x: c.x + half * 0.4, y: foot + 2.5 },
            text: `${marks.map((m) => `${m} ${needText(ctx, m)}`).join('; ')}: ${briefly(ctx, joint.mark)}. Dashed: place of the base, its shape is its maker’s.`,
            mark: joint.mark,
            off: { x: 4, y: 3 },
          },
          {
            at: { x: c.x - half * 0.3, y: foot },
            text: `${footing.mark}: ${footOfPost(footing, foot, len)} Post end at least ${len(OVER_CONCRETE)} over concrete and ${len(OVER_EARTH)} over bare soil (IRC 2018 R317.1.4); seal the cut end.${post.foot?.kind === 'fixed' ? ' Held stiff: the base must also carry the base moment of the calculations.' : ''}`,
            mark: post.mark,
            off: { x: -4, y: 1.5 },
          },
          ...(anchor
            ? [
                {
                  at: { x: c.x, y: footing.top - anchor.embedment * 0.6 },
                  text: `Anchor ${len(anchor.bolt)} headed bolt, embedded ${len(anchor.embedment)} below the top of the concrete, in the middle of ${footing.mark}; place it by template before the pour.`,
                  mark: footing.mark,
                  off: { x: 5, y: -2 },
                },
              ]
            : []),
          ...(slab
            ? [
                {
                  at: { x: c.x + wide, y: heightAt(slab.top, footing.at) - slab.thickness / 2 },
                  text: `Isolation joint all round between ${footing.mark} and slab ${slab.mark}: compressible filler the full depth, ${len(0.5)} wide, sealed on top (common practice, no source).`,
                  off: { x: 4, y: 2 },
                },
              ]
            : [
                {
                  at: { x: c.x + wide + 2, y: ground },
                  text: `Soil kept ${len(OVER_EARTH)} clear below wood, sloped away from the post on all sides; no mulch or planting against it.`,
                  off: { x: 3, y: 4 },
                },
              ]),
          {
            at: { x: c.x + half + AIR + 0.3 + BOARD / 2, y: frame.y + frame.h - 4 },
            text: `Wrap, only where one is wanted (dashed, carries nothing): boards on spacers ${len(AIR)} off post and base, stopped ${len(FOOT_GAP)} above concrete, open at top and foot so that air passes; never caulked at the foot (common practice, no source).`,
            off: { x: 4, y: 1 },
          },
        ],
      },
    ],
    words: ['The base must stay in sight for inspection: wrap only after it has been seen.'],
    scales: ['3', '1-1/2', '1'],
    call: {
      at: { ...footing.at, z: footing.top },
      alike: structure.joints.filter((j) => marks.includes(j.mark)).map((j) => j.at),
      radius: 10,
    },
  };
}

export const postBaseDetails = (ctx: SheetContext): readonly Detail[] => feet(ctx).map((f) => detailOf(ctx, f));
