import { add, cross, dot, scale, sub, unit, type Vec3 } from '../vec.js';
import { heightAbove, type Plane, type Solid } from './solid.js';

/** Corners nearer to the plane than this, in inches, count as on it, so that no slivers are made. */
const ON_PLANE = 1e-7;

/**
 * The part of a convex solid below a plane, e.g. a bevelled end. Undefined when nothing is below; the solid itself when
 * nothing is above.
 */
export function cutByPlane(s: Solid, plane: Plane): Solid | undefined {
  const heights = s.vertices.map((v) => {
    const h = heightAbove(plane, v);
    return Math.abs(h) <= ON_PLANE ? 0 : h;
  });
  if (heights.every((h) => h <= 0)) return heights.some((h) => h < 0) ? s : undefined;
  if (heights.every((h) => h >= 0)) return undefined;

  const vertices: Vec3[] = [];
  const kept = new Map<number, number>();
  const crossings = new Map<number, number>();
  const onPlane = new Set<number>();

  const keep = (i: number): number => {
    const known = kept.get(i);
    if (known !== undefined) return known;
    const index = vertices.push(s.vertices[i]!) - 1;
    kept.set(i, index);
    if (heights[i] === 0) onPlane.add(index);
    return index;
  };
  // An edge is cut once, though two faces meet there: both get the same corner and the solid stays closed.
  const crossEdge = (i: number, j: number): number => {
    const [a, b] = i < j ? [i, j] : [j, i];
    const key = a * heights.length + b;
    const known = crossings.get(key);
    if (known !== undefined) return known;
    const t = heights[a]! / (heights[a]! - heights[b]!);
    const index = vertices.push(add(s.vertices[a]!, scale(sub(s.vertices[b]!, s.vertices[a]!), t))) - 1;
    crossings.set(key, index);
    onPlane.add(index);
    return index;
  };

  const faces: number[][] = [];
  for (const face of s.faces) {
    const cut: number[] = [];
    let below = false;
    for (let k = 0; k < face.length; k++) {
      const i = face[k]!;
      const j = face[(k + 1) % face.length]!;
      const hi = heights[i]!;
      const hj = heights[j]!;
      if (hi <= 0) cut.push(keep(i));
      if (hi < 0) below = true;
      if (hi * hj < 0) cut.push(crossEdge(i, j));
    }
    if (below) faces.push(cut);
  }
  faces.push(ringAround([...onPlane], vertices, plane.normal));
  return { vertices, faces };
}

/** Corners of a convex face in order, counter-clockwise about its normal. */
function ringAround(corners: readonly number[], vertices: readonly Vec3[], normal: Vec3): number[] {
  const centre = scale(corners.map((i) => vertices[i]!).reduce(add), 1 / corners.length);
  const across = sub(vertices[corners[0]!]!, centre);
  const u = unit(sub(across, scale(normal, dot(across, normal))));
  const v = cross(normal, u);
  const angle = (i: number): number => {
    const d = sub(vertices[i]!, centre);
    return Math.atan2(dot(d, v), dot(d, u));
  };
  return [...corners].sort((a, b) => angle(a) - angle(b));
}
