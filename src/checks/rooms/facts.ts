/** What the cover does to the openings of the house: which lie under it, how open it is, how high its ceiling. */
import { area, clipConvex, distanceToSegment } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Opening, Project, Room } from '../../project/model.js';
import type { Member, RoofPlaced, Structure, Surface, WallPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { lowestClear } from '../roof/headroom.js';

/** Roof that comes this near the face of an opening stands before it, inches: a person's way, chosen by us. */
const BEFORE = 36;

export interface Placed {
  readonly opening: Opening;
  readonly wall: WallPlaced;
  /** Ground before it, as wide as the opening and 36 in deep. */
  readonly ground: readonly Vec2[];
  /** Middle of its sill line on the face of the wall. */
  readonly middle: Vec2;
}

/** Openings of every wall with the ground before them. */
export const placedOpenings = (structure: Structure): Placed[] =>
  structure.walls.flatMap((wall) => {
    const length = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
    const u = { x: (wall.end.x - wall.start.x) / length, y: (wall.end.y - wall.start.y) / length };
    const at = (s: number, out: number): Vec2 => ({
      x: wall.start.x + u.x * s + wall.out.x * out,
      y: wall.start.y + u.y * s + wall.out.y * out,
    });
    return wall.openings.map((opening) => {
      const [a, b] = [opening.offset, opening.offset + opening.width];
      const ground = [at(a, 0), at(b, 0), at(b, BEFORE), at(a, BEFORE)];
      return { opening, wall, ground, middle: at((a + b) / 2, 0) };
    });
  });

const rectangle = (r: RoofPlaced): Vec2[] => [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }];

const turned = (p: readonly Vec2[]): readonly Vec2[] => {
  const twice = p.reduce((sum, a, i) => sum + a.x * p[(i + 1) % p.length]!.y - p[(i + 1) % p.length]!.x * a.y, 0);
  return twice < 0 ? [...p].reverse() : p;
};

/** z of a roof plane over a point. */
const planeAt = (s: Surface, p: Vec2): number =>
  s.origin.z - (s.n.x * (p.x - s.origin.x) + s.n.y * (p.y - s.origin.y)) / s.n.z;

/** Roofs of the cover before an opening and not below its sill. */
export const roofsOver = (structure: Structure, { opening, ground }: Placed): readonly RoofPlaced[] =>
  structure.roofs.filter((r) => {
    const shared = clipConvex(turned(ground), rectangle(r));
    if (shared.length < 3 || area(shared) < 1) return false;
    const planes = structure.surfaces.filter((s) => s.roof === r.mark);
    return shared.some((p) => planes.some((s) => planeAt(s, p) > opening.sill));
  });

/** Openings with a roof of the cover before them. */
export const underCover = (structure: Structure): Placed[] =>
  placedOpenings(structure).filter((p) => roofsOver(structure, p).length > 0);

/** Rooms of the file that an opening under the cover belongs to; names it gives that no room bears. */
export function roomsBehind({ project, structure }: CheckContext): {
  readonly rooms: readonly Room[];
  readonly unknown: readonly string[];
} {
  const names = [...new Set(underCover(structure).map((p) => p.opening.room))].filter((n) => n !== '');
  return {
    rooms: project.house.rooms.filter((r) => names.includes(r.name)),
    unknown: names.filter((n) => !project.house.rooms.some((r) => r.name === n)),
  };
}

export const habitable = (r: Room): boolean => r.use !== 'service';

/** True when the file states a habitable room: the checks of rooms, doors and edges must then be answered. */
export const statesRooms = (project: Project): boolean => project.house.rooms.some(habitable);

/** How far off a house wall or a post still counts as standing in a side, inches. */
const IN_SIDE = 24;

/** Longest side of a roof that is not along the house, and the part of it neither house nor posts stand in. */
export function openSide(structure: Structure, roof: RoofPlaced): { readonly length: number; readonly share: number } {
  const corners = rectangle(roof);
  const sides = corners.map((a, i) => {
    const b = corners[(i + 1) % 4]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const steps = 48;
    const closed = Array.from({ length: steps }, (_, k) => (k + 0.5) / steps).filter((t) => {
      const p = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
      return structure.walls.some((w) => distanceToSegment(p, w.start, w.end) < IN_SIDE);
    }).length;
    const posts = structure.members
      .filter((m) => m.role === 'post' && distanceToSegment(m.start, a, b) < IN_SIDE)
      .reduce((sum, m) => sum + Math.max(m.section.width, m.section.depth), 0);
    return { length, house: closed / steps, share: Math.max(0, 1 - closed / steps - posts / length) };
  });
  const free = sides.filter((s) => s.house < 0.5).sort((a, b) => b.length - a.length);
  return free[0] ?? { length: 0, share: 0 };
}

const CEILING: ReadonlySet<Member['role']> = new Set(['rafter', 'hip', 'truss', 'gable-truss']);

/** Slabs, or where there is none the ground under the roofs, as a floor to stand on. */
export function floorsOf(structure: Structure): Structure['slabs'] {
  const kept = structure.slabs.filter((s) => s.state !== 'removed');
  if (kept.length > 0) return kept;
  return structure.roofs.map((r) => ({
    mark: 'ground',
    state: 'existing' as const,
    outline: rectangle(r),
    top: structure.grade,
    thickness: 0,
    path: '/patio/grade',
  }));
}

/** Underside of the framing above the floor at its lowest, inches; beams may hang lower. Undefined without framing. */
export const ceilingHeight = (structure: Structure): number | undefined =>
  lowestClear({
    ...structure,
    slabs: floorsOf(structure),
    members: structure.members.filter((m) => CEILING.has(m.role)),
  })?.clear;
