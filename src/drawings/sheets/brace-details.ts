/** Knee brace details: the brace in its own plane with post and beam or cross member, run and rise, cuts and joints. */

import type { Vec2, Vec3 } from '../../base/vec.js';
import { connectionSchedule } from '../../checks/joints/connections/assess.js';
import { servedBy } from '../../checks/joints/serving.js';
import type { Joint, Member } from '../../structure/model.js';
import { type ColumnNote, noteColumn } from '../annotate/index.js';
import { type Primitive, type Rect, toPaper } from '../ir/index.js';
import { hull } from '../views/cut.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { DETAIL_SCALES, dims, placeView, scaleFor } from './parts.js';

interface Knee {
  readonly brace: Member;
  readonly post: Member;
  /** Beam or cross member it runs up to. */
  readonly bar: Member;
  readonly foot: Joint;
  readonly head: Joint;
  readonly count: number;
}

/** One of each: the same brace mark with the same two joints. */
function kneesOf(ctx: SheetContext): readonly Knee[] {
  const { members, joints } = ctx.input.structure;
  const byId = new Map(members.map((m) => [m.id, m]));
  const found = new Map<string, Knee>();
  for (const brace of members) {
    if (brace.role !== 'brace') continue;
    const at = (kind: Joint['kind']) => joints.find((j) => j.kind === kind && j.ties.some((t) => t.part === brace.id));
    const [foot, head] = [at('brace-to-post'), at('brace-to-beam')];
    const met = (j: Joint | undefined) => byId.get(j?.ties.find((t) => t.part !== brace.id)?.part ?? '');
    const [post, bar] = [met(foot), met(head)];
    if (!foot || !head || !post || !bar) continue;
    const key = `${brace.mark} ${foot.mark} ${head.mark}`;
    const known = found.get(key);
    found.set(key, known ? { ...known, count: known.count + 1 } : { brace, post, bar, foot, head, count: 1 });
  }
  return [...found.values()];
}

/** What holds a joint, as the joint schedule has it. */
function heldBy(ctx: SheetContext, j: Joint): string {
  const served = servedBy(ctx.input.project.choices, j.mark, j.kind);
  if (!served) return 'open: name a product or connection';
  return served.by === 'connection'
    ? connectionSchedule(served.connection)
    : `(${served.product.count}) ${served.product.product}`;
}

/** A view in the plane of the brace, the post on the left; x from the center of the post. */
function view(ctx: SheetContext, k: Knee, box: Rect, number: string) {
  const { style, len } = ctx;
  const h = style.note;
  const { brace, post, bar } = k;
  const run = Math.hypot(brace.end.x - brace.start.x, brace.end.y - brace.start.y);
  const dir = { x: (brace.end.x - brace.start.x) / run, y: (brace.end.y - brace.start.y) / run };
  const flat = (p: Vec3): Vec2 => ({
    x: (p.x - post.start.x) * dir.x + (p.y - post.start.y) * dir.y,
    y: p.z,
  });
  const out = flat(brace.end).x;
  const foot = k.foot.at.z;
  const frame: Rect = {
    x: -12,
    y: foot - 18,
    w: out + 26,
    h: Math.max(post.end.z, bar.end.z + bar.section.depth / 2) + 4 - foot + 18,
  };
  const items = ctx.pieces
    .filter((p) => p.part === post.id || p.part === bar.id || p.part === brace.id)
    .map(
      (p): Primitive => ({
        kind: 'polyline',
        layer: p.part === post.id ? 'S-COLS' : 'S-BEAM',
        pen: p.part === brace.id ? 'cut' : 'new',
        closed: true,
        fill: 'paper',
        mark: p.mark,
        points: hull(p.solid.vertices.map(flat)),
      }),
    );
  const notesWidth = Math.min(box.w * 0.4, 34 * h);
  const room: Rect = { ...box, w: box.w - notesWidth - style.gutter };
  const scale = scaleFor(ctx, frame, room, { x: 7 * h, y: 9 * h }, DETAIL_SCALES);
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const top = brace.end.z;
  const over: Primitive[] = [
    ...dims(ctx, { ...common, side: 'above', datum: frame.y + frame.h, tiers: [{ stations: [0, out] }] }).items,
    ...dims(ctx, { ...common, side: 'left', datum: frame.x, tiers: [{ stations: [foot, top] }] }).items,
    // The line whose run and rise are given.
    { kind: 'line', layer: 'S-ANNO-DIMS', pen: 'center', a: { x: 0, y: foot }, b: { x: out, y: top } },
    { kind: 'line', layer: 'S-ANNO-DIMS', pen: 'center', a: { x: 0, y: frame.y }, b: { x: 0, y: frame.y + frame.h } },
  ];
  const placed = placeView(ctx, {
    box: room,
    model: frame,
    scale,
    number,
    title: `Knee brace ${brace.mark} to ${bar.role === 'strut' ? 'cross member' : 'beam'}`,
    items,
    over,
  });
  const word = (m: Member) => `${m.mark}: ${m.section.label}`;
  const mid = { x: out / 2, y: (foot + top) / 2 };
  const notes: ColumnNote[] = (
    [
      [{ x: out + 8, y: flat(bar.end).y }, `${word(bar)}${bar.role === 'strut' ? ', cross member' : ''}.`, bar.mark],
      [{ x: out, y: top }, `${k.head.mark}: ${heldBy(ctx, k.head)}.`, k.head.mark],
      [
        mid,
        `${word(brace)}, ${k.count} of these, cut length ${len(brace.length)}; ${brace.cuts.join('; ')}. Cut to the measured post.`,
        brace.mark,
      ],
      [
        { x: post.section.width / 2, y: foot + post.section.width / 2 },
        `${k.foot.mark}: ${heldBy(ctx, k.foot)}.`,
        k.foot.mark,
      ],
      [{ x: 0, y: foot - 12 }, `${word(post)}.`, post.mark],
    ] as const
  ).map(([at, text, mark]) => ({ target: toPaper(placed.viewport, at), text, mark }));
  const column = noteColumn({
    notes,
    x: room.x + room.w + style.gutter,
    side: 'right',
    top: box.y + box.h,
    bottom: box.y,
    width: notesWidth,
    layer: 'S-ANNO-NOTE',
    style,
  });
  return {
    viewport: { ...placed.viewport, window: frame },
    items: [...placed.items, ...column.items],
    label: scale.label,
  };
}

const PER_SHEET = 2;

function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const knees = kneesOf(ctx);
  const bodies: SheetBody[] = [];
  for (let i = 0; i < knees.length; i += PER_SHEET) {
    const w = (area.w - style.gutter) / PER_SHEET;
    const views = knees
      .slice(i, i + PER_SHEET)
      .map((k, n) => view(ctx, k, { x: area.x + n * (w + style.gutter), y: area.y, w, h: area.h }, String(i + n + 1)));
    bodies.push({
      title: 'Knee brace details',
      scaleNote: views.every((v) => v.label === views[0]!.label) ? views[0]!.label : 'As noted',
      viewports: views.map((v) => v.viewport),
      items: views.flatMap((v) => v.items),
    });
  }
  return bodies;
}

export const braceDetails: SheetKind = {
  title: 'Knee brace details',
  discipline: 'S',
  needed: (i) => i.structure.members.some((m) => m.role === 'brace'),
  draw,
};
