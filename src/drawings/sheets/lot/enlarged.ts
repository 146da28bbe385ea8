/** The new roof on its lot, enlarged: its own dimensions and the way to every line, for large sheets. */
import { clipConvex } from '../../../base/plane.js';
import type { Vec2 } from '../../../base/vec.js';
import { placeNote } from '../../annotate/index.js';
import type { Primitive, Rect, ScaleName } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { dims, extents, inflate, scaleFor, unique } from '../parts.js';
import type { PlanView } from '../plans/plan-sheet.js';
import { houseOutline } from './buildings.js';
import { measuredLines } from './distances.js';
import { feet, lettering } from './words.js';

const SCALES: readonly ScaleName[] = ['1/2', '3/8', '1/4', '3/16', '1/8', '1:10', '1:20'];
/** Ground shown round the new work, inches. */
const ROUND = 60;

/** View of the new work with a strip of what lies round it. */
export function enlargedView(ctx: SheetContext, box: Rect): PlanView {
  const { structure } = ctx.input;
  const h = ctx.style.note;
  const work = extents([
    ...structure.roofs.flatMap((r) => [r.min, r.max]),
    ...structure.slabs.flatMap((s) => s.outline),
    ...structure.footings.map((f) => f.at),
  ]);
  const model = inflate(work, ROUND);
  const margin = { x: 9 * h, y: 11 * h };
  return { model, margin, scale: scaleFor(ctx, model, box, margin, SCALES) };
}

const ring = (r: Rect): Vec2[] => [
  { x: r.x, y: r.y },
  { x: r.x + r.w, y: r.y },
  { x: r.x + r.w, y: r.y + r.h },
  { x: r.x, y: r.y + r.h },
];

/** The way to a lot line: an arrow off the edge it is measured from, with the distance outside that edge or inside it. */
function waysTo(ctx: SheetContext, from: Vec2, foot: Vec2, text: string): Primitive[] {
  const h = ctx.style.note;
  const size = Math.hypot(foot.x - from.x, foot.y - from.y);
  if (size === 0) return [];
  const u = { x: (foot.x - from.x) / size, y: (foot.y - from.y) / size };
  const reach = 5 * h;
  const upright = Math.abs(u.y) > Math.abs(u.x);
  const line: Primitive[] = [
    { kind: 'line', layer: 'C-ANNO-DIMS', pen: 'leader', a: { x: 0, y: 0 }, b: { x: u.x * reach, y: u.y * reach } },
    { kind: 'circle', layer: 'C-ANNO-DIMS', center: { x: 0, y: 0 }, radius: 0.2 * h, fill: 'ink' },
    {
      kind: 'polyline',
      layer: 'C-ANNO-DIMS',
      closed: true,
      fill: 'ink',
      points: [
        { x: u.x * reach, y: u.y * reach },
        { x: u.x * (reach - h) - 0.25 * h * u.y, y: u.y * (reach - h) + 0.25 * h * u.x },
        { x: u.x * (reach - h) + 0.25 * h * u.y, y: u.y * (reach - h) - 0.25 * h * u.x },
      ],
    },
  ];
  const spots = upright
    ? ([
        [0.9, 2.7 * u.y, 'left'],
        [-0.9, 2.7 * u.y, 'right'],
        [0.9, -2 * u.y, 'left'],
      ] as const)
    : ([
        [2.5 * u.x, 1, u.x > 0 ? 'left' : 'right'],
        [-1.2 * u.x, 0, u.x > 0 ? 'right' : 'left'],
        [-1.2 * u.x, 2.5, u.x > 0 ? 'right' : 'left'],
        [-1.2 * u.x, -2.5, u.x > 0 ? 'right' : 'left'],
      ] as const);
  return spots.map(([x, y, align]) => ({
    kind: 'symbol',
    layer: 'C-ANNO-DIMS',
    at: from,
    items: [
      ...line,
      {
        kind: 'text',
        layer: 'C-ANNO-DIMS',
        at: { x: x * h, y: y * h },
        content: text,
        height: h,
        align,
        valign: 'middle',
        mask: true,
      },
    ],
  }));
}

