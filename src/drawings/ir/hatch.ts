import type { Vec2 } from '../../base/vec.js';

/** Open strokes, each a flat list of coordinates. */
export type Strokes = number[][];
type Loops = readonly (readonly Vec2[])[];

interface Bounds {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

function bounds(loops: Loops): Bounds {
  const b = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const loop of loops) {
    for (const p of loop) {
      if (p.x < b.x0) b.x0 = p.x;
      if (p.y < b.y0) b.y0 = p.y;
      if (p.x > b.x1) b.x1 = p.x;
      if (p.y > b.y1) b.y1 = p.y;
    }
  }
  return b;
}

/** Sorted abscissae where the horizontal line at `y` crosses the loops; consecutive pairs lie inside (even-odd). */
function crossings(loops: Loops, y: number): number[] {
  const xs: number[] = [];
  for (const loop of loops) {
    for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
      const a = loop[j]!;
      const b = loop[i]!;
      if (a.y > y !== b.y > y) xs.push(a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y));
    }
  }
  return xs.sort((p, q) => p - q);
}

const inside = (loops: Loops, x: number, y: number): boolean => {
  const xs = crossings(loops, y);
  let n = 0;
  while (n < xs.length && xs[n]! < x) n++;
  return n % 2 === 1;
};

const turned = (loops: Loops, c: number, s: number): Vec2[][] =>
  loops.map((loop) => loop.map((p) => ({ x: c * p.x + s * p.y, y: c * p.y - s * p.x })));

/** A hatch finer than this many strokes is a mistake of scale: it is thinned rather than drawn black. */
const MOST_LINES = 4000;

/**
 * Parallel lines clipped to loops, even-odd. Lines stand on multiples of `spacing` from the paper's origin, so that
 * neighbouring areas of one material run through. `dash` is on, off, on, off … and starts at the same multiple on every line,
 * or, when `loose`, at a scattered place.
 */
export function lineFamily(
  loops: Loops,
  angle: number,
  spacing: number,
  offset = 0,
  dash?: readonly number[],
  loose = false,
): Strokes {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const local = turned(loops, c, s);
  const b = bounds(local);
  const out: Strokes = [];
  if (!(b.y1 > b.y0) || !(spacing > 0)) return out;
  const step = spacing * Math.max(1, Math.ceil((b.y1 - b.y0) / spacing / MOST_LINES));
  const period = dash?.reduce((p, q) => p + q, 0) ?? 0;
  const emit = (xa: number, xb: number, y: number) => {
    if (xb - xa > 1e-6) out.push([c * xa - s * y, s * xa + c * y, c * xb - s * y, s * xb + c * y]);
  };
  for (let k = Math.ceil((b.y0 - offset) / step); offset + k * step < b.y1; k++) {
    const y = offset + k * step;
    const xs = crossings(local, y);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const [xa, xb] = [xs[i]!, xs[i + 1]!];
      if (dash === undefined || period <= 0) {
        emit(xa, xb, y);
        continue;
      }
      const slip = loose ? hash(k, 0, 7) * period : 0;
      for (let start = Math.floor((xa - slip) / period) * period + slip; start < xb; start += period) {
        let at = start;
        for (let d = 0; d < dash.length; d++) {
          if (d % 2 === 0) emit(Math.max(xa, at), Math.min(xb, at + dash[d]!), y);
          at += dash[d]!;
        }
      }
    }
  }
  return out;
}

/** Small integer hash to [0, 1): scatters marks without a visible grid and the same way every time. */
function hash(i: number, j: number, salt: number): number {
  let h = (i * 374761393 + j * 668265263 + salt * 2147483647) | 0;
  h = Math.imul(h ^ (h >>> 13), 1274126177);
  h ^= h >>> 16;
  return (h >>> 0) / 4294967296;
}

type Glyph = (x: number, y: number, cell: number, r: number) => Strokes;

const ngon = (x: number, y: number, radius: number, n: number, turn: number, squash = 1): number[] => {
  const out: number[] = [];
  for (let i = 0; i <= n; i++) {
    const a = turn + (2 * Math.PI * i) / n;
    out.push(x + radius * Math.cos(a), y + radius * squash * Math.sin(a));
  }
  return out;
};
const dot = (x: number, y: number): number[] => [x - 0.004, y, x + 0.004, y];

