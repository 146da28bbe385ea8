/** What a tag costs where it stands: way from its wish, and texts, leaders, dots and lines it touches. */
import type { Vec2 } from '../../base/vec.js';
import type { Rect } from '../ir/index.js';
import { type TagOptions, tagSize } from './tags.js';

/** A tag with the offset it would like: paper inches from the thing to the centre of the tag. */
export interface TagWish extends TagOptions {
  readonly off: Vec2;
}

export interface Segment {
  readonly a: Vec2;
  readonly b: Vec2;
}

/** What is already on the paper, in paper inches. */
export interface Taken {
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
export const PRICE = { touch: 1000, dot: 40, leaderUnderTag: 30, crossing: 8, line: 1.2 } as const;

/** Paper kept clear round a tag, in note heights. */
const CLEAR = 0.3;

export const meet = (p: Rect, q: Rect): boolean =>
  p.x < q.x + q.w && q.x < p.x + p.w && p.y < q.y + q.h && q.y < p.y + p.h;

const side = (s: Segment, p: Vec2): number => (s.b.x - s.a.x) * (p.y - s.a.y) - (s.b.y - s.a.y) * (p.x - s.a.x);

export const cross = (s: Segment, t: Segment): boolean =>
  side(s, t.a) * side(s, t.b) < -1e-12 && side(t, s.a) * side(t, s.b) < -1e-12;

const inside = (r: Rect, p: Vec2): boolean => p.x > r.x && p.x < r.x + r.w && p.y > r.y && p.y < r.y + r.h;

export function through(r: Rect, s: Segment): boolean {
  if (inside(r, s.a) || inside(r, s.b)) return true;
  const corner = { x: r.x + r.w, y: r.y + r.h };
  return (
    cross(s, { a: { x: r.x, y: r.y }, b: corner }) ||
    cross(s, { a: { x: r.x, y: corner.y }, b: { x: corner.x, y: r.y } })
  );
}

/** What a tag costs at an offset from `at`, paper inches, in note heights; `crossing` is the price of leaders that cross. */
export function priceOf(wish: TagWish, off: Vec2, at: Vec2, taken: Taken, crossing: number = PRICE.crossing): number {
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
    const crosses = cross(l, leader) ? crossing : 0;
    price += through(box, l) ? Math.max(PRICE.leaderUnderTag, crosses) : crosses;
  }
  for (const d of taken.dots) if (inside(box, d)) price += PRICE.dot;
  for (const l of taken.lines) if (through(box, l)) price += PRICE.line;
  return price;
}

/** Box of a tag and its leader at an offset, paper inches. */
export function standing(wish: TagWish, at: Vec2, off: Vec2): { readonly box: Rect; readonly leader: Segment } {
  const size = tagSize(wish.kind, wish.text, wish.style);
  const to = { x: at.x + off.x, y: at.y + off.y };
  return { box: { x: to.x - size.w, y: to.y - size.h, w: 2 * size.w, h: 2 * size.h }, leader: { a: at, b: to } };
}

const TURNS = 24;
const REACHES = [1, 0.75, 1.35, 1.8, 2.4, 3.2, 4.2] as const;

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

/** The cheapest offset of a tag at `at`, paper inches, with what it costs there. */
export function cheapest(
  wish: TagWish,
  at: Vec2,
  taken: Taken,
  crossing: number = PRICE.crossing,
): { readonly off: Vec2; readonly price: number } {
  let best = wish.off;
  let least = Number.POSITIVE_INFINITY;
  for (const off of offsets(wish.off)) {
    // Nothing farther from the wish can be cheaper than what is found already.
    if (Math.hypot(off.x - wish.off.x, off.y - wish.off.y) / wish.style.note >= least) continue;
    const price = priceOf(wish, off, at, taken, crossing);
    if (price < least) [best, least] = [off, price];
  }
  return { off: best, price: least };
}
