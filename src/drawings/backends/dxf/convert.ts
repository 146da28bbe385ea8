/**
 * From primitives to entities. Views stand in the file at full scale, so points keep their inches and only what is lettered or
 * ruled in paper inches grows by `k`: the opposite of `flatten`, which shrinks the points and leaves the paper inches alone.
 */
import type { Vec2 } from '../../../base/vec.js';
import {
  type Common,
  clipArea,
  clipPath,
  clipSegment,
  type Dimension,
  type FillName,
  type Hatch,
  PATTERNS,
  type PaperSymbol,
  type Pattern,
  type PenName,
  type Primitive,
  type PrimitiveKind,
  type Rect,
  type Text,
  textWidth,
} from '../../ir/index.js';
import { dimensionEntity, dimensionParts, dimStyle } from './dimension.js';
import {
  arcEntity,
  circleEntity,
  type Entity,
  fillGrey,
  type Head,
  insertEntity,
  lineEntity,
  maskEntity,
  paragraphEntity,
  polylineEntity,
  textEntity,
  wipeoutEntity,
} from './entity.js';
import { type Boundary, diagonalLines, patternEntity, patternLines, solidEntity } from './hatch.js';
import { plainText, tooLong } from './lettering.js';
import type { Library } from './library.js';

/** How a list of primitives stands in the drawing. */
export interface Place {
  /** Drawing units per paper inch: 1 on paper and in symbols, 48 in a view at 1/4" = 1'-0". */
  readonly k: number;
  /** Scale of dashes on top of the file's own linetype scale. */
  readonly dash: number;
  /** Moves the view to its own ground in model space. */
  readonly shift: Vec2;
  /** The paper's origin in the view's coordinates: hatches start there. */
  readonly origin: Vec2;
  /** Window of the view, in its coordinates. */
  readonly clip?: Rect | undefined;
  /** Layer of an entity, where it is not the primitive's own. */
  readonly layer?: ((name: string) => string) | undefined;
}

export const ON_PAPER: Place = { k: 1, dash: 1, shift: { x: 0, y: 0 }, origin: { x: 0, y: 0 } };

interface Sink {
  readonly place: Place;
  readonly library: Library;
  readonly out: Entity[];
  /** What clears the ground behind its lettering: after everything else, so that no later line crosses it. */
  readonly last: Entity[];
}

const head = (p: Common, sink: Sink): Head => ({
  layer: sink.place.layer?.(p.layer) ?? p.layer,
  mark: p.mark,
  dash: sink.place.dash,
});

const moved = (p: Vec2, sink: Sink): Vec2 => ({ x: p.x + sink.place.shift.x, y: p.y + sink.place.shift.y });

const flat = (points: readonly Vec2[]): number[] => points.flatMap((p) => [p.x, p.y]);

function movedPath(path: readonly number[], sink: Sink): number[] {
  const { x, y } = sink.place.shift;
  return path.map((v, i) => v + (i % 2 === 0 ? x : y));
}

const inside = (p: Vec2, r: Rect, reach = 0): boolean =>
  p.x - reach >= r.x - 1e-9 &&
  p.x + reach <= r.x + r.w + 1e-9 &&
  p.y - reach >= r.y - 1e-9 &&
  p.y + reach <= r.y + r.h + 1e-9;

function addFill(h: Head, fill: FillName, loop: Boundary, sink: Sink): void {
  const grey = fillGrey(fill);
  if (grey !== undefined) {
    sink.out.push(solidEntity(h, grey, [loop]));
    return;
  }
  const cover = wipeoutEntity(h, loop.path);
  if (cover) sink.out.push(cover);
}

