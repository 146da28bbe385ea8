/** Places in the frame of an overlay: a gable on top of an old roof slope. House axes, inches. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { OverlayFrame, OverlayPlaced } from '../model.js';

/** House point of a place in the overlay's frame. */
export const overlayPoint = (f: OverlayFrame, x: number, y: number, z: number): Vec3 => ({
  x: f.origin.x + f.into.x * x + f.side.x * y,
  y: f.origin.y + f.into.y * x + f.side.y * y,
  z,
});

/** Place of a plan point in the overlay's frame. */
export const inOverlay = (f: OverlayFrame, p: Vec2): Vec2 => ({
  x: (p.x - f.origin.x) * f.into.x + (p.y - f.origin.y) * f.into.y,
  y: (p.x - f.origin.x) * f.side.x + (p.y - f.origin.y) * f.side.y,
});

/** Height of the old slope's sheathing over `x`. */
export const oldAt = (o: Pick<OverlayPlaced, 'frame' | 'shape'>, x: number): number =>
  o.frame.origin.z + o.shape.old * x;
