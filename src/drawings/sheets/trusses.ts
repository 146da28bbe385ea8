/** Truss profiles with what the plant is asked for. The webs are the preliminary layout the analysis uses, no design. */
import { formatForce } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import { type TrussOrder, trussOrders } from '../../report/truss-order.js';
import { webLayout } from '../../structure/framing/webs.js';
import type { Member } from '../../structure/model.js';
import { type Block, heightOf, measure, slopeTriangle, tag, textBlock } from '../annotate/index.js';
import type { DrawingScale, Primitive, Rect } from '../ir/index.js';
import { hull } from '../views/cut.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import {
  DETAIL_SCALES,
  dims,
  type PlacedView,
  placeView,
  scaleFor,
  titleBand,
  unique,
  withSideColumn,
} from './parts.js';

/** The truss's pieces in its own plane: x from the outer face of the left beam, y above the bearing. */
function outline(ctx: SheetContext, m: Member): Primitive[] {
  const t = m.truss!;
  const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
  const dir = { x: (m.end.x - m.start.x) / run, y: (m.end.y - m.start.y) / run };
  return ctx.pieces
    .filter((p) => p.part === m.id)
    .map((p): Primitive => {
      const flat = p.solid.vertices.map((v) => ({
        x: (v.x - m.start.x) * dir.x + (v.y - m.start.y) * dir.y - t.overhang[0],
        y: v.z - m.start.z,
      }));
      return {
        kind: 'polyline',
        layer: 'S-FRAM',
        pen: 'new',
        closed: true,
        fill: 'paper',
        mark: m.mark,
        points: hull(flat),
      };
    });
}

/** Extents of a profile in its own plane, and its peak above the bearing, inches. */
function frameOf(m: Member): { readonly top: number; readonly model: Rect } {
  const t = m.truss!;
  const top = t.heel + (t.span / 2) * Math.tan(t.topPitch);
  const model: Rect = {
    x: -t.overhang[0],
    y: Math.min(0, t.heel - t.overhang[0] * Math.tan(t.topPitch) - t.chordDepth),
    w: t.span + t.overhang[0] + t.overhang[1],
    h: top - Math.min(0, t.heel - t.overhang[0] * Math.tan(t.topPitch) - t.chordDepth),
  };
  return { top, model };
}

const scaleOf = (ctx: SheetContext, model: Rect, box: Rect): DrawingScale =>
  scaleFor(ctx, model, box, { x: 14 * ctx.style.note, y: 13 * ctx.style.note }, DETAIL_SCALES);

/** Whether a profile, the strings over and under it and its title have room in a box, at the smallest scale if need be. */
function fits(ctx: SheetContext, m: Member, box: Rect): boolean {
  const { model } = frameOf(m);
  const { dimFirst, dimStep, note } = ctx.style;
  // The view is centred: the side with two strings counts on both.
  const strings = 2 * (dimFirst + dimStep + note);
  return model.h * scaleOf(ctx, model, box).ratio + strings + titleBand(ctx) <= box.h;
}

