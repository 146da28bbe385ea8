/**
 * How the cover meets the house, seen along the wall and cut through it: out from the wall is to the right, heights are
 * true. Sizes are the placed ones; what is behind the cladding is drawn as the file says it was seen.
 */

import type { Vec2 } from '../../base/vec.js';
import { findSize } from '../../catalog/index.js';
import { placesText, shankText } from '../../checks/house/calculated.js';
import { type HousePlace, needsText } from '../../checks/house/places.js';
import { fromWall } from '../../structure/describe.js';
import type { PatternName, PenName, Primitive, Rect } from '../ir/index.js';
import type { SheetContext } from './contract.js';

export interface HousePicture {
  readonly title: string;
  readonly frame: Rect;
  readonly items: readonly Primitive[];
  readonly notes: readonly { readonly at: Vec2; readonly text: string; readonly mark: string }[];
}

/** How much of the wall and of the beam or rafters the picture shows, inches. */
const ABOUT = 16;
const OUTWARD = 30;
/** Flashing leg up the wall, inches: common practice, no source. */
const LEG = 4;

const box = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

function part(points: readonly Vec2[], pen: PenName, mark: string, pattern?: PatternName, angle = 0): Primitive[] {
  return [
    ...(pattern
      ? [
          {
            kind: 'hatch' as const,
            layer: 'S-DETL-PATT' as const,
            pattern,
            loops: [points],
            ...(angle !== 0 && { angle }),
          },
        ]
      : []),
    { kind: 'polyline', layer: pen === 'cut' ? 'S-DETL-MCUT' : 'S-DETL', pen, closed: true, points, mark },
  ];
}

const line = (points: readonly Vec2[], pen: PenName, role: string): Primitive => ({
  kind: 'polyline',
  layer: 'S-DETL',
  pen,
  points,
  role,
});

const words = (s: string): string => s.replaceAll('-', ' ');

/** The wall between two heights: studs, sheathing left away between `cut` heights, cladding between `open` heights. */
function wall(
  place: HousePlace,
  low: number,
  high: number,
  open: readonly [number, number],
  sheathing: number,
  cut: readonly [number, number] = [low, low],
): Primitive[] {
  const { build } = place.house;
  const depth = findSize(build.studSize)?.d ?? 3.5;
  const c = Math.max(build.claddingThickness, 0.25);
  const out = [...part(box(-sheathing - depth, low, -sheathing, high), 'existing-cut', place.wall.name)];
  const sheet = (from: number, to: number): Primitive[] =>
    sheathing > 0 && to > from ? part(box(-sheathing, from, 0, to), 'existing-cut', place.wall.name, 'generic') : [];
  out.push(...sheet(low, cut[0]), ...sheet(cut[1], high));
  if (open[0] > low) out.push(...part(box(0, low, c, open[0]), 'existing-cut', place.wall.name, 'sand'));
  if (open[1] < high) out.push(...part(box(0, open[1], c, high), 'existing-cut', place.wall.name, 'sand'));
  return out;
}

/** Flashing: up the wall behind the cladding, out over the part below, turned down past its face. */
const flashing = (z: number, out: number): Primitive =>
  line(
    [
      { x: 0.1, y: z + LEG },
      { x: 0.1, y: z + 0.2 },
      { x: out, y: z },
      { x: out + 0.2, y: z - 1.5 },
    ],
    'cut',
    'flashing',
  );

/** Where the first and the last fastener place are, from the ends of the ledger; ends are named as they lie on the plans. */
export function endsText(ctx: SheetContext, place: HousePlace): string {
  const { member, joints } = place;
  const at = joints.flatMap((j) => j.ties[0]?.along ?? []).sort((p, q) => p - q);
  if (at.length === 0) return '';
  const [first, last] = [at[0]!, member.length - at.at(-1)!];
  if (Math.abs(first - last) < 1 / 16) return `; first and last place ${ctx.len(first)} from the ends`;
  const alongX = Math.abs(member.end.x - member.start.x) > Math.abs(member.end.y - member.start.y);
  const forth = alongX ? member.end.x > member.start.x : member.end.y > member.start.y;
  const [low, high] = alongX ? ['left', 'right'] : ['lower', 'upper'];
  const [a, b] = forth ? [first, last] : [last, first];
  return `; first place ${ctx.len(a)} from the ${low} end on the plan, last ${ctx.len(b)} from the ${high}`;
}

