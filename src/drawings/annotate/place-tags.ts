/** Places tags beside what they name so that no two texts touch and as few lines as possible are covered. */
import type { Vec2 } from '../../base/vec.js';
import { type Flat, flatten, type PaperSymbol, type Primitive, type Rect } from '../ir/index.js';
import { overlaps, textBoxes } from './layout.js';
import { type TagOptions, tag, tagSize } from './tags.js';

/** A tag with the offset it would like: paper inches from the thing to the centre of the tag. */
export interface TagWish extends TagOptions {
  readonly off: Vec2;
}

interface Segment {
  readonly a: Vec2;
  readonly b: Vec2;
}

/** What is already on the paper, in paper inches. */
interface Taken {
  readonly boxes: Rect[];
  readonly leaders: Segment[];
  readonly lines: readonly Segment[];
  /** Places that carry a tag's dot: a tag over one would hide what it names. */
  readonly dots: readonly Vec2[];
}

/**
 * Price of a fault, in note heights of way the tag would rather go. Touching another text is as good as forbidden; the
 * others are weighed against each other by eye.
 */
const PRICE = { touch: 1000, dot: 40, leaderUnderTag: 30, crossing: 8, line: 1.2 } as const;

const TURNS = 24;
const REACHES = [1, 0.75, 1.35, 1.8, 2.4, 3.2, 4.2] as const;

/** Paper kept clear round a tag, in note heights. */
const CLEAR = 0.3;

const meet = (p: Rect, q: Rect): boolean => p.x < q.x + q.w && q.x < p.x + p.w && p.y < q.y + q.h && q.y < p.y + p.h;

const side = (s: Segment, p: Vec2): number => (s.b.x - s.a.x) * (p.y - s.a.y) - (s.b.y - s.a.y) * (p.x - s.a.x);

const cross = (s: Segment, t: Segment): boolean =>
  side(s, t.a) * side(s, t.b) < -1e-12 && side(t, s.a) * side(t, s.b) < -1e-12;

const inside = (r: Rect, p: Vec2): boolean => p.x > r.x && p.x < r.x + r.w && p.y > r.y && p.y < r.y + r.h;

function through(r: Rect, s: Segment): boolean {
  if (inside(r, s.a) || inside(r, s.b)) return true;
  const corner = { x: r.x + r.w, y: r.y + r.h };
  return (
    cross(s, { a: { x: r.x, y: r.y }, b: corner }) ||
    cross(s, { a: { x: r.x, y: corner.y }, b: { x: corner.x, y: r.y } })
  );
}

/** Strokes of what is drawn, hatches left out: a tag may lie on a pattern. */
const segmentsOf = (flats: readonly Flat[]): Segment[] =>
  flats.flatMap((f) => {
    if (f.kind !== 'path' || f.pen === undefined || f.pen === 'hatch') return [];
    return f.strokes.flatMap((stroke) => {
      const out: Segment[] = [];
      for (let i = 0; i + 3 < stroke.length; i += 2)
        out.push({ a: { x: stroke[i]!, y: stroke[i + 1]! }, b: { x: stroke[i + 2]!, y: stroke[i + 3]! } });
      return out;
    });
  });

/** The view on its own, at the model's origin: only distances matter here. */
const flatOf = (over: readonly Primitive[], scale: number): readonly Flat[] =>
  flatten({
    id: 'S-000',
    title: '',
    discipline: 'S',
    size: 'ARCH D',
    scaleNote: '',
    items: [],
    viewports: [{ name: '', at: { x: 0, y: 0 }, from: { x: 0, y: 0 }, scale, items: [], over }],
  });

function boxOf(o: {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly angle: number;
}): Rect {
  const [c, s] = [Math.abs(Math.cos(o.angle)), Math.abs(Math.sin(o.angle))];
  const w = o.w * c + o.h * s;
  const h = o.w * s + o.h * c;
  return { x: o.x - w / 2, y: o.y - h / 2, w, h };
}

/** Directions in the order tried: the wished one, then to both sides of it by turns. */
function* offsets(off: Vec2): Generator<Vec2> {
  const size = Math.hypot(off.x, off.y);
  const angle = Math.atan2(off.y, off.x);
  for (const reach of REACHES) {
    for (let i = 0; i < TURNS; i++) {
      const turn = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / TURNS);
      yield { x: size * reach * Math.cos(angle + turn), y: size * reach * Math.sin(angle + turn) };
    }
  }
}

function priceOf(wish: TagWish, off: Vec2, at: Vec2, taken: Taken): number {
  const h = wish.style.note;
  const size = tagSize(wish.kind, wish.text, wish.style);
  const [w, t] = [size.w + CLEAR * h, size.h + CLEAR * h];
  const box = { x: at.x + off.x - w, y: at.y + off.y - t, w: 2 * w, h: 2 * t };
  const leader = { a: at, b: { x: at.x + off.x, y: at.y + off.y } };
  let price = Math.hypot(off.x - wish.off.x, off.y - wish.off.y) / h;
  for (const b of taken.boxes) {
    if (meet(box, b)) price += PRICE.touch;
    else if (through(b, leader)) price += PRICE.leaderUnderTag;
  }
  for (const l of taken.leaders) {
    if (through(box, l)) price += PRICE.leaderUnderTag;
    else if (cross(l, leader)) price += PRICE.crossing;
  }
  for (const d of taken.dots) if (inside(box, d)) price += PRICE.dot;
  for (const l of taken.lines) if (through(box, l)) price += PRICE.line;
  return price;
}