function profile(ctx: SheetContext, m: Member, box: Rect, number: string): PlacedView {
  const { style } = ctx;
  const t = m.truss!;
  const { joints, bars } = webLayout(t, m.role === 'gable-truss');
  const h = style.note;
  const { top, model } = frameOf(m);
  const scale = scaleOf(ctx, model, box);
  const on = (role: 'top' | 'bottom'): number[] =>
    unique(bars.filter((b) => b.role === role).flatMap((b) => [joints[b.from]!.x, joints[b.to]!.x]));
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const ends = [-t.overhang[0], 0, t.span, t.span + t.overhang[1]];
  const above = dims(ctx, { ...common, side: 'above', datum: top, tiers: [{ stations: on('top') }] });
  const below = dims(ctx, {
    ...common,
    side: 'below',
    datum: model.y,
    tiers: [{ stations: unique([0, t.span, ...on('bottom')]) }, { stations: ends }],
  });
  const left = dims(ctx, {
    ...common,
    side: 'left',
    datum: model.x,
    tiers: [{ stations: [0, t.heel] }, { stations: [0, top] }],
  });
  const over: Primitive[] = [...above.items, ...below.items, ...left.items];
  const slope = (at: Vec2, k: number): void => {
    over.push(
      slopeTriangle({
        at,
        rise: Number((12 * k).toFixed(2)).toString(),
        ratio: k,
        up: 'right',
        layer: 'S-ANNO-SYMB',
        style,
        path: m.path,
      }),
    );
  };
  const kt = Math.tan(t.topPitch);
  slope({ x: t.span * 0.2, y: t.heel + t.span * 0.2 * kt + (2 * h) / scale.ratio }, kt);
  if (t.bottomPitch > 0) slope({ x: t.span * 0.3, y: model.y + (0.6 * h) / scale.ratio }, Math.tan(t.bottomPitch));
  over.push(
    tag({
      kind: 'truss',
      text: m.mark,
      at: { x: t.span * 0.75, y: t.heel + t.span * 0.25 * kt },
      off: { x: 4 * h, y: 3 * h },
      layer: 'S-ANNO-SYMB',
      style,
      path: m.path,
    }),
  );
  return placeView(ctx, {
    box,
    model,
    scale,
    number,
    title: `Truss ${m.mark}${m.role === 'gable-truss' ? ', gable end' : ''}`,
    items: outline(ctx, m),
    over,
  });
}

function orderRows(ctx: SheetContext, o: TrussOrder): Block[] {
  const u = ctx.input.project.job.units;
  const { len } = ctx;
  const lb = (x: number): string => (x > 0 ? formatForce(Math.ceil(x), u, 0) : 'none');
  const psf = (x: number): string => (x > 0 ? `${Number(x.toFixed(1))} psf` : 'none');
  const t = o.shape;
  const pitch = (angle: number): string => `${Number((12 * Math.tan(angle)).toFixed(2))}/12`;
  return [
    { kind: 'heading', text: `Order of ${o.mark}: ${o.count} at ${len(o.spacing)}` },
    {
      kind: 'pairs',
      rows: [
        {
          name: 'Profile',
          value: `${t.kind.replace('-', ' ')}${o.gableEnd ? ', gable end that spans, studs for sheathing' : ''}`,
        },
        { name: 'Span', value: `${len(t.span)} out to out of bearings` },
        { name: 'Pitch', value: `${pitch(t.topPitch)} top, ${pitch(t.bottomPitch)} bottom chord` },
        { name: 'Heel, overhang', value: `${len(t.heel)}; ${t.overhang.map((x) => len(x)).join(' and ')}, plumb cut` },
        {
          name: 'Bearing',
          value: `${len(t.bearing)} wide beams, both ends${t.slides === undefined ? '' : `; the ${t.slides === 0 ? 'left' : 'right'} one lets the truss slide along itself`}`,
        },
        {
          name: 'Top chord',
          value: `live ${psf(o.live)}, snow ${psf(o.snow)} on plan; dead ${psf(o.topDead)} on slope`,
        },
        { name: 'Bottom chord', value: `live none; dead ${psf(o.bottomDead)}` },
        {
          name: 'Wind',
          value: `${o.wind.speed} mph, exposure ${o.wind.exposure}, open underneath, ${o.wind.flow} flow`,
        },
        { name: 'Our reactions', value: `${lb(o.down)} down, ${lb(o.up)} up at one bearing, allowable-stress level` },
        ...(o.chordForce > 0
          ? [
              {
                name: 'Side load',
                value: `${lb(o.chordForce)} pull or push along the top chord, allowable-stress level (${o.chordFrom}): state it on the sealed sheet`,
              },
            ]
          : []),
        ...(o.thrust > 0
          ? [
              {
                name: 'Outward',
                value: `${lb(o.thrust)} if both bearings are fastened; say how far they move with one free`,
              },
            ]
          : []),
      ],
    },
    ...paperRows(ctx, o.mark),
    { kind: 'gap' },
  ];
}

