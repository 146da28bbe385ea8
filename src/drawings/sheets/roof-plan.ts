/**
 * Roof plan: every roof, old and new, from above: falls, ridges, valleys, hips, eaves, overhangs, gutters with their leaders,
 * and where the water lands.
 */
import { contains } from '../../base/plane.js';
import { flat, type Vec2 } from '../../base/vec.js';
import { findCovering } from '../../catalog/index.js';
import { GUTTER_SIZE } from '../../structure/constants.js';
import type { Piece, Structure } from '../../structure/model.js';
import { cornersOf } from '../../structure/surfaces.js';
import { type Cricket, crickets } from '../../structure/tie-in/crickets.js';
import { slopeOf } from '../../structure/tie-in/old-slope.js';
import { type Block, measure, placeNote, slopeArrow, type TableRow, textBlock } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { CAMERAS } from '../views/camera.js';
import { picture } from '../views/picture.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { dims, extents, northOnPlan, PLAN_SCALES, placeView, scaleFor, unique, withSideColumn } from './parts.js';
import { drainageRows } from './roof-drainage.js';
import { edgesOf, houseEdges, houseValleys, leaderPlaces, type RoofEdge } from './roof-edges.js';
import { standingItems, valleyLines, wallLines } from './tie-in-plan.js';
import { flashingTable } from './tie-in-words.js';

const per12 = (k: number): string => `${Number((12 * k).toFixed(2))}/12`;

/** Outline of a surface on plan, and of the part of it over the house where it goes on there. */
function outlines(
  structure: Structure,
): { readonly roof: string; readonly mark: string; readonly points: readonly Vec2[] }[] {
  return [
    ...structure.surfaces.map((s) => ({ roof: s.roof, mark: s.mark, points: cornersOf(s).map(flat) })),
    ...(structure.overlays ?? []).flatMap((o) =>
      o.faces.map((f) => ({ roof: o.roof, mark: f.mark, points: f.outline.map(flat) })),
    ),
  ];
}

/** Roofs and gutters from above with what lies under others left out, and the lines in which roofs run into each other. */
function roofItems(ctx: SheetContext): Primitive[] {
  const pieces = ctx.pieces.filter((p) => SEEN.has(p.role));
  const { items } = picture(pieces, CAMERAS.plan, { layers: { fresh: 'A-ROOF', existing: 'A-ROOF-EXST' } });
  return [
    ...items,
    ...houseValleys(ctx.input.structure).map(
      ({ a, b }): Primitive => ({ kind: 'line', layer: 'A-ROOF-EXST', pen: 'existing', a, b, role: 'valley' }),
    ),
    ...(ctx.input.structure.overlays ?? []).flatMap(valleyLines),
    ...crickets(ctx.input.structure).flatMap(cricketLines),
  ];
}

/** Not built by this set: dashed, where water would stand against a wall. */
function cricketLines(c: Cricket): Primitive[] {
  const foot = { x: (c.from.x + c.to.x) / 2, y: (c.from.y + c.to.y) / 2 };
  const head = { x: foot.x + c.up.x * c.shape.run, y: foot.y + c.up.y * c.shape.run };
  return [foot, flat(c.from), flat(c.to)].map(
    (a): Primitive => ({ kind: 'line', layer: 'A-ROOF', pen: 'hidden', a, b: head, role: 'cricket' }),
  );
}

const SEEN = new Set<Piece['role']>(['house-roof', 'roof-surface', 'gutter']);

interface Worded {
  readonly a: Vec2;
  readonly b: Vec2;
  /** Level direction out of the roof: the word stands inside of it, or outside where told so. */
  readonly out?: Vec2;
}

