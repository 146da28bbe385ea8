import type { Issue } from '../../base/issue.js';
import { signedArea } from '../../base/plane.js';
import { formatLength } from '../../base/quantity/index.js';
import { fault } from '../issues.js';
import type { WrittenHouse } from '../schema/house.js';
import { outlineIssues } from './outline.js';

const SLACK = 1 / 16;

function wallIssues(w: WrittenHouse): Issue[] {
  const corners = w.walls.map((wall) => wall.start);
  const issues = outlineIssues(corners, ['house', 'walls']);
  if (issues.length > 0) return issues;
  if (signedArea(corners) < 0) return [];
  return [
    fault(
      'walls-order',
      ['house', 'walls'],
      'the walls run counter-clockwise as seen from above',
      'clockwise: the patio wall from left to right as seen looking out, then on to the right',
    ),
  ];
}

function openingIssues(w: WrittenHouse): Issue[] {
  const issues: Issue[] = [];
  w.openings.forEach((o, i) => {
    const path = ['house', 'openings', i];
    if (o.sill >= o.head)
      issues.push(
        fault(
          'contradiction',
          [...path, 'head'],
          `the head of ${o.mark} is not above its sill`,
          `more than ${formatLength(o.sill)}`,
        ),
      );
    const n = w.walls.findIndex((wall) => wall.name === o.wall);
    const wall = w.walls[n];
    if (!wall) return;
    const end = w.walls[(n + 1) % w.walls.length]!.start;
    const length = Math.hypot(end.x - wall.start.x, end.y - wall.start.y);
    if (o.offset + o.width > length + SLACK) {
      const message = `${o.mark} ends ${formatLength(o.offset + o.width)} from the left end of a wall ${formatLength(length)} long`;
      issues.push(
        fault(
          'opening-outside-wall',
          [...path, 'offset'],
          message,
          `offset and width together at most ${formatLength(length)}`,
        ),
      );
    }
    // Vents sit in gables above the plate; glass and doors do not reach past it.
    if (o.kind !== 'vent' && o.head > wall.plate + SLACK) {
      const message = `the head of ${o.mark} is above the wall plate`;
      issues.push(fault('opening-outside-wall', [...path, 'head'], message, `at most ${formatLength(wall.plate)}`));
    }
    const other = w.openings.find(
      (p, j) =>
        j < i &&
        p.wall === o.wall &&
        p.offset + p.width > o.offset + SLACK &&
        o.offset + o.width > p.offset + SLACK &&
        p.head > o.sill + SLACK &&
        o.head > p.sill + SLACK,
    );
    if (other)
      issues.push(
        fault(
          'openings-overlap',
          path,
          `${o.mark} overlaps ${other.mark} in the wall "${o.wall}"`,
          'openings apart from each other',
        ),
      );
  });
  return issues;
}

function roofIssues(w: WrittenHouse): Issue[] {
  return w.roofs.flatMap((r, i): Issue[] => {
    const path = ['house', 'roofs', i];
    const issues: Issue[] = [];
    if (r.min.x >= r.max.x || r.min.y >= r.max.y) {
      issues.push(
        fault(
          'contradiction',
          [...path, 'max'],
          '"max" is not right of and beyond "min"',
          'the corner with the greater x and y',
        ),
      );
    }
    const key = r.kind === 'shed' ? 'fall' : 'ridge';
    if (r[key] === undefined)
      issues.push(
        fault('missing', [...path, key], `"${key}" is missing for a ${r.kind} roof`, key === 'fall' ? '"+y"' : '"x"'),
      );
    return issues;
  });
}

const roomIssues = (w: WrittenHouse): Issue[] =>
  (w.rooms ?? []).flatMap((r, i) => outlineIssues(r.outline, ['house', 'rooms', i, 'outline']));

export const houseIssues = (w: WrittenHouse): Issue[] => [
  ...roomIssues(w),
  ...wallIssues(w),
  ...openingIssues(w),
  ...roofIssues(w),
];
