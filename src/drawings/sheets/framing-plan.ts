/** Roof framing plan: what is carried. */
import type { Vec2 } from '../../base/vec.js';
import type { Member, Structure } from '../../structure/model.js';
import { clearest, placeTags, spread, type TagKind, type TagWish } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { fallOf, ridgeLines } from './fall-arrows.js';
import { bar, jointTags } from './frame-parts.js';
import { framingBlocks } from './framing-table.js';
import { dims, PLAN_SCALES, scaleFor, unique } from './parts.js';
import { housePlan, planMargin, roofExtents, standsOff } from './plan-base.js';
import { type PlanView, planSheet } from './plans/plan-sheet.js';
import { overlayOnPlan } from './tie-in-parts.js';
import { tiesOnPlan } from './tie-rows.js';

const FRAMING_TAG: Readonly<Partial<Record<Member['role'], TagKind>>> = {
  truss: 'truss',
  'gable-truss': 'truss',
  rafter: 'rafter',
  hip: 'rafter',
  fascia: 'rafter',
};

/** Drawn and listed, not tagged one by one. */
const PLAIN_BARS: ReadonlySet<Member['role']> = new Set<Member['role']>([
  'tie',
  'ridge',
  'fascia',
  'outlooker',
  'barge',
]);

const plainOf = (structure: Structure): readonly Member[] => structure.members.filter((m) => PLAIN_BARS.has(m.role));

function viewIn(ctx: SheetContext, box: Rect): PlanView {
  const model = roofExtents(ctx.input.structure, 30);
  const margin = planMargin(ctx, model);
  return { model, margin, scale: scaleFor(ctx, model, box, margin, ['1', ...PLAN_SCALES]) };
}

/** Framing members that carry tags, fascias aside. */
const framingOf = (structure: Structure): readonly Member[] =>
  structure.members.filter((m) => FRAMING_TAG[m.role] !== undefined && m.role !== 'fascia');

