import { measure, placeTags, type TableRow, type TagWish, textBlock } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { alongHouse, houseStretch, stretchPlan } from './house-stretch.js';
import { dims, northOnPlan, placeView, unique, withSideColumn } from './parts.js';
import { houseCorners, slabPlan } from './plan-base.js';

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, lot } = ctx.input;
  const { style, area, len } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const stretch = houseStretch(ctx, main);
  const { model, margin, scale } = stretch;
  const items: Primitive[] = [...stretchPlan(ctx, stretch), ...slabPlan(structure)];
  const over: Primitive[] = [];
  const wishes: TagWish[] = [];
  const xs = unique(structure.footings.map((f) => f.at.x));
  const ys = unique(structure.footings.map((f) => f.at.y));
  for (const f of structure.footings) {
    const half = f.size / 2;
    const { x, y } = f.at;
    const outline: Primitive = f.round
      ? { kind: 'circle', layer: 'S-FNDN', center: f.at, radius: half, pen: 'hidden', mark: f.mark }
      : {
          kind: 'polyline',
          layer: 'S-FNDN',
          pen: 'hidden',
          closed: true,
          mark: f.mark,
          points: [
            { x: x - half, y: y - half },
            { x: x + half, y: y - half },
            { x: x + half, y: y + half },
            { x: x - half, y: y + half },
          ],
        };
    items.push(outline);
    if (f.pierDiameter > 0)
      items.push({
        kind: 'circle',
        layer: 'S-FNDN',
        center: f.at,
        radius: f.pierDiameter / 2,
        pen: 'new',
        mark: f.mark,
      });
    const post = structure.members.find((m) => m.role === 'post' && Math.hypot(m.start.x - x, m.start.y - y) < 1);
    if (post) {
      const w = post.section.width / 2;
      items.push({
        kind: 'polyline',
        layer: 'S-COLS',
        pen: 'cut',
        closed: true,
        fill: 'paper',
        mark: post.mark,
        points: [
          { x: x - w, y: y - w },
          { x: x + w, y: y - w },
          { x: x + w, y: y + w },
          { x: x - w, y: y + w },
        ],
      });
    }
    const reach = half + 6;
    items.push({ kind: 'line', layer: 'S-GRID', pen: 'center', a: { x: x - reach, y }, b: { x: x + reach, y } });
    items.push({ kind: 'line', layer: 'S-GRID', pen: 'center', a: { x, y: y - reach }, b: { x, y: y + reach } });
    const sx = x <= model.x + model.w / 2 ? 1 : -1;
    const dy = half * scale.ratio + h * 1.6;
    wishes.push({
      kind: 'footing',
      text: f.mark,
      at: f.at,
      off: { x: sx * (half * scale.ratio + h * 3), y: dy },
      layer: 'S-ANNO-SYMB',
      style,
      path: f.path,
    });
    if (post)
      wishes.push({
        kind: 'post',
        text: post.mark,
        at: f.at,
        off: { x: sx * (half * scale.ratio + h * 3), y: -dy },
        layer: 'S-ANNO-SYMB',
        style,
        path: post.path,
      });
  }
  const corners = houseCorners(structure).map((c) => c.x);
  const lefts = corners.filter((c) => c <= xs[0]! + 1e-6);
  const home = lefts.length > 0 ? Math.max(...lefts) : xs[0]!;
  const slabs = structure.slabs.flatMap((p) => p.outline);
  const leftEdge = Math.min(...xs, ...slabs.map((p) => p.x));
  const rightEdge = Math.max(...xs, ...slabs.map((p) => p.x));
  // Offsets from the house face run up both sides, since opposite sides must match; spacings run along the yard; the
  // string below ties them to the house corners.
  const onLine = (x: number): number[] =>
    unique(structure.footings.filter((f) => Math.abs(f.at.x - x) < 1e-6).map((f) => f.at.y));
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  over.push(
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: leftEdge,
      tiers: [{ stations: [0, ...onLine(xs[0]!)] }, { stations: [0, Math.max(...ys)] }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'right',
      datum: rightEdge,
      tiers: [{ stations: [0, ...onLine(xs.at(-1)!)] }, { stations: [0, Math.max(...ys)] }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: model.y + model.h,
      tiers: [{ stations: xs }, { stations: [xs[0]!, xs.at(-1)!] }],
    }).items,
    ...alongHouse(ctx, stretch, common, xs),
  );
  wishes.push(
    ...structure.joints
      .filter((j, i, all) => j.kind === 'post-to-footing' && all.findIndex((o) => o.mark === j.mark) === i)
      .map(
        (j): TagWish => ({
          kind: 'joint',
          text: j.mark,
          at: { x: j.at.x, y: j.at.y },
          off: { x: (j.at.x <= model.x + model.w / 2 ? 1 : -1) * (h * 8 + 15 * scale.ratio), y: h * 0.4 },
          layer: 'S-ANNO-SYMB',
          style,
          path: j.path,
        }),
      ),
  );
  const diagonals: Primitive[] = [];
  const rowsOf = (y: number) =>
    structure.footings.filter((f) => Math.abs(f.at.y - y) < 1e-6).sort((a, b) => a.at.x - b.at.x);
  const first = rowsOf(ys[0]!);
  const last = rowsOf(ys.at(-1)!);
  const diagonalRows: TableRow[] = [];
  const corner = corners.filter((c) => c >= xs.at(-1)! - 1e-6);
  const far = corner.length > 0 ? Math.min(...corner) : Math.max(...corners, xs.at(-1)!);
  // Footings that fill no rectangle have no diagonals that must agree: each is fixed from two points of the house instead.
  const square =
    ys.length === 1 || [0, -1].every((i) => Math.abs((first.at(i)?.at.x ?? 0) - (last.at(i)?.at.x ?? 0)) < 1 / 16);
  if (!square) {
    for (const f of structure.footings)
      diagonalRows.push([f.mark, len(Math.hypot(f.at.x - home, f.at.y)), len(Math.hypot(f.at.x - far, f.at.y))]);
  } else if (ys.length > 1 && first.length > 1 && last.length > 1) {
    for (const [p, q] of [
      [first[0]!, last.at(-1)!],
      [first.at(-1)!, last[0]!],
    ] as const) {
      diagonals.push({ kind: 'line', layer: 'S-GRID', pen: 'hidden', a: p.at, b: q.at });
      diagonalRows.push([`${p.mark} to ${q.mark}`, len(Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y))]);
    }
  } else {
    // One line of footings: square it against the house with the diagonals of the base rectangle.
    for (const [fx, gx] of [
      [xs[0]!, xs.at(-1)!],
      [xs.at(-1)!, xs[0]!],
    ] as const) {
      diagonals.push({ kind: 'line', layer: 'S-GRID', pen: 'hidden', a: { x: fx, y: 0 }, b: { x: gx, y: ys[0]! } });
      diagonalRows.push([
        `house line at ${fx === xs[0] ? 'left' : 'right'} footing to ${(gx === xs[0] ? last[0]! : last.at(-1)!).mark}`,
        len(Math.hypot(fx - gx, ys[0]!)),
      ]);
    }
  }
  over.push(...placeTags(wishes, scale.ratio, over, [...items, ...diagonals]));
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Footing plan',
    items: [...items, ...diagonals],
    over,
    north: northOnPlan(lot.north),
    snug: margin.y,
    plan: true,
  });

  const held = structure.footings.some((f) => f.slabHolds);
  const surface = (z: number): string => (z < 0 ? `${len(-z)} below floor` : `${len(z)} above floor`);
  const layout: TableRow[] = structure.footings.map((f) => [
    { text: f.mark, mark: f.mark, path: f.path },
    len(f.at.x - home),
    len(f.at.y),
    f.round ? `${len(f.size)} dia.` : `${len(f.size)} sq.`,
    surface(f.top),
    surface(f.bottom),
  ]);
  const notes = textBlock(
    measure(
      [
        {
          kind: 'table',
          title: 'Footing centers',
          columns: [
            { head: 'Mark' },
            { head: 'Along house', align: 'right' },
            { head: 'Out from wall', align: 'right' },
            { head: 'Size', align: 'right' },
            { head: 'Top of concrete', align: 'right' },
            { head: 'Bottom', align: 'right', grow: true },
          ],
          rows: layout,
        },
        {
          kind: 'para',
          text: `Along house: measured to the right, seen looking out of the house, from ${lefts.length > 0 ? 'the left house corner' : 'the first footing'}. Out: from the face of the existing wall line, not from the slab edge. Floor: top of the finished house floor.`,
        },
        { kind: 'gap' },
        square
          ? {
              kind: 'table',
              title: 'Diagonals, center to center',
              columns: [{ head: 'From – to' }, { head: 'Length', align: 'right', grow: true }],
              rows: diagonalRows,
            }
          : {
              kind: 'table',
              title: 'Check lengths, corners of the house wall to center',
              columns: [
                { head: 'Footing' },
                { head: 'From left corner', align: 'right' },
                { head: 'From right corner', align: 'right', grow: true },
              ],
              rows: diagonalRows,
            },
        { kind: 'gap' },
        { kind: 'heading', text: 'Notes' },
        {
          kind: 'numbered',
          items: [
            square
              ? 'Opposite sides and both diagonals must agree before a hole is dug. Measure every center from one home base.'
              : 'Every center must agree with both its check lengths before a hole is dug. Measure every center from one home base.',
            'Call the utility locating service first; hand dig within 24 in of a mark (common practice, no source). Private lines are not marked.',
            'Footing bottoms on undisturbed soil, clean and dry, at or below the frost depth given on the cover. Do not pour before the footing inspection.',
            ...(structure.slabs.some((p) => p.state === 'existing')
              ? [
                  `Footings cut through the kept slab: saw the slab square round each pad, pour the pad full against undisturbed soil, backfill in layers round the pier, and patch the slab ${held ? 'tight against the pier, without filler: it holds the pier at the surface' : 'with a joint round the pier'}.`,
                ]
              : [
                  held
                    ? 'Pour the slab tight against piers and posts, without filler: it holds them at the surface.'
                    : 'Pour piers before the slab, with a joint between pier and slab.',
                ]),
            ...(structure.footings.some((f) => f.embedded)
              ? [
                  'Posts set in the ground: brace them plumb in their holes before the backfill goes in; concrete cast against undisturbed soil, or sand or soil in layers of at most 8 in, each tamped.',
                ]
              : []),
            'Sizes, concrete and reinforcement: footing schedule. Deep or caving holes need shoring or sloping; keep people out of them.',
          ],
        },
      ],
      side.w,
      style,
    ),
    { x: side.x, y: side.y + side.h },
  );
  return [
    {
      title: 'Footing plan',
      scaleNote: view.scale.label,
      viewports: [view.viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

export const footingPlan: SheetKind = {
  title: 'Footing plan',
  discipline: 'S',
  needed: (i) => i.structure.footings.length > 0,
  draw,
};
