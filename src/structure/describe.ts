import type { Vec2 } from '../base/vec.js';
import { AT_WALL } from './constants.js';
import { heightAt } from './ground.js';
import type { Incline, RoofPlaced, Surface, WallPlaced } from './model.js';
import type { Profile } from './roofs/contract.js';
import { cornersOf } from './surfaces.js';

/** Distance of a plan point in front of a wall (negative inside) and along it from its start. */
export function fromWall(w: WallPlaced, p: Vec2): { out: number; along: number; length: number } {
  const length = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
  const dx = (w.end.x - w.start.x) / length;
  const dy = (w.end.y - w.start.y) / length;
  const x = p.x - w.start.x;
  const y = p.y - w.start.y;
  return { out: x * w.out.x + y * w.out.y, along: x * dx + y * dy, length };
}

/** An edge of a surface that runs along a wall close to it. */
export interface EdgeAtWall {
  readonly surface: Surface;
  readonly wall: WallPlaced;
  /** Ends: distance along the wall and height of the surface's plane. */
  readonly from: { readonly along: number; readonly z: number; readonly out: number };
  readonly to: { readonly along: number; readonly z: number; readonly out: number };
}

/** True for the edge behind which the roof goes on over the house: it is no edge of the roof. */
const goesOn = ({ onto, outline }: Surface, i: number): boolean =>
  onto !== undefined && [i, i + 1].every((k) => Math.abs(outline[k % outline.length]!.x - onto) < 1e-6);

/** Edges of roof surfaces within reach of a wall, over its length. */
export function edgesAtWalls(surfaces: readonly Surface[], walls: readonly WallPlaced[]): EdgeAtWall[] {
  const out: EdgeAtWall[] = [];
  for (const surface of surfaces) {
    const corners = cornersOf(surface);
    for (const wall of walls) {
      for (let i = 0; i < corners.length; i++) {
        const p = corners[i]!;
        const q = corners[(i + 1) % corners.length]!;
        const a = fromWall(wall, p);
        const b = fromWall(wall, q);
        if (Math.abs(a.out) > AT_WALL || Math.abs(b.out) > AT_WALL) continue;
        const [s, t] =
          a.along <= b.along
            ? [
                { ...a, z: p.z },
                { ...b, z: q.z },
              ]
            : [
                { ...b, z: q.z },
                { ...a, z: p.z },
              ];
        if (t.along <= 0 || s.along >= a.length || t.along - s.along < 1) continue;
        if (goesOn(surface, i)) continue;
        out.push({ surface, wall, from: s, to: t });
      }
    }
  }
  return out;
}

/**
 * Extents and heights of one roof. Heights are of its plane (top of sheathing). Mean roof height is the mean of eave and
 * highest point (ASCE 7-16 26.2), over the lowest grade under the roof, which is never less than the average grade gives.
 */
export function describeRoof(
  mark: string,
  path: string,
  profile: Profile,
  surfaces: readonly Surface[],
  grade: Incline,
  atWall: boolean,
): RoofPlaced {
  const corners = surfaces.flatMap(cornersOf);
  const xs = corners.map((c) => c.x);
  const ys = corners.map((c) => c.y);
  const zs = corners.map((c) => c.z);
  const min = { x: Math.min(...xs), y: Math.min(...ys) };
  const max = { x: Math.max(...xs), y: Math.max(...ys) };
  const ground = Math.min(...corners.map((c) => heightAt(grade, c)));
  const highestPoint = Math.max(...zs);
  const lowestEave = Math.min(...zs);
  return {
    mark,
    surfaces: surfaces.map((s) => s.id),
    meanHeight: (highestPoint + lowestEave) / 2 - ground,
    min,
    max,
    ridgeAxis: profile.ridgeAxis,
    slope: surfaces[0]!.slope,
    highestPoint,
    lowestEave,
    attached: atWall,
    path,
  };
}
