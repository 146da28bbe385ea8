import type { Vec2 } from '../../base/vec.js';
import { type Coords, clipArea, clipPath } from './clip.js';
import { explodeDimension } from './dimension.js';
import type { FaceName } from './faces.js';
import type { LayerName } from './layer.js';
import { PATTERNS, type Pattern } from './pattern.js';
import type { FillName, InkName, PenName } from './pen.js';
import type { Common, Dimension, HAlign, Hatch, PaperSymbol, Primitive, PrimitiveKind, Text } from './primitive.js';
import type { Rect, Sheet, Viewport } from './sheet.js';
import { descent, textWidth } from './text.js';

/** What a back-end must be able to draw: three kinds, in paper inches, already clipped, in painting order. */
export interface FlatCommon {
  readonly layer: LayerName;
  readonly mark: string | undefined;
  readonly role: string | undefined;
  readonly path: string | undefined;
}
/** Several strokes drawn with one pen; `closed` closes each of them, `fill` is even-odd over all. */
export interface FlatPath extends FlatCommon {
  readonly kind: 'path';
  readonly strokes: readonly Coords[];
  readonly closed: boolean;
  readonly pen: PenName | undefined;
  readonly fill: FillName | undefined;
}
/** Arc, counter-clockwise; a full circle when `end - start` is 2π. */
export interface FlatArc extends FlatCommon {
  readonly kind: 'arc';
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly start: number;
  readonly end: number;
  readonly pen: PenName | undefined;
  readonly fill: FillName | undefined;
}
/** Text on its baseline; `x`, `y` is the left end, the middle or the right end according to `align`. */
export interface FlatText extends FlatCommon {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly content: string;
  readonly height: number;
  readonly face: FaceName;
  readonly align: HAlign;
  readonly ink: InkName;
  readonly width: number;
}
export type Flat = FlatPath | FlatArc | FlatText;

/** Similarity from local to paper coordinates. */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly angle: number;
  readonly c: number;
  readonly s: number;
}

const PAPER: Frame = { x: 0, y: 0, scale: 1, angle: 0, c: 1, s: 0 };

const map = (f: Frame, p: Vec2): Vec2 => ({
  x: f.x + f.scale * (f.c * p.x - f.s * p.y),
  y: f.y + f.scale * (f.s * p.x + f.c * p.y),
});

function coords(f: Frame, points: readonly Vec2[]): number[] {
  const out = new Array<number>(points.length * 2);
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    out[2 * i] = f.x + f.scale * (f.c * p.x - f.s * p.y);
    out[2 * i + 1] = f.y + f.scale * (f.s * p.x + f.c * p.y);
  }
  return out;
}

interface Sink {
  readonly out: Flat[];
  /** Masked lettering: drawn after everything else of its viewport, so that no later line crosses it. */
  readonly last: Flat[];
  readonly clip: Rect | undefined;
  /** Marks of an enclosing symbol, for contents that carry none. */
  readonly inherit: Common | undefined;
}

/** Builders write every field out: spreading a shared head would cost more than all the geometry. */
const flatPath = (
  p: Common,
  up: Common | undefined,
  strokes: readonly Coords[],
  closed: boolean,
  pen: PenName | undefined,
  fill: FillName | undefined,
): FlatPath => ({
  kind: 'path',
  layer: p.layer,
  mark: p.mark ?? up?.mark,
  role: p.role ?? up?.role,
  path: p.path ?? up?.path,
  strokes,
  closed,
  pen,
  fill,
});

const within = (x: number, y: number, r: Rect): boolean =>
  x >= r.x - 1e-9 && x <= r.x + r.w + 1e-9 && y >= r.y - 1e-9 && y <= r.y + r.h + 1e-9;

