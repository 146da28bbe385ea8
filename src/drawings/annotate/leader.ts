import type { Vec2 } from '../../base/vec.js';
import { type LayerName, type PaperSymbol, type Primitive, textWidth, wrapText } from '../ir/index.js';
import { pencil } from './pencil.js';
import type { Style } from './style.js';

export type LeaderHead = 'arrow' | 'dot' | 'none';

/** Leader head at the origin of a leader that leaves in direction `angle`. */
export function leaderHead(head: LeaderHead, angle: number, style: Style, layer: LayerName): Primitive[] {
  const p = pencil(layer);
  const k = style.note;
  if (head === 'none') return [];
  if (head === 'dot') return [{ kind: 'circle', layer, center: { x: 0, y: 0 }, radius: 0.22 * k, fill: 'ink' }];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (u: number, v: number): readonly [number, number] => [c * u - s * v, s * u + c * v];
  return [p.shape([at(0, 0), at(k, 0.19 * k), at(k, -0.19 * k)], undefined, 'ink')];
}

export interface LeaderOptions {
  /** What the note speaks of, in the coordinates of the list it is put in (model or paper). */
  readonly at: Vec2;
  /** Elbow, in paper inches from `at`; the text stands on the side to which `dx` points. */
  readonly dx: number;
  readonly dy: number;
  readonly text: string;
  readonly layer: LayerName;
  readonly style: Style;
  readonly head?: LeaderHead;
  /** Wraps the text at this many paper inches. */
  readonly width?: number;
  readonly mark?: string;
  readonly path?: string;
  /** Clears the paper behind the text. */
  readonly mask?: boolean;
}

/** A note with a bent leader: arrow, oblique line, short shoulder, text. */
export function leader(o: LeaderOptions): PaperSymbol {
  const { style, layer } = o;
  const h = style.note;
  const p = pencil(layer, 'leader');
  const side = o.dx < 0 ? -1 : 1;
  const shoulder = 0.9 * h * side;
  const lines = wrapText(o.text, o.width ?? Infinity, h);
  const x = o.dx + shoulder + 0.45 * h * side;
  return {
    kind: 'symbol',
    layer,
    at: o.at,
    ...(o.mark !== undefined && { mark: o.mark }),
    ...(o.path !== undefined && { path: o.path }),
    items: [
      p.path([
        [0, 0],
        [o.dx, o.dy],
        [o.dx + shoulder, o.dy],
      ]),
      ...leaderHead(o.head ?? 'arrow', Math.atan2(o.dy, o.dx), style, layer),
      ...lines.map((t, i) =>
        p.text(x, o.dy - h / 2 - i * h * style.leading, t, h, {
          align: side < 0 ? 'right' : 'left',
          ...(o.mask && { mask: true }),
        }),
      ),
    ],
  };
}

export interface ColumnNote {
  /** Paper point the note speaks of. */
  readonly target: Vec2;
  readonly text: string;
  readonly mark?: string;
  readonly path?: string;
  readonly head?: LeaderHead;
}

export interface NoteColumnOptions {
  readonly notes: readonly ColumnNote[];
  /** Paper x of the edge that faces the view. */
  readonly x: number;
  /** The side of the view on which the column stands. */
  readonly side: 'left' | 'right';
  readonly top: number;
  readonly bottom: number;
  /** Width of the text, paper inches. */
  readonly width: number;
  readonly layer: LayerName;
  readonly style: Style;
}

export interface NoteColumn {
  readonly items: readonly Primitive[];
  /** Paper inches by which the notes are taller than the room given; 0 when they fit. */
  readonly overflow: number;
  /** Paper y of the lowest text. */
  readonly bottom: number;
  /** Leaders that still cross; 0 except for targets no order can serve. */
  readonly crossings: number;
}

interface Slot {
  readonly note: ColumnNote;
  readonly lines: readonly string[];
  readonly height: number;
}

