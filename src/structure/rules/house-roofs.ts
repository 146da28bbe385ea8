import type { Issue } from '../../base/issue.js';
import { clipConvex, signedArea } from '../../base/plane.js';
import { flat, type Vec2 } from '../../base/vec.js';
import { FLASHING, HOUSE_ROOF_DEPTH } from '../constants.js';
import { edgesAtWalls, fromWall } from '../describe.js';
import { planeAt, wallTopAt } from '../house/profile.js';
import { error, note } from '../issues.js';
import { cornersOf, planeHeight } from '../surfaces.js';
import { feet, inches } from '../text.js';
import type { Placed, StructureRule } from './contract.js';

/** The new roof fits under what the house already has: the wall it meets, and the eaves and slopes above. */
export const houseRoofs: StructureRule = (placed) => [...wallTops(placed), ...volumes(placed)];

function wallTops({ structure }: Placed): Issue[] {
  const issues: Issue[] = [];
  const told = new Set<string>();
  const above = (mark: string, path: string, at: Vec2, plate: number, z: number, wall: string): void => {
    const top = wallTopAt(structure.housePlanes, at, plate);
    if (z <= top + 1e-6 || told.has(mark)) return;
    told.add(mark);
    issues.push(
      error('cover-above-wall', path, `${mark} with its flashing stands higher than the ${wall} wall it meets.`, {
        subject: mark,
        found: feet(z),
        expected: `at most ${feet(top)} there; a roof over the house roof is another kind of work`,
      }),
    );
  };
  for (const e of edgesAtWalls(structure.surfaces, structure.walls)) {
    const length = fromWall(e.wall, e.wall.end).along;
    const d = { x: e.wall.out.y, y: -e.wall.out.x };
    for (const end of [e.from, e.to]) {
      const along = Math.min(Math.max(end.along, 0), length);
      const t = (along - e.from.along) / (e.to.along - e.from.along);
      const z = e.from.z + t * (e.to.z - e.from.z) + e.surface.thickness / Math.cos(e.surface.slope) + FLASHING;
      const at = { x: e.wall.start.x + d.x * along, y: e.wall.start.y + d.y * along };
      above(e.surface.roof, e.surface.path, at, e.wall.plate, z, e.wall.name);
    }
    const gap = Math.min(e.from.out, e.to.out);
    if (gap > 2 && !told.has(`${e.surface.roof} gap`)) {
      told.add(`${e.surface.roof} gap`);
      issues.push(
        note(
          'gap-at-wall',
          e.surface.path,
          `The roof ends ${inches(gap)} in front of the ${e.wall.name} wall: the gap must be closed and flashed.`,
          { subject: e.surface.roof },
        ),
      );
    }
  }
  for (const m of structure.members) {
    if (m.role !== 'ledger') continue;
    for (const end of [m.start, m.end]) {
      const wall = structure.walls.find((w) => {
        const f = fromWall(w, end);
        return Math.abs(f.out) < 6 && f.along > -1 && f.along < f.length + 1;
      });
      if (wall === undefined) continue;
      const { out } = fromWall(wall, end);
      const at = { x: end.x - wall.out.x * out, y: end.y - wall.out.y * out };
      above(m.mark, m.path, at, wall.plate, m.start.z + m.section.depth / 2, wall.name);
    }
  }
  return issues;
}

const counterClockwise = (p: readonly Vec2[]): readonly Vec2[] => (signedArea(p) < 0 ? [...p].reverse() : p);

/** New roof and existing roof as plumb-thick slabs: where both are over one place, one must be wholly above the other. */
function volumes({ structure, roofs }: Placed): Issue[] {
  const issues: Issue[] = [];
  const told = new Set<string>();
  for (const s of structure.surfaces) {
    const laid = roofs.find((r) => r.roof.mark === s.roof)!;
    const cos = Math.cos(s.slope);
    const up = s.thickness / cos;
    // Past the last frame, where it goes on over the house, there is no framing under the sheathing.
    const framing = s.onto === undefined ? laid.framed.plumb : 0;
    const down = framing + laid.layers.sheathing / cos;
    const mine = counterClockwise(cornersOf(s).map(flat));
    for (const plane of structure.housePlanes) {
      const theirs = counterClockwise(plane.outline.map(flat));
      const common = clipConvex(mine, theirs);
      if (common.length < 3 || Math.abs(signedArea(common)) < 1 || told.has(s.roof)) continue;
      const below = common.every((p) => planeHeight(s, p) + up <= planeAt(plane.outline, p) - HOUSE_ROOF_DEPTH + 1e-6);
      const over = common.every((p) => planeHeight(s, p) - down >= planeAt(plane.outline, p) - 1e-6);
      if (below || over) continue;
      told.add(s.roof);
      issues.push(
        error(
          'roof-overlaps-house-roof',
          s.path,
          `The new roof runs into the existing roof (plane ${plane.id}) or its eave.`,
          {
            subject: s.roof,
            expected: 'a lower bearing, a shorter roof at the house, or an overlay design by a licensed professional',
          },
        ),
      );
    }
  }
  return issues;
}
