/** The stake-out as a scaled plan: house wall, home base, strings and boards, footing centers, running dimensions, diagonals. */
import type { Vec2 } from '../../base/vec.js';
import type { Layout, StringLine } from '../../sitework/layout/index.js';
import type { Footing, Structure } from '../../structure/model.js';
import {
  breakLine,
  dimString,
  gridLine,
  leader,
  pencil,
  placeTags,
  type Style,
  type TagWish,
} from '../annotate/index.js';
import { type LayerName, type Primitive, type Rect, readingAngle, textWidth } from '../ir/index.js';

const WALL = 6;
const LAYER: LayerName = 'C-ANNO-DIMS';
/** Half a batter board, inches. Drawing only. */
const BOARD = 14;

/** Model rectangle of the plan: home base, all boards, and the wall between. Places from home base. */
export function stakeExtents(layout: Layout): Rect {
  const xs = [0, ...layout.boards.map((b) => b.along)];
  const ys = [-WALL, ...layout.boards.map((b) => b.out)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
}

interface PlanInput {
  readonly layout: Layout;
  readonly structure: Structure;
  readonly scale: number;
  readonly style: Style;
  len(inches: number): string;
}

const line = (
  a: Vec2,
  b: Vec2,
  pen: 'cut' | 'center' | 'hidden' | 'existing' | 'grid',
  layer: LayerName,
): Primitive => ({
  kind: 'line',
  layer,
  pen,
  a,
  b,
});

const square = (at: Vec2, half: number, layer: LayerName, pen: 'hidden' | 'cut', mark: string): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  mark,
  closed: true,
  points: [
    { x: at.x - half, y: at.y - half },
    { x: at.x + half, y: at.y - half },
    { x: at.x + half, y: at.y + half },
    { x: at.x - half, y: at.y + half },
  ],
});

function houseWall(i: PlanInput, view: Rect): Primitive[] {
  const corner = i.layout.points.find((p) => p.role === 'corner')?.along ?? view.x + view.w;
  const end = Math.min(corner, view.x + view.w);
  const out: Primitive[] = [
    {
      kind: 'polyline',
      layer: 'A-WALL-EXST',
      pen: 'existing-cut',
      fill: 'poche',
      closed: true,
      points: [
        { x: Math.min(0, end), y: -WALL },
        { x: Math.max(0, end), y: -WALL },
        { x: Math.max(0, end), y: 0 },
        { x: Math.min(0, end), y: 0 },
      ],
    },
  ];
  if (end < corner - 1)
    out.push(
      ...breakLine({
        a: { x: end, y: -2.5 * WALL },
        b: { x: end, y: 1.5 * WALL },
        layer: 'A-WALL-EXST',
        style: i.style,
      }),
    );
  return out;
}

function footingShape(f: Footing, at: Vec2): Primitive[] {
  const out: Primitive[] = [];
  if (f.round)
    out.push({ kind: 'circle', layer: 'S-FNDN', center: at, radius: f.size / 2, pen: 'hidden', mark: f.mark });
  else out.push(square(at, f.size / 2, 'S-FNDN', 'hidden', f.mark));
  if (f.pierDiameter > 0 && f.pierDiameter < f.size)
    out.push({ kind: 'circle', layer: 'S-FNDN', center: at, radius: f.pierDiameter / 2, pen: 'new', mark: f.mark });
  return out;
}

function stringItems(layout: Layout): Primitive[] {
  const nail = new Map(layout.boards.map((b) => [b.nail, b]));
  return layout.strings.flatMap((s) => {
    const [a, b] = s.ends.map((n) => nail.get(n)!);
    const out: Primitive[] = [line({ x: a!.along, y: a!.out }, { x: b!.along, y: b!.out }, 'grid', 'S-GRID')];
    for (const end of [a!, b!]) {
      if (end.onWall) continue;
      const [dx, dy] = s.runs === 'out' ? [BOARD, 0] : [0, BOARD];
      out.push(
        line({ x: end.along - dx, y: end.out - dy }, { x: end.along + dx, y: end.out + dy }, 'cut', 'C-ANNO-SYMB'),
      );
    }
    return out;
  });
}

