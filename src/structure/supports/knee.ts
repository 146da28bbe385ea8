/**
 * Shape of one knee brace in its upright plane. `s` runs level from the centre of the post, `z` up from the underside it
 * braces; the centre line goes from (0, −rise) to (run, 0). The post's face is at `s = half`. Inches, radians.
 */
import type { Vec2 } from '../../base/vec.js';

export interface Knee {
  readonly run: number;
  readonly rise: number;
  readonly half: number;
  /** Size of the brace in the plane. */
  readonly depth: number;
}

export interface KneeShape {
  /** Working length, between the working points. */
  readonly working: number;
  /** Centre of the end at the post's face; the other end's centre is (run, 0). */
  readonly foot: Vec2;
  /** Unit vector square to the brace, upward. */
  readonly up: Vec2;
  /** Outline, counter-clockwise. */
  readonly outline: readonly Vec2[];
  /** Long point to long point. */
  readonly length: number;
  /** Length of the shorter edge; not positive when the brace is too short to be cut. */
  readonly shortest: number;
  /** Bevels off a square cut. */
  readonly bevelAtPost: number;
  readonly bevelAtBeam: number;
}

export function kneeShape({ run, rise, half, depth }: Knee): KneeShape {
  const working = Math.hypot(run, rise);
  const t = { x: run / working, y: rise / working };
  const up = { x: -t.y, y: t.x };
  // Distances along the centre line from the post's centre to where an edge at offset `o` meets the face, the underside.
  const atFace = (o: number): number => (half - up.x * o) / t.x;
  const atTop = (o: number): number => (rise - up.y * o) / t.y;
  const point = (o: number, u: number): Vec2 => ({ x: up.x * o + t.x * u, y: -rise + up.y * o + t.y * u });
  const o = depth / 2;
  const reach = [atFace(o), atFace(-o), atTop(-o), atTop(o)] as const;
  const slope = Math.atan2(rise, run);
  return {
    working,
    foot: point(0, atFace(0)),
    up,
    outline: [point(o, reach[0]), point(-o, reach[1]), point(-o, reach[2]), point(o, reach[3])],
    length: Math.max(...reach) - Math.min(...reach),
    shortest: Math.min(reach[2] - reach[1], reach[3] - reach[0]),
    bevelAtPost: slope,
    bevelAtBeam: Math.PI / 2 - slope,
  };
}
