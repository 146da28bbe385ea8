/** Concrete and steel of a footing: section and plan with the bars where the calculation counts them. */

import { EARTH_COVER, type LaidSteel, TOP_COVER, uprightTurns } from '../../../checks/footings/laid-steel.js';
import type { Footing } from '../../../structure/model.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import { besideLine } from '../beside-house-words.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import { anchorText, coverText, hookText, matText, steeled, tieText, uprightText } from '../steel-words.js';
import type { Detail, DetailView, Key } from './contract.js';
import { facing, nearPicture, rect, soilIn, spot, stroke } from './picture.js';

interface Made {
  readonly f: Footing;
  readonly steel: LaidSteel;
  readonly alike: readonly Footing[];
}

/** One footing of each way of making it, the first in the file. */
function made(ctx: SheetContext): Made[] {
  const found = new Map<string, Made>();
  for (const { f, steel } of steeled(ctx)) {
    const key = [f.choice, f.size, f.padThickness, f.pierDiameter, (f.top - f.bottom).toFixed(3), f.steel].join('|');
    const before = found.get(key);
    found.set(key, before ? { ...before, alike: [...before.alike, f] } : { f, steel, alike: [f] });
  }
  return [...found.values()];
}

/** Places of the mat bars across their direction, about the middle. */
const across = (mat: NonNullable<LaidSteel['mat']>): number[] =>
  Array.from({ length: mat.count }, (_, i) => (i - (mat.count - 1) / 2) * mat.spacing);

/** The bars in a section whose middle lies at `x`. */
export function steelInSection(f: Footing, steel: LaidSteel, x: number): Primitive[] {
  const { mat, uprights: u, ties } = steel;
  const low = f.bottom + EARTH_COVER;
  const bars: Primitive[] = [];
  if (mat) {
    const z = low + mat.diameter / 2;
    bars.push(
      stroke(
        [
          { x: x - mat.length / 2, y: z },
          { x: x + mat.length / 2, y: z },
        ],
        'cut',
        'bar',
      ),
      ...across(mat).map(
        (a): Primitive => ({
          kind: 'circle',
          layer: 'S-JNTS',
          center: { x: x + a, y: z + mat.diameter },
          radius: mat.diameter / 2,
          pen: 'cut',
          fill: 'paper',
          role: 'bar',
        }),
      ),
    );
  }
  if (u)
    for (const t of uprightTurns(u.count)) {
      const a = x + u.ring * t.x;
      const z = u.foot + u.diameter / 2;
      const end = u.hook ? [{ x: a + (u.hook.leg - u.diameter / 2) * t.x, y: z }] : [];
      bars.push(stroke([{ x: a, y: u.head }, { x: a, y: u.hook ? z : u.foot }, ...end], 'cut', 'bar'));
    }
  for (const z of ties?.at ?? [])
    bars.push(
      stroke(
        [
          { x: x - ties!.outside / 2, y: z },
          { x: x + ties!.outside / 2, y: z },
        ],
        'new',
        'tie',
      ),
    );
  return bars;
}

function section(ctx: SheetContext, { f, steel, alike }: Made): DetailView {
  const { len } = ctx;
  const camera = facing({ x: 0, y: 1 });
  const c = spot(camera, { ...f.at, z: f.top });
  const depth = see(camera, { ...f.at, z: 0 }).depth;
  const half = f.size / 2;
  const padTop = f.padThickness > 0 ? f.bottom + f.padThickness : f.top;
  const frame: Rect = { x: c.x - half - 5, y: f.bottom - 4, w: f.size + 10, h: f.top - f.bottom + 9 };
  const { mat, uprights: u, ties } = steel;
  const marks = [...new Set(alike.map((g) => g.mark))].join(', ');
  const anchor = ctx.input.project.choices.anchors?.[f.choice];
  const tallest = f.pierDiameter > 0 ? f.pierDiameter / 2 : half;
  const keys: Key[] = [
    {
      at: { x: c.x + tallest * 0.8, y: f.top - 3 },
      text: `${marks}: concrete f'c ${f.fc} psi, placed on undisturbed soil. ${coverText(len)}.`,
      mark: f.mark,
      off: { x: 5, y: 1 },
    },
    ...(mat
      ? [
          {
            at: { x: c.x - mat.length * 0.4, y: f.bottom + EARTH_COVER + mat.diameter / 2 },
            text: `Pad: ${matText(steel, len)}, two layers tied at the crossings, on supports ${len(EARTH_COVER)} high.`,
            mark: f.mark,
            off: { x: -4, y: 4 },
          },
        ]
      : []),
    ...(u
      ? [
          {
            at: { x: c.x + u.ring * uprightTurns(u.count)[0]!.x, y: padTop + (u.head - padTop) * 0.4 },
            text: `Uprights: ${uprightText(steel, len)}. Foot: ${hookText(steel, len)}.${u.hook ? ` The legs lie at the same ${len(EARTH_COVER)} cover as the pad bars, turned to pass between them, not on top of them.` : ''}`,
            mark: f.mark,
            off: { x: 8, y: 1 },
          },
        ]
      : []),
    ...(ties
      ? [
          {
            at: { x: c.x - ties.outside * 0.3, y: ties.at[Math.min(1, ties.at.length - 1)]! },
            text: `Ties: ${tieText(steel, len)}; laps staggered round the pier (common practice, no source).`,
            mark: f.mark,
            off: { x: -8, y: 1 },
          },
        ]
      : []),
    {
      at: { x: c.x, y: f.top - (anchor ? anchor.embedment * 0.6 : 0.5) },
      text: `Anchor of the post base: ${anchorText(ctx, f)}, held by a template before the pour.`,
      mark: f.mark,
      off: { x: -8, y: 3 },
    },
  ];
  return {
    name: 'Section',
    frame,
    items: [
      ...soilIn(ctx, depth, frame),
      ...nearPicture(ctx, {
        camera,
        frame,
        depth: [depth - half - 1, depth + half + 1],
        cutAt: depth,
        keep: (p) => p.part === f.id || (p.role === 'slab' && p.state !== 'removed'),
      }),
      ...steelInSection(f, steel, c.x),
      ...(anchor
        ? [
            stroke(
              rect(c.x - anchor.bolt / 2, f.top - anchor.embedment, c.x + anchor.bolt / 2, f.top + 1).concat([
                { x: c.x - anchor.bolt / 2, y: f.top - anchor.embedment },
              ]),
              'new',
              'anchor',
            ),
          ]
        : []),
    ],
    margin: { left: 7, right: 7, above: 1, below: 7 },
    over: (scale) => [
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'left',
        datum: frame.x,
        first: 3.2 * ctx.style.note,
        tiers: [{ stations: f.padThickness > 0 && padTop < f.top ? [f.bottom, padTop, f.top] : [f.bottom, f.top] }],
      }).items,
      ...(u
        ? dims(ctx, {
            scale,
            layer: 'S-ANNO-DIMS',
            side: 'right',
            datum: frame.x + frame.w,
            first: 3.2 * ctx.style.note,
            tiers: [{ stations: [u.foot, u.head] }],
          }).items
        : []),
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: frame.y,
        first: 3.4 * ctx.style.note,
        tiers: [{ stations: [c.x - half, c.x + half] }],
      }).items,
    ],
    keys,
  };
}