/** Path in the view's coordinates, cut at the window. */
function addPath(
  p: Common,
  path: readonly number[],
  closed: boolean,
  pen: PenName | undefined,
  fill: FillName | undefined,
  sink: Sink,
): void {
  const h = head(p, sink);
  const { clip } = sink.place;
  const area = clip ? clipArea(path, clip) : path;
  if (fill !== undefined && area.length >= 6) addFill(h, fill, { path: movedPath(area, sink) }, sink);
  if (pen === undefined) return;
  if (!clip || area === path) {
    sink.out.push(polylineEntity(h, pen, movedPath(path, sink), closed));
    return;
  }
  for (const piece of clipPath(closed ? [...path, path[0]!, path[1]!] : path, clip))
    sink.out.push(polylineEntity(h, pen, movedPath(piece, sink), false));
}

const ring = (c: Vec2, r: number, start: number, end: number): number[] => {
  const n = Math.max(8, Math.ceil(((end - start) * 32) / Math.PI));
  const out: number[] = [];
  for (let i = 0; i <= n; i++) {
    const a = start + ((end - start) * i) / n;
    out.push(c.x + r * Math.cos(a), c.y + r * Math.sin(a));
  }
  return out;
};

function addCircle(p: Extract<Primitive, { kind: 'circle' }>, sink: Sink): void {
  const { clip } = sink.place;
  if (clip && !inside(p.center, clip, p.radius)) {
    addPath(p, ring(p.center, p.radius, 0, 2 * Math.PI), true, p.pen, p.fill, sink);
    return;
  }
  const h = head(p, sink);
  const c = moved(p.center, sink);
  if (p.fill === 'paper') addFill(h, p.fill, { path: ring(c, p.radius, 0, 2 * Math.PI) }, sink);
  else if (p.fill) addFill(h, p.fill, { path: [c.x - p.radius, c.y, c.x + p.radius, c.y], round: true }, sink);
  if (p.pen) sink.out.push(circleEntity(h, p.pen, c, p.radius));
}

function addArc(p: Extract<Primitive, { kind: 'arc' }>, sink: Sink): void {
  const { clip } = sink.place;
  const end = p.end < p.start ? p.end + 2 * Math.PI : p.end;
  if (clip && !inside(p.center, clip, p.radius))
    addPath(p, ring(p.center, p.radius, p.start, end), false, p.pen, undefined, sink);
  else sink.out.push(arcEntity(head(p, sink), p.pen, moved(p.center, sink), p.radius, p.start, end));
}

function addLine(p: Extract<Primitive, { kind: 'line' }>, sink: Sink): void {
  let { a, b } = p;
  if (sink.place.clip) {
    const kept = clipSegment(a.x, a.y, b.x, b.y, sink.place.clip);
    if (!kept) return;
    a = { x: kept[0], y: kept[1] };
    b = { x: kept[2], y: kept[3] };
  }
  sink.out.push(lineEntity(head(p, sink), p.pen, moved(a, sink), moved(b, sink)));
}

function addText(t: Text, sink: Sink): void {
  const { clip, k } = sink.place;
  if (t.content.trim() === '' || (clip && !inside(t.at, clip))) return;
  const face = t.face ?? 'regular';
  const angle = t.angle ?? 0;
  const height = t.height * k;
  const drop = t.valign === 'middle' ? height / 2 : t.valign === 'top' ? height : 0;
  const at = moved({ x: t.at.x + Math.sin(angle) * drop, y: t.at.y - Math.cos(angle) * drop }, sink);
  const lettering = {
    at,
    content: t.content,
    height,
    face,
    angle,
    align: t.align ?? 'left',
    ink: t.ink ?? 'solid',
    width: textWidth(t.content, height, face),
  } as const;
  const h = head(t, sink);
  // Only a paragraph may spread a long text over several values.
  const text = tooLong(plainText(t.content)) ? paragraphEntity(h, lettering) : textEntity(h, lettering);
  const mask = t.mask ? maskEntity(h, lettering) : undefined;
  if (mask) sink.last.push(mask, text);
  else sink.out.push(text);
}

/** Patterns that are neither ruled nor strewn: crossed members one by one, the rest stroke by stroke. */
const CROSSED: Readonly<Record<string, 1 | 2>> = { 'wood-cross': 2, 'wood-block': 1 };

