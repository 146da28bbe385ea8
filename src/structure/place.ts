/**
 * Project → Structure: where every part of the new roof stands, in house axes (inches; z = 0 at the finished floor).
 *
 * Heights. A slab's top falls evenly away from the house: top(y) = topAtHouse − fall·y; grade likewise. A post stands on
 * the surface at its own centre: the kept or new slab there, else grade. So each post of a row has its own length.
 *
 *        bearing = top of beam ─────┬──────────┬─
 *                                   │  beam    │ section depth
 *        underside ─────────────────┼──────────┼─ post top
 *                                   │   post   │ its own length
 *        post bottom ───────────────┼──────────┼─ standoff of the post base
 *        pier top ──────────────────┴┬────────┬┴─ surface + choice.top
 *        surface (slab or grade) ────┤  pier  ├──
 *                                    │        │
 *                               ┌────┴────────┴────┐ bottom + pad thickness
 *        footing bottom ────────┴──────────────────┴ surface − choice.bottom
 *
 * A pad without a pier carries the base on its own top and is refused when that lies below the surface.
 *
 * Gable. Beams parallel to the ridge, ridge midway. The top chord's upper edge stands `heel` above the bearing at the outer
 * face of the beam and rises from there; the eave is horizontal from that face to the plumb-cut tail; the rake from the last
 * frame's centre. Frames at `from`, then every spacing, the last at `to`. A scissor truss's bottom chord rises from the inner
 * faces of the beams to the middle.
 *
 * Gable of rafters. On a ridge beam each rafter bears on half of it and ends over its centre line; the beam's height follows
 * from the eave beams'. With ties the rafters end at the faces of a ridge board (framing/ties.ts).
 *
 * Shed. Falls along +y, or along +x or -x from a side wall. With a ledger, the rafter hangs on its outer face, tops flush: bearing = top of ledger. With a high
 * beam, bearing = its top. Over a beam the rafter's bottom edge meets the beam's uphill top corner and the seat runs level
 * across the whole beam (framing/rafter.ts); the low beam's height follows.
 *
 * Hip. Four slopes of one pitch on a rectangle of beams and a ridge beam (roofs/hip.ts, framing/hip.ts).
 *
 * Gable over the house. It goes on over a slope of the old roof until its ridge dies into it (tie-in/).
 *
 * Roofs beside each other may share a beam, each on its half (roofs/sharing.ts), and two beams a post (supports/shared-posts.ts).
 *
 * Surfaces lie at the top of the sheathing, plumb over the tails. The strips of the frames tile each surface.
 */
import { hasErrors, type Issue, type Outcome } from '../base/issue.js';
import type { Vec2 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import { describeRoof, edgesAtWalls } from './describe.js';
import { fasciaSection } from './fascia.js';
import { placeGround } from './ground.js';
import { placeHouseRoofs } from './house/registry.js';
import { placeWalls } from './house/walls.js';
import { makeJoints } from './joints.js';
import { makeKit } from './kit.js';
import { layersOf } from './layers.js';
import type { Member, OverlayPlaced, RoofPlaced, Structure, Surface } from './model.js';
import { neighboursOf } from './roofs/neighbours.js';
import { layRoof, profileOf } from './roofs/registry.js';
import { PRECONDITIONS, PROJECT_RULES, STRUCTURE_RULES } from './rules/registry.js';
import { placeBracing } from './supports/bracing.js';
import { meetingsOf } from './supports/meetings.js';
import { type LaidRoof, placeSupports } from './supports/place.js';
import { overHouse } from './tie-in/over-house.js';

/** What the survey contributes: a post must stand on the lot. */
export interface Site {
  /** Corners of the lot in house axes, in order. */
  readonly lotCorners?: readonly Vec2[];
}

/**
 * Places everything, or says why not. `value` is undefined when a part could not be placed; faults of a placed structure
 * (a post in the house, a roof across a window) come as issues beside it.
 */
export function place(project: Project, site: Site = {}): Outcome<Structure> {
  const issues: Issue[] = [];
  // 1. What is there: ground, house.
  const ground = placeGround(project.patio);
  const walls = placeWalls(project.house, project.patio.grade.atHouse);
  const housePlanes = placeHouseRoofs(project.house);
  // 2. What placing relies on.
  for (const rule of PRECONDITIONS) issues.push(...rule(project));
  // 3. Roofs: shape, framing, surfaces.
  const kit = makeKit(project, issues);
  const number = numbering();
  const roofs: LaidRoof[] = [];
  const members: Member[] = [];
  const surfaces: Surface[] = [];
  const described: RoofPlaced[] = [];
  const overlays: OverlayPlaced[] = [];
  for (const roof of project.cover.roofs) {
    const layers = layersOf(roof, issues);
    const fascia = fasciaSection(roof, kit);
    const profile = profileOf(roof, kit);
    if (profile === undefined) continue;
    if (layers === undefined) continue;
    const whole = layRoof({ roof, profile, layers, fascia, number, kit });
    if (whole === undefined) continue;
    const { framed, planes, trim, overlay } = overHouse(
      { roof, profile, layers, fascia, housePlanes, number, kit },
      whole,
    );
    if (overlay) overlays.push(overlay);
    members.push(...framed.members);
    surfaces.push(...planes);
    roofs.push({ roof, profile, framed, layers, trim });
    const meets = overlay !== undefined || edgesAtWalls(planes, walls).length > 0;
    const atWall = project.cover.attachment === 'attached' && meets;
    described.push(describeRoof(roof.mark, roof.path, profile, planes, ground.grade, atWall));
  }
  // 4. Supports: ledgers and beams at the heights the framing gives them, posts, footings.
  const supports = placeSupports(roofs, ground, kit);
  const bracing = placeBracing(supports, kit, number);
  const placed = !hasErrors(issues);
  for (const rule of PROJECT_RULES) issues.push(...rule(project));
  if (!placed) return { value: undefined, issues };
  members.push(...supports.members, ...bracing.members, ...roofs.flatMap((r) => r.trim?.members ?? []));
  // 5. Joints where parts meet.
  const joints = makeJoints([...meetingsOf(roofs, supports, walls, kit), ...bracing.meetings], {
    members: new Map(members.map((m) => [m.id, m])),
    footings: new Map(supports.footings.map((f) => [f.id, f])),
    walls: new Map(walls.map((w) => [w.id, w])),
  });
  const structure: Structure = {
    attachment: project.cover.attachment,
    roofs: described.map((r) => withNeighbours(r, surfaces)),
    members,
    joints,
    surfaces,
    footings: supports.footings,
    slabs: ground.slabs,
    walls,
    housePlanes,
    ...(overlays.length > 0 ? { overlays } : {}),
    grade: ground.grade,
  };
  // 6. Faults of the whole.
  for (const rule of STRUCTURE_RULES) issues.push(...rule({ project, structure, roofs, site }));
  return { value: structure, issues };
}

function withNeighbours(roof: RoofPlaced, surfaces: readonly Surface[]): RoofPlaced {
  const neighbours = neighboursOf(roof.mark, surfaces);
  return neighbours.length > 0 ? { ...roof, neighbours } : roof;
}

/** Running numbers of mark prefixes over the whole project. */
function numbering(): (prefix: string) => number {
  const next = new Map<string, number>();
  return (prefix) => {
    const n = (next.get(prefix) ?? 0) + 1;
    next.set(prefix, n);
    return n;
  };
}
