/** Foot of a post that stands in the ground: hole, backfill, what lies under it, and how the surface sheds water. */
import { surfaceAt } from '../../../structure/ground.js';
import { type Standing, standings } from '../../../structure/lookup.js';
import type { EmbeddedFoot } from '../../../structure/model.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { footOfPost } from '../footing-words.js';
import { needText } from '../joint-text.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, facing, nearPicture, part, soilIn, spot } from './picture.js';

/** Height of the backfill's cap against the post over the surface, inches: drawn only. Common practice, no source. */
const CAP = 1;

interface Hole extends Standing {
  readonly foot: EmbeddedFoot;
}

function holes(ctx: SheetContext): Hole[] {
  const { structure } = ctx.input;
  const found = new Map<string, Hole>();
  for (const { joint, post, footing } of standings(structure)) {
    if (!footing.embedded || found.has(`${joint.mark} ${footing.choice}`)) continue;
    found.set(`${joint.mark} ${footing.choice}`, { joint, post, footing, foot: footing.embedded });
  }
  return [...found.values()];
}

function detailOf(ctx: SheetContext, { joint, post, footing, foot }: Hole): Detail {
  const { len } = ctx;
  const { structure } = ctx.input;
  const camera = facing({ x: 0, y: 1 });
  const at = { ...footing.at, z: footing.surface };
  const c = spot(camera, at);
  const depth = see(camera, at).depth;
  const half = post.section.depth / 2;
  const r = footing.size / 2;
  const frame: Rect = {
    x: c.x - r - 10,
    y: footing.bottom - 4,
    w: 2 * r + 20,
    h: footing.surface - footing.bottom + 18,
  };
  const cap = [-1, 1].flatMap((s) =>
    part(
      [
        { x: c.x + s * half, y: footing.surface },
        { x: c.x + s * r, y: footing.surface },
        { x: c.x + s * half, y: footing.surface + CAP },
      ],
      'new-fine',
      { finish: true },
    ),
  );
  const items: Primitive[] = [
    ...soilIn(ctx, depth, frame),
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - r, depth + r],
      cutAt: depth,
      finish: true,
      keep: (p) => p.part === post.id || p.part === footing.id || (p.role === 'slab' && p.state !== 'removed'),
    }),
    ...(foot.cast
      ? []
      : part(
          [
            { x: c.x - r, y: foot.foot },
            { x: c.x + r, y: foot.foot },
            { x: c.x + r, y: footing.surface },
            { x: c.x - r, y: footing.surface },
          ],
          'hidden',
          { finish: true },
        )),
    ...cap,
  ];
  const fill = foot.cast
    ? 'Concrete cast against undisturbed soil'
    : `${foot.backfill === 'sand' ? 'Sand' : 'Soil'} in layers of at most 8 in, each tamped`;
  return {
    id: `post-hole ${joint.mark} ${footing.choice}`,
    title: `${post.mark} set in the ground, ${footing.mark}`,
    views: [
      {
        frame,
        items,
        margin: { left: 6, right: 2, above: 1, below: 7 },
        over: (scale) => [
          ...dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'left',
            datum: frame.x,
            first: 3.2 * ctx.style.note,
            tiers: [{ stations: [footing.bottom, foot.foot, footing.surface] }],
          }).items,
          ...dims(ctx, {
            scale,
            layer: 'A-ANNO-DIMS',
            side: 'below',
            datum: frame.y,
            first: 3.4 * ctx.style.note,
            tiers: [{ stations: [c.x - r, c.x + r] }],
          }).items,
          ...broken(ctx, { x: c.x - half - 3, y: frame.y + frame.h }, { x: c.x + half + 3, y: frame.y + frame.h }),
        ],
        keys: [
          {
            at: { x: c.x, y: (footing.surface + foot.foot) / 2 },
            text: `${post.mark}: ${post.section.label}, ${post.section.treatment.replace('-', ' ')} treated; ${footOfPost(footing, foot.foot, len)}`,
            mark: post.mark,
            off: { x: -4, y: 3 },
          },
          {
            at: { x: c.x + (half + r) / 2, y: (footing.surface + foot.foot) / 2 - 4 },
            text: `${footing.mark}: ${fill}; brace the post plumb both ways until it has set. ${joint.mark} ${needText(ctx, joint.mark)}.`,
            mark: footing.mark,
            off: { x: 4, y: 2 },
          },
          {
            at: { x: c.x + (half + r) / 2, y: footing.surface + CAP / 2 },
            text: `Top of the backfill sloped away from the post, ${len(CAP)} high at it (common practice, no source); no soil, mulch or planting heaped against the wood above it.`,
            off: { x: 4, y: 4 },
          },
        ],
      },
    ],
    words: [
      'The hole is seen by the inspector before anything goes in: depth, width, clean and dry bottom on undisturbed soil.',
    ],
    scales: ['1', '3/4', '1/2', '3/8'],
    call: {
      at: { ...footing.at, z: surfaceAt(structure, footing.at) },
      alike: structure.joints.filter((j) => j.mark === joint.mark).map((j) => ({ ...j.at, z: footing.surface })),
      radius: 12,
    },
  };
}

export const postHoleDetails = (ctx: SheetContext): readonly Detail[] => holes(ctx).map((h) => detailOf(ctx, h));