function ledger(ctx: SheetContext, place: HousePlace): HousePicture {
  const { member, ledger: spec } = place;
  const { structure } = ctx.input;
  const { width: t, depth: d } = member.section;
  const top = member.start.z + d / 2;
  const f = spec?.fastening;
  const sheathing = f ? f.through + f.standoff : 0.5;
  const [low, high] = [top - d - ABOUT / 2, top + ABOUT];
  const hang = structure.joints.find((j) => j.kind === 'rafter-to-ledger' && j.ties.at(-1)?.part === member.id);
  const rafter = structure.members.find((m) => m.id === hang?.ties[0]?.part);
  const fall = structure.surfaces.find((s) => s.roof === rafter?.roof)?.slope ?? 0;
  const plumb = rafter ? rafter.section.depth / Math.cos(fall) : 0;
  const items = [
    ...wall(place, low, high, [top - d - 1, top + LEG + 1], sheathing),
    ...part(box(0, top - d, t, top), 'cut', member.mark, 'wood-cross'),
  ];
  // The floor band stands in front of the joists' ends, between the studs of two storeys.
  if (f?.into === 'band' && f.framing.bottom !== undefined && f.framing.top !== undefined)
    items.push(
      ...part(
        box(-sheathing - f.framing.depth, f.framing.bottom, -sheathing, f.framing.top),
        'existing-cut',
        place.wall.name,
        'wood-cross',
      ),
    );
  if (rafter) {
    const drop = (x: number): number => Math.tan(fall) * (x - t);
    items.push(
      ...part(
        [
          { x: t, y: top },
          { x: OUTWARD, y: top - drop(OUTWARD) },
          { x: OUTWARD, y: top - plumb - drop(OUTWARD) },
          { x: t, y: top - plumb },
        ],
        'new',
        rafter.mark,
      ),
    );
  }
  for (const r of f?.rows ?? [])
    items.push(
      line(
        [
          { x: t + 0.3, y: top - r },
          { x: t - (f?.length ?? 0), y: top - r },
        ],
        'new',
        'fastener',
      ),
    );
  items.push(flashing(top + 0.75, t + 2));
  const first = place.joints[0];
  const bandText =
    f?.into === 'band'
      ? `floor band ${f.framing.species}, ${ctx.len(f.framing.depth)} thick`
      : `${place.house.build.studSize} studs at ${ctx.len(place.house.build.studSpacing)}`;
  return {
    title: `Ledger ${member.mark} on the wall`,
    frame: { x: -8, y: low, w: OUTWARD + 8, h: high - low },
    items,
    notes: [
      {
        at: { x: 0.1, y: top + LEG },
        mark: 'house',
        text: 'Flashing up behind cladding and water barrier, over the roofing, its ends turned up as dams.',
      },
      ...(rafter
        ? [
            {
              at: { x: t + 6, y: top - 3 },
              mark: hang!.mark,
              text: `${hang!.mark}: ${rafter.mark} hung on the ledger, joint schedule.`,
            },
          ]
        : []),
      {
        at: { x: t, y: top - d / 2 },
        mark: member.mark,
        text: `${member.mark}: ${member.section.label}, against the sheathing; cladding cut away.`,
      },
      {
        at: { x: 0, y: top - (f?.rows.at(-1) ?? d / 2) },
        mark: first?.mark ?? member.mark,
        text: f
          ? `${first?.mark ?? ''}: ${f.rows.length} ${f.kind === 'bolt' ? 'through bolts' : `${f.kind === 'lag' ? 'lag' : 'wood'} screws`} ${shankText(f, ctx.len)} x ${ctx.len(f.length)}, washers ${ctx.len(f.washer)}; ${placesText(place, ctx.len)}; at ${f.rows.map((r) => ctx.len(r)).join(', ')} below the top.`
          : `${first?.mark ?? ''}: fasteners not named yet.`,
      },
      {
        at: { x: -sheathing - 1, y: top - d },
        mark: 'house',
        text: `House: ${bandText}; ${needsText(place.needs)} at each place.`,
      },
    ],
  };
}

