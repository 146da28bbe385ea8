import { areaPathsD, FillRule, intersectD, unionD } from 'clipper2-ts';
import { area, clipHalfPlane } from '../base/plane.js';
import type { Vec2 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import type { LotLine, LotResult } from './model.js';
import type { Survey } from './survey.js';

/** Decimals of an inch kept by the polygon union. */
const PRECISION = 4;

type Outline = readonly Vec2[];
const path = (p: Outline) => p.map(({ x, y }) => ({ x, y }));

/** Area covered by outlines, each counted once where they overlap, within a polygon when one is given. */
function covered(outlines: readonly Outline[], within: Outline | undefined): number {
  if (outlines.length === 0) return 0;
  if (outlines.length === 1 && !within) return area(outlines[0]!);
  const clockwiseToo = outlines.map(path);
  const paths = within
    ? intersectD(clockwiseToo, [path(within)], FillRule.NonZero, PRECISION)
    : unionD(clockwiseToo, [], FillRule.NonZero, PRECISION);
  return Math.abs(areaPathsD(paths));
}

/** Counter-clockwise copy: outlines of opposite sense would cancel under the winding rule where they overlap. */
const turned = (p: Outline): Outline => {
  let twice = 0;
  for (let i = 0; i < p.length; i++) {
    const a = p[i]!;
    const b = p[(i + 1) % p.length]!;
    twice += a.x * b.y - b.x * a.y;
  }
  return twice < 0 ? [...p].reverse() : p;
};

const length = (l: LotLine): number => Math.hypot(l.end.x - l.start.x, l.end.y - l.start.y);

/** The lot behind the house: between the longest rear line and the house corner nearest to it. */
function rearYard(survey: Survey, house: Outline): Outline {
  const rear = survey.lines.filter((l) => l.yard === 'rear').reduce((a, b) => (length(b) > length(a) ? b : a));
  const depth = (p: Vec2): number => (p.x - rear.start.x) * rear.inward.x + (p.y - rear.start.y) * rear.inward.y;
  const nearest = Math.min(...house.map(depth));
  return clipHalfPlane(survey.corners, (p) => nearest - depth(p));
}

/**
 * Coverage of the lot (or rear yard) before and after. House and buildings count by their walls, the cover by its
 * eaves; ground covered twice counts once, in the row that covered it first, so that rows add up.
 */
export function coverageOf(project: Project, survey: Survey, eaves: readonly Outline[]): LotResult['coverage'] {
  const house = project.house.walls.map((w) => w.start);
  const within = project.basis.zoning.coverageOf === 'rear-yard' ? rearYard(survey, house) : undefined;
  const parts = [
    { name: 'House', outlines: [house], state: 'existing' as const },
    ...project.lot.buildings
      .filter((b) => b.counts)
      .map((b) => ({ name: b.name, outlines: [b.outline], state: 'existing' as const })),
    { name: 'Patio cover', outlines: eaves, state: 'new' as const },
  ];
  const so: Outline[] = [];
  let total = 0;
  let existing = 0;
  const rows = parts.map(({ name, outlines, state }) => {
    so.push(...outlines.map(turned));
    const after = covered(so, within);
    const row = { name, area: Math.max(0, after - total), state };
    total = after;
    if (state === 'existing') existing = after;
    return row;
  });
  return {
    basis: within ? area(within) : survey.area,
    existing,
    proposed: total,
    limit: project.basis.zoning.coverageLimit.value,
    rows,
  };
}