function addPath(
  p: Common,
  path: number[],
  closed: boolean,
  pen: PenName | undefined,
  fill: FillName | undefined,
  sink: Sink,
): void {
  if (sink.clip === undefined) {
    sink.out.push(flatPath(p, sink.inherit, [path], closed, pen, fill));
    return;
  }
  const kept = clipArea(path, sink.clip);
  if (kept === path) {
    sink.out.push(flatPath(p, sink.inherit, [path], closed, pen, fill));
    return;
  }
  if (fill !== undefined && kept.length > 4) {
    sink.out.push(flatPath(p, sink.inherit, [kept], true, undefined, fill));
  }
  if (pen !== undefined) {
    const strokes = clipPath(closed ? [...path, path[0]!, path[1]!] : path, sink.clip);
    if (strokes.length > 0) sink.out.push(flatPath(p, sink.inherit, strokes, false, pen, undefined));
  }
}

function addArc(
  p: Common & { readonly center: Vec2; readonly radius: number },
  start: number,
  end: number,
  pen: PenName | undefined,
  fill: FillName | undefined,
  f: Frame,
  sink: Sink,
): void {
  const c = map(f, p.center);
  const r = p.radius * f.scale;
  const clip = sink.clip;
  const whole = clip === undefined || (within(c.x - r, c.y - r, clip) && within(c.x + r, c.y + r, clip));
  const [a0, a1] = [start + f.angle, end + f.angle];
  if (whole) {
    const up = sink.inherit;
    sink.out.push({
      kind: 'arc',
      layer: p.layer,
      mark: p.mark ?? up?.mark,
      role: p.role ?? up?.role,
      path: p.path ?? up?.path,
      x: c.x,
      y: c.y,
      r,
      start: a0,
      end: a1,
      pen,
      fill,
    });
    return;
  }
  const n = Math.max(8, Math.ceil(((a1 - a0) * r) / 0.03));
  const path: number[] = [];
  for (let i = 0; i <= n; i++) {
    const a = a0 + ((a1 - a0) * i) / n;
    path.push(c.x + r * Math.cos(a), c.y + r * Math.sin(a));
  }
  addPath(p, path, false, pen, fill, sink);
}

function addText(t: Text, f: Frame, sink: Sink): void {
  const at = map(f, t.at);
  if (sink.clip !== undefined && !within(at.x, at.y, sink.clip)) return;
  const face = t.face ?? 'regular';
  const align = t.align ?? 'left';
  const angle = (t.angle ?? 0) + f.angle;
  const drop = t.valign === 'middle' ? t.height / 2 : t.valign === 'top' ? t.height : 0;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const x = at.x + s * drop;
  const y = at.y - c * drop;
  const width = textWidth(t.content, t.height, face);
  const up = sink.inherit;
  const out = t.mask ? sink.last : sink.out;
  if (t.mask) {
    const pad = 0.3 * t.height;
    const left = (align === 'left' ? 0 : align === 'center' ? -width / 2 : -width) - pad;
    const low = -Math.min(pad, descent(t.height, face));
    const corner = (u: number, v: number): [number, number] => [x + c * u - s * v, y + s * u + c * v];
    const right = left + width + 2 * pad;
    const high = t.height + pad;
    const box = [...corner(left, low), ...corner(right, low), ...corner(right, high), ...corner(left, high)];
    out.push(flatPath(t, sink.inherit, [box], true, undefined, 'paper'));
  }
  out.push({
    kind: 'text',
    layer: t.layer,
    mark: t.mark ?? up?.mark,
    role: t.role ?? up?.role,
    path: t.path ?? up?.path,
    x,
    y,
    angle,
    content: t.content,
    height: t.height,
    face,
    align,
    ink: t.ink ?? 'solid',
    width,
  });
}

