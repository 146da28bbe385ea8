/** Joint plan: every joint where it is, with what it must carry and what serves it; and the key to the details. */
import type { Vec2 } from '../../base/vec.js';
import type { Joint, Member } from '../../structure/model.js';
import { type Block, columnsFlow, measure, placeTags, spread, type TagWish } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { callsOnPlan } from './details/calls.js';
import { detailCalls } from './details/sheets.js';
import { bar } from './frame-parts.js';
import { jointTable } from './joint-table.js';
import { extents, flowOn, northOnPlan, PLAN_SCALES, type PlacedView, placeView, scaleFor, titleBand } from './parts.js';
import { housePlan, postsOnPlan, slabPlan, standsOff } from './plan-base.js';
import { tiesOnPlan } from './tie-rows.js';

/** Joints of one mark on one part below them, in the order they stand along it. */
interface Run {
  readonly mark: string;
  readonly joints: readonly Joint[];
}

function runs(ctx: SheetContext): Run[] {
  const groups = new Map<string, Joint[]>();
  for (const j of ctx.input.structure.joints) {
    const trim = j.kind === 'fascia-to-framing';
    const key = `${j.mark}|${(trim ? j.ties[0] : j.ties.at(-1))?.part ?? ''}`;
    const list = groups.get(key);
    if (list) list.push(j);
    else groups.set(key, [j]);
  }
  return [...groups.values()].map((joints) => ({
    mark: joints[0]!.mark,
    joints: [...joints].sort((p, q) => p.at.x - q.at.x || p.at.y - q.at.y),
  }));
}

/** Runs of more joints than this are named by one line over all of them. */
const SINGLE = 2;

/** Whether joints stand in one line: frames along a beam, not the ends of braces. */
function inRow(joints: readonly Joint[]): boolean {
  const [a, b] = [joints[0]!.at, joints.at(-1)!.at];
  const size = Math.hypot(b.x - a.x, b.y - a.y);
  if (size < 1 || /^(brace|strut|beam|post)/.test(joints[0]!.kind)) return false;
  return joints.every((j) => Math.abs((j.at.x - a.x) * (b.y - a.y) - (j.at.y - a.y) * (b.x - a.x)) / size < 1);
}

/** Ends of the line over a run, set aside where another run lies on the same line. */
function setAside(a: Vec2, b: Vec2, step: number, rows: Map<string, number>): [Vec2, Vec2] {
  const size = Math.hypot(b.x - a.x, b.y - a.y);
  const n = { x: -(b.y - a.y) / size, y: (b.x - a.x) / size };
  const key = `${Math.round(n.x)},${Math.round(n.y)},${Math.round((a.x * n.x + a.y * n.y) / 12)}`;
  const k = rows.get(key) ?? 0;
  rows.set(key, k + 1);
  const by = { x: n.x * step * k, y: n.y * step * k };
  return [
    { x: a.x + by.x, y: a.y + by.y },
    { x: b.x + by.x, y: b.y + by.y },
  ];
}

const place = (p: Vec2, radius: number): Primitive => ({
  kind: 'circle',
  layer: 'S-JNTS',
  center: { x: p.x, y: p.y },
  radius,
  pen: 'new-fine',
  fill: 'ink',
});

const LIGHT: Readonly<Partial<Record<Member['role'], true>>> = {
  rafter: true,
  truss: true,
  'gable-truss': true,
  hip: true,
  ridge: true,
  tie: true,
  outlooker: true,
  barge: true,
  fascia: true,
};

const PAD = 10;

/** Roofs, the wall behind them and every place a detail shows. */
function modelOf(ctx: SheetContext): Rect {
  const { structure } = ctx.input;
  const own = extents([
    ...structure.roofs.flatMap((r) => [r.min, r.max]),
    ...detailCalls(ctx).map((c) => c.at),
    ...structure.joints.map((j) => j.at),
  ]);
  const low = standsOff(structure) ? own.y - PAD : Math.min(own.y - PAD, -18);
  return { x: own.x - PAD, y: low, w: own.w + 2 * PAD, h: own.y + own.h + PAD - low };
}

