import { contains, distanceToSegment } from '../base/plane.js';
import type { Vec2 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import { coverageOf } from './coverage.js';
import type { LineDistance, LotLine, LotResult } from './model.js';
import { separationsOf } from './separations.js';
import type { Survey } from './survey.js';

/** What of the placed cover the lot is asked about. House axes. */
export interface CoverFootprint {
  /** Outermost points of the posts (their corners, or centres when drawn as points). */
  readonly posts: readonly Vec2[];
  /** Roof outlines in plan, overhangs included. */
  readonly eaves: readonly (readonly Vec2[])[];
}

interface Nearest {
  readonly distance: number;
  readonly at: Vec2;
}

/** Distance of a point to a lot line, negative when the point is past it, outside the lot. */
function toLine(p: Vec2, line: LotLine, corners: readonly Vec2[]): number {
  const d = distanceToSegment(p, line.start, line.end);
  const side = (p.x - line.start.x) * line.inward.x + (p.y - line.start.y) * line.inward.y;
  return side < 0 && !contains(corners, p) ? -d : d;
}

function nearestPoint(points: readonly Vec2[], line: LotLine, corners: readonly Vec2[]): Nearest | undefined {
  let best: Nearest | undefined;
  for (const p of points) {
    const distance = toLine(p, line, corners);
    if (!best || distance < best.distance) best = { distance, at: p };
  }
  return best;
}

/** Point of segment a–b nearest to q. */
function foot(q: Vec2, a: Vec2, b: Vec2): Vec2 {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const n = dx * dx + dy * dy;
  const t = n === 0 ? 0 : Math.min(1, Math.max(0, ((q.x - a.x) * dx + (q.y - a.y) * dy) / n));
  return { x: a.x + t * dx, y: a.y + t * dy };
}

/** Least distance of outlines to a line: at a corner of the outline, or where a lot corner juts toward its edge. */
function nearestEdge(
  outlines: readonly (readonly Vec2[])[],
  line: LotLine,
  corners: readonly Vec2[],
): Nearest | undefined {
  let best = nearestPoint(outlines.flat(), line, corners);
  for (const outline of outlines) {
    outline.forEach((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      for (const q of [line.start, line.end]) {
        const at = foot(q, a, b);
        const distance = Math.hypot(at.x - q.x, at.y - q.y);
        if (best && distance < best.distance) best = { distance, at };
      }
    });
  }
  return best;
}

function lineDistances(project: Project, survey: Survey, cover: CoverFootprint): LineDistance[] {
  const { zoning } = project.basis;
  const house = [project.house.walls.map((w) => w.start)];
  return survey.lines.map((line) => {
    const toHouse = nearestEdge(house, line, survey.corners)!;
    // A cover with nothing placed yet stands in for itself by what there is.
    const eave =
      nearestEdge(cover.eaves, line, survey.corners) ?? nearestPoint(cover.posts, line, survey.corners) ?? toHouse;
    const post = nearestPoint(cover.posts, line, survey.corners) ?? eave;
    return {
      line: line.name,
      yard: line.yard,
      required: zoning.setbacks[line.yard].value,
      toPost: post.distance,
      toEave: eave.distance,
      toHouse: toHouse.distance,
      governing: zoning.referenceEdge.value === 'post' ? post.distance : eave.distance,
      nearestPost: post.at,
      nearestEave: eave.at,
    };
  });
}

/** Distances of the placed cover and the house to every lot line, and coverage before and after. Inches. */
export const measureLot = (project: Project, survey: Survey, cover: CoverFootprint): LotResult => ({
  ...survey,
  coverage: coverageOf(project, survey, cover.eaves),
  distances: lineDistances(project, survey, cover),
  separations: separationsOf(project, cover.eaves),
});
