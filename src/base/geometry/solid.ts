import { add, cross, dot, scale, sub, unit, type Vec3 } from '../vec.js';

/** Convex polyhedron. Corners of each face run counter-clockwise as seen from outside. Inches. */
export interface Solid {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

/** The plane `normal · p = offset`; `normal` has length one. Points with less are below it. */
export interface Plane {
  readonly normal: Vec3;
  readonly offset: number;
}

export function planeThrough(point: Vec3, normal: Vec3): Plane {
  const n = unit(normal);
  return { normal: n, offset: dot(n, point) };
}

/** Height of a point above a plane, negative below. */
export const heightAbove = (plane: Plane, p: Vec3): number => dot(plane.normal, p) - plane.offset;

export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Smallest upright box around a solid. */
export function bounds(s: Solid): Box {
  let { x: x0, y: y0, z: z0 } = s.vertices[0]!;
  let [x1, y1, z1] = [x0, y0, z0];
  for (const v of s.vertices) {
    x0 = Math.min(x0, v.x);
    y0 = Math.min(y0, v.y);
    z0 = Math.min(z0, v.z);
    x1 = Math.max(x1, v.x);
    y1 = Math.max(y1, v.y);
    z1 = Math.max(z1, v.z);
  }
  return { min: { x: x0, y: y0, z: z0 }, max: { x: x1, y: y1, z: z1 } };
}

export const translate = (s: Solid, by: Vec3): Solid => ({
  vertices: s.vertices.map((v) => add(v, by)),
  faces: s.faces,
});

/** Twice the area of a face times its outward unit normal. */
function faceVector(s: Solid, face: readonly number[]): Vec3 {
  const o = s.vertices[face[0]!]!;
  let sum: Vec3 = { x: 0, y: 0, z: 0 };
  for (let i = 1; i + 1 < face.length; i++) {
    sum = add(sum, cross(sub(s.vertices[face[i]!]!, o), sub(s.vertices[face[i + 1]!]!, o)));
  }
  return sum;
}

/** Outward unit normal of a face. */
export const faceNormal = (s: Solid, face: readonly number[]): Vec3 => unit(faceVector(s, face));

/** Volume by the divergence theorem; positive when the faces look outward. Cubic inches. */
export function volume(s: Solid): number {
  // Measured from a corner of the solid itself, so that one far from the origin keeps its figures.
  const origin = s.vertices[0]!;
  let six = 0;
  for (const face of s.faces) six += dot(sub(s.vertices[face[0]!]!, origin), faceVector(s, face));
  return six / 6;
}

/** Mean of the corners: a point inside. */
export const middle = (s: Solid): Vec3 => scale(s.vertices.reduce(add), 1 / s.vertices.length);
