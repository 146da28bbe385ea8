import type { Rect } from './sheet.js';

/** Flat list of coordinates: x0, y0, x1, y1, … */
export type Coords = readonly number[];

/** Part of a segment inside a rectangle (Liang–Barsky), or undefined. */
export function clipSegment(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  r: Rect,
): readonly [number, number, number, number] | undefined {
  const dx = x1 - x0;
  const dy = y1 - y0;
  let t0 = 0;
  let t1 = 1;
  const p = [-dx, dx, -dy, dy];
  const q = [x0 - r.x, r.x + r.w - x0, y0 - r.y, r.y + r.h - y0];
  for (let i = 0; i < 4; i++) {
    const pi = p[i]!;
    const qi = q[i]!;
    if (pi === 0) {
      if (qi < 0) return undefined;
    } else {
      const t = qi / pi;
      if (pi < 0) {
        if (t > t1) return undefined;
        if (t > t0) t0 = t;
      } else {
        if (t < t0) return undefined;
        if (t < t1) t1 = t;
      }
    }
  }
  return [x0 + t0 * dx, y0 + t0 * dy, x0 + t1 * dx, y0 + t1 * dy];
}

const insideRect = (c: Coords, r: Rect): boolean => {
  for (let i = 0; i < c.length; i += 2) {
    if (c[i]! < r.x || c[i]! > r.x + r.w || c[i + 1]! < r.y || c[i + 1]! > r.y + r.h) return false;
  }
  return true;
};

/** Open path cut at the edges of a rectangle: the pieces that lie inside. */
export function clipPath(path: Coords, r: Rect): Coords[] {
  if (insideRect(path, r)) return [path];
  const out: number[][] = [];
  let open: number[] | undefined;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const s = clipSegment(path[i]!, path[i + 1]!, path[i + 2]!, path[i + 3]!, r);
    if (s === undefined || (s[0] === s[2] && s[1] === s[3])) {
      open = undefined;
      continue;
    }
    const joins = open !== undefined && open[open.length - 2] === s[0] && open[open.length - 1] === s[1];
    if (open !== undefined && joins) open.push(s[2], s[3]);
    else {
      open = [s[0], s[1], s[2], s[3]];
      out.push(open);
    }
    if (s[2] !== path[i + 2] || s[3] !== path[i + 3]) open = undefined;
  }
  return out;
}

/** Area of a polygon inside a rectangle (one half-plane after the other); for fills, so shared edges do no harm. */
export function clipArea(path: Coords, r: Rect): Coords {
  if (insideRect(path, r)) return path;
  let cur = path;
  const planes: readonly (readonly [number, number, number])[] = [
    [1, 0, -r.x],
    [-1, 0, r.x + r.w],
    [0, 1, -r.y],
    [0, -1, r.y + r.h],
  ];
  for (const [a, b, c] of planes) {
    const next: number[] = [];
    for (let i = 0; i < cur.length; i += 2) {
      const j = (i + 2) % cur.length;
      const [x0, y0, x1, y1] = [cur[i]!, cur[i + 1]!, cur[j]!, cur[j + 1]!];
      const s0 = a * x0 + b * y0 + c;
      const s1 = a * x1 + b * y1 + c;
      if (s0 >= 0) next.push(x0, y0);
      if (s0 * s1 < 0) {
        const t = s0 / (s0 - s1);
        next.push(x0 + t * (x1 - x0), y0 + t * (y1 - y0));
      }
    }
    cur = next;
  }
  return cur;
}