export function enlargedContent(
  ctx: SheetContext,
  v: PlanView,
): { readonly items: readonly Primitive[]; readonly over: readonly Primitive[] } {
  const { structure, project } = ctx.input;
  const h = ctx.style.note;
  const frame = ring(v.model);
  const items: Primitive[] = [];
  const add = (
    points: readonly Vec2[],
    more: Pick<Extract<Primitive, { kind: 'polyline' }>, 'layer' | 'pen' | 'fill'>,
  ): void => {
    const cut = clipConvex(points, frame);
    if (cut.length > 2) items.push({ kind: 'polyline', closed: true, points: cut, ...more });
  };
  for (const p of project.lot.paving) add(p.outline, { layer: 'C-PVMT', pen: 'existing' });
  for (const s of structure.slabs)
    add(s.outline, {
      layer: 'C-PVMT',
      pen: s.state === 'new' ? 'new-fine' : s.state === 'removed' ? 'demolition' : 'existing',
    });
  add(houseOutline(ctx), { layer: 'C-BLDG-EXST', pen: 'profile', fill: 'tint' });
  for (const b of project.lot.buildings) add(b.outline, { layer: 'C-BLDG-EXST', pen: 'existing-cut', fill: 'tint' });
  for (const r of structure.roofs)
    items.push({
      kind: 'polyline',
      layer: 'C-BLDG',
      pen: 'new',
      closed: true,
      mark: r.mark,
      points: ring({ x: r.min.x, y: r.min.y, w: r.max.x - r.min.x, h: r.max.y - r.min.y }),
    });
  const posts = structure.members.filter((m) => m.role === 'post');
  for (const m of posts) {
    const w = m.section.width / 2;
    items.push({
      kind: 'polyline',
      layer: 'C-BLDG',
      pen: 'new',
      fill: 'ink',
      closed: true,
      mark: m.mark,
      points: ring({ x: m.start.x - w, y: m.start.y - w, w: 2 * w, h: 2 * w }),
    });
  }
  const common = { scale: v.scale.ratio, layer: 'C-ANNO-DIMS' } as const;
  const rx = structure.roofs.flatMap((r) => [r.min.x, r.max.x]);
  const ry = structure.roofs.flatMap((r) => [r.min.y, r.max.y]);
  const px = posts.map((m) => m.start.x);
  const py = posts.map((m) => m.start.y);
  const top = Math.max(...ry, ...structure.slabs.flatMap((s) => s.outline.map((p) => p.y)));
  // From the house wall where it is in view.
  const from = v.model.y <= 0 ? 0 : Math.min(...ry);
  const over: Primitive[] = [
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: top + (6 * h) / v.scale.ratio,
      tiers: [
        { stations: unique([...px, Math.min(...rx), Math.max(...rx)]) },
        { stations: [Math.min(...rx), Math.max(...rx)] },
      ],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: Math.max(v.model.x, Math.min(...rx) - (9 * h) / v.scale.ratio),
      tiers: [
        { stations: unique([from, ...py, Math.max(...ry)]) },
        { stations: [Math.min(from, ...ry), Math.max(...ry)] },
      ],
    }).items,
  ];
  for (const m of measuredLines(ctx)) {
    const [first, ...rest] = waysTo(ctx, m.from, m.foot, `${feet(m.distance)} to ${m.line}`);
    if (first) over.push(placeNote([first, ...rest], 0.4 * h, v.scale.ratio, over, []));
  }
  const l = lettering(ctx.style, v.scale.ratio, over, items, v.model);
  for (const r of structure.roofs)
    l.box(
      { content: `New roof ${r.mark}`, face: 'bold' },
      { x: r.min.x, y: r.min.y, w: r.max.x - r.min.x, h: r.max.y - r.min.y },
    );
  const named = [
    { content: 'Existing house', outline: houseOutline(ctx) },
    ...project.lot.buildings.map((b) => ({ content: b.name, outline: b.outline })),
  ];
  for (const { content, outline } of named) {
    const cut = clipConvex(outline, frame);
    if (cut.length > 2) l.box({ content }, extents(cut));
  }
  return { items, over };
}
