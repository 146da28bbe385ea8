import { hasErrors, type Issue, type Outcome } from '../base/issue.js';
import { area, clipConvex, contains, distanceToSegment, signedArea } from '../base/plane.js';
import { formatLength } from '../base/quantity/index.js';
import type { Vec2 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import { crossing } from '../project/validate/outline.js';
import { northAngle, runTraverse } from './axes.js';
import { insideIntervals } from './chord.js';
import type { LotLine, LotResult, SetbackLine } from './model.js';

/** The lot itself, before anything is measured on it. */
export type Survey = Pick<LotResult, 'corners' | 'lines' | 'setbacks' | 'north' | 'closure' | 'area' | 'easements'>;

/** Closure worse than these shares of the perimeter is doubtful, or no boundary at all. Common practice, no source. */
export const DOUBTFUL_CLOSURE = 1 / 2000;
export const NO_CLOSURE = 1 / 200;

const issue = (
  severity: Issue['severity'],
  code: string,
  path: string,
  message: string,
  expected: string,
  found?: string,
): Issue => ({
  code,
  severity,
  path,
  message,
  expected,
  ...(found === undefined ? {} : { found }),
});

function lotLines(project: Project, corners: readonly Vec2[]): LotLine[] {
  // Walking counter-clockwise the lot lies to the left, clockwise to the right.
  const hand = signedArea(corners) > 0 ? 1 : -1;
  return project.lot.courses.map((c, i) => {
    const start = corners[i]!;
    const end = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(end.x - start.x, end.y - start.y);
    const inward = { x: (-hand * (end.y - start.y)) / length, y: (hand * (end.x - start.x)) / length };
    return { name: c.name, yard: c.yard, start, end, azimuth: c.azimuth, distance: c.distance, inward, path: c.path };
  });
}

/** The line a distance inside a lot line, as far as it runs within the lot and abreast of that line. */
function setbackLines(project: Project, lines: readonly LotLine[], corners: readonly Vec2[]): SetbackLine[] {
  return lines.flatMap((line) => {
    const required = project.basis.zoning.setbacks[line.yard].value;
    if (required <= 0) return [];
    const length = Math.hypot(line.end.x - line.start.x, line.end.y - line.start.y);
    const along = { x: (line.end.x - line.start.x) / length, y: (line.end.y - line.start.y) / length };
    const origin = { x: line.start.x + required * line.inward.x, y: line.start.y + required * line.inward.y };
    const at = (t: number): Vec2 => ({ x: origin.x + t * along.x, y: origin.y + t * along.y });
    return insideIntervals(corners, origin, along)
      .filter(([t0, t1]) => t1 > 0 && t0 < length)
      .map(([t0, t1]) => ({ line: line.name, yard: line.yard, required, start: at(t0), end: at(t1) }));
  });
}

/** How far past the ends of a line a strip may reach to meet the neighbouring lines, in widths of the strip. */
const REACH = 4;

/** Part of the lot within a distance of one of its lines. */
function strip(line: LotLine, width: number, corners: readonly Vec2[]): readonly Vec2[] {
  const length = Math.hypot(line.end.x - line.start.x, line.end.y - line.start.y);
  const along = { x: (line.end.x - line.start.x) / length, y: (line.end.y - line.start.y) / length };
  const at = (t: number, n: number): Vec2 => ({
    x: line.start.x + t * along.x + n * line.inward.x,
    y: line.start.y + t * along.y + n * line.inward.y,
  });
  const reach = REACH * width;
  const window = [at(-reach, 0), at(length + reach, 0), at(length + reach, width), at(-reach, width)];
  return clipConvex(corners, signedArea(window) > 0 ? window : window.reverse());
}

function closureIssue(closure: LotResult['closure']): Issue[] {
  const { error, ratio } = closure;
  if (ratio <= DOUBTFUL_CLOSURE) return [];
  const found = `${formatLength(error)} in a perimeter of ${formatLength(closure.perimeter, { style: 'survey' })}`;
  const failed = ratio > NO_CLOSURE;
  return [
    issue(
      failed ? 'error' : 'warning',
      failed ? 'lot-not-closed' : 'lot-closure-doubtful',
      '/lot/courses',
      failed
        ? 'The courses do not come back to the point of beginning.'
        : 'The courses come back to the point of beginning only roughly.',
      'bearings and distances as on the plat; a recorded survey closes within 1 in 5,000',
      found,
    ),
  ];
}

function placeIssues(project: Project, corners: readonly Vec2[]): Issue[] {
  const house = project.house.walls.map((w) => w.start);
  const issues: Issue[] = [];
  const away = (p: Vec2): number =>
    corners.reduce(
      (least, a, i) => Math.min(least, distanceToSegment(p, a, corners[(i + 1) % corners.length]!)),
      Number.POSITIVE_INFINITY,
    );
  const outside = house.filter((p) => !contains(corners, p, 1));
  if (outside.length > 0) {
    const worst = Math.max(...outside.map(away));
    issues.push(
      issue(
        'error',
        'house-outside-lot',
        '/lot/origin',
        `${outside.length} of ${house.length} house corners lie outside the lot, by up to ${formatLength(worst)}.`,
        'the house origin as scaled from the survey: east and north of the point of beginning, and the bearing straight out from the wall',
      ),
    );
  }
  project.lot.buildings.forEach((b, i) => {
    if (b.outline.every((p) => contains(corners, p, 1))) return;
    const path = `/lot/buildings/${i}/outline`;
    issues.push(
      issue(
        'warning',
        'building-outside-lot',
        path,
        `The ${b.name} reaches past a lot line.`,
        'corners in house axes, inside the lot',
      ),
    );
  });
  return issues;
}

/**
 * Places the boundary in house axes: traverse, closure, lines with their inward side, setback lines, easements. Takes a
 * traverse in either sense. An error (it does not close, crosses itself, or the house is not on it) leaves no value.
 */
export function surveyLot(project: Project): Outcome<Survey> {
  const { corners, closure } = runTraverse(project.lot);
  const issues: Issue[] = closureIssue(closure);
  const cross = crossing(corners);
  if (cross) {
    const names = cross.map((i) => `"${project.lot.courses[i]!.name}"`).join(' and ');
    issues.push(
      issue('error', 'lot-crosses', '/lot/courses', `The lot lines ${names} cross.`, 'courses in order round the lot'),
    );
  } else if (area(corners) < 144) {
    issues.push(
      issue('error', 'lot-empty', '/lot/courses', 'The courses enclose no land.', 'courses all the way round the lot'),
    );
  }
  if (project.basis.zoning.coverageOf === 'rear-yard' && !project.lot.courses.some((c) => c.yard === 'rear')) {
    issues.push(
      issue(
        'error',
        'no-rear-line',
        '/basis/zoning/coverageOf',
        'Coverage is of the rear yard, but no lot line is a rear line.',
        '"lot", or a course with "yard": "rear"',
      ),
    );
  }
  if (!hasErrors(issues)) issues.push(...placeIssues(project, corners));
  if (hasErrors(issues)) return { value: undefined, issues };
  const lines = lotLines(project, corners);
  const value: Survey = {
    corners,
    lines,
    setbacks: setbackLines(project, lines, corners),
    north: northAngle(project.lot.outward),
    closure,
    area: area(corners),
    easements: project.lot.easements.map((e) => ({ name: e.name, outline: strip(lines[e.course]!, e.width, corners) })),
  };
  return { value, issues };
}