/** Marks strewn on a jittered grid; each fits in a circle of half a cell. */
const GLYPHS = {
  dot: (x, y) => [dot(x, y)],
  stone: (x, y, cell, r) =>
    r < 0.3
      ? [ngon(x, y, cell * (0.13 + r * 0.3), 3, r * 40)]
      : [
          dot(x, y),
          dot(x + cell * (r - 0.6), y + cell * 0.37),
          ...(r > 0.6 ? [dot(x - cell * 0.36, y - cell * (r - 0.5))] : []),
        ],
  pebble: (x, y, cell, r) => [ngon(x, y, cell * (0.3 + 0.16 * r), 9, r * 6, 0.72)],
  furrow: (x, y, cell, r) => {
    const up = r < 0.5 ? 1 : -1;
    return [-1, 0, 1].map((k) => {
      const ox = x + k * cell * 0.15;
      const oy = y - k * up * cell * 0.15;
      const h = cell * 0.24;
      return [ox - h, oy - up * h, ox + h, oy + up * h];
    });
  },
} as const satisfies Record<string, Glyph>;

/** Strews a mark over the loops; a mark that would touch the edge is left out. */
export function scatter(loops: Loops, cell: number, glyph: keyof typeof GLYPHS): Strokes {
  const b = bounds(loops);
  const out: Strokes = [];
  if (!(b.x1 > b.x0)) return out;
  const size = cell * Math.max(1, Math.sqrt(((b.x1 - b.x0) * (b.y1 - b.y0)) / (cell * cell) / 20000));
  for (let j = Math.floor(b.y0 / size); j * size < b.y1; j++) {
    for (let i = Math.floor(b.x0 / size); i * size < b.x1; i++) {
      const x = (i + 0.2 + 0.6 * hash(i, j, 1)) * size;
      const y = (j + 0.2 + 0.6 * hash(i, j, 2)) * size;
      if (glyph === 'furrow' && hash(i, j, 4) > 0.6) continue;
      const strokes = GLYPHS[glyph](x, y, size, hash(i, j, 3));
      if (strokes.every((s) => everyPoint(s, (px, py) => inside(loops, px, py)))) out.push(...strokes);
    }
  }
  return out;
}

const everyPoint = (s: readonly number[], test: (x: number, y: number) => boolean): boolean => {
  for (let i = 0; i < s.length; i += 2) if (!test(s[i]!, s[i + 1]!)) return false;
  return true;
};

/** One or two diagonals of each four-cornered loop: the sign of a framing member cut across. */
export function diagonals(loops: Loops, count: 1 | 2): Strokes {
  const out: Strokes = [];
  for (const [a, b, c, d] of loops) {
    if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
    out.push([a.x, a.y, c.x, c.y]);
    if (count === 2) out.push([b.x, b.y, d.x, d.y]);
  }
  return out;
}

/** Growth rings of end grain: arcs about a pith outside the loop's lower left corner, clipped to the loops. */
export function rings(loops: Loops, spacing: number): Strokes {
  const b = bounds(loops);
  const cx = b.x0 + 0.3 * (b.x1 - b.x0);
  const cy = b.y0 - 0.35 * (b.y1 - b.y0);
  const reach = Math.hypot(b.x1 - cx, b.y1 - cy);
  const out: Strokes = [];
  if (!(b.x1 > b.x0) || !(spacing > 0)) return out;
  const step = Math.max(spacing, reach / 400);
  for (let r = step, turn = 0; r < reach; r += step * (1 + 0.3 * hash(turn++, 0, 5))) {
    const n = Math.max(24, Math.ceil((r * 2 * Math.PI) / 0.04));
    let run: number[] = [];
    for (let k = 0; k <= n; k++) {
      const a = (2 * Math.PI * k) / n;
      const [x, y] = [cx + r * Math.cos(a), cy + r * Math.sin(a)];
      if (inside(loops, x, y)) run.push(x, y);
      else {
        if (run.length > 2) out.push(run);
        run = [];
      }
    }
    if (run.length > 2) out.push(run);
  }
  return out;
}

/** Looping line of batt insulation along the longer side of each loop's bounding box, in the frame turned by `angle`. */
export function batts(loops: Loops, angle: number): Strokes {
  const out: Strokes = [];
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  for (const loop of turned(loops, c, s)) {
    const b = bounds([loop]);
    const wide = b.x1 - b.x0 >= b.y1 - b.y0;
    const depth = wide ? b.y1 - b.y0 : b.x1 - b.x0;
    const run = wide ? b.x1 - b.x0 : b.y1 - b.y0;
    if (!(depth > 0.01)) continue;
    const n = Math.max(1, Math.round(run / (depth * 0.42)));
    const path: number[] = [];
    for (let k = 0; k <= n * 20; k++) {
      const t = k / 20;
      // Fast along at the crests and a little backward between them: the bulging loops of a drafting template.
      const across = 0.5 - 0.47 * Math.cos(Math.PI * t);
      const u = ((t + 0.27 * Math.sin(2 * Math.PI * t)) / n) * run;
      const [x, y] = wide ? [b.x0 + u, b.y0 + across * depth] : [b.x0 + across * depth, b.y0 + u];
      path.push(c * x - s * y, s * x + c * y);
    }
    out.push(path);
  }
  return out;
}