/**
 * Sets every tag, in the order given, at the cheapest offset. `scale` is paper over model; `over` is what stands on the view
 * already (dimension strings, notes), `lines` what is drawn under it.
 */
export function placeTags(
  wishes: readonly TagWish[],
  scale: number,
  over: readonly Primitive[] = [],
  lines: readonly Primitive[] = [],
): PaperSymbol[] {
  const paper = (p: Vec2): Vec2 => ({ x: p.x * scale, y: p.y * scale });
  const taken: Taken = {
    boxes: textBoxes(flatOf(over, scale)).map(boxOf),
    leaders: [],
    lines: segmentsOf(flatOf([...lines, ...over], scale)),
    dots: wishes.map((w) => paper(w.at)),
  };
  return wishes.map((wish) => {
    const at = paper(wish.at);
    let best = wish.off;
    let least = Number.POSITIVE_INFINITY;
    for (const off of offsets(wish.off)) {
      // Nothing farther from the wish can be cheaper than what is found already.
      if (Math.hypot(off.x - wish.off.x, off.y - wish.off.y) / wish.style.note >= least) continue;
      const price = priceOf(wish, off, at, taken);
      if (price < least) [best, least] = [off, price];
    }
    const size = tagSize(wish.kind, wish.text, wish.style);
    taken.boxes.push({ x: at.x + best.x - size.w, y: at.y + best.y - size.h, w: 2 * size.w, h: 2 * size.h });
    taken.leaders.push({ a: at, b: { x: at.x + best.x, y: at.y + best.y } });
    return tag({ ...wish, off: best });
  });
}

/** What stands on a view, worked out once for all the notes that are still to be placed on it. */
export interface NoteBoard {
  /**
   * Of ways to draw one note, the first whose lettering touches no text already there, or the one that touches fewest; among
   * those that touch none the one that covers fewest lines. What is chosen stands there for the next.
   */
  place(ways: readonly [Primitive, ...Primitive[]], clear: number): Primitive;
}

/** `scale` and lists as for `placeTags`. */
export function noteBoard(scale: number, over: readonly Primitive[], lines: readonly Primitive[] = []): NoteBoard {
  const boxes = textBoxes(flatOf(over, scale)).map(boxOf);
  const strokes = segmentsOf(flatOf([...lines, ...over], scale));
  return {
    place(ways, clear) {
      let best = ways[0];
      let least = Number.POSITIVE_INFINITY;
      ways.forEach((way, i) => {
        let price = i * PRICE.line;
        // Later ways cost more before anything is looked at.
        if (price >= least) return;
        for (const own of textBoxes(flatOf([way], scale)).map(boxOf)) {
          const box = { x: own.x - clear, y: own.y - clear, w: own.w + 2 * clear, h: own.h + 2 * clear };
          for (const b of boxes) if (meet(box, b)) price += PRICE.touch;
          for (const l of strokes) if (through(box, l)) price += PRICE.line;
        }
        if (price < least) [best, least] = [way, price];
      });
      boxes.push(...textBoxes(flatOf([best], scale)).map(boxOf));
      return best;
    },
  };
}

/** One note on a view of its own; for several, `noteBoard`. */
export const placeNote = (
  ways: readonly [Primitive, ...Primitive[]],
  clear: number,
  scale: number,
  over: readonly Primitive[],
  lines: readonly Primitive[] = [],
): Primitive => noteBoard(scale, over, lines).place(ways, clear);

/**
 * Of ways to draw the same things, the first whose lettering touches none of `over` and none of its own, or the one that
 * touches least; among equals the one whose lettering lies over fewest lines of `lines`.
 */
export function clearest<T extends readonly Primitive[]>(
  ways: readonly [T, ...T[]],
  scale: number,
  over: readonly Primitive[],
  lines: readonly Primitive[] = [],
): T {
  const strokes = lines.length > 0 ? segmentsOf(flatOf([...lines, ...over], scale)) : [];
  const price = (way: T): number => {
    const boxes = textBoxes(flatOf(way, scale)).map(boxOf);
    const covered = boxes.reduce((n, b) => n + strokes.filter((l) => through(b, l)).length, 0);
    return overlaps(textBoxes(flatOf([...over, ...way], scale))).length * PRICE.touch + covered;
  };
  let [best, least] = [ways[0], Number.POSITIVE_INFINITY];
  for (const way of ways) {
    const p = price(way);
    if (p < least) [best, least] = [way, p];
    if (p === 0) break;
  }
  return best;
}

/** True when a note's lettering lies on text of `over`. Scale and list as for `placeTags`. */
export function touchesText(note: Primitive, scale: number, over: readonly Primitive[]): boolean {
  const boxes = textBoxes(flatOf(over, scale)).map(boxOf);
  return textBoxes(flatOf([note], scale))
    .map(boxOf)
    .some((own) => boxes.some((b) => meet(own, b)));
}

/** Rectangles of a note's lettering, paper inches from the model's origin. Scale as for `placeTags`. */
export const letteringOf = (note: Primitive, scale: number): readonly Rect[] =>
  textBoxes(flatOf([note], scale)).map(boxOf);
