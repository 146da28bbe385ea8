import type { Issue } from '../../base/issue.js';
import { area, clipConvex, contains } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { houseOutline } from '../house/walls.js';
import { error, warning } from '../issues.js';
import type { StructureRule } from './contract.js';
import { beamOutline, footingOutline, postOutline } from './plan.js';

/** Area two outlines share, square inches; the second is convex and counter-clockwise. */
const shared = (house: readonly Vec2[], part: readonly Vec2[]): number => {
  const common = clipConvex(house, part);
  return common.length < 3 ? 0 : area(common);
};

/** How far a beam end on a post in the wall may reach into the house, inches: the deepest stud wall and its sheathing. */
const WALL_REACH = 8;

/** Posts and beams stay outside the house; a footing under it would undermine its foundation. */
export const houseFootprint: StructureRule = ({ project, structure }) => {
  const house = houseOutline(project.house);
  if (house.length < 3) return [];
  const issues: Issue[] = [];
  // Ends that the house holds have a rule of their own.
  const ends = project.cover.beams.flatMap((b) => [b.ends?.start, b.ends?.end]);
  const inWall = new Set(ends.flatMap((e) => (e?.kind === 'post-in-wall' ? [e.mark] : [])));
  const into = new Map(
    project.cover.beams.map((b) => [
      b.mark,
      [b.ends?.start, b.ends?.end].filter((e) => e?.kind === 'post-in-wall').length,
    ]),
  );
  for (const m of structure.members) {
    if (inWall.has(m.mark)) continue;
    if (m.role === 'post' && (contains(house, m.start, -1) || shared(house, postOutline(m)) > 0.01))
      issues.push(
        error('post-in-house', m.path, 'The post stands in the house or its wall.', {
          subject: m.mark,
          expected: 'a place in front of the wall',
        }),
      );
    const room = (into.get(m.mark) ?? 0) * WALL_REACH * m.section.width;
    if (m.role === 'beam' && shared(house, beamOutline(m)) > room + 0.01)
      issues.push(
        error('beam-in-wall', m.path, 'The beam runs into the house wall.', {
          subject: m.mark,
          expected: 'a beam that ends in front of the wall, on a post of its own',
        }),
      );
  }
  for (const f of structure.footings) {
    if (shared(house, footingOutline(f)) > 0.01)
      issues.push(
        warning(
          'footing-under-house',
          f.path,
          'The footing reaches under the house wall: digging it could undermine the house footing.',
          {
            subject: f.mark,
            expected: 'a footing clear of the house, or the advice of a licensed professional',
          },
        ),
      );
  }
  return issues;
};
