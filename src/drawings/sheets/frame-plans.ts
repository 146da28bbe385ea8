/** Column and beam plan, and roof framing plan: the same background, one shows what carries, the other what is carried. */
import type { Vec2 } from '../../base/vec.js';
import type { Member, Structure } from '../../structure/model.js';
import { dimString, measure, sectionMark, slopeArrow, spread, type TableRow, tag, type TagKind, textBlock } from '../annotate/index.js';
import type { LayerName, PenName, Primitive } from '../ir/index.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { northOnPlan, PLAN_SCALES, placeView, scaleFor, withSideColumn } from './parts.js';
import { housePlan, planExtents, slabPlan } from './plan-base.js';

const unique = (values: readonly number[]): number[] =>
  [...values].sort((a, b) => a - b).filter((v, i, all) => i === 0 || Math.abs(v - all[i - 1]!) > 1e-6);

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

const bar = (m: Member, layer: LayerName, pen: PenName): Primitive => ({ kind: 'polyline', layer, pen, closed: true, points: outline(m), mark: m.mark });

function posts(structure: Structure): Primitive[] {
  return structure.members
    .filter((m) => m.role === 'post')
    .map((m) => {
      const w = m.section.width / 2;
      const { x, y } = m.start;
      return { kind: 'polyline', layer: 'S-COLS', pen: 'cut', closed: true, mark: m.mark, fill: 'poche', points: [{ x: x - w, y: y - w }, { x: x + w, y: y - w }, { x: x + w, y: y + w }, { x: x - w, y: y + w }] };
    });
}

/** Joint tags: one tag per joint mark and place; beside the joint, alternating sides so that they do not pile up. */
function jointTags(ctx: SheetContext, kinds: readonly string[], shift: Vec2): Primitive[] {
  const done = new Set<string>();
  const out: Primitive[] = [];
  for (const j of ctx.input.structure.joints) {
    if (!kinds.includes(j.kind) || done.has(j.mark)) continue;
    done.add(j.mark);
    out.push(tag({ kind: 'joint', text: j.mark, at: { x: j.at.x, y: j.at.y }, off: shift, layer: 'S-ANNO-SYMB', style: ctx.style, path: j.path }));
  }
  return out;
}