/** A word along an edge where it touches nothing. */
function word(ctx: SheetContext, e: Worded, text: string, mark?: string): Primitive[] {
  const h = ctx.style.note;
  let read = Math.atan2(e.b.y - e.a.y, e.b.x - e.a.x);
  if (read > Math.PI / 2 + 1e-9) read -= Math.PI;
  else if (read <= -Math.PI / 2 + 1e-9) read += Math.PI;
  const up = { x: -Math.sin(read), y: Math.cos(read) };
  const inner = e.out && up.x * e.out.x + up.y * e.out.y > 0 ? -1 : 1;
  return (e.out ? [inner, 2 * inner] : [1, -1]).flatMap((k) =>
    [0.5, 0.35, 0.65, 0.22, 0.78].map(
      (t): Primitive => ({
        kind: 'symbol',
        layer: 'A-ANNO-NOTE',
        at: { x: e.a.x + t * (e.b.x - e.a.x), y: e.a.y + t * (e.b.y - e.a.y) },
        ...(mark !== undefined && { mark }),
        items: [
          {
            kind: 'text',
            layer: 'A-ANNO-NOTE',
            at: { x: up.x * k * h * 1.15, y: up.y * k * h * 1.15 },
            content: text,
            height: h,
            angle: read,
            align: 'center',
            valign: 'middle',
            mask: true,
          },
        ],
      }),
    ),
  );
}

const ARROWS = [0.5, 0.35, 0.65, 0.2, 0.8];

/** Arrow of a fall somewhere inside an outline where it touches nothing. */
function fall(ctx: SheetContext, ring: readonly Vec2[], downhill: Vec2, text: string, path?: string): Primitive[] {
  const e = extents(ring);
  return ARROWS.flatMap((u) => ARROWS.map((v) => ({ x: e.x + u * e.w, y: e.y + v * e.h })))
    .filter((p) => contains(ring, p))
    .map((at) =>
      slopeArrow({
        at,
        angle: Math.atan2(downhill.y, downhill.x),
        text,
        layer: 'A-ANNO-SYMB',
        style: ctx.style,
        ...(path !== undefined && { path }),
      }),
    );
}

/** True where the middle of an edge lies under a roof of the house. */
const underHouse = (structure: Structure, e: RoofEdge): boolean => {
  const m = { x: (e.a.x + e.b.x) / 2, y: (e.a.y + e.b.y) / 2 };
  return structure.housePlanes.some((p) => contains(p.outline, m));
};

/** Way out of the roof at an eave. */
function outOf(structure: Structure, e: RoofEdge): { readonly out?: Vec2 } {
  const m = { x: (e.a.x + e.b.x) / 2, y: (e.a.y + e.b.y) / 2 };
  // Of the roof's slopes the one whose eave line it lies on.
  const off = (s: Structure['surfaces'][number]): number =>
    Math.abs((s.origin.x - m.x) * s.downhill.x + (s.origin.y - m.y) * s.downhill.y);
  const own = structure.surfaces.filter((s) => s.roof === e.roof).sort((p, q) => off(p) - off(q))[0];
  return own ? { out: own.downhill } : {};
}

