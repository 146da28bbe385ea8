/** What lies under the pointer: a dimension, a part by its mark, a value by its place in the file, or plain lettering. */
import { HEAD, KIND, type PackedSheet } from '../core/pack.js';
import type { Point } from './camera.js';

export interface Hit {
  readonly item: number;
  readonly mark: string | undefined;
  readonly path: string | undefined;
  readonly role: string | undefined;
  readonly text: string | undefined;
}

const word = (s: PackedSheet, i: number): string | undefined => (i < 0 ? undefined : s.words[i]);

function nearPath(s: PackedSheet, i: number, p: Point, reach: number): boolean {
  const at = s.head[i * HEAD + 6]!;
  const d = s.data;
  if (s.head[i * HEAD] === KIND.arc) {
    const r = Math.hypot(p.x - d[at]!, p.y - d[at + 1]!);
    return s.head[i * HEAD + 2]! >= 0 ? r <= d[at + 2]! + reach : Math.abs(r - d[at + 2]!) <= reach;
  }
  let k = at + 2;
  for (let n = 0; n < d[at + 1]!; n++) {
    const length = d[k++]!;
    for (let j = 0; j + 3 < length; j += 2) {
      const [ax, ay, bx, by] = [d[k + j]!, d[k + j + 1]!, d[k + j + 2]!, d[k + j + 3]!];
      const [ux, uy] = [bx - ax, by - ay];
      const l2 = ux * ux + uy * uy;
      const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - ax) * ux + (p.y - ay) * uy) / l2));
      if (Math.hypot(p.x - ax - t * ux, p.y - ay - t * uy) <= reach) return true;
    }
    k += length;
  }
  return false;
}

/** Best hit within reach (paper inches): lettering before strokes, dimensions and marks before plain things, small before large. */
export function hitAt(s: PackedSheet, p: Point, reach: number): Hit | undefined {
  let best: Hit | undefined;
  let score = Infinity;
  for (let i = 0; i < s.head.length / HEAD; i++) {
    const b = 4 * i;
    if (
      p.x < s.boxes[b]! - reach ||
      p.x > s.boxes[b + 2]! + reach ||
      p.y < s.boxes[b + 1]! - reach ||
      p.y > s.boxes[b + 3]! + reach
    )
      continue;
    const h = i * HEAD;
    const isText = s.head[h] === KIND.text;
    const role = word(s, s.head[h + 5]!);
    const mark = word(s, s.head[h + 3]!);
    const path = word(s, s.head[h + 4]!);
    const known = mark !== undefined || path !== undefined || role?.startsWith('dimension ') === true;
    if (!isText && (!known || !nearPath(s, i, p, reach))) continue;
    const area = (s.boxes[b + 2]! - s.boxes[b]!) * (s.boxes[b + 3]! - s.boxes[b + 1]!);
    const rank = (known ? 0 : 1e6) + (isText ? 0 : 1e3) + Math.min(area, 900);
    if (rank >= score) continue;
    score = rank;
    const at = s.head[h + 6]!;
    best = { item: i, mark, path, role, text: isText ? s.words[s.data[at + 6]!] : undefined };
  }
  return best;
}

export interface Thing {
  readonly hit: Hit;
  readonly label: string;
  readonly at: Point;
}

/** Everything on a sheet that can be asked about, once each, in reading order: for the keyboard and for screen readers. */
export function thingsOn(s: PackedSheet): Thing[] {
  const out: Thing[] = [];
  const seen = new Set<string>();
  for (let i = 0; i < s.head.length / HEAD; i++) {
    const h = i * HEAD;
    if (s.head[h] !== KIND.text) continue;
    const role = word(s, s.head[h + 5]!);
    const mark = word(s, s.head[h + 3]!);
    const path = word(s, s.head[h + 4]!);
    const content = s.words[s.data[s.head[h + 6]! + 6]!]!;
    const dimension = role !== undefined ? s.dimensions[role] : undefined;
    const key = dimension ? role! : mark !== undefined ? `m${mark}` : path !== undefined ? `p${path}` : '';
    if (key === '' || seen.has(key)) continue;
    seen.add(key);
    const at = { x: (s.boxes[4 * i]! + s.boxes[4 * i + 2]!) / 2, y: (s.boxes[4 * i + 1]! + s.boxes[4 * i + 3]!) / 2 };
    const label = dimension ? `Dimension ${content}` : mark !== undefined ? `Part ${mark}` : content;
    out.push({ hit: { item: i, mark, path, role, text: content }, label, at });
  }
  return out.sort((a, b) => b.at.y - a.at.y || a.at.x - b.at.x);
}
