/** Places tags beside what they name so that no two texts touch and as few lines as possible are covered. */
import type { Vec2 } from '../../base/vec.js';
import { type Flat, flatten, type PaperSymbol, type Primitive, type Rect } from '../ir/index.js';
import { overlaps, textBoxes } from './layout.js';
import { cheapest, meet, PRICE, type Segment, standing, type TagWish, type Taken, through } from './tag-price.js';
import { tag } from './tags.js';
import { untangled } from './untangle.js';

export type { TagWish } from './tag-price.js';

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
  const at = wishes.map((w) => paper(w.at));
  const board: Taken = {
    boxes: textBoxes(flatOf(over, scale)).map(boxOf),
    leaders: [],
    lines: segmentsOf(flatOf([...lines, ...over], scale)),
    dots: at,
  };
  const taken: Taken = { ...board, boxes: [...board.boxes], leaders: [] };
  const offs = wishes.map((wish, i) => {
    const { off } = cheapest(wish, at[i]!, taken);
    const { box, leader } = standing(wish, at[i]!, off);
    taken.boxes.push(box);
    taken.leaders.push(leader);
    return off;
  });
  return untangled(wishes, at, offs, board).map((off, i) => tag({ ...wishes[i]!, off }));
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