function beamPlan(ctx: SheetContext): SheetBody[] {
  const { structure, lot } = ctx.input;
  const { style, area, len } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const model = planExtents(structure, 30);
  const scale = scaleFor(ctx, model, main, { x: h * 13, y: h * 12 }, PLAN_SCALES);
  const items: Primitive[] = [...housePlan(structure, 30), ...slabPlan(structure)];
  const over: Primitive[] = [];
  const beams = structure.members.filter((m) => m.role === 'beam' || m.role === 'ledger');
  items.push(...beams.map((m) => bar(m, 'S-BEAM', 'new')), ...posts(structure));
  const mid = { x: model.x + model.w / 2, y: model.y + model.h / 2 };
  for (const m of beams) {
    const at = { x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 };
    const runsAlongY = Math.abs(m.end.y - m.start.y) > Math.abs(m.end.x - m.start.x);
    const off = runsAlongY ? { x: at.x < mid.x ? h * 5 : -h * 5, y: 0 } : { x: 0, y: at.y < mid.y ? h * 3.5 : -h * 3.5 };
    over.push(tag({ kind: 'beam', text: m.mark, at, off, layer: 'S-ANNO-SYMB', style, path: m.path }));
  }
  for (const m of structure.members.filter((p) => p.role === 'post')) {
    over.push(tag({ kind: 'post', text: m.mark, at: { x: m.start.x, y: m.start.y }, off: { x: m.start.x < mid.x ? -h * 3.4 : h * 3.4, y: h * 2.6 }, layer: 'S-ANNO-SYMB', style, path: m.path }));
  }
  over.push(...jointTags(ctx, ['beam-to-post', 'beam-splice', 'ledger-to-house', 'post-to-footing'], { x: h * 4.5, y: -h * 4.2 }));
  const ends = unique(beams.flatMap((m) => [m.start.x, m.end.x]));
  const px = unique(structure.members.filter((m) => m.role === 'post').map((m) => m.start.x));
  const py = unique(structure.members.filter((m) => m.role === 'post').map((m) => m.start.y));
  const bx = unique(beams.flatMap((m) => [m.start.x, m.end.x]));
  const by = unique([0, ...beams.flatMap((m) => [m.start.y, m.end.y])]);
  const above = dimString({ side: 'above', datum: model.y + model.h, scale: scale.ratio, layer: 'S-ANNO-DIMS', style, tiers: [{ stations: unique([...px, ...bx]) }, { stations: [ends[0]!, ends.at(-1)!] }].filter((t) => t.stations.length > 1) });
  const leftSide = dimString({ side: 'left', datum: model.x, scale: scale.ratio, layer: 'S-ANNO-DIMS', style, tiers: [{ stations: unique([0, ...py, ...by]) }, { stations: [0, Math.max(...by, ...py)] }].filter((t) => t.stations.length > 1) });
  over.push(...above.items, ...leftSide.items);
  const cut = sectionLine(structure, model.x, model.y, model.x + model.w, model.y + model.h);
  over.push(...sectionMark({ ...cut, number: '1', sheet: SHEET_IDS.sections, layer: 'A-ANNO-SYMB', style }));
  const view = placeView(ctx, { box: main, model, scale, number: '1', title: 'Column and beam plan', items, over, north: northOnPlan(lot.north) });
  const rows: TableRow[] = structure.members
    .filter((m) => m.role === 'beam' || m.role === 'ledger' || m.role === 'post')
    .map((m) => [
      { text: m.mark, mark: m.mark, path: m.path },
      m.section.label,
      m.role === 'post' ? `bottom ${len(m.start.z)}, top ${len(m.end.z)}` : `top at ${len(m.start.z + m.section.depth / 2)}`,
      len(m.length),
    ]);
  const notes = textBlock(
    measure(
      [
        { kind: 'table', title: 'Posts, beams and ledger', columns: [{ head: 'Mark' }, { head: 'Section', max: 24 * h }, { head: 'Level from floor' }, { head: 'Cut length', align: 'right', grow: true }], rows },
        { kind: 'para', text: 'Levels are from the finished house floor; below it is negative. Each post has its own length because the ground falls: measure again after the piers are set and cut to the measured length.' },
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
  return [{ title: 'Column and beam plan', scaleNote: view.scale.label, viewports: [view.viewport], items: [...view.items, ...notes.items] }];
}

/** The section of A-301: square to the house through the middle of the cover for a shed, across the ridge for a gable. */
export function sectionLine(structure: Structure, x0: number, y0: number, x1: number, y1: number): { a: Vec2; b: Vec2; look: 1 | -1 } {
  const cut = sectionPlane(structure);
  return cut.across === 'x'
    ? { a: { x: x0 - 18, y: cut.at }, b: { x: x1 + 18, y: cut.at }, look: -1 }
    : { a: { x: cut.at, y: y0 }, b: { x: cut.at, y: y1 + 18 }, look: 1 };
}

/** Where the main section cuts: `across` is the axis along which the picture runs. */
export function sectionPlane(structure: Structure): { readonly across: 'x' | 'y'; readonly at: number } {
  const r = structure.roofs[0]!;
  const pitched = structure.surfaces.filter((s) => s.roof === r.mark).length > 1;
  const across = pitched ? (r.ridgeAxis === 'y' ? 'x' : 'y') : 'y';
  const framing = structure.members.filter((m) => m.roof === r.mark && (m.role === 'truss' || m.role === 'rafter'));
  const coordinate = (m: Member) => (across === 'x' ? m.start.y : m.start.x);
  const all = unique(framing.map(coordinate));
  // Between two frames, so that the next one is seen whole beyond the cut.
  const i = Math.max(0, Math.floor(all.length / 2) - 1);
  const at = all.length > 1 ? (all[i]! + all[i + 1]!) / 2 + 0.5 : (all[0] ?? 0) + 3;
  return { across, at };
}

const FRAMING_TAG: Readonly<Partial<Record<Member['role'], TagKind>>> = { truss: 'truss', 'gable-truss': 'truss', rafter: 'rafter', fascia: 'rafter' };

function framingPlan(ctx: SheetContext): SheetBody[] {
  const { structure, lot, project } = ctx.input;
  const { style, area, len } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const model = planExtents(structure, 30);
  const scale = scaleFor(ctx, model, main, { x: h * 13, y: h * 12 }, PLAN_SCALES);
  const items: Primitive[] = [...housePlan(structure, 30)];
  const over: Primitive[] = [];
  for (const r of structure.roofs) {
    items.push({ kind: 'polyline', layer: 'A-ROOF-OTLN', pen: 'new', closed: true, mark: r.mark, points: [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }] });
  }
  items.push(...structure.members.filter((m) => m.role === 'beam' || m.role === 'ledger').map((m) => bar(m, 'S-BEAM', 'hidden')));
  const framing = structure.members.filter((m) => FRAMING_TAG[m.role] !== undefined && m.role !== 'fascia');
  items.push(...framing.map((m) => bar(m, 'S-FRAM', 'new')));
  items.push(...structure.members.filter((m) => m.role === 'fascia').map((m) => bar(m, 'S-FRAM', 'new-fine')));
  // One tag and one spread for each run of equal frames.
  const marks = [...new Set(framing.map((m) => m.mark))];
  const center = (m: Member): Vec2 => ({ x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 });
  const alongX = framing.length > 1 && Math.abs(center(framing[0]!).x - center(framing.at(-1)!).x) > Math.abs(center(framing[0]!).y - center(framing.at(-1)!).y);
  marks.forEach((mark, k) => {
    const run = framing.filter((m) => m.mark === mark).sort((p, q) => (alongX ? p.start.x - q.start.x : p.start.y - q.start.y));
    const first = run[0]!;
    const last = run.at(-1)!;
    const t = 0.3 + 0.13 * k;
    const on = (m: Member): Vec2 => ({ x: m.start.x + t * (m.end.x - m.start.x), y: m.start.y + t * (m.end.y - m.start.y) });
    const gap = run.length > 1 ? (alongX ? run[1]!.start.x - first.start.x : run[1]!.start.y - first.start.y) : 0;
    const label = run.length > 1 ? `${run.length} ${mark} at ${len(Math.abs(gap))} o.c.` : `${mark}`;
    if (run.length > 2) over.push(...spread({ a: on(first), b: on(last), text: label, mark, path: first.path, layer: 'S-ANNO-NOTE', style }));
    else run.forEach((m) => over.push(tag({ kind: 'truss', text: mark, at: on(m), layer: 'S-ANNO-SYMB', style, path: m.path })));
  });
  for (const s of structure.surfaces) {
    const [u0, u1] = [Math.min(...s.outline.map((p) => p.x)), Math.max(...s.outline.map((p) => p.x))];
    const [v0, v1] = [Math.min(...s.outline.map((p) => p.y)), Math.max(...s.outline.map((p) => p.y))];
    const u = u0 + 0.78 * (u1 - u0);
    const v = (v0 + v1) / 2;
    const at = { x: s.origin.x + s.u.x * u + s.v.x * v, y: s.origin.y + s.u.y * u + s.v.y * v };
    const roof = project.cover.roofs.find((r) => r.mark === s.roof);
    over.push(slopeArrow({ at, angle: Math.atan2(s.downhill.y, s.downhill.x), text: roof?.pitchText ?? '', layer: 'A-ANNO-SYMB', style, ...(roof && { path: `${roof.path}/pitch` }) }));
  }
  over.push(...jointTags(ctx, ['rafter-to-ledger', 'rafter-to-beam', 'truss-to-beam', 'fascia-to-framing'], { x: h * 4.5, y: h * 4.5 }));
  const stations = unique(framing.map((m) => (alongX ? center(m).x : center(m).y)));
  const roof = structure.roofs[0]!;
  const chain = alongX ? [roof.min.x, ...stations, roof.max.x] : [roof.min.y, ...stations, roof.max.y];
  const ends = alongX ? [roof.min.x, roof.max.x] : [roof.min.y, roof.max.y];
  const long = dimString({ side: alongX ? 'above' : 'left', datum: alongX ? model.y + model.h : model.x, scale: scale.ratio, layer: 'S-ANNO-DIMS', style, tiers: [{ stations: unique(chain) }, { stations: ends }] });
  const beamAt = unique(structure.members.filter((m) => m.role === 'beam').map((m) => (alongX ? m.start.y : m.start.x)));
  const other = alongX ? [0, ...beamAt, roof.max.y] : [roof.min.x, ...beamAt, roof.max.x];
  const short = dimString({ side: alongX ? 'left' : 'above', datum: alongX ? model.x : model.y + model.h, scale: scale.ratio, layer: 'S-ANNO-DIMS', style, tiers: [{ stations: unique(other) }, { stations: [Math.min(...other), Math.max(...other)] }] });
  over.push(...long.items, ...short.items);
  const view = placeView(ctx, { box: main, model, scale, number: '1', title: 'Roof framing plan', items, over, north: northOnPlan(lot.north) });
  const count = (mark: string) => structure.members.filter((m) => m.mark === mark).length;
  const rows: TableRow[] = [...marks, ...new Set(structure.members.filter((m) => m.role === 'fascia').map((m) => m.mark))].map((mark) => {
    const m = structure.members.find((x) => x.mark === mark)!;
    const what = m.truss ? `${m.truss.kind.replace('-', ' ')}${m.role === 'gable-truss' ? ', gable end' : ''}, span ${len(m.truss.span)}` : m.section.label;
    return [{ text: mark, mark, path: m.path }, what, String(count(mark)), m.truss ? len(m.truss.height) : len(m.length)];
  });
  const trusses = framing.some((m) => m.truss);
  const finish = project.cover.roofs.map((r) => `${r.mark}: ${structure.surfaces.find((s) => s.roof === r.mark)!.layers.map((l) => l.name).join('; ')}.`);
  const notes = textBlock(
    measure(
      [
        { kind: 'table', title: 'Framing', columns: [{ head: 'Mark' }, { head: 'What', max: 26 * h }, { head: 'Count', align: 'right' }, { head: trusses ? 'Height or length' : 'Length', align: 'right', grow: true }], rows },
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
              : ['Rafters run in one piece from ledger to tail. Seat cuts no deeper than a quarter of the rafter depth.']),
            'Sheathing with its strength axis across the framing; end joints staggered; fasten as the schedules say. An unsheathed roof resists no side load.',
            'Every frame is tied at both bearings: joint schedule.',
          ],
        },
      ],
      side.w,
      style,
    ),
    { x: side.x, y: side.y + side.h },
  );
  return [{ title: 'Roof framing plan', scaleNote: view.scale.label, viewports: [view.viewport], items: [...view.items, ...notes.items] }];
}

export const beamPlanSheet: SheetKind = { title: 'Column and beam plan', discipline: 'S', needed: () => true, draw: beamPlan };
export const framingPlanSheet: SheetKind = { title: 'Roof framing plan', discipline: 'S', needed: () => true, draw: framingPlan };
