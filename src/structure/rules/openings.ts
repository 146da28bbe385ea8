import type { Issue } from '../../base/issue.js';
import { area, clipConvex, clipHalfPlane } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Opening, OpeningKind } from '../../project/model.js';
import { DOOR_PATH, FLASHING } from '../constants.js';
import { edgesAtWalls, fromWall } from '../describe.js';
import { error, warning } from '../issues.js';
import type { StructureRule } from './contract.js';
import { postOutline } from './plan.js';

const WALKED: ReadonlySet<OpeningKind> = new Set<OpeningKind>(['door', 'sliding-door', 'french-door', 'garage-door']);

/** Opening as a rectangle on its wall (distance along, height), grown by `more` on all sides. */
const onWall = (o: Opening, more: number): Vec2[] => [
  { x: o.offset - more, y: o.sill - more },
  { x: o.offset + o.width + more, y: o.sill - more },
  { x: o.offset + o.width + more, y: o.head + more },
  { x: o.offset - more, y: o.head + more },
];

/** Part of a rectangle between two heights that run straight from `from` to `to`. */
function within(rect: readonly Vec2[], band: Band): number {
  const { from, to, below, above } = band;
  const slope = (to.y - from.y) / (to.x - from.x);
  const line = (x: number): number => from.y + slope * (x - from.x);
  let p = clipHalfPlane(rect, (q) => q.x - from.x);
  p = clipHalfPlane(p, (q) => to.x - q.x);
  p = clipHalfPlane(p, (q) => q.y - (line(q.x) - below));
  p = clipHalfPlane(p, (q) => line(q.x) + above - q.y);
  return p.length < 3 ? 0 : area(p);
}

/** Strip on a wall: heights `below` under to `above` over the line from → to. */
interface Band {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly below: number;
  readonly above: number;
  readonly mark: string;
  readonly path: string;
  readonly wall: string;
}

/** New work and its flashing stay clear of windows and doors; nothing stands in front of a door. */
export const openings: StructureRule = (placed) => {
  const { structure } = placed;
  const bands: Band[] = [];
  for (const e of edgesAtWalls(structure.surfaces, structure.walls)) {
    const laid = placed.roofs.find((r) => r.roof.mark === e.surface.roof)!;
    bands.push({
      from: { x: e.from.along, y: e.from.z },
      to: { x: e.to.along, y: e.to.z },
      below: laid.framed.plumb + laid.layers.sheathing / Math.cos(e.surface.slope),
      above: e.surface.thickness + FLASHING,
      mark: e.surface.roof,
      path: e.surface.path,
      wall: e.wall.id,
    });
  }
  for (const m of structure.members) {
    const j = m.role === 'ledger' ? structure.joints.find((k) => k.ties[0]!.part === m.id) : undefined;
    const wall = j && structure.walls.find((w) => w.id === j.ties[1]!.part);
    if (wall === undefined) continue;
    const ends = [fromWall(wall, m.start).along, fromWall(wall, m.end).along].sort((p, q) => p - q);
    const half = m.section.depth / 2;
    bands.push({
      from: { x: ends[0]!, y: m.start.z },
      to: { x: ends[1]!, y: m.start.z },
      below: half,
      above: half,
      mark: m.mark,
      path: m.path,
      wall: wall.id,
    });
  }
  const issues: Issue[] = [];
  const told = new Set<string>();
  for (const wall of structure.walls) {
    for (const o of wall.openings) {
      for (const band of bands) {
        if (band.wall !== wall.id || told.has(`${o.mark}${band.mark}`)) continue;
        const crosses = within(onWall(o, 0), band) > 0.01;
        if (!crosses && within(onWall(o, FLASHING), band) <= 0.01) continue;
        told.add(`${o.mark}${band.mark}`);
        issues.push(
          crosses
            ? error(
                'roof-crosses-opening',
                band.path,
                `${band.mark} with its flashing crosses ${o.mark} (${o.room}).`,
                { subject: band.mark, expected: `clear of ${o.mark}: another height or place` },
              )
            : warning(
                'roof-near-opening',
                band.path,
                `${band.mark} comes within ${FLASHING}" of ${o.mark} (${o.room}): its trim and flashing have no room.`,
                { subject: band.mark },
              ),
        );
      }
    }
  }
  return [...issues, ...paths(placed)];
};

function paths({ structure }: Parameters<StructureRule>[0]): Issue[] {
  const issues: Issue[] = [];
  const posts = structure.members.filter((m) => m.role === 'post');
  for (const wall of structure.walls) {
    const d = { x: wall.out.y, y: -wall.out.x };
    for (const o of wall.openings) {
      if (!WALKED.has(o.kind)) continue;
      const at = (along: number, out: number): Vec2 => ({
        x: wall.start.x + d.x * along + wall.out.x * out,
        y: wall.start.y + d.y * along + wall.out.y * out,
      });
      const zone = [
        at(o.offset + o.width, DOOR_PATH),
        at(o.offset, DOOR_PATH),
        at(o.offset, 0),
        at(o.offset + o.width, 0),
      ];
      for (const post of posts) {
        const common = clipConvex(postOutline(post), zone);
        if (common.length < 3 || area(common) < 0.01) continue;
        issues.push(
          warning('post-in-opening-path', post.path, `The post stands in front of ${o.mark} (${o.room}).`, {
            subject: post.mark,
            expected: `${DOOR_PATH}" clear in front of the door`,
          }),
        );
      }
    }
  }
  return issues;
}
