/**
 * Places where a roof's water runs against a wall, and the cricket that would turn it aside: a small gable whose ridge runs
 * level from the wall up the slope that falls on it, so that its valleys lead the water past both ends of the wall's stretch.
 */
import type { Vec2, Vec3 } from '../../base/vec.js';
import { edgesAtWalls } from '../describe.js';
import type { Structure } from '../model.js';
import { type OverlayShape, overlayShape } from './overlay-shape.js';

export interface Cricket {
  readonly roof: string;
  readonly surface: string;
  readonly wall: string;
  /** Stretch of wall that water runs against, inches, and its ends. */
  readonly width: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Level unit vector from the wall up the slope. */
  readonly up: Vec2;
  /** As an overlay: its rise is the height of its ridge at the wall over the eave there. */
  readonly shape: OverlayShape;
  /** Both slopes, in². */
  readonly area: number;
  /** Whether its ridge ends on the slope it lies on. */
  readonly fits: boolean;
  readonly path: string;
}

/** A cricket `width` wide before a wall, on a slope `fall`, with its own slopes `own` (rises over run). */
export const cricketShape = (width: number, fall: number, own: number): OverlayShape =>
  overlayShape(fall, own, (width / 2) * own);

/** Area of both its slopes, in²: triangles from the wall to the end of its ridge. */
export const cricketArea = (s: OverlayShape): number => s.halfWidth * s.run * Math.hypot(1, s.slope);

/** With slopes as steep as the roof it stands on. */
export function crickets(structure: Structure): Cricket[] {
  return edgesAtWalls(structure.surfaces, structure.walls).flatMap((e): Cricket[] => {
    const { surface: s, wall } = e;
    const against = s.downhill.x * wall.out.x + s.downhill.y * wall.out.y < -0.99;
    if (!against || Math.abs(e.from.z - e.to.z) > 0.5) return [];
    const length = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
    const [a, b] = [Math.max(0, e.from.along), Math.min(length, e.to.along)];
    const at = (along: number): Vec3 => ({
      x: wall.start.x + ((wall.end.x - wall.start.x) / length) * along,
      y: wall.start.y + ((wall.end.y - wall.start.y) / length) * along,
      z: e.from.z,
    });
    const fall = Math.tan(s.slope);
    const shape = cricketShape(b - a, fall, fall);
    const depth = Math.max(...s.outline.map((p) => p.y)) * Math.cos(s.slope);
    return [
      {
        roof: s.roof,
        surface: s.id,
        wall: wall.name,
        width: b - a,
        from: at(a),
        to: at(b),
        up: { x: -s.downhill.x + 0, y: -s.downhill.y + 0 },
        shape,
        area: cricketArea(shape),
        fits: shape.run <= depth + 1e-6,
        path: s.path,
      },
    ];
  });
}