function annotations(
  ctx: SheetContext,
  edges: readonly RoofEdge[],
  ratio: number,
  items: readonly Primitive[],
): Primitive[] {
  const { structure, project } = ctx.input;
  const h = ctx.style.note;
  const over: Primitive[] = [];
  const put = (ways: readonly Primitive[]): void => {
    const [first, ...more] = ways;
    if (first) over.push(placeNote([first, ...more], 0.5 * h, ratio, over, items));
  };
  for (const p of structure.housePlanes) {
    const s = slopeOf(p.outline);
    if (s)
      put(fall(ctx, p.outline.map(flat), { x: -s.into.x, y: -s.into.y }, `${p.id} ${per12(s.slope)}`, '/house/roofs'));
  }
  for (const s of structure.surfaces) {
    const roof = project.cover.roofs.find((r) => r.mark === s.roof);
    put(
      fall(ctx, cornersOf(s).map(flat), s.downhill, `${s.roof} ${roof?.pitchText ?? ''}`, roof && `${roof.path}/pitch`),
    );
  }
  // One word a kind and roof is enough to read the rest by.
  const said = new Set<string>();
  for (const e of edges) {
    const below = e.kind === 'high edge' && underHouse(structure, e) ? ' below' : '';
    const text = e.kind === 'valley' ? `valley ${e.mark ?? ''}`.trim() : `${e.kind}${below}`;
    const key = `${e.roof} ${text}`;
    if (e.kind === 'joint' || e.kind === 'rake' || said.has(key)) continue;
    said.add(key);
    put(word(ctx, e.kind === 'eave' ? { ...e, ...outOf(structure, e) } : e, text, e.mark));
  }
  const told = new Set<string>();
  const rings = outlines(structure).map((o) => o.points);
  const covered = (p: Vec2): boolean => rings.some((r) => contains(r, p, 12));
  for (const e of houseEdges(ctx.input)) {
    if (told.has(e.text)) continue;
    // What the new roof covers is not seen.
    const open = word(ctx, e, e.text).filter((w) => 'at' in w && !covered(w.at));
    put(open);
    if (open.length > 0) told.add(e.text);
  }
  for (const r of project.house.roofs)
    for (const t of r.standing ?? []) {
      const k = Math.max(t.width, t.depth) / 2;
      put(
        [
          { x: k, y: 0, align: 'left' as const },
          { x: -k, y: 0, align: 'right' as const },
        ].map(
          ({ x, align }): Primitive => ({
            kind: 'symbol',
            layer: 'A-ANNO-NOTE',
            at: { x: t.at.x + x, y: t.at.y },
            items: [
              {
                kind: 'text',
                layer: 'A-ANNO-NOTE',
                at: { x: Math.sign(x) * 0.6 * h, y: 0 },
                content: t.name,
                height: h,
                align,
                valign: 'middle',
              },
            ],
          }),
        ),
      );
    }
  return over;
}

/** Leaders of the gutters, as dots with their number in the table. */
function leaderItems(ctx: SheetContext): Primitive[] {
  const h = ctx.style.note;
  return leaderPlaces(ctx.input).map((l) => ({
    kind: 'symbol' as const,
    layer: 'A-ANNO-SYMB' as const,
    // On the middle of its gutter.
    at: { x: l.at.x + l.out.x * GUTTER_SIZE * 0.8, y: l.at.y + l.out.y * GUTTER_SIZE * 0.8 },
    mark: l.mark,
    items: [
      {
        kind: 'circle' as const,
        layer: 'A-ANNO-SYMB' as const,
        center: { x: 0, y: 0 },
        radius: 0.45 * h,
        fill: 'ink' as const,
      },
      {
        kind: 'text' as const,
        layer: 'A-ANNO-SYMB' as const,
        at: { x: l.out.x * 2.9 * h + l.along.x * 2.6 * h, y: l.out.y * 1.9 * h + l.along.y * 1.2 * h },
        content: l.mark,
        height: h,
        face: 'bold' as const,
        align: 'center' as const,
        valign: 'middle' as const,
      },
    ],
  }));
}

