/** Plan outlines of the new work that the lot is measured to: post corners, roof surfaces and their fascias (not gutters). */
import type { Vec2 } from '../base/vec.js';
import type { CoverFootprint } from '../lot/index.js';
import type { Member, Structure } from '../structure/model.js';

/** Plan outline of a bar: half its width to either side. */
function barOutline({ start, end, section }: Member): Vec2[] {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const run = Math.hypot(dx, dy);
  if (run === 0) return [];
  const sx = (-dy / run) * (section.width / 2);
  const sy = (dx / run) * (section.width / 2);
  return [
    { x: start.x + sx, y: start.y + sy },
    { x: start.x - sx, y: start.y - sy },
    { x: end.x - sx, y: end.y - sy },
    { x: end.x + sx, y: end.y + sy },
  ];
}

/** Plan corners of a post: its section about its axis, the depth along `up`. */
function postCorners({ start, section, up }: Member): Vec2[] {
  const d = section.depth / 2;
  const w = section.width / 2;
  const out: Vec2[] = [];
  for (const i of [-1, 1]) {
    for (const j of [-1, 1])
      out.push({ x: start.x + i * d * up.x - j * w * up.y, y: start.y + i * d * up.y + j * w * up.x });
  }
  return out;
}

/** Posts inside the wall of the house: they stand within a building that is there already. */
const inHouse = (structure: Structure): ReadonlySet<string | undefined> =>
  new Set(structure.joints.filter((j) => j.kind === 'beam-to-wall-post').map((j) => j.ties[1]?.part));

export function coverFootprint(structure: Structure): CoverFootprint {
  const made = structure.members.filter((m) => m.state === 'new');
  const within = inHouse(structure);
  return {
    posts: made.filter((m) => m.role === 'post' && !within.has(m.id)).flatMap(postCorners),
    eaves: [
      ...structure.surfaces.map((s) =>
        s.outline.map((p) => ({
          x: s.origin.x + p.x * s.u.x + p.y * s.v.x,
          y: s.origin.y + p.x * s.u.y + p.y * s.v.y,
        })),
      ),
      ...made
        .filter((m) => m.role === 'fascia')
        .map(barOutline)
        .filter((o) => o.length > 0),
    ],
  };
}
