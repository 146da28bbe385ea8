/** A house tie runs along a wall that faces the patio, within it, on a cover that the house may hold. */
import type { Issue } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import { fault } from '../issues.js';
import type { WrittenCover } from '../schema/cover.js';
import type { WrittenHouse } from '../schema/house.js';

/** What a tape measure cannot tell apart, inches. */
const SLACK = 1 / 16;

export function tieIssues(w: WrittenCover, house: WrittenHouse | undefined): Issue[] {
  return (w.houseTies ?? []).flatMap((t, i): Issue[] => {
    const path = ['cover', 'houseTies', i];
    if (w.attachment === 'free-standing')
      return [fault('contradiction', path, 'a free-standing cover is not tied to the house', '"attached"')];
    if (t.from >= t.to)
      return [
        fault(
          'contradiction',
          [...path, 'to'],
          `tie ${t.mark} ends before it begins`,
          `more than ${formatLength(t.from)}`,
        ),
      ];
    const n = house?.walls.findIndex((x) => x.name === t.wall) ?? -1;
    const start = house?.walls[n]?.start;
    const end = house?.walls[(n + 1) % house.walls.length]?.start;
    if (!start || !end) return [];
    if (Math.abs(start.y - end.y) > SLACK || start.x >= end.x)
      return [
        fault(
          'tie-wall-direction',
          [...path, 'wall'],
          `the wall "${t.wall}" does not face out along +y`,
          'a wall along x that faces the patio',
        ),
      ];
    const range = `within the wall, from ${formatLength(start.x)} to ${formatLength(end.x)}`;
    return (['from', 'to'] as const)
      .filter((k) => t[k] < start.x - SLACK || t[k] > end.x + SLACK)
      .map((k) => fault('tie-off-wall', [...path, k], `tie ${t.mark} runs past the end of its wall`, range));
  });
}