function addHatch(h: Hatch, f: Frame, sink: Sink): void {
  const pattern: Pattern = PATTERNS[h.pattern];
  const loops = h.loops.map((loop) => loop.map((p) => map(f, p)));
  let strokes: Coords[] = pattern.strokes(loops, (h.angle ?? 0) + f.angle, h.spacing ?? 1);
  const clip = sink.clip;
  if (clip !== undefined) strokes = strokes.flatMap((s) => clipPath(s, clip));
  if (strokes.length > 0) {
    sink.out.push(flatPath(h, sink.inherit, strokes, false, pattern.pen, undefined));
  }
}

function addDimension(d: Dimension, f: Frame, sink: Sink): void {
  const placed: Dimension = { ...d, a: map(f, d.a), b: map(f, d.b), base: map(f, d.base), angle: d.angle + f.angle };
  for (const p of explodeDimension(placed))
    add(p, PAPER, { out: sink.out, last: sink.last, clip: sink.clip, inherit: d });
}

function addSymbol(s: PaperSymbol, f: Frame, sink: Sink): void {
  const at = map(f, s.at);
  if (sink.clip !== undefined && !within(at.x, at.y, sink.clip)) return;
  const angle = f.angle + (s.angle ?? 0);
  const inner: Frame = { x: at.x, y: at.y, scale: 1, angle, c: Math.cos(angle), s: Math.sin(angle) };
  const up = sink.inherit;
  const mark = s.mark ?? up?.mark;
  const role = s.role ?? up?.role;
  const path = s.path ?? up?.path;
  const inherit: Common = {
    layer: s.layer,
    ...(mark !== undefined && { mark }),
    ...(role !== undefined && { role }),
    ...(path !== undefined && { path }),
  };
  const inside: Sink = { out: sink.out, last: sink.last, clip: sink.clip, inherit };
  for (const p of s.items) add(p, inner, inside);
}

const ADD: { readonly [K in PrimitiveKind]: (p: Extract<Primitive, { kind: K }>, f: Frame, sink: Sink) => void } = {
  line: (p, f, sink) => addPath(p, coords(f, [p.a, p.b]), false, p.pen, undefined, sink),
  polyline: (p, f, sink) => addPath(p, coords(f, p.points), p.closed ?? p.pen === undefined, p.pen, p.fill, sink),
  circle: (p, f, sink) => addArc(p, 0, 2 * Math.PI, p.pen, p.fill, f, sink),
  arc: (p, f, sink) => addArc(p, p.start, p.end < p.start ? p.end + 2 * Math.PI : p.end, p.pen, undefined, f, sink),
  text: addText,
  hatch: addHatch,
  dimension: addDimension,
  symbol: addSymbol,
};

const add = (p: Primitive, f: Frame, sink: Sink): void =>
  (ADD[p.kind] as (p: Primitive, f: Frame, sink: Sink) => void)(p, f, sink);

/** Primitives in paper inches made flat. */
export function flattenItems(items: readonly Primitive[]): Flat[] {
  const out: Flat[] = [];
  const last: Flat[] = [];
  for (const p of items) add(p, PAPER, { out, last, clip: undefined, inherit: undefined });
  return [...out, ...last];
}

/** One viewport's contents in paper inches: lettering and dashes keep their paper size; `items` are clipped to the window. */
export function place(v: Viewport): Flat[] {
  const f: Frame = {
    x: v.at.x - v.from.x * v.scale,
    y: v.at.y - v.from.y * v.scale,
    scale: v.scale,
    angle: 0,
    c: 1,
    s: 0,
  };
  const out: Flat[] = [];
  const low = v.window && map(f, v.window);
  const clip = v.window && low && { x: low.x, y: low.y, w: v.window.w * v.scale, h: v.window.h * v.scale };
  const last: Flat[] = [];
  for (const p of v.items) add(p, f, { out, last, clip, inherit: undefined });
  for (const p of v.over ?? []) add(p, f, { out, last, clip: undefined, inherit: undefined });
  return [...out, ...last];
}

/** Everything on a sheet, in painting order. */
export const flatten = (sheet: Sheet): Flat[] => [...sheet.viewports.flatMap(place), ...flattenItems(sheet.items)];
