/** Column and beam plan, and roof framing plan: the same background, one shows what carries, the other what is carried. */
import type { Vec2 } from '../../base/vec.js';
import { findFastener } from '../../catalog/index.js';
import type { Project } from '../../project/model.js';
import type { Member, Structure } from '../../structure/model.js';
import {
  measure,
  sectionMark,
  slopeArrow,
  spread,
  type TableRow,
  type TagKind,
  tag,
  textBlock,
} from '../annotate/index.js';
import type { LayerName, PenName, Primitive } from '../ir/index.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { dims, northOnPlan, PLAN_SCALES, placeView, scaleFor, unique, withSideColumn } from './parts.js';
import { houseCorners, housePlan, planExtents, planMargin, slabPlan } from './plan-base.js';

/** Plan outline of a straight member: its axis widened by half its width each side. */
function outline(m: Member): Vec2[] {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const size = Math.hypot(dx, dy);
  const k = m.section.width / 2 / size;
  const n = { x: -dy * k, y: dx * k };
  return [
    { x: m.start.x + n.x, y: m.start.y + n.y },
    { x: m.start.x - n.x, y: m.start.y - n.y },
    { x: m.end.x - n.x, y: m.end.y - n.y },
    { x: m.end.x + n.x, y: m.end.y + n.y },
  ];
}

const bar = (m: Member, layer: LayerName, pen: PenName): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  closed: true,
  points: outline(m),
  mark: m.mark,
});

function posts(structure: Structure): Primitive[] {
  return structure.members
    .filter((m) => m.role === 'post')
    .map((m) => {
      const w = m.section.width / 2;
      const { x, y } = m.start;
      return {
        kind: 'polyline',
        layer: 'S-COLS',
        pen: 'cut',
        closed: true,
        mark: m.mark,
        fill: 'poche',
        points: [
          { x: x - w, y: y - w },
          { x: x + w, y: y - w },
          { x: x + w, y: y + w },
          { x: x - w, y: y + w },
        ],
      };
    });
}

/** Joint tags: one tag per joint mark and place; beside the joint, alternating sides so that they do not pile up. */
function jointTags(ctx: SheetContext, kinds: readonly string[], reach: Vec2): Primitive[] {
  const { roofs, joints } = ctx.input.structure;
  const done = new Set<string>();
  const out: Primitive[] = [];
  for (const j of joints) {
    if (!kinds.includes(j.kind) || done.has(j.mark)) continue;
    done.add(j.mark);
    // Toward the middle of the roof, away from the dimension strings round it.
    const roof =
      roofs.find(
        (r) => j.at.x >= r.min.x - 24 && j.at.x <= r.max.x + 24 && j.at.y >= r.min.y - 24 && j.at.y <= r.max.y + 24,
      ) ?? roofs[0]!;
    const sx = j.at.x <= (roof.min.x + roof.max.x) / 2 ? 1 : -1;
    const sy = j.at.y <= (roof.min.y + roof.max.y) / 2 ? 1 : -1;
    const n = out.length;
    out.push(
      tag({
        kind: 'joint',
        text: j.mark,
        at: { x: j.at.x, y: j.at.y },
        off: { x: sx * (reach.x + 3.4 * n * ctx.style.note), y: sy * reach.y },
        layer: 'S-ANNO-SYMB',
        style: ctx.style,
        path: j.path,
      }),
    );
  }
  return out;
}

