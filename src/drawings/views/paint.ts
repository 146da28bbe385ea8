/**
 * Painting order of flat faces seen along +z, exact: a binary space partition. Faces that stand in each other's way are cut
 * by the plane of one of them, so no order is ever wrong, not even where three faces overlap in a ring.
 */
import type { Vec3 } from '../../base/vec.js';

export interface Facet<T> {
  readonly points: readonly Vec3[];
  readonly of: T;
}

interface Plane {
  readonly n: Vec3;
  readonly d: number;
}

/** Distance below which a corner counts as lying in a plane, inches. */
const ON = 1e-5;
/** Faces tried as the one to cut by; the one that cuts fewest others is taken. */
const TRIALS = 9;

/** Newell's normal, unit length; undefined for a face without area. */
function planeOf(points: readonly Vec3[]): Plane | undefined {
  let [x, y, z] = [0, 0, 0];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    x += (p.y - q.y) * (p.z + q.z);
    y += (p.z - q.z) * (p.x + q.x);
    z += (p.x - q.x) * (p.y + q.y);
  });
  const size = Math.hypot(x, y, z);
  if (size < 1e-12) return undefined;
  const n = { x: x / size, y: y / size, z: z / size };
  const p = points[0]!;
  return { n, d: n.x * p.x + n.y * p.y + n.z * p.z };
}

const height = (pl: Plane, p: Vec3): number => pl.n.x * p.x + pl.n.y * p.y + pl.n.z * p.z - pl.d;

interface Sides<T> {
  readonly front: Facet<T>[];
  readonly back: Facet<T>[];
  readonly on: Facet<T>[];
}

function divide<T>(f: Facet<T>, pl: Plane, out: Sides<T>): void {
  const hs = f.points.map((p) => height(pl, p));
  const above = hs.some((h) => h > ON);
  const below = hs.some((h) => h < -ON);
  if (!above && !below) out.on.push(f);
  else if (!below) out.front.push(f);
  else if (!above) out.back.push(f);
  else {
    const [front, back]: [Vec3[], Vec3[]] = [[], []];
    f.points.forEach((p, i) => {
      const j = (i + 1) % f.points.length;
      const [a, b, q] = [hs[i]!, hs[j]!, f.points[j]!];
      if (a >= -ON) front.push(p);
      if (a <= ON) back.push(p);
      if ((a > ON && b < -ON) || (a < -ON && b > ON)) {
        const t = a / (a - b);
        const cut = { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y), z: p.z + t * (q.z - p.z) };
        front.push(cut);
        back.push(cut);
      }
    });
    if (front.length > 2) out.front.push({ points: front, of: f.of });
    if (back.length > 2) out.back.push({ points: back, of: f.of });
  }
}

/** Facets that the plane would cut. */
function cuts<T>(facets: readonly Facet<T>[], pl: Plane): number {
  let n = 0;
  for (const f of facets) {
    let [above, below] = [false, false];
    for (const p of f.points) {
      const h = height(pl, p);
      if (h > ON) above = true;
      else if (h < -ON) below = true;
    }
    if (above && below) n++;
  }
  return n;
}

function splitter<T>(facets: readonly Facet<T>[]): Plane | undefined {
  const step = Math.max(1, Math.floor(facets.length / TRIALS));
  let best: Plane | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < facets.length; i += step) {
    const pl = planeOf(facets[i]!.points);
    const n = pl ? cuts(facets, pl) : Number.POSITIVE_INFINITY;
    if (n < least) [best, least] = [pl, n];
  }
  return best;
}

/**
 * Facets from the farthest to the nearest, as seen by a viewer far out on +z. Only facets whose corners run counter-clockwise
 * as he sees them are painted.
 */
export function paintOrder<T>(all: readonly Facet<T>[]): Facet<T>[] {
  const facing = all.filter((f) => (planeOf(f.points)?.n.z ?? 0) > 1e-9);
  const out: Facet<T>[] = [];
  // A list of things to do instead of recursion: long rows of parts make deep trees.
  const todo: (readonly Facet<T>[] | { readonly paint: readonly Facet<T>[] })[] = [facing];
  for (let next = todo.pop(); next !== undefined; next = todo.pop()) {
    if ('paint' in next) {
      out.push(...next.paint);
      continue;
    }
    const pl = next.length > 1 ? splitter(next) : undefined;
    if (!pl) {
      out.push(...next);
      continue;
    }
    const sides: Sides<T> = { front: [], back: [], on: [] };
    for (const f of next) divide(f, pl, sides);
    // The viewer is on the front side of every facet painted: what is behind comes first.
    if (sides.front.length > 0) todo.push(sides.front);
    todo.push({ paint: sides.on });
    if (sides.back.length > 0) todo.push(sides.back);
  }
  return out;
}
