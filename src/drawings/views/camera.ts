/**
 * Orthographic cameras. A camera turns a house-axes point into picture coordinates: `a` to the right, `b` up the page,
 * `depth` toward the viewer, all in model inches. An elevation seen from the yard shows x running right to left, because
 * the viewer faces the house; `camera.test.ts` guards against a mirrored view.
 */
import type { Vec3 } from '../../base/vec.js';
import { cross, dot } from '../../base/vec.js';

export interface Camera {
  readonly right: Vec3;
  readonly up: Vec3;
  /** Unit vector from the model to the viewer. */
  readonly toward: Vec3;
}

const camera = (right: Vec3, up: Vec3): Camera => ({ right, up, toward: cross(right, up) });

/** Side of the house or cover from which one looks: `rear` is seen from the yard, looking toward the house. */
export const CAMERAS = {
  rear: camera({ x: -1, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }),
  front: camera({ x: 1, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }),
  /** Standing on the +x side, looking toward −x: the yard (+y) is to the right. */
  right: camera({ x: 0, y: 1, z: 0 }, { x: 0, y: 0, z: 1 }),
  /** Standing on the −x side, looking toward +x: the yard is to the left. */
  left: camera({ x: 0, y: -1, z: 0 }, { x: 0, y: 0, z: 1 }),
  plan: camera({ x: 1, y: 0, z: 0 }, { x: 0, y: 1, z: 0 }),
} as const satisfies Record<string, Camera>;
export type CameraName = keyof typeof CAMERAS;

export interface Seen {
  readonly a: number;
  readonly b: number;
  readonly depth: number;
}

export const see = (c: Camera, p: Vec3): Seen => ({ a: dot(p, c.right), b: dot(p, c.up), depth: dot(p, c.toward) });