/** Values along one tape that is hooked once at home base: each at its place, in rows so that none overlaps. */
function runningRow(
  i: PlanInput,
  strings: readonly StringLine[],
  at: number,
): { readonly items: Primitive[]; readonly rows: number } {
  const h = i.style.note;
  const p = pencil(LAYER, 'dimension');
  const far = strings.reduce((m, s) => (Math.abs(s.at) > Math.abs(m) ? s.at : m), 0);
  const out: Primitive[] = [line({ x: Math.min(0, far), y: at }, { x: Math.max(0, far), y: at }, 'existing', LAYER)];
  const rows: number[] = [];
  const put = (x: number, text: string): void => {
    const half = textWidth(text, h) / 2 + 0.4 * h;
    const paper = x * i.scale;
    let row = rows.findIndex((right) => right <= paper - half);
    if (row < 0) row = rows.push(Number.NEGATIVE_INFINITY) - 1;
    rows[row] = paper + half;
    const drop = (1.9 + 1.75 * row) * h;
    out.push({
      kind: 'symbol',
      layer: LAYER,
      at: { x, y: at },
      items: [
        p.line(0, 0.5 * h, 0, -(drop - 1.3 * h), 'dimension'),
        p.line(-0.35 * h, -0.35 * h, 0.35 * h, 0.35 * h, 'tick'),
        p.text(0, -drop, text, h, { align: 'center' }),
      ],
    });
  };
  put(0, '0');
  for (const s of strings) put(s.at, i.len(s.at));
  return { items: out, rows: rows.length };
}

/** The same up one side, from the wall. */
function runningColumn(i: PlanInput, strings: readonly StringLine[], at: number): Primitive[] {
  const h = i.style.note;
  const p = pencil(LAYER, 'dimension');
  const far = Math.max(0, ...strings.map((s) => s.at));
  const tick = (y: number, text: string): Primitive => ({
    kind: 'symbol',
    layer: LAYER,
    at: { x: at, y },
    items: [
      p.line(-0.5 * h, 0, 0.5 * h, 0, 'dimension'),
      p.line(-0.35 * h, -0.35 * h, 0.35 * h, 0.35 * h, 'tick'),
      p.text(-0.9 * h, 0, text, h, { align: 'right', valign: 'middle' }),
    ],
  });
  return [
    line({ x: at, y: 0 }, { x: at, y: far }, 'existing', LAYER),
    tick(0, '0'),
    ...strings.map((s) => tick(s.at, i.len(s.at))),
  ];
}

/** Diagonals of the largest rectangle with their lengths lettered on them. */
function diagonalItems(i: PlanInput): { readonly lines: Primitive[]; readonly texts: Primitive[] } {
  const at = new Map(i.layout.points.map((p) => [p.name, { x: p.along, y: p.out }]));
  const largest = [...i.layout.rectangles].sort((a, b) => b.first.length - a.first.length)[0];
  const shown = largest ? [largest.first, largest.second] : i.layout.ties.slice(0, 8);
  const lines: Primitive[] = [];
  const texts: Primitive[] = [];
  shown.forEach((d) => {
    const [a, b] = [at.get(d.from)!, at.get(d.to)!];
    lines.push(line(a, b, 'hidden', 'C-ANNO-SYMB'));
    const t = 0.3;
    const h = i.style.note;
    texts.push({
      kind: 'symbol',
      layer: LAYER,
      at: { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t },
      angle: readingAngle(Math.atan2(b.y - a.y, b.x - a.x)),
      items: [pencil(LAYER).text(0, 0.42 * h, i.len(d.length), h, { align: 'center', mask: true })],
    });
  });
  return { lines, texts };
}

/** Bubbles of strings beyond the dimensions, so that nothing runs through them; one that would touch its neighbor stands farther out. */
function bubbles(i: PlanInput, strings: readonly StringLine[], beyond: number): Primitive[] {
  const { layout, style, scale } = i;
  const need = 2.2 * style.bubble;
  let last = { at: Number.NEGATIVE_INFINITY, out: false };
  return strings.flatMap((s) => {
    const end = layout.boards.find((b) => b.nail === s.ends[1])!;
    const out = (s.at - last.at) * scale < need && !last.out;
    last = { at: s.at, out };
    const step = (beyond + 0.7 * style.note + (out ? need : 0)) / scale;
    const a = { x: end.along, y: end.out };
    const b = s.runs === 'out' ? { x: a.x, y: a.y + step } : { x: a.x + step, y: a.y };
    return gridLine({ a, b, label: s.name, layer: 'S-GRID', style });
  });
}