/** What the sealed sheet of a mark says, once it is entered. */
function paperRows(ctx: SheetContext, mark: string): Block[] {
  const p = ctx.input.project.cover.trussPapers?.find((x) => x.mark === mark);
  if (!p) return [{ kind: 'para', text: 'Sealed sheet: not entered yet.' }];
  const u = ctx.input.project.job.units;
  const row = (kind: 'gravity' | 'uplift'): string =>
    p.reactions
      .filter((r) => r.kind === kind)
      .map((r) => `${r.bearing} ${formatForce(r.amount, u, 0)}`)
      .join(', ') || 'none';
  return [
    {
      kind: 'pairs',
      rows: [
        { name: 'Sealed sheet', value: `${p.from}; ${p.sealedBy ? `sealed by ${p.sealedBy}` : 'not sealed'}` },
        { name: 'Its reactions', value: `down ${row('gravity')}; up ${row('uplift')}` },
        { name: 'Its bearing', value: `${ctx.len(p.bearingWidth)} or wider` },
        { name: 'Its bracing', value: p.bracing },
        ...(p.chordForce > 0
          ? [{ name: 'Its side load', value: `${formatForce(p.chordForce, u, 0)} along the top chord` }]
          : []),
        ...(p.deflection ? [{ name: 'Its deflection', value: p.deflection }] : []),
        ...(p.govern ? [{ name: 'Set aside', value: p.govern.why }] : []),
      ],
    },
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { structure } = ctx.input;
  const { style, area } = ctx;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * style.note), style.gutter);
  const marks = structure.members.filter((m, i, all) => m.truss && all.findIndex((o) => o.mark === m.mark) === i);
  const orders = trussOrders(ctx.input);
  const notesOf = (shown: readonly Member[]) =>
    measure(
      [
        ...shown.flatMap((m) => orders.filter((o) => o.mark === m.mark).flatMap((o) => orderRows(ctx, o))),
        { kind: 'heading', text: 'Notes' },
        {
          kind: 'numbered',
          items: [
            'Webs and panel points are a preliminary layout for this set’s own analysis; a gable end shows its studs, its webs are those of the other trusses. The truss plant’s engineer designs chords, webs, plates and bracing and seals the drawings.',
            'The sealed drawings must show slope, span, spacing, joints, bearing widths, loads, each reaction with its direction, plates, lumber, deflection, and where members need permanent bracing (IRC 2018 R802.10.1).',
            'Set no truss before its sealed drawing is on the site. Do not cut, notch or drill a truss. Brace trusses while they are set, and place the permanent bracing the sealed drawings show before the roof is loaded.',
          ],
        },
      ],
      side.w,
      style,
    );
  // Two profiles share a sheet where they have room and their orders fit beside them.
  const half = { ...main, h: main.h / 2 };
  const pairs = marks.flatMap((_, i) => (i % 2 === 0 ? [marks.slice(i, i + 2)] : []));
  const isRoomy = marks.every((m) => fits(ctx, m, half)) && pairs.every((p) => heightOf(notesOf(p)) <= side.h);
  const perSheet = isRoomy ? 2 : 1;
  const bodies: SheetBody[] = [];
  for (let i = 0; i < marks.length; i += perSheet) {
    const shown = marks.slice(i, i + perSheet);
    const height = main.h / perSheet;
    const views = shown.map((m, k) =>
      profile(ctx, m, { x: main.x, y: main.y + main.h - (k + 1) * height, w: main.w, h: height }, String(i + k + 1)),
    );
    const notes = textBlock(notesOf(shown), { x: side.x, y: side.y + side.h });
    bodies.push({
      title: 'Truss profiles',
      scaleNote: views[0]!.scale.label,
      viewports: views.map((v) => v.viewport),
      items: [...views.flatMap((v) => v.items), ...notes.items],
    });
  }
  return bodies;
}

export const trusses: SheetKind = {
  title: 'Truss profiles',
  discipline: 'S',
  file: 'trusses',
  needed: (input) => input.structure.members.some((m) => m.truss),
  draw,
};