function beam(ctx: SheetContext, place: HousePlace): HousePicture {
  const { member, end, house } = place;
  const { structure } = ctx.input;
  const d = member.section.depth;
  const top = member.start.z + d / 2;
  const sheathing = 0.5;
  const depth = findSize(house.build.studSize)?.d ?? 3.5;
  const post = end?.kind === 'post-in-wall' ? structure.members.find((m) => m.id === end.mark) : undefined;
  const low = top - d - (post ? ABOUT * 1.5 : ABOUT);
  const high = top + ABOUT;
  // The post where it was placed: half its width to either side of its middle.
  const middle = post ? fromWall(place.wall, post.start).out : 0;
  const half = post ? post.section.width / 2 : 0;
  const back = middle - half;
  const items = [
    ...wall(place, low, high, [top - d - 1, top + LEG + 1], sheathing, post && [top - d, top]),
    ...(post ? part(box(back, low, middle + half, top - d), 'cut', post.mark, 'wood-grain', Math.PI / 2) : []),
    ...part(box(back, top - d, OUTWARD, top), 'new', member.mark),
    flashing(top + 0.2, 3),
  ];
  const joint = place.joints[0];
  const foot = post && structure.joints.find((j) => j.ties[0]?.part === post.id);
  if (!post)
    items.push(
      ...part(box(0, top - d - 0.2, 3, top - d), 'cut', joint?.mark ?? ''),
      ...part(box(-0.1, top - d, 0.1, top - 1), 'cut', joint?.mark ?? ''),
    );
  const carried =
    end?.kind === 'post-in-wall'
      ? end.foot.kind === 'foundation'
        ? `on the foundation of the house at ${ctx.len(end.foot.top)} from the floor`
        : `on ${end.foot.footingMark}, new, under the wall`
      : '';
  return {
    title: post ? `${member.mark} on a post in the wall` : `${member.mark} fixed to the wall`,
    frame: { x: -8, y: low, w: OUTWARD + 8, h: high - low },
    items,
    notes: [
      {
        at: { x: 0.1, y: top + LEG },
        mark: 'house',
        text: 'Flashing pan over the beam, up behind the water barrier; sealed at the sides of the opening.',
      },
      {
        at: { x: OUTWARD * 0.6, y: top - d / 2 },
        mark: member.mark,
        text: `${member.mark}: ${member.section.label}, top at ${ctx.len(top)}.`,
      },
      {
        at: { x: post ? -0.5 : 0.5, y: top - d },
        mark: joint?.mark ?? member.mark,
        text: post
          ? `${joint?.mark ?? ''}: beam bears ${ctx.len(post.section.width)} on the post, tied against uplift and sideways; joint schedule.`
          : `${joint?.mark ?? ''}: connector of the joint schedule, on ${end?.kind === 'on-wall' ? words(end.into) : ''} behind it.`,
      },
      ...(post
        ? [
            {
              at: { x: back / 2, y: low + 4 },
              mark: post.mark,
              text: `${post.mark}: ${post.section.label}, ${ctx.len(post.length)} long, ${carried}${foot ? ` (${foot.mark})` : ''}; nailed to plates and sheathing.`,
            },
          ]
        : []),
      {
        at: { x: -sheathing - depth / 2, y: post ? top + 4 : low + 4 },
        mark: 'house',
        text: `House: ${needsText(place.needs)}.`,
      },
    ],
  };
}

export const housePicture = (ctx: SheetContext, place: HousePlace): HousePicture =>
  place.kind === 'ledger' ? ledger(ctx, place) : beam(ctx, place);
