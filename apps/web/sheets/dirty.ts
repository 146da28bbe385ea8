/** What of a painted sheet must be painted anew when another drawing of it arrives: a few rectangles instead of all of it. */
import type { PackedSheet } from '../core/pack.js';

/** x0, y0, x1, y1 in paper inches. */
export type Box = readonly [number, number, number, number];

/** Rectangles beyond this number cost more than the paper between them. */
const MOST = 6;

const area = (b: Box): number => (b[2] - b[0]) * (b[3] - b[1]);
const joined = (a: Box, b: Box): Box => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
];

/** Paper that joining two rectangles adds to them; negative where they overlap. */
const added = (a: Box, b: Box): number => area(joined(a, b)) - area(a) - area(b);

/** Joins what overlaps, and then what lies nearest until few are left. */
function few(boxes: Box[]): Box[] {
  for (;;) {
    let least = boxes.length > MOST ? Infinity : 0;
    let pair: readonly [number, number] | undefined;
    for (let i = 0; i < boxes.length; i++)
      for (let j = i + 1; j < boxes.length; j++) {
        const more = added(boxes[i]!, boxes[j]!);
        if (more < least) {
          least = more;
          pair = [i, j];
        }
      }
    if (!pair) return boxes;
    const [i, j] = pair;
    boxes[i] = joined(boxes[i]!, boxes[j]!);
    boxes.splice(j, 1);
  }
}

/** Items alike in kind, pen, numbers and words have one key; how often each occurs. */
function counted(s: PackedSheet): Map<number, number> {
  const out = new Map<number, number>();
  for (const k of s.keys) out.set(k, (out.get(k) ?? 0) + 1);
  return out;
}

/**
 * Where two drawings of one sheet differ, each rectangle grown by `margin` (paper inches) for the width of lines; undefined
 * when so much differs that all of it is better painted anew.
 */
export function dirtyBoxes(before: PackedSheet, after: PackedSheet, margin: number): readonly Box[] | undefined {
  if (before.id !== after.id || before.w !== after.w || before.h !== after.h) return undefined;
  const boxes: Box[] = [];
  const collect = (s: PackedSheet, other: Map<number, number>): boolean => {
    for (let i = 0; i < s.keys.length; i++) {
      const left = other.get(s.keys[i]!) ?? 0;
      if (left > 0) {
        other.set(s.keys[i]!, left - 1);
        continue;
      }
      const b = 4 * i;
      // An item without a point has no box.
      if (!(s.boxes[b]! <= s.boxes[b + 2]!)) continue;
      const box: Box = [
        s.boxes[b]! - margin,
        s.boxes[b + 1]! - margin,
        s.boxes[b + 2]! + margin,
        s.boxes[b + 3]! + margin,
      ];
      // Most changes lie on what has changed already.
      const on = boxes.findIndex((o) => added(o, box) <= 0);
      if (on >= 0) boxes[on] = joined(boxes[on]!, box);
      else boxes.push(box);
      if (boxes.length > 120) return false;
    }
    return true;
  };
  if (!collect(before, counted(after)) || !collect(after, counted(before))) return undefined;
  const out = few(boxes);
  const share = out.reduce((sum, b) => sum + area(b), 0) / (after.w * after.h);
  return share > 0.6 ? undefined : out;
}
