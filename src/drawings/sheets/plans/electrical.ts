/** Electrical plan: devices where they stand, which switch works what, and what an inspector looks for. */
import type { Vec2 } from '../../../base/vec.js';
import type { Device, DeviceKind } from '../../../project/model.js';
import { type Block, placeNote, placeTags } from '../../annotate/index.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from '../contract.js';
import { bar } from '../frame-parts.js';
import { dims, unique } from '../parts.js';
import { postsOnPlan, slabPlan } from '../plan-base.js';
import { electricalBlocks } from './electrical-notes.js';
import { deviceSymbol, SYMBOLS } from './electrical-symbols.js';
import { type NearHouse, nearHouse, nearHousePlan, roofAbove } from './near-house.js';
import { doorLeaves, openingTags, shownOpenings } from './openings.js';
import { planSheet } from './plan-sheet.js';

/** Devices as drawn: one that would lie on another's symbol moves along the wall, as such plans are read. */
function besideEachOther(devices: readonly Device[], gap: number): Device[] {
  const out: Device[] = [];
  for (const d of devices) {
    let { x } = d.at;
    for (let turn = 0; turn < devices.length; turn++) {
      const near = out.find((o) => Math.hypot(o.at.x - x, o.at.y - d.at.y) < gap - 1e-6);
      if (!near) break;
      x = near.at.x + gap;
    }
    out.push({ ...d, at: { x, y: d.at.y } });
  }
  return out;
}

/** A bowed dashed line from a switch to what it works. */
function wire(a: Vec2, b: Vec2): Primitive {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const bow = 0.14;
  const points = Array.from({ length: 17 }, (_, i) => {
    const t = i / 16;
    const s = 4 * bow * t * (1 - t);
    return { x: a.x + t * dx - s * dy, y: a.y + t * dy + s * dx };
  });
  return { kind: 'polyline', layer: 'E-WIRE', pen: 'hidden', points };
}

const wires = (devices: readonly Device[]): Primitive[] =>
  devices.flatMap((d) => {
    const from = devices.find((s) => s.mark === d.switchedBy);
    return from && d.state !== 'removed' ? [wire(from.at, d.at)] : [];
  });

/** Marks beside their symbols. */
function names(
  ctx: SheetContext,
  devices: readonly Device[],
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const d of devices) {
    const way = (x: number, y: number): Primitive => ({
      kind: 'symbol',
      layer: 'E-ANNO-NOTE',
      at: d.at,
      mark: d.mark,
      path: d.path,
      items: [
        {
          kind: 'text',
          layer: 'E-ANNO-NOTE',
          at: { x: x * h, y: y * h },
          content: d.switchedBy === '' ? d.mark : `${d.mark}, ${d.switchedBy}`,
          height: h,
          align: x > 0.1 ? 'left' : x < -0.1 ? 'right' : 'center',
          valign: 'middle',
          face: 'condensed-bold',
          mask: true,
        },
      ],
    });
    const ways = [
      way(1.9, 1.2),
      way(-1.9, 1.2),
      way(1.9, -1.4),
      way(-1.9, -1.4),
      way(0, 2.8),
      way(0, -2.8),
      way(2.4, 3.2),
      way(-2.4, 3.2),
    ];
    out.push(placeNote(ways as [Primitive, ...Primitive[]], 0.2 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

function strings(ctx: SheetContext, v: NearHouse, devices: readonly Device[]): Primitive[] {
  if (devices.length === 0) return [];
  const { roofs } = ctx.input.structure;
  const common = { scale: v.scale.ratio, layer: 'E-ANNO-NOTE' } as const;
  const fresh = devices.filter((d) => d.state === 'new' && d.place !== 'dry');
  const posts = ctx.input.structure.members.filter((m) => m.role === 'post').map((m) => m.start);
  const left = Math.min(
    ...roofs.map((r) => r.min.x),
    ...ctx.input.structure.slabs.flatMap((s) => s.outline.map((p) => p.x)),
  );
  const ends = [Math.min(...posts.map((p) => p.x)), Math.max(...posts.map((p) => p.x))];
  return [
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: v.model.y + v.model.h,
      tiers: [{ stations: unique([...fresh.map((d) => d.at.x), ...ends]) }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: left,
      tiers: [{ stations: unique([0, ...fresh.map((d) => d.at.y)]) }],
    }).items,
  ];
}

/** The symbols used, with what they mean, a row each. */
function legend(ctx: SheetContext, devices: readonly Device[]): Block[] {
  const kinds = [...new Set(devices.map((d) => d.kind))] as DeviceKind[];
  if (kinds.length === 0) return [];
  const h = ctx.style.note;
  const row = (means: string, sign: (x: number, y: number) => Primitive): Block => ({
    kind: 'drawing',
    height: 2.4 * h,
    draw: (at) => [
      sign(at.x + 3 * h, at.y - 1.2 * h),
      {
        kind: 'text',
        layer: 'E-ANNO-NOTE',
        at: { x: at.x + 7 * h, y: at.y - 1.2 * h },
        content: means,
        height: h,
        valign: 'middle',
      },
    ],
  });
  return [
    { kind: 'heading', text: 'Legend' },
    ...kinds.map((kind) =>
      row(SYMBOLS[kind].means, (x, y) =>
        deviceSymbol({ kind, at: { x, y }, state: 'new', mark: '', path: '/cover/electrical' }, h),
      ),
    ),
    row('switch and what it works; not a run of cable', (x, y) => ({
      kind: 'line',
      layer: 'E-WIRE',
      pen: 'hidden',
      a: { x: x - 2 * h, y },
      b: { x: x + 2 * h, y },
    })),
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, project } = ctx.input;
  const devices = project.cover.electrical?.devices ?? [];
  return planSheet(ctx, {
    title: 'Electrical plan',
    blocks: [...electricalBlocks(ctx, devices), ...legend(ctx, devices)],
    view: (box) => nearHouse(ctx, box, { rooms: false }),
    content: (v) => {
      const h = ctx.style.note;
      const { ratio } = v.scale;
      const drawn = besideEachOther(devices, (3.4 * h) / ratio);
      const shown = shownOpenings(ctx, v.model);
      const items: Primitive[] = [
        ...slabPlan(structure),
        ...nearHousePlan(ctx, v),
        ...doorLeaves(shown),
        ...roofAbove(structure),
        ...structure.members.filter((m) => m.role === 'beam').map((m) => bar(m, 'S-BEAM', 'hidden')),
        ...postsOnPlan(structure, { pen: 'cut', fill: 'ink' }),
        ...wires(drawn),
      ];
      const over: Primitive[] = [...strings(ctx, v, devices), ...drawn.map((d) => deviceSymbol(d, h))];
      over.push(...names(ctx, drawn, ratio, over, items));
      over.push(...placeTags(openingTags(ctx, shown), ratio, over, items));
      return { items, over };
    },
  });
}

export const electricalPlan: SheetKind = {
  title: 'Electrical plan',
  discipline: 'E',
  needed: ({ project }) => project.cover.electrical !== undefined,
  draw,
};