/** What the plan draws: `items` in model inches from home base, `over` lettering. */
export function stakePlan(i: PlanInput): {
  readonly items: readonly Primitive[];
  readonly over: readonly Primitive[];
  /** Paper taken above the boards. */
  readonly above: number;
} {
  const { layout, structure, style, scale } = i;
  const view = stakeExtents(layout);
  const h = style.note;
  const local = (p: Vec2): Vec2 => ({ x: p.x - layout.home.x, y: p.y - layout.home.y });
  const diagonals = diagonalItems(i);
  const items: Primitive[] = [
    ...houseWall(i, view),
    ...structure.slabs.map(
      (s): Primitive => ({
        kind: 'polyline',
        layer: s.state === 'new' ? 'S-SLAB' : 'S-SLAB-EXST',
        pen: s.state === 'removed' ? 'demolition' : s.state === 'new' ? 'new-fine' : 'existing',
        closed: true,
        points: s.outline.map(local),
        mark: s.mark,
      }),
    ),
    ...diagonals.lines,
    ...stringItems(layout),
    ...structure.footings.flatMap((f) => footingShape(f, local(f.at))),
  ];
  const over: Primitive[] = [...diagonals.texts];
  const [runsOut, runsAlong] = (['out', 'along'] as const).map((r) => layout.strings.filter((s) => s.runs === r));
  const dims = (side: 'above' | 'right', datum: number, stations: readonly number[]) =>
    dimString({ side, datum, tiers: [{ stations }], scale, layer: LAYER, style, format: i.len, first: 2.4 * h });
  const across = dims(
    'above',
    view.y + view.h,
    runsOut!.map((s) => s.at),
  );
  const up = dims('right', view.x + view.w, [0, ...runsAlong!.map((s) => s.at)]);
  over.push(...across.items, ...up.items);
  over.push(...bubbles(i, runsOut!, across.depth), ...bubbles(i, runsAlong!, up.depth));
  const running = runningRow(i, runsOut!, -WALL - (1.6 * h) / scale);
  over.push(...running.items);
  over.push(...runningColumn(i, runsAlong!, view.x - (1.2 * h) / scale));
  const wishes = structure.footings.flatMap((f): TagWish[] => {
    const p = layout.points.find((q) => q.name === f.mark);
    if (!p) return [];
    const side = p.along <= view.x + view.w / 2 ? 1 : -1;
    const away = (f.size / 2) * scale + 1.7 * h;
    return [
      {
        kind: 'footing',
        text: f.mark,
        at: { x: p.along, y: p.out },
        off: { x: side * away, y: away },
        layer: 'S-ANNO-SYMB',
        style,
        path: f.path,
      },
    ];
  });
  over.push(...placeTags(wishes, scale, over, items));
  over.push({
    kind: 'symbol',
    layer: 'C-ANNO-SYMB',
    at: { x: 0, y: 0 },
    items: [
      { kind: 'circle', layer: 'C-ANNO-SYMB', center: { x: 0, y: 0 }, radius: 0.62 * h, pen: 'profile', fill: 'paper' },
      { kind: 'circle', layer: 'C-ANNO-SYMB', center: { x: 0, y: 0 }, radius: 0.26 * h, fill: 'ink' },
    ],
  });
  over.push(
    // Below the running row: above it stand strings and boards.
    leader({
      at: { x: 0, y: 0 },
      dx: 2.5 * h,
      dy: -(6.6 + 1.75 * (running.rows - 1)) * h,
      text: 'HOME BASE, 0 and 0, and the benchmark’s mark',
      layer: 'C-ANNO-NOTE',
      style,
      head: 'none',
    }),
  );
  return { items, over, above: across.depth + 0.7 * h + 4.4 * style.bubble };
}
