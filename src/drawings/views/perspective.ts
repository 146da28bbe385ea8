/**
 * Perspective as a camera: an eye at a point of the house axes, looking level, so that what is upright stays upright. A point
 * at distance d before the eye comes to (F·X/d, F·Y/d, F²/d): straight edges stay straight and plane faces plane, so the
 * hidden-line and painting code for parallel views works on what comes out, seen along its third coordinate. F is the distance
 * at which the picture has the size of the model.
 */
import { cross, dot, type Vec3 } from '../../base/vec.js';
import type { Piece, Solid } from '../../structure/model.js';
import type { Camera } from './camera.js';
import { cutPiece } from './cut.js';

export interface Eye {
  readonly at: Vec3;
  /** What is looked at; its height is not used. */
  readonly target: Vec3;
}

/** Nothing nearer to the eye than this is drawn, inches. */
const NEAR = 12;

interface Frame {
  readonly forward: Vec3;
  readonly camera: Camera;
  readonly F: number;
}

function frameOf(eye: Eye): Frame {
  const dx = eye.target.x - eye.at.x;
  const dy = eye.target.y - eye.at.y;
  const F = Math.hypot(dx, dy);
  const forward: Vec3 = { x: dx / F, y: dy / F, z: 0 };
  const up: Vec3 = { x: 0, y: 0, z: 1 };
  const right = cross(forward, up);
  return { forward, F, camera: { right, up, toward: cross(right, up) } };
}

/** What of the pieces lies before the eye, in house axes. */
export function ahead(pieces: readonly Piece[], eye: Eye): readonly Piece[] {
  const { camera } = frameOf(eye);
  const limit = dot(eye.at, camera.toward) - NEAR;
  return pieces.flatMap((p) => {
    const { behind } = cutPiece(p.solid, camera, limit);
    return behind ? [{ ...p, solid: behind }] : [];
  });
}

/** A solid before the eye in picture space: x to the right, y up, z toward the viewer, inches at the target's distance. */
export function inPerspective(solid: Solid, eye: Eye): Solid {
  const { forward, camera, F } = frameOf(eye);
  const seen = (p: Vec3): Vec3 => {
    const q = { x: p.x - eye.at.x, y: p.y - eye.at.y, z: p.z - eye.at.z };
    const k = F / dot(q, forward);
    return { x: k * dot(q, camera.right), y: k * q.z, z: k * F };
  };
  return { ...solid, vertices: solid.vertices.map(seen) };
}