/** Tops of stacked blocks as near as can be to where each wants to be, in order, without overlap (pool adjacent violators). */
export function stack(
  wanted: readonly number[],
  heights: readonly number[],
  gap: number,
  top: number,
  bottom: number,
): number[] {
  interface Pool {
    sum: number;
    count: number;
    height: number;
    first: number;
  }
  const pools: Pool[] = [];
  const topOf = (p: Pool) => Math.min(top, Math.max(bottom + p.height, p.sum / p.count));
  wanted.forEach((w, i) => {
    let pool: Pool = { sum: w, count: 1, height: heights[i]!, first: i };
    while (pools.length > 0) {
      const above = pools.at(-1)!;
      if (topOf(above) - above.height - gap >= topOf(pool)) break;
      pools.pop();
      // Wishes of the lower pool, moved up by what stands above it, speak for the top of the merged pool.
      pool = {
        sum: above.sum + pool.sum + pool.count * (above.height + gap),
        count: above.count + pool.count,
        height: above.height + gap + pool.height,
        first: above.first,
      };
    }
    pools.push(pool);
  });
  const tops: number[] = [];
  for (let k = 0; k < pools.length; k++) {
    let y = topOf(pools[k]!);
    const end = pools[k + 1]?.first ?? wanted.length;
    for (let i = pools[k]!.first; i < end; i++) {
      tops.push(y);
      y -= heights[i]! + gap;
    }
  }
  return tops;
}

const cross = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean => {
  const o = (p: Vec2, q: Vec2, r: Vec2) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return o(a, b, c) * o(a, b, d) < -1e-12 && o(c, d, a) * o(c, d, b) < -1e-12;
};

/**
 * Notes in a column beside a view, in paper inches: texts never overlap, each as near as can be to the height of its target,
 * ordered so that leaders do not cross (crossing pairs change places until none is left).
 */
export function noteColumn(o: NoteColumnOptions): NoteColumn {
  const { style, layer, x, side } = o;
  const h = style.note;
  const out = side === 'right' ? 1 : -1;
  const step = h * style.leading;
  const gap = h * 1.15;
  const slots: Slot[] = o.notes.map((note) => {
    const lines = wrapText(note.text, o.width, h);
    return { note, lines, height: h + (lines.length - 1) * step };
  });
  const port = (top: number): Vec2 => ({ x: x - 1.35 * h * out, y: top - h / 2 });
  let order = [...slots].sort(
    (a, b) => b.note.target.y - a.note.target.y || (a.note.target.x - b.note.target.x) * -out,
  );
  const arrange = (list: readonly Slot[]) => {
    const tops = stack(
      list.map((s) => s.note.target.y + h / 2),
      list.map((s) => s.height),
      gap,
      o.top,
      o.bottom,
    );
    const pairs: [number, number][] = [];
    for (let i = 0; i < list.length; i++) {
      for (let j = i + 1; j < list.length; j++) {
        if (cross(port(tops[i]!), list[i]!.note.target, port(tops[j]!), list[j]!.note.target)) pairs.push([i, j]);
      }
    }
    return { tops, pairs };
  };
  let best = { order, ...arrange(order) };
  for (let turn = 0; turn < slots.length * slots.length && best.pairs.length > 0; turn++) {
    const now = arrange(order);
    if (now.pairs.length < best.pairs.length) best = { order, ...now };
    const pair = now.pairs[turn % Math.max(1, now.pairs.length)];
    if (pair === undefined) break;
    const next = [...order];
    [next[pair[0]], next[pair[1]]] = [order[pair[1]]!, order[pair[0]]!];
    order = next;
  }
  const last = arrange(order);
  if (last.pairs.length < best.pairs.length) best = { order, ...last };

  const p = pencil(layer, 'leader');
  const items: Primitive[] = [];
  let bottom = o.top;
  best.order.forEach((s, i) => {
    const top = best.tops[i]!;
    const elbow = port(top);
    const t = s.note.target;
    const tag = {
      ...(s.note.mark !== undefined && { mark: s.note.mark }),
      ...(s.note.path !== undefined && { path: s.note.path }),
    };
    const angle = Math.atan2(elbow.y - t.y, elbow.x - t.x);
    items.push({
      ...p.path([
        [t.x, t.y],
        [elbow.x, elbow.y],
        [x - 0.45 * h * out, elbow.y],
      ]),
      ...tag,
    });
    items.push({
      kind: 'symbol',
      layer,
      at: t,
      items: leaderHead(s.note.head ?? 'arrow', angle, style, layer),
      ...tag,
    });
    s.lines.forEach((line, k) => {
      items.push({ ...p.text(x, top - h - k * step, line, h, { align: out < 0 ? 'right' : 'left' }), ...tag });
    });
    bottom = Math.min(bottom, top - s.height);
  });
  const need = slots.reduce((sum, s) => sum + s.height + gap, -gap);
  return { items, bottom, overflow: Math.max(0, need - (o.top - o.bottom)), crossings: best.pairs.length };
}

/** Widest line of a set of notes once wrapped, to size a column. */
export const noteWidth = (texts: readonly string[], limit: number, style: Style): number =>
  Math.max(0, ...texts.flatMap((t) => wrapText(t, limit, style.note)).map((l) => textWidth(l, style.note)));