/** Paper round the plan for tags and bubbles. */
const marginOf = (ctx: SheetContext): { readonly x: number; readonly y: number } => ({
  x: 8 * ctx.style.note,
  y: 8 * ctx.style.note,
});

function plan(ctx: SheetContext, box: Rect) {
  const { structure, lot } = ctx.input;
  const { style } = ctx;
  const h = style.note;
  const model = modelOf(ctx);
  const margin = marginOf(ctx);
  const scale = scaleFor(ctx, model, box, margin, PLAN_SCALES);
  const { members } = structure;
  const items: Primitive[] = [
    ...(standsOff(structure) ? [] : housePlan(structure, 30, model)),
    ...slabPlan(structure),
    ...structure.roofs.map(
      (r): Primitive => ({
        kind: 'polyline',
        layer: 'A-ROOF-OTLN',
        pen: 'above',
        closed: true,
        mark: r.mark,
        points: [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }],
      }),
    ),
    ...members.filter((m) => LIGHT[m.role]).map((m) => bar(m, 'S-FRAM', 'existing')),
    ...members.filter((m) => m.role === 'strut' || m.role === 'brace').map((m) => bar(m, 'S-BEAM', 'hidden')),
    ...members.filter((m) => m.role === 'beam' || m.role === 'ledger').map((m) => bar(m, 'S-BEAM', 'new')),
    ...postsOnPlan(structure, { pen: 'cut', fill: 'poche' }),
    ...structure.joints
      .filter((j, i, all) => all.findIndex((o) => Math.hypot(o.at.x - j.at.x, o.at.y - j.at.y) < 1e-3) === i)
      .map((j) => place(j.at, (0.22 * h) / scale.ratio)),
  ];
  const over: Primitive[] = [];
  const wishes: TagWish[] = [];
  const middle = { x: model.x + model.w / 2, y: model.y + model.h / 2 };
  const named = new Set<string>();
  const rows = new Map<string, number>();
  for (const run of runs(ctx)) {
    const { mark, joints } = run;
    const path = joints[0]!.path;
    if (joints[0]!.kind === 'fascia-to-framing') {
      // Trim is nailed alike everywhere: named once.
      if (named.has(mark)) continue;
      named.add(mark);
      const j = joints[Math.floor(joints.length / 2)]!;
      wishes.push(wish(ctx, mark, j.at, middle, path));
      continue;
    }
    if (joints.length > SINGLE && inRow(joints)) {
      const [a, b] = setAside(joints[0]!.at, joints.at(-1)!.at, (2.4 * h) / scale.ratio, rows);
      over.push(...spread({ a, b, text: `${joints.length} ${mark}`, mark, path, layer: 'S-ANNO-SYMB', style }));
    } else for (const j of joints) wishes.push(wish(ctx, mark, j.at, middle, path));
  }
  const ties = tiesOnPlan(ctx);
  over.push(...ties.lines);
  over.push(...placeTags([...wishes, ...ties.tags], scale.ratio, over, items));
  over.push(...callsOnPlan(ctx, scale.ratio, over, items));
  const view = placeView(ctx, {
    box,
    model,
    scale,
    number: '1',
    title: 'Joint plan and key to details',
    items,
    over,
    north: northOnPlan(lot.north),
    snug: margin.y,
    plan: true,
  });
  // A slab may run on far past the roof.
  return { ...view, viewport: { ...view.viewport, window: model } };
}

/** A tag that leans out from the middle of the plan. */
function wish(ctx: SheetContext, mark: string, at: Vec2, middle: Vec2, path: string): TagWish {
  const h = ctx.style.note;
  return {
    kind: 'joint',
    text: mark,
    at: { x: at.x, y: at.y },
    off: { x: (at.x < middle.x ? -1 : 1) * 3.6 * h, y: (at.y < middle.y ? -1 : 1) * 2.6 * h },
    layer: 'S-ANNO-SYMB',
    style: ctx.style,
    path,
  };
}