function beamPlan(ctx: SheetContext): SheetBody[] {
  const { structure, lot } = ctx.input;
  const { style, area, len } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const model = planExtents(structure, 30);
  const scale = scaleFor(ctx, model, main, planMargin(ctx, model), PLAN_SCALES);
  const items: Primitive[] = [...housePlan(structure, 30), ...slabPlan(structure)];
  const over: Primitive[] = [];
  const beams = structure.members.filter((m) => m.role === 'beam' || m.role === 'ledger');
  items.push(...beams.map((m) => bar(m, 'S-BEAM', 'new')), ...posts(structure));
  const mid = { x: model.x + model.w / 2, y: model.y + model.h / 2 };
  for (const m of beams) {
    const at = { x: m.start.x + 0.38 * (m.end.x - m.start.x), y: m.start.y + 0.38 * (m.end.y - m.start.y) };
    const runsAlongY = Math.abs(m.end.y - m.start.y) > Math.abs(m.end.x - m.start.x);
    const off = runsAlongY
      ? { x: at.x < mid.x ? h * 5 : -h * 5, y: 0 }
      : { x: 0, y: at.y < mid.y ? h * 3.5 : -h * 3.5 };
    over.push(tag({ kind: 'beam', text: m.mark, at, off, layer: 'S-ANNO-SYMB', style, path: m.path }));
  }
  for (const m of structure.members.filter((p) => p.role === 'post')) {
    over.push(
      tag({
        kind: 'post',
        text: m.mark,
        at: { x: m.start.x, y: m.start.y },
        off: { x: m.start.x < mid.x ? -h * 3.4 : h * 3.4, y: h * 2.6 },
        layer: 'S-ANNO-SYMB',
        style,
        path: m.path,
      }),
    );
  }
  over.push(...jointTags(ctx, ['beam-to-post', 'beam-splice'], { x: h * 4.5, y: h * 4.2 }));
  over.push(...jointTags(ctx, ['ledger-to-house'], { x: h * 3, y: h * 4.5 }));
  const posted = structure.members.filter((m) => m.role === 'post');
  const px = unique(posted.map((m) => m.start.x));
  const py = unique(posted.map((m) => m.start.y));
  const bx = unique(beams.flatMap((m) => [m.start.x, m.end.x]));
  // A ledger lies against the wall line the string starts from: its own center is no dimension to lay out by.
  const by = unique(beams.filter((m) => m.role === 'beam').flatMap((m) => [m.start.y, m.end.y]));
  const slabs = structure.slabs.flatMap((p) => p.outline.map((q) => q.x));
  const datum = Math.min(...bx, ...slabs);
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const across = dims(ctx, {
    ...common,
    side: 'above',
    datum: model.y + model.h,
    tiers: [{ stations: unique([...px, ...bx]) }, { stations: [bx[0]!, bx.at(-1)!] }],
  });
  const up = dims(ctx, {
    ...common,
    side: 'left',
    datum,
    tiers: [{ stations: unique([0, ...py, ...by]) }, { stations: [0, Math.max(...by, ...py)] }],
  });
  // Along the house: beam and ledger ends from the corners a tape can be hooked on.
  const corners = houseCorners(structure).map((c) => c.x);
  const along = dims(ctx, {
    ...common,
    side: 'below',
    datum: model.y,
    tiers: [{ stations: unique([...corners, ...bx]) }],
  });
  over.push(...across.items, ...up.items, ...along.items);
  const clear = (up.depth + h * 2) / scale.ratio;
  const cut = sectionLine(
    structure,
    datum - clear,
    model.y,
    Math.max(...bx, ...slabs) + 24,
    model.y + model.h + (across.depth + h * 2) / scale.ratio,
  );
  over.push(
    ...sectionMark({
      ...cut,
      ends: Math.abs(cut.a.x - cut.b.x) < 1 ? 'b' : 'both',
      number: '1',
      sheet: SHEET_IDS.sections,
      layer: 'A-ANNO-SYMB',
      style,
    }),
  );
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Column and beam plan',
    items,
    over,
    north: northOnPlan(lot.north),
  });
  const rows: TableRow[] = structure.members
    .filter((m) => m.role === 'beam' || m.role === 'ledger' || m.role === 'post')
    .map((m) => [
      { text: m.mark, mark: m.mark, path: m.path },
      m.section.label,
      m.role === 'post'
        ? `bottom ${len(m.start.z)}, top ${len(m.end.z)}`
        : `top at ${len(m.start.z + m.section.depth / 2)}`,
      len(m.length),
    ]);
  const notes = textBlock(
    measure(
      [
        {
          kind: 'table',
          title: structure.members.some((m) => m.role === 'ledger') ? 'Posts, beams and ledger' : 'Posts and beams',
          columns: [
            { head: 'Mark' },
            { head: 'Section', max: 24 * h },
            { head: 'Level from floor' },
            { head: 'Cut length', align: 'right', grow: true },
          ],
          rows,
        },
        {
          kind: 'para',
          text: 'Levels are from the finished house floor; below it is negative. Each post has its own length because the ground falls: measure again after the piers are set and cut to the measured length.',
        },
        { kind: 'gap' },
        { kind: 'heading', text: 'Notes' },
        {
          kind: 'numbered',
          items: [
            'Beams bear on their posts, not on bolts. Splices only where shown, over a post.',
            'Dimensions are to post centers, to beam ends, and from the face of the existing wall line.',
            'Joints are numbered in diamonds; the joint schedule gives the allowable load each must have.',
            'Brace posts both ways until the roof is sheathed. Lifting beams takes a lift or enough hands: weights are in the schedules.',
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
      title: 'Column and beam plan',
      scaleNote: view.scale.label,
      viewports: [view.viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

/** Trace of the main section over a plan whose annotated extent is given. */
export function sectionLine(
  structure: Structure,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): { a: Vec2; b: Vec2; look: 1 | -1 } {
  const cut = sectionPlane(structure);
  return cut.across === 'x'
    ? { a: { x: x0, y: cut.at }, b: { x: x1, y: cut.at }, look: -1 }
    : { a: { x: cut.at, y: y0 }, b: { x: cut.at, y: y1 }, look: 1 };
}

/**
 * Where the main section cuts: through post centers, so that the whole load path from roof to soil lies in the cut. `across`
 * is the axis along which the picture runs: across the ridge of a gable, square to the house for a shed.
 */
export function sectionPlane(structure: Structure): { readonly across: 'x' | 'y'; readonly at: number } {
  const r = structure.roofs[0]!;
  const pitched = structure.surfaces.filter((s) => s.roof === r.mark).length > 1;
  const across = pitched ? (r.ridgeAxis === 'y' ? 'x' : 'y') : 'y';
  const posts = structure.members.filter((m) => m.role === 'post').map((m) => (across === 'x' ? m.start.y : m.start.x));
  if (posts.length === 0) return { across, at: across === 'x' ? (r.min.y + r.max.y) / 2 : (r.min.x + r.max.x) / 2 };
  if (across === 'x') return { across, at: Math.max(...posts) };
  const middle = (r.min.x + r.max.x) / 2;
  return { across, at: posts.reduce((best, x) => (Math.abs(x - middle) < Math.abs(best - middle) - 1e-6 ? x : best)) };
}

/** Top edges shared by the two planes of a pitched roof. */
function ridgeLines(structure: Structure): { readonly a: Vec2; readonly b: Vec2 }[] {
  return structure.roofs.flatMap((r) => {
    const s = structure.surfaces.filter((x) => x.roof === r.mark);
    if (s.length < 2) return [];
    const { origin, u, v, outline } = s[0]!;
    const top = Math.max(...outline.map((p) => p.y));
    const ends = outline
      .filter((p) => Math.abs(p.y - top) < 1e-6)
      .map((p) => ({ x: origin.x + u.x * p.x + v.x * p.y, y: origin.y + u.y * p.x + v.y * p.y }));
    return ends.length >= 2 ? [{ a: ends[0]!, b: ends[1]! }] : [];
  });
}

const FRAMING_TAG: Readonly<Partial<Record<Member['role'], TagKind>>> = {
  truss: 'truss',
  'gable-truss': 'truss',
  rafter: 'rafter',
  fascia: 'rafter',
};

function framingPlan(ctx: SheetContext): SheetBody[] {
  const { structure, lot, project } = ctx.input;
  const { style, area, len } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const model = planExtents(structure, 30);
  const scale = scaleFor(ctx, model, main, planMargin(ctx, model), PLAN_SCALES);
  const items: Primitive[] = [...housePlan(structure, 30)];
  const over: Primitive[] = [];
  for (const r of structure.roofs) {
    items.push({
      kind: 'polyline',
      layer: 'A-ROOF-OTLN',
      pen: 'new',
      closed: true,
      mark: r.mark,
      points: [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }],
    });
  }
  items.push(
    ...structure.members.filter((m) => m.role === 'beam' || m.role === 'ledger').map((m) => bar(m, 'S-BEAM', 'hidden')),
  );
  const framing = structure.members.filter((m) => FRAMING_TAG[m.role] !== undefined && m.role !== 'fascia');
  items.push(...framing.map((m) => bar(m, 'S-FRAM', 'new')));
  items.push(...structure.members.filter((m) => m.role === 'fascia').map((m) => bar(m, 'S-FRAM', 'new-fine')));
  // One tag and one spread for each run of equal frames.
  const marks = [...new Set(framing.map((m) => m.mark))];
  const center = (m: Member): Vec2 => ({ x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 });
  const alongX =
    framing.length > 1 &&
    Math.abs(center(framing[0]!).x - center(framing.at(-1)!).x) >
      Math.abs(center(framing[0]!).y - center(framing.at(-1)!).y);
  marks.forEach((mark, k) => {
    const run = framing
      .filter((m) => m.mark === mark)
      .sort((p, q) => (alongX ? p.start.x - q.start.x : p.start.y - q.start.y));
    const first = run[0]!;
    const last = run.at(-1)!;
    const t = 0.4 + 0.13 * k;
    const on = (m: Member): Vec2 => ({
      x: m.start.x + t * (m.end.x - m.start.x),
      y: m.start.y + t * (m.end.y - m.start.y),
    });
    const gap = run.length > 1 ? (alongX ? run[1]!.start.x - first.start.x : run[1]!.start.y - first.start.y) : 0;
    const lastGap =
      run.length > 2 ? (alongX ? last.start.x - run.at(-2)!.start.x : last.start.y - run.at(-2)!.start.y) : gap;
    const odd = Math.abs(lastGap - gap) > 1 / 16 ? ', last bay as dimensioned' : '';
    const label = run.length > 1 ? `${run.length} ${mark} at ${len(Math.abs(gap))} o.c.${odd}` : `${mark}`;
    if (run.length > 2)
      over.push(
        ...spread({ a: on(first), b: on(last), text: label, mark, path: first.path, layer: 'S-ANNO-NOTE', style }),
      );
    else
      over.push(
        ...run.map((m) => tag({ kind: 'truss', text: mark, at: on(m), layer: 'S-ANNO-SYMB', style, path: m.path })),
      );
  });
  for (const s of structure.surfaces) {
    const [u0, u1] = [Math.min(...s.outline.map((p) => p.x)), Math.max(...s.outline.map((p) => p.x))];
    const [v0, v1] = [Math.min(...s.outline.map((p) => p.y)), Math.max(...s.outline.map((p) => p.y))];
    const v = (v0 + v1) / 2;
    const on = (t: number): Vec2 => {
      const u = u0 + t * (u1 - u0);
      return { x: s.origin.x + s.u.x * u + s.v.x * v, y: s.origin.y + s.u.y * u + s.v.y * v };
    };
    // Joint tags stand at the first frames, where x and y are least: the arrow goes to the other end.
    const [p, q] = [on(0.28), on(0.72)];
    const at = p.x + p.y > q.x + q.y ? p : q;
    const roof = project.cover.roofs.find((r) => r.mark === s.roof);
    over.push(
      slopeArrow({
        at,
        angle: Math.atan2(s.downhill.y, s.downhill.x),
        text: roof?.pitchText ?? '',
        layer: 'A-ANNO-SYMB',
        style,
        ...(roof && { path: `${roof.path}/pitch` }),
      }),
    );
  }
  over.push(
    ...jointTags(ctx, ['rafter-to-ledger', 'rafter-to-beam', 'truss-to-beam', 'fascia-to-framing'], {
      x: h * 4.5,
      y: h * 4.5,
    }),
  );
  const stations = unique(framing.map((m) => (alongX ? center(m).x : center(m).y)));
  const roof = structure.roofs[0]!;
  const chain = alongX ? [roof.min.x, ...stations, roof.max.x] : [roof.min.y, ...stations, roof.max.y];
  const ends = alongX ? [roof.min.x, roof.max.x] : [roof.min.y, roof.max.y];
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const [side1, datum1] = alongX ? (['above', model.y + model.h] as const) : (['left', roof.min.x] as const);
  const [side2, datum2] = alongX ? (['left', roof.min.x] as const) : (['above', model.y + model.h] as const);
  const beamAt = unique(
    structure.members.filter((m) => m.role === 'beam').map((m) => (alongX ? m.start.y : m.start.x)),
  );
  const other = alongX ? [0, ...beamAt, roof.max.y] : [roof.min.x, ...beamAt, roof.max.x];
  over.push(
    ...dims(ctx, { ...common, side: side1, datum: datum1, tiers: [{ stations: unique(chain) }, { stations: ends }] })
      .items,
    ...dims(ctx, {
      ...common,
      side: side2,
      datum: datum2,
      tiers: [{ stations: unique(other) }, { stations: [Math.min(...other), Math.max(...other)] }],
    }).items,
  );
  for (const line of ridgeLines(structure)) {
    items.push({ kind: 'line', layer: 'A-ROOF', pen: 'profile', a: line.a, b: line.b });
    over.push({
      kind: 'text',
      layer: 'A-ANNO-NOTE',
      at: { x: line.a.x + 0.86 * (line.b.x - line.a.x), y: line.a.y + 0.86 * (line.b.y - line.a.y) },
      content: 'ridge',
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      angle: Math.abs(line.b.x - line.a.x) > Math.abs(line.b.y - line.a.y) ? 0 : Math.PI / 2,
    });
  }
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Roof framing plan',
    items,
    over,
    north: northOnPlan(lot.north),
  });
  const count = (mark: string) => structure.members.filter((m) => m.mark === mark).length;
  const rows: TableRow[] = [
    ...marks,
    ...new Set(structure.members.filter((m) => m.role === 'fascia').map((m) => m.mark)),
  ].map((mark) => {
    const m = structure.members.find((x) => x.mark === mark)!;
    const what = m.truss
      ? `${m.truss.kind.replace('-', ' ')}${m.role === 'gable-truss' ? ', gable end' : ''}, span ${len(m.truss.span)}`
      : m.section.label;
    return [
      { text: mark, mark, path: m.path },
      what,
      String(count(mark)),
      m.truss ? len(m.truss.height) : len(m.length),
    ];
  });
  const trusses = framing.some((m) => m.truss);
  const finish = project.cover.roofs.map(
    (r) =>
      `${r.mark}: ${structure.surfaces
        .find((s) => s.roof === r.mark)!
        .layers.map((l) => l.name)
        .join('; ')}.`,
  );
  const notes = textBlock(
    measure(
      [
        {
          kind: 'table',
          title: 'Framing',
          columns: [
            { head: 'Mark' },
            { head: 'What', max: 26 * h },
            { head: 'Count', align: 'right' },
            { head: trusses ? 'Height or length' : 'Length', align: 'right', grow: true },
          ],
          rows,
        },
        { kind: 'gap' },
        { kind: 'heading', text: 'Roof, from top to bottom' },
        { kind: 'bullets', items: finish },
        { kind: 'heading', text: 'Notes' },
        {
          kind: 'numbered',
          items: [
            ...(trusses
              ? [
                  'Trusses are designed and sealed by the truss plant’s engineer; the profile here is for order and layout. Do not cut, notch, drill or load them otherwise. Truss papers are a deferred submittal until they are in the set.',
                  'Set, brace and restrain trusses by the plant’s instructions. Unbraced trusses fall over: keep people from under them.',
                ]
              : [
                  'Rafters run in one piece from ledger to tail. Seat cuts no deeper than a quarter of the rafter depth.',
                ]),
            'Sheathing with its strength axis across the framing; end joints staggered. An unsheathed roof resists no side load.',
            ...nailingNotes(project, len),
            'Every frame is tied at both bearings: joint schedule.',
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
      title: 'Roof framing plan',
      scaleNote: view.scale.label,
      viewports: [view.viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

/** How each roof's sheathing is nailed, or that it is still to be said; roofs nailed alike share a note. */
function nailingNotes(project: Project, len: SheetContext['len']): string[] {
  const marks = new Map<string, string[]>();
  for (const { mark, finish } of project.cover.roofs) {
    if (finish.sheathing === '') continue;
    const n = finish.nailing;
    const how = n
      ? `${findFastener(n.nail)?.name ?? n.nail} at ${len(n.edge)} on panel ends and edges and ${len(n.field)} elsewhere into every frame`
      : 'open, to be named before it is built';
    marks.set(how, [...(marks.get(how) ?? []), mark]);
  }
  return [...marks].map(([how, of]) => `Sheathing nails, ${of.join(' and ')}: ${how}.`);
}

export const beamPlanSheet: SheetKind = {
  title: 'Column and beam plan',
  discipline: 'S',
  needed: () => true,
  draw: beamPlan,
};
export const framingPlanSheet: SheetKind = {
  title: 'Roof framing plan',
  discipline: 'S',
  needed: () => true,
  draw: framingPlan,
};
