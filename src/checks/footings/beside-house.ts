/**
 * Footings whose hole may reach under the house: closer to a wall than they are deep. Whether they undermine it turns on the
 * depth of the house footing (check `house-footing`). Line at 45 degrees: common practice, no source. Inches.
 */
import { distanceToSegment } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { heightAt } from '../../structure/ground.js';
import type { Footing, Structure, WallPlaced } from '../../structure/model.js';

export interface BesideHouse {
  readonly footing: Footing;
  /** Edge of the footing to the face of the nearest wall, on the plan. */
  readonly clear: number;
  /** Underside below the grade beside it. */
  readonly depth: number;
  /** A house footing whose underside is less deep than this lies over the line at 45 degrees, its own projection not counted. */
  readonly least: number;
}

/** Edge to wall; 0 where they touch. A square footing lies along the axes, as it is drawn. */
function clearOf(f: Footing, w: WallPlaced): number {
  const half = f.size / 2;
  if (f.round) return Math.max(0, distanceToSegment(f.at, w.start, w.end) - half);
  const corners = [-half, half].flatMap((x) => [-half, half].map((y) => ({ x: f.at.x + x, y: f.at.y + y })));
  const toSquare = (p: Vec2): number =>
    Math.hypot(Math.max(0, Math.abs(p.x - f.at.x) - half), Math.max(0, Math.abs(p.y - f.at.y) - half));
  return Math.min(...corners.map((p) => distanceToSegment(p, w.start, w.end)), toSquare(w.start), toSquare(w.end));
}

export function besideHouse(structure: Structure): readonly BesideHouse[] {
  if (structure.walls.length === 0) return [];
  return structure.footings.flatMap((footing) => {
    if (footing.onSlab) return [];
    const clear = Math.min(...structure.walls.map((w) => clearOf(footing, w)));
    const depth = heightAt(structure.grade, footing.at) - footing.bottom;
    return depth > clear ? [{ footing, clear, depth, least: depth - clear }] : [];
  });
}
