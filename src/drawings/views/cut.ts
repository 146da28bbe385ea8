/** Cutting a convex piece by a vertical or horizontal plane square to the view, for sections and plans. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Solid } from '../../structure/model.js';
import { type Camera, see } from './camera.js';

export interface Cut {
  /** What is left behind the plane; undefined when the piece lies wholly before it. */
  readonly behind: Solid | undefined;
  /** Cut face in picture coordinates, counter-clockwise; undefined when the plane misses the piece. */
  readonly face: readonly Vec2[] | undefined;
}

const EPS = 1e-7;

/** Splits by the plane at `depth` (toward the viewer is removed). */
export function cutPiece(solid: Solid, camera: Camera, depth: number): Cut {
  const h = solid.vertices.map((p) => see(camera, p).depth - depth);
  const lo = Math.min(...h);
  const hi = Math.max(...h);
  if (hi <= EPS) return { behind: solid, face: undefined };
  if (lo >= -EPS) return { behind: undefined, face: undefined };
  const vertices: Vec3[] = [];
  const index = new Map<string, number>();
  const addVertex = (p: Vec3): number => {
    const key = `${Math.round(p.x * 1e6)},${Math.round(p.y * 1e6)},${Math.round(p.z * 1e6)}`;
    const known = index.get(key);
    if (known !== undefined) return known;
    vertices.push(p);
    index.set(key, vertices.length - 1);
    return vertices.length - 1;
  };
  const faces: number[][] = [];
  const rim: Vec3[] = [];
  for (const face of solid.faces) {
    const out: number[] = [];
    for (let i = 0; i < face.length; i++) {
      const ia = face[i]!;
      const ib = face[(i + 1) % face.length]!;
      const a = solid.vertices[ia]!;
      const b = solid.vertices[ib]!;
      const ha = h[ia]!;
      const hb = h[ib]!;
      if (ha <= EPS) out.push(addVertex(a));
      if (Math.abs(ha) <= EPS) rim.push(a);
      if ((ha > EPS && hb < -EPS) || (ha < -EPS && hb > EPS)) {
        const t = ha / (ha - hb);
        const p = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), z: a.z + t * (b.z - a.z) };
        out.push(addVertex(p));
        rim.push(p);
      }
    }
    const clean = out.filter((v, i) => v !== out[(i + 1) % out.length]);
    if (clean.length >= 3) faces.push(clean);
  }
  const flat = rim.map((p) => see(camera, p)).map(({ a, b }) => ({ x: a, y: b }));
  const face = hull(flat);
  if (face.length < 3) return { behind: { vertices, faces }, face: undefined };
  // The cap hides what lies behind it: add it as a face of the remaining solid.
  const cap: number[] = [];
  for (const q of face) {
    const i = flat.findIndex((p) => Math.abs(p.x - q.x) < 1e-6 && Math.abs(p.y - q.y) < 1e-6);
    cap.push(addVertex(rim[i]!));
  }
  faces.push(cap);
  return { behind: { vertices, faces }, face };
}

/** Convex hull, counter-clockwise, collinear points dropped. */
export function hull(points: readonly Vec2[]): Vec2[] {
  const p = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (seq: readonly Vec2[]): Vec2[] => {
    const out: Vec2[] = [];
    for (const q of seq) {
      while (out.length >= 2) {
        const [a, b] = [out[out.length - 2]!, out[out.length - 1]!];
        if ((b.x - a.x) * (q.y - a.y) - (b.y - a.y) * (q.x - a.x) > 1e-9) break;
        out.pop();
      }
      out.push(q);
    }
    out.pop();
    return out;
  };
  if (p.length < 3) return p;
  return [...half(p), ...half([...p].reverse())];
}