function dimensions(
  ctx: SheetContext,
  model: { x: number; y: number; w: number; h: number },
  ratio: number,
): Primitive[] {
  const { structure } = ctx.input;
  const roofs = structure.roofs;
  const beams = structure.members.filter((m) => m.role === 'beam');
  // With several roofs their edges are enough for one string; overhangs stand in the table.
  const several = roofs.length > 1;
  const xs = (r: (typeof roofs)[number]): number[] => [r.min.x, r.max.x];
  const bx = beams.flatMap((m) =>
    Math.abs(m.end.x - m.start.x) < 1 ? outer(m.start.x, m.section.width, roofs.flatMap(xs)) : [],
  );
  const by = beams.flatMap((m) =>
    Math.abs(m.end.y - m.start.y) < 1
      ? outer(
          m.start.y,
          m.section.width,
          roofs.flatMap((r) => [r.min.y, r.max.y]),
        )
      : [],
  );
  const hx = structure.walls.flatMap((w) => [w.start.x, w.end.x]);
  // Strings at the sides stand clear of the short dimensions that the strings above and below push past their ends.
  const beside = ctx.style.dimFirst * 1.8;
  const common = { scale: ratio, layer: 'A-ANNO-DIMS' } as const;
  const heads = (structure.overlays ?? []).map((o) => {
    const p = { x: o.frame.origin.x + o.frame.into.x * o.head, y: o.frame.origin.y + o.frame.into.y * o.head };
    return { p, along: Math.abs(o.frame.into.y) > 0.5 ? ('y' as const) : ('x' as const) };
  });
  // Where a roof goes on over the house, its own edge there is none: the old eave and the end of the ridge count.
  const ends = (r: (typeof roofs)[number]): number[] => {
    const o = structure.overlays?.find((x) => x.roof === r.mark);
    if (!o || Math.abs(o.frame.into.y) < 0.5) return [r.min.y, r.max.y];
    return [o.frame.into.y < 0 ? r.max.y : r.min.y, o.frame.origin.y];
  };
  const ys = [...heads.filter((q) => q.along === 'y').map((q) => q.p.y), ...roofs.flatMap(ends), 0];
  const oldX = structure.housePlanes.flatMap((p) => p.outline.map((q) => q.x));
  const oldY = structure.housePlanes.flatMap((p) => p.outline.map((q) => q.y));
  return [
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: model.y + model.h,
      tiers: [
        { stations: unique([...roofs.flatMap(xs), ...(several ? [] : bx)]) },
        { stations: [Math.min(...roofs.flatMap(xs)), Math.max(...roofs.flatMap(xs))] },
      ],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'right',
      first: beside,
      datum: model.x + model.w,
      tiers: [{ stations: apart([...ys, ...(several ? [] : by)]) }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'below',
      datum: model.y,
      tiers: [
        { stations: unique([Math.min(...oldX), Math.min(...hx), Math.max(...hx), Math.max(...oldX)]) },
        { stations: [Math.min(...oldX), Math.max(...oldX)] },
      ],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'left',
      first: beside,
      datum: model.x,
      tiers: [
        {
          stations: unique([Math.min(...oldY), ...structure.walls.flatMap((w) => [w.start.y]), Math.max(...oldY)]),
        },
      ],
    }).items,
  ];
}

/** Stations in order, those nearer to the wall line than a ledger is thick taken as on it. */
const apart = (ys: readonly number[]): number[] => unique(ys.map((y) => (Math.abs(y) < 4 ? 0 : y)));

/** Outer face of a beam, from which the overhang is measured: the one nearer to the roof's edge. */
function outer(at: number, width: number, edges: readonly number[]): number[] {
  const mid = (Math.min(...edges) + Math.max(...edges)) / 2;
  return [at + (Math.sign(at - mid) * width) / 2];
}

type Extreme = (...z: number[]) => number;

/** Height of the lowest or highest corner of a roof's plane, at the top of its sheathing, above the finished floor. */
const level = (structure: Structure, roof: string, pick: Extreme): number =>
  pick(...structure.surfaces.filter((s) => s.roof === roof).flatMap((s) => cornersOf(s).map((p) => p.z)));

const houseLevel = (structure: Structure, index: number, pick: Extreme): number =>
  pick(
    ...structure.housePlanes
      .filter((p) => p.id.startsWith(`HR${index + 1}-`))
      .flatMap((p) => p.outline.map((q) => q.z)),
  );