/** Shares of a large sheet that the plan may have, the table beside it taking the rest. */
const SHARES = [0.5, 0.64] as const;
/** Least share of a small sheet that the table needs beside the plan. */
const BESIDE = 0.45;
/** Least share of a sheet's height that is worth beginning a table in, under the plan. */
const UNDER = 0.2;

/** A large sheet holds plan and table side by side; on a small one the table follows on sheets of its own. */
function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const blocks = jointTable(ctx);
  const body = (view: PlacedView, items: readonly Primitive[]): SheetBody => ({
    title: 'Joint plan',
    scaleNote: view.scale.label,
    viewports: [view.viewport],
    items: [...view.items, ...items],
  });
  const more = 'Joint plan, continued';
  if (area.w <= 24) {
    const model = modelOf(ctx);
    const { ratio } = scaleFor(ctx, model, area, marginOf(ctx), PLAN_SCALES);
    const width = Math.max(model.w * ratio + 2 * marginOf(ctx).x, 60 * style.note);
    const room = area.w - width - style.gutter;
    // A long and narrow cover leaves room for the table beside it.
    if (room < area.w * BESIDE) {
      const slugs = measure(blocks, area.w, style, 'G-ANNO-SCHD');
      const under = underPlan(ctx, area, ratio);
      const first = under ? columnsFlow(slugs, [under]) : { items: [], rest: slugs };
      return [body(plan(ctx, area), first.items), ...flowOn(first.rest, [area], more)];
    }
    return beside(ctx, body, blocks, width, room);
  }
  const ratio = (share: number): number =>
    scaleFor(ctx, modelOf(ctx), { ...area, w: area.w * share }, marginOf(ctx), PLAN_SCALES).ratio;
  const share = ratio(SHARES[1]) > ratio(SHARES[0]) ? SHARES[1] : SHARES[0];
  // The plan takes no more than it fills at its scale; the table has the rest.
  const filled = modelOf(ctx).w * ratio(share) + 2 * marginOf(ctx).x;
  const width = Math.min((area.w - style.gutter) * share, filled);
  return beside(ctx, body, blocks, width, area.w - style.gutter - width);
}

/** Paper left under a plan in a box, where it is enough to begin a table in. */
function underPlan(ctx: SheetContext, box: Rect, ratio: number): Rect | undefined {
  const used = modelOf(ctx).h * ratio + 2 * marginOf(ctx).y + titleBand(ctx) + ctx.style.gutter;
  const h = box.h - used;
  return h > box.h * UNDER ? { ...box, h } : undefined;
}

/** The plan on the left, the table to the right of it and on through sheets of its own. */
function beside(
  ctx: SheetContext,
  body: (view: PlacedView, items: readonly Primitive[]) => SheetBody,
  blocks: readonly Block[],
  width: number,
  room: number,
): SheetBody[] {
  const { area, style } = ctx;
  const right = { ...area, x: area.x + area.w - room, w: room };
  const box = { ...area, w: width };
  const under = underPlan(ctx, box, scaleFor(ctx, modelOf(ctx), box, marginOf(ctx), PLAN_SCALES).ratio);
  const slugs = measure(blocks, room, style, 'G-ANNO-SCHD');
  // What the column beside the plan cannot hold goes on under the plan.
  const flowed = columnsFlow(slugs, under && room <= width ? [right, { ...under, w: room }] : [right]);
  return [
    body(plan(ctx, box), flowed.items),
    ...flowOn(flowed.rest, [{ ...right, x: area.x }], 'Joint plan, continued'),
  ];
}

export const jointPlan: SheetKind = {
  title: 'Joint plan',
  discipline: 'S',
  needed: (i) => i.structure.joints.length > 0,
  draw,
};