function plan(ctx: SheetContext, { f, steel }: Made): DetailView {
  const { mat, uprights: u, ties } = steel;
  const half = f.size / 2;
  const frame: Rect = { x: -half - 3, y: -half - 3, w: f.size + 6, h: f.size + 6 };
  const round = (radius: number, pen: 'hidden' | 'new', role: string): Primitive => ({
    kind: 'circle',
    layer: 'S-DETL',
    center: { x: 0, y: 0 },
    radius,
    pen,
    role,
  });
  const items: Primitive[] = [
    ...(f.round
      ? [round(half, 'new', 'concrete')]
      : [
          {
            kind: 'polyline' as const,
            layer: 'S-DETL' as const,
            pen: 'new' as const,
            closed: true,
            points: rect(-half, -half, half, half),
            mark: f.mark,
          },
        ]),
    ...(f.pierDiameter > 0 && f.pierDiameter < f.size ? [round(f.pierDiameter / 2, 'hidden', 'pier')] : []),
    ...(mat
      ? across(mat).flatMap((a) => [
          stroke(
            [
              { x: -mat.length / 2, y: a },
              { x: mat.length / 2, y: a },
            ],
            'new',
            'bar',
          ),
          stroke(
            [
              { x: a, y: -mat.length / 2 },
              { x: a, y: mat.length / 2 },
            ],
            'new',
            'bar',
          ),
        ])
      : []),
    ...(ties ? [round(ties.outside / 2, 'new', 'tie')] : []),
    ...(u
      ? uprightTurns(u.count).flatMap((t): Primitive[] => {
          const at = { x: u.ring * t.x, y: u.ring * t.y };
          const r = u.ring + (u.hook ? u.hook.leg - u.diameter / 2 : 0);
          return [
            ...(u.hook ? [stroke([at, { x: r * t.x, y: r * t.y }], 'cut', 'bar')] : []),
            {
              kind: 'circle',
              layer: 'S-JNTS',
              center: at,
              radius: u.diameter / 2,
              pen: 'cut',
              fill: 'paper',
              role: 'bar',
            },
          ];
        })
      : []),
  ];
  return {
    name: 'Plan of the steel',
    frame,
    items,
    margin: { left: 1, right: 7, above: 1, below: 7 },
    over: (scale) => [
      ...(mat && mat.count > 1
        ? dims(ctx, {
            scale,
            layer: 'S-ANNO-DIMS',
            side: 'below',
            datum: frame.y,
            first: 3.4 * ctx.style.note,
            tiers: [{ stations: across(mat) }],
          }).items
        : []),
      ...(ties
        ? dims(ctx, {
            scale,
            layer: 'S-ANNO-DIMS',
            side: 'right',
            datum: frame.x + frame.w,
            first: 3.2 * ctx.style.note,
            tiers: [{ stations: [-ties.outside / 2, ties.outside / 2] }],
          }).items
        : []),
    ],
    keys: [],
  };
}

export const footingSteelDetails = (ctx: SheetContext): readonly Detail[] =>
  made(ctx).map((m) => {
    // Footings made alike may lie at different distances: each near one is named.
    const near = new Set(m.alike.map((g) => g.id));
    const caution = besideLine(ctx, (f) => near.has(f.id));
    return {
      id: `footing-steel ${m.f.mark} ${m.f.choice}`,
      title: `Concrete and steel of ${[...new Set(m.alike.map((g) => g.mark))].join(', ')}`,
      views: [section(ctx, m), plan(ctx, m)],
      words: [
        ...(caution ? [caution] : []),
        `Uprights and ties are tied to one cage and stand on supports in the pad before the pour; nothing is pushed into wet concrete. Upper ends ${ctx.len(TOP_COVER)} under the top of the pier.`,
        'The inspector sees the cage, its supports and the anchor template before the pour. Cap upright bar ends while anyone works near them.',
      ],
      scales: ['1', '3/4', '1/2', '3/8'],
      call: {
        // The last of them: at the first stands the call of its post base.
        at: { ...m.alike.at(-1)!.at, z: m.alike.at(-1)!.bottom },
        alike: m.alike.map((g) => ({ ...g.at, z: g.bottom })),
        below: true,
        radius: 14,
      },
    };
  });