function content(ctx: SheetContext, { model, scale }: PlanView) {
  const { structure } = ctx.input;
  const { style, len } = ctx;
  const h = style.note;
  const items: Primitive[] = [...(standsOff(structure) ? [] : housePlan(structure, 30, model))];
  const over: Primitive[] = [];
  const wishes: TagWish[] = [];
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
  const framing = framingOf(structure);
  items.push(...framing.map((m) => bar(m, 'S-FRAM', 'new')));
  items.push(...plainOf(structure).map((m) => bar(m, 'S-FRAM', 'new-fine')));
  items.push(...overlayOnPlan(structure));
  // One tag and one spread for each run of equal frames.
  const center = (m: Member): Vec2 => ({ x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 });
  // Frames of a roof follow each other along its ridge axis.
  const runsAlongX = (roof: string | undefined) => structure.roofs.find((r) => r.mark === roof)?.ridgeAxis === 'x';
  // Rafters of two slopes share a mark; each slope has its own run.
  const runKey = (m: Member) => `${m.mark}|${m.strips.map((s) => s.surface).join(' ')}`;
  const named = new Set<string>();
  [...new Set(framing.map(runKey))].forEach((key, k) => {
    const all = framing.filter((m) => runKey(m) === key);
    const { mark } = all[0]!;
    const alongX = runsAlongX(all[0]!.roof);
    const run = all.sort((p, q) => (alongX ? p.start.x - q.start.x : p.start.y - q.start.y));
    const first = run[0]!;
    const last = run.at(-1)!;
    // Runs side by side have their labels one past the other; a roof of many runs begins again.
    const t = 0.4 + 0.13 * (k % 4);
    const on = (m: Member): Vec2 => ({
      x: m.start.x + t * (m.end.x - m.start.x),
      y: m.start.y + t * (m.end.y - m.start.y),
    });
    const gap = run.length > 1 ? (alongX ? run[1]!.start.x - first.start.x : run[1]!.start.y - first.start.y) : 0;
    const lastGap =
      run.length > 2 ? (alongX ? last.start.x - run.at(-2)!.start.x : last.start.y - run.at(-2)!.start.y) : gap;
    const odd = Math.abs(lastGap - gap) > 1 / 16 ? ', last bay as dimensioned' : '';
    // A part that stands here and there in ones and twos is named once a roof.
    if (run.length <= 2 && named.has(mark)) return;
    named.add(mark);
    const label = run.length > 1 ? `${run.length} ${mark} at ${len(Math.abs(gap))} o.c.${odd}` : `${mark}`;
    if (run.length > 2)
      over.push(
        ...spread({ a: on(first), b: on(last), text: label, mark, path: first.path, layer: 'S-ANNO-NOTE', style }),
      );
    else
      wishes.push(
        ...run.map((m) => ({
          kind: FRAMING_TAG[m.role] ?? 'rafter',
          text: mark,
          at: on(m),
          off: { x: h * 3, y: h * 3 },
          layer: 'S-ANNO-SYMB' as const,
          style,
          path: m.path,
        })),
      );
  });
  const ties = tiesOnPlan(ctx);
  over.push(...ties.lines);
  wishes.push(
    ...jointTags(ctx).wish(
      [
        'rafter-to-ledger',
        'rafter-to-beam',
        'truss-to-beam',
        'jack-to-hip',
        'hip-to-beam',
        'hip-to-ridge',
        'rafter-to-ridge',
        'tie-to-rafter',
        'outlooker-to-frame',
        'fascia-to-framing',
      ],
      { x: h * 4.5, y: h * 4.5 },
    ),
    ...ties.tags,
  );
  const roof = structure.roofs[0]!;
  const alongX = runsAlongX(roof.mark);
  // A frame has a place along the ridge when it runs square to it; hips and the frames of a hip's ends have none.
  const square = (m: Member, alongX: boolean): boolean =>
    Math.abs(alongX ? m.end.x - m.start.x : m.end.y - m.start.y) < 1;
  const stationsOf = (mark: string) =>
    unique(
      framing
        .filter((m) => m.roof === mark && square(m, runsAlongX(mark)))
        .map((m) => (runsAlongX(mark) ? center(m).x : center(m).y)),
    );
  const stations = stationsOf(roof.mark);
  const chain = alongX ? [roof.min.x, ...stations, roof.max.x] : [roof.min.y, ...stations, roof.max.y];
  const ends = alongX ? [roof.min.x, roof.max.x] : [roof.min.y, roof.max.y];
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const [side1, datum1] = alongX ? (['above', model.y + model.h] as const) : (['left', roof.min.x] as const);
  const [side2, datum2] = alongX ? (['left', roof.min.x] as const) : (['above', model.y + model.h] as const);
  const beamAt = unique(
    structure.members.filter((m) => m.role === 'beam').map((m) => (alongX ? m.start.y : m.start.x)),
  );
  const other = alongX
    ? [standsOff(structure) ? roof.min.y : 0, ...beamAt, roof.max.y]
    : [roof.min.x, ...beamAt, roof.max.x];
  const first = dims(ctx, {
    ...common,
    side: side1,
    datum: datum1,
    tiers: [{ stations: unique(chain) }, { stations: ends }],
  }).items;
  // Where the two strings meet at a corner, the second keeps its lettering within its ends.
  const second = (within: boolean) =>
    dims(ctx, {
      ...common,
      side: side2,
      datum: datum2,
      within,
      tiers: [{ stations: unique(other) }, { stations: [Math.min(...other), Math.max(...other)] }],
    }).items;
  over.push(...first, ...clearest([second(false), second(true)], scale.ratio, first));
  // Further roofs carry a string of their own at the edge that faces away from the first.
  for (const r of structure.roofs.slice(1)) {
    const x = runsAlongX(r.mark);
    const [low, high] = x ? [r.min.x, r.max.x] : [r.min.y, r.max.y];
    const side = x ? 'above' : r.min.x + r.max.x < roof.min.x + roof.max.x ? 'left' : 'right';
    const datum = x ? r.max.y : side === 'left' ? r.min.x : r.max.x;
    const tiers = [{ stations: [low, ...stationsOf(r.mark), high] }];
    over.push(...dims(ctx, { ...common, side, datum, tiers }).items);
  }
  for (const line of ridgeLines(structure)) {
    items.push({ kind: 'line', layer: 'A-ROOF', pen: 'profile', a: line.a, b: line.b });
    const level = Math.abs(line.b.x - line.a.x) > Math.abs(line.b.y - line.a.y);
    const word = (t: number): Primitive => ({
      kind: 'text',
      layer: 'A-ANNO-NOTE',
      at: { x: line.a.x + t * (line.b.x - line.a.x), y: line.a.y + t * (line.b.y - line.a.y) },
      content: 'ridge',
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      angle: level ? 0 : Math.PI / 2,
    });
    over.push(...clearest([[word(0.86)], [word(0.93)], [word(0.14)], [word(0.07)], [word(0.7)]], scale.ratio, over));
  }
  // What stands fast is on the plan: arrows go where they are clear of it, tags where they are clear of both.
  for (const s of structure.surfaces) over.push(fallOf(ctx, s, scale.ratio, over, items));
  over.push(...placeTags(wishes, scale.ratio, over, items));
  return { items, over };
}

const draw = (ctx: SheetContext): SheetBody[] =>
  planSheet(ctx, {
    title: 'Roof framing plan',
    blocks: framingBlocks(ctx, [...framingOf(ctx.input.structure), ...plainOf(ctx.input.structure)]),
    view: (box) => viewIn(ctx, box),
    content: (v) => content(ctx, v),
  });

export const framingPlanSheet: SheetKind = {
  title: 'Roof framing plan',
  discipline: 'S',
  needed: () => true,
  draw,
};