function words(ctx: SheetContext): Block[] {
  const { structure, project } = ctx.input;
  const { len } = ctx;
  const name = (id: string): string => findCovering(id)?.name ?? id;
  // Roofs of more than two slopes have eaves all round.
  const rake = (slopes: number, past: number): string => (slopes > 2 ? '–' : len(past));
  const rows: TableRow[] = [
    ...project.cover.roofs.map((r): TableRow => {
      const o = structure.overlays?.find((x) => x.roof === r.mark);
      return [
        { text: r.mark, mark: r.mark, path: r.path },
        o ? `new, on over ${o.plane}` : 'new',
        r.pitchText,
        name(r.finish.covering),
        len(r.eave),
        rake(structure.surfaces.filter((s) => s.roof === r.mark).length, r.rake),
        len(level(structure, r.mark, Math.min)),
        len(level(structure, r.mark, Math.max)),
      ];
    }),
    ...project.house.roofs.map(
      (r, i): TableRow => [
        { text: `HR${i + 1}`, path: r.path },
        'existing',
        per12(Math.tan(r.pitch)),
        name(r.covering),
        len(r.overhang),
        rake(structure.housePlanes.filter((p) => p.id.startsWith(`HR${i + 1}-`)).length, r.rake),
        len(houseLevel(structure, i, Math.min)),
        len(houseLevel(structure, i, Math.max)),
      ],
    ),
  ];
  const drains = drainageRows(ctx);
  return [
    {
      kind: 'table',
      title: 'Roofs',
      columns: [
        { head: 'Mark' },
        { head: 'State' },
        { head: 'Slope', align: 'right' },
        { head: 'Covering', grow: true },
        { head: 'Eave', align: 'right' },
        { head: 'Rake', align: 'right' },
        { head: 'Eave at', align: 'right' },
        { head: 'Top at', align: 'right' },
      ],
      rows,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Where the water goes',
      columns: [{ head: 'From' }, { head: 'Area', align: 'right' }, { head: 'By' }, { head: 'To', grow: true }],
      rows: drains,
    },
    { kind: 'gap' },
    ...flashingTable(ctx),
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        'Arrows point down the slope; slopes are rise in 12. New edges heavy, the house’s thin, its walls dashed. Overhangs are level, from the outer face of beams and the end frames, and from the walls of the house. Heights are of the roof plane above the finished floor.',
        'Leaders discharge onto a splash block or into a drain that falls away from the house; nothing drains onto a neighbor, a walk or the foot of a post.',
        'Underlayment laps drip edge at eaves and lies under it at rakes; valleys are lined before either covering is laid.',
        ...(structure.overlays?.length
          ? [
              `Over ${structure.overlays.map((o) => o.plane).join(', ')}: cuts, valleys and order of work on ${SHEET_IDS['tie-in']}.`,
            ]
          : []),
        'Roof work needs fall protection. Keep off wet decks and loose underlayment.',
      ],
    },
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, lot } = ctx.input;
  const { style, area } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.33, 66 * h), style.gutter);
  const all = outlines(structure);
  const model = extents([
    ...all.flatMap((o) => o.points),
    ...structure.housePlanes.flatMap((p) => p.outline.map(flat)),
    ...structure.walls.map((w) => w.start),
  ]);
  const margin = { x: h * 12, y: h * 9 };
  const scale = scaleFor(ctx, model, main, margin, [...PLAN_SCALES, '1:10', '1:20']);
  const edges = edgesOf(structure);
  const items: Primitive[] = [
    ...wallLines(structure),
    ...standingItems(ctx),
    ...structure.slabs.map(
      (s): Primitive => ({ kind: 'polyline', layer: 'S-SLAB-EXST', pen: 'hidden', points: s.outline, closed: true }),
    ),
    ...roofItems(ctx),
    ...structure.members
      .filter((m) => m.role === 'post')
      .map((m): Primitive => {
        const k = m.section.width / 2;
        return {
          kind: 'polyline',
          layer: 'S-COLS',
          pen: 'hidden',
          closed: true,
          mark: m.mark,
          points: [
            { x: m.start.x - k, y: m.start.y - k },
            { x: m.start.x + k, y: m.start.y - k },
            { x: m.start.x + k, y: m.start.y + k },
            { x: m.start.x - k, y: m.start.y + k },
          ],
        };
      }),
  ];
  const leaders = leaderItems(ctx);
  const over = [...leaders, ...dimensions(ctx, model, scale.ratio)];
  over.push(...annotations(ctx, edges, scale.ratio, [...items, ...leaders]));
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Roof plan',
    items,
    over,
    north: northOnPlan(lot.north),
    snug: margin.y,
    plan: true,
  });
  const notes = textBlock(measure(words(ctx), side.w, style), { x: side.x, y: side.y + side.h });
  return [
    {
      title: 'Roof plan',
      scaleNote: view.scale.label,
      viewports: [view.viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

export const roofPlan: SheetKind = { title: 'Roof plan', discipline: 'A', needed: () => true, draw };