function addHatch(p: Hatch, sink: Sink): void {
  const { k, clip, origin, shift } = sink.place;
  const h = head(p, sink);
  const spacing = p.spacing ?? 1;
  const bounded = (loops: readonly (readonly Vec2[])[]): Boundary[] =>
    loops
      .map((l) => (clip ? clipArea(flat(l), clip) : flat(l)))
      .filter((path) => path.length >= 6)
      .map((path) => ({ path: movedPath(path, sink) }));
  const crossed = CROSSED[p.pattern];
  if (crossed) {
    for (const loop of p.loops) {
      const bounds = bounded([loop]);
      const lines = diagonalLines(
        loop.map((q) => moved(q, sink)),
        crossed,
      );
      if (bounds.length > 0 && lines.length > 0) sink.out.push(patternEntity(h, p.pattern, bounds, lines, 1));
    }
    return;
  }
  const lines = patternLines(p.pattern, k * spacing, p.angle ?? 0);
  if (lines) {
    const bounds = bounded(p.loops);
    const from = { x: origin.x + shift.x, y: origin.y + shift.y };
    const placed = lines.map((l) => ({ ...l, base: { x: l.base.x + from.x, y: l.base.y + from.y } }));
    if (bounds.length > 0) sink.out.push(patternEntity(h, p.pattern, bounds, placed, k * spacing));
    return;
  }
  // In paper inches, where the pattern is at home, and back.
  const pattern: Pattern = PATTERNS[p.pattern];
  const loops = p.loops.map((l) => l.map((q) => ({ x: (q.x - origin.x) / k, y: (q.y - origin.y) / k })));
  for (const s of pattern.strokes(loops, p.angle ?? 0, spacing)) {
    const path = s.map((v, i) => v * k + (i % 2 === 0 ? origin.x : origin.y));
    addPath(p, path, false, pattern.pen, undefined, sink);
  }
}

function addDimension(d: Dimension, sink: Sink): void {
  const { clip, k } = sink.place;
  if (clip && !inside(d.a, clip) && !inside(d.b, clip)) return;
  const h = head(d, sink);
  const place: Place = { ...sink.place, k: 1, clip: undefined };
  const parts = convert(
    dimensionParts(d, k).map((p) => ({ ...p, layer: d.layer })),
    place,
    sink.library,
  );
  const style = sink.library.dimStyle(dimStyle(d.height, k));
  const block = sink.library.dimensionBlock(parts);
  sink.last.push(dimensionEntity(h, d, k, { block, style }, (p) => moved(p, sink)));
}

const clears = (items: readonly Primitive[]): boolean =>
  items.some((p) => (p.kind === 'text' && p.mask === true) || (p.kind === 'symbol' && clears(p.items)));

function addSymbol(s: PaperSymbol, sink: Sink): void {
  const { clip, k } = sink.place;
  if (clip && !inside(s.at, clip)) return;
  const block = sink.library.symbolBlock(s.items, (items) =>
    convert(items, { ...ON_PAPER, dash: sink.place.dash, layer: sink.place.layer }, sink.library),
  );
  const to = clears(s.items) ? sink.last : sink.out;
  to.push(insertEntity(head(s, sink), block, moved(s.at, sink), k, s.angle ?? 0));
}

const ADD: { readonly [K in PrimitiveKind]: (p: Extract<Primitive, { kind: K }>, sink: Sink) => void } = {
  line: addLine,
  polyline: (p, sink) => addPath(p, flat(p.points), p.closed ?? p.pen === undefined, p.pen, p.fill, sink),
  circle: addCircle,
  arc: addArc,
  text: addText,
  hatch: addHatch,
  dimension: addDimension,
  symbol: addSymbol,
};

/** Entities of a list of primitives, in painting order. */
export function convert(items: readonly Primitive[], place: Place, library: Library): Entity[] {
  const sink: Sink = { place, library, out: [], last: [] };
  for (const p of items) (ADD[p.kind] as (p: Primitive, sink: Sink) => void)(p, sink);
  return [...sink.out, ...sink.last];
}
