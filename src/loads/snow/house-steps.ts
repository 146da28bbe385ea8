/**
 * What stands higher beside a new roof: house walls that face it and house roof slopes that fall toward it, measured along
 * one of the four plan directions. Heights and distances in inches.
 */
import { findCovering } from '../../catalog/index.js';
import type { Project } from '../../project/model.js';
import { wallTopAt } from '../../structure/house/profile.js';
import type { HousePlane, RoofPlaced, Structure, WallPlaced } from '../../structure/model.js';
import type { WindDirection } from '../model.js';
import { DIRECTIONS, heading, lengthAlong, windwardEdge } from '../wind-plan.js';

/** Structures count as adjacent within 20 ft (ASCE 7 7.7.2). */
export const NEAR = 240;
/** A roof that ends no farther than this in front of a wall is flashed to it: no gap for snow to fall through. */
export const CONTACT = 12;
const TINY = 1e-6;

interface Point {
  readonly x: number;
  readonly y: number;
}
interface Range {
  readonly low: number;
  readonly high: number;
}

const along = (p: Point, d: WindDirection): number => {
  const h = heading(d);
  return p.x * h.x + p.y * h.y;
};
/** Coordinate square to the direction. */
const beside = (p: Point, d: WindDirection): number => (d.endsWith('x') ? p.y : p.x);

const rangeOf = (values: readonly number[]): Range => ({ low: Math.min(...values), high: Math.max(...values) });
const roofRange = (roof: RoofPlaced, d: WindDirection): Range => ({
  low: beside(roof.min, d),
  high: beside(roof.max, d),
});
const overlap = (a: Range, b: Range): Range => ({ low: Math.max(a.low, b.low), high: Math.min(a.high, b.high) });

/** Lowest height of a roof's surfaces along the edge the direction meets first; the eave where no corner lies there. */
export function nearEdgeHeight(structure: Structure, roof: RoofPlaced, d: WindDirection): number {
  const edge = windwardEdge(roof, d);
  let low = Number.POSITIVE_INFINITY;
  for (const s of structure.surfaces) {
    if (s.roof !== roof.mark) continue;
    for (const q of s.outline) {
      const p = {
        x: s.origin.x + q.x * s.u.x + q.y * s.v.x,
        y: s.origin.y + q.x * s.u.y + q.y * s.v.y,
      };
      if (along(p, d) - edge < 1) low = Math.min(low, s.origin.z + q.x * s.u.z + q.y * s.v.z);
    }
  }
  return Number.isFinite(low) ? low : roof.lowestEave;
}

/** Extent of the house along a direction, walls and roofs with their overhangs: the fetch of a leeward drift. */
export function houseLength(structure: Structure, d: WindDirection): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (p: Point): void => {
    low = Math.min(low, along(p, d));
    high = Math.max(high, along(p, d));
  };
  for (const w of structure.walls) {
    take(w.start);
    take(w.end);
  }
  for (const p of structure.housePlanes) if (p.state !== 'removed') p.outline.forEach(take);
  return high > low ? high - low : 0;
}

/** Height of the house above a wall line within a stretch of it: the plate, or the roof where it rises from the wall. */
function wallTop(structure: Structure, face: Face, part: Range): number {
  const { toward: d, line } = face;
  const planes = structure.housePlanes.filter((p) => p.state !== 'removed');
  const places = [part.low, part.high];
  for (const p of planes)
    for (const q of p.outline) {
      const b = beside(q, d);
      if (b > part.low && b < part.high) places.push(b);
    }
  const h = heading(d);
  const at = (b: number): Point => (d.endsWith('x') ? { x: line * h.x, y: b } : { x: b, y: line * h.y });
  return Math.max(...places.map((b) => wallTopAt(planes, at(b), face.plate)));
}

/** A higher wall in front of which a roof lies. Several in one direction are taken together, on the heavy side. */
export interface Step {
  readonly toward: WindDirection;
  readonly walls: readonly string[];
  /** Horizontal distance from the wall to the roof's near edge; 0 where the roof meets it. */
  readonly gap: number;
  /** Height from the roof's near edge to the top of the wall or the roof on it. */
  readonly height: number;
}

export interface Steps {
  readonly steps: readonly Step[];
  /** Why the question is not covered for this roof. */
  readonly outside?: string;
}

/** A straight edge of the house, square to the axes, that faces a direction: a wall, or the side of one of its roofs. */
interface Face {
  readonly name: string;
  readonly toward: WindDirection;
  readonly line: number;
  readonly extent: Range;
  readonly plate: number;
}

/** Sides of the house roofs count like walls: a storey set back behind a lower wing has no wall in the outline. */
const roofFaces = (project: Project): readonly Face[] =>
  project.house.roofs.flatMap((r) =>
    DIRECTIONS.map((d) => ({
      name: 'upper',
      toward: d,
      line: Math.max(along(r.min, d), along(r.max, d)),
      extent: rangeOf([beside(r.min, d), beside(r.max, d)]),
      plate: r.plate,
    })),
  );

export function stepsBeside(project: Project, structure: Structure, roof: RoofPlaced): Steps {
  const steps: Step[] = [];
  let outside: string | undefined;
  const faces: Face[] = [];
  for (const wall of structure.walls) {
    const toward = DIRECTIONS.find((q) => along(wall.out, q) > 1 - 1e-6);
    if (toward) {
      const extent = rangeOf([beside(wall.start, toward), beside(wall.end, toward)]);
      faces.push({ name: wall.name, toward, line: along(wall.start, toward), extent, plate: wall.plate });
    } else if (wall.plate > roof.lowestEave && nearSkewed(roof, wall))
      outside = `the higher ${wall.name} wall is not square to the house axes`;
  }
  for (const face of [...faces, ...roofFaces(project)]) {
    const d = face.toward;
    const part = overlap(roofRange(roof, d), face.extent);
    if (part.high - part.low <= TINY) continue;
    const gap = windwardEdge(roof, d) - face.line;
    if (gap >= NEAR || gap < -lengthAlong(roof, d)) continue;
    const height = wallTop(structure, face, part) - nearEdgeHeight(structure, roof, d);
    if (height <= 0) continue;
    if (gap < -CONTACT) {
      outside = `the roof reaches behind the line of the higher ${face.name} wall`;
      continue;
    }
    const clear = gap <= CONTACT ? 0 : gap;
    const i = steps.findIndex((s) => s.toward === d);
    const known = steps[i];
    if (!known) steps.push({ toward: d, walls: [face.name], gap: clear, height });
    else
      steps[i] = {
        toward: d,
        // The side of a roof over a wall already named is that wall again.
        walls:
          face.name === 'upper' && known.height >= height && known.gap <= clear
            ? known.walls
            : [...known.walls, face.name],
        gap: Math.min(known.gap, clear),
        height: Math.max(known.height, height),
      };
  }
  return outside === undefined ? { steps } : { steps, outside };
}

/** A wall at an angle counts when its plan box comes within `NEAR` and the roof lies on its outer side. */
function nearSkewed(roof: RoofPlaced, wall: WallPlaced): boolean {
  const xs = rangeOf([wall.start.x, wall.end.x]);
  const ys = rangeOf([wall.start.y, wall.end.y]);
  const near =
    xs.low < roof.max.x + NEAR &&
    xs.high > roof.min.x - NEAR &&
    ys.low < roof.max.y + NEAR &&
    ys.high > roof.min.y - NEAR;
  const x = (roof.min.x + roof.max.x) / 2 - wall.start.x;
  const y = (roof.min.y + roof.max.y) / 2 - wall.start.y;
  return near && x * wall.out.x + y * wall.out.y > 0;
}

/** A house roof slope whose eave lies above a new roof and falls toward it. */
export interface Shedding {
  readonly toward: WindDirection;
  readonly plane: string;
  /** Slope of the upper roof, radians; whether its covering is slippery; eave to ridge, horizontally. */
  readonly slope: number;
  readonly slippery: boolean;
  readonly W: number;
  /** From the roof's near edge to under the upper eave (positive: the eave hangs over the roof). */
  readonly under: number;
  /** Horizontal distance from the eave to the roof's near edge, and the height of the eave above that edge. */
  readonly gap: number;
  readonly drop: number;
}

/** The direction a house plane falls in and its slope; undefined for a level plane or one not square to the axes. */
function fallOf(plane: HousePlane): { readonly toward: WindDirection; readonly slope: number } | undefined {
  const [a, b, c] = plane.outline;
  if (!a || !b || !c) return undefined;
  const n = {
    x: (b.y - a.y) * (c.z - a.z) - (b.z - a.z) * (c.y - a.y),
    y: (b.z - a.z) * (c.x - a.x) - (b.x - a.x) * (c.z - a.z),
    z: (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x),
  };
  const flat = Math.hypot(n.x, n.y);
  if (flat < 1e-9 * Math.abs(n.z) || n.z === 0) return undefined;
  const sign = Math.sign(n.z);
  const down = { x: (sign * n.x) / flat, y: (sign * n.y) / flat };
  const toward = DIRECTIONS.find((d) => along(down, d) > 1 - 1e-6);
  return toward && { toward, slope: Math.atan2(flat, Math.abs(n.z)) };
}

/** House slopes that fall toward a roof from an eave above it, within 15 ft of its near edge. */
export function sheddingOn(project: Project, structure: Structure, roof: RoofPlaced): readonly Shedding[] {
  const out: Shedding[] = [];
  for (const plane of structure.housePlanes) {
    if (plane.state === 'removed') continue;
    const fall = fallOf(plane);
    if (!fall) continue;
    const d = fall.toward;
    const part = overlap(roofRange(roof, d), rangeOf(plane.outline.map((q) => beside(q, d))));
    if (part.high - part.low <= TINY) continue;
    const run = rangeOf(plane.outline.map((q) => along(q, d)));
    const under = run.high - windwardEdge(roof, d);
    const drop = Math.min(...plane.outline.map((q) => q.z)) - nearEdgeHeight(structure, roof, d);
    if (drop <= 0 || under >= lengthAlong(roof, d) || under <= -180) continue;
    const middle = {
      x: plane.outline.reduce((sum, q) => sum + q.x, 0) / plane.outline.length,
      y: plane.outline.reduce((sum, q) => sum + q.y, 0) / plane.outline.length,
    };
    const house = project.house.roofs.find(
      (r) => middle.x >= r.min.x && middle.x <= r.max.x && middle.y >= r.min.y && middle.y <= r.max.y,
    );
    out.push({
      toward: d,
      plane: plane.id,
      slope: fall.slope,
      // An unknown covering is taken as the one that sheds.
      slippery: house ? (findCovering(house.covering)?.slippery ?? true) : true,
      W: run.high - run.low,
      under: Math.max(0, under),
      gap: Math.max(0, -under),
      drop,
    });
  }
  return out;
}

/** Something higher beside the roof whose height or snow this program cannot place. */
export function unknownNeighbour(project: Project, structure: Structure, roof: RoofPlaced): string | undefined {
  const building = project.lot.buildings.find((b) => b.outline.length > 0 && nearBox(roof, b.outline));
  if (building) return `${building.name} stands within 20 ft and its height is not in the project file`;
  return higherRoof(structure, roof);
}

function nearBox(roof: RoofPlaced, points: readonly Point[]): boolean {
  const xs = rangeOf(points.map((p) => p.x));
  const ys = rangeOf(points.map((p) => p.y));
  return (
    xs.low < roof.max.x + NEAR &&
    xs.high > roof.min.x - NEAR &&
    ys.low < roof.max.y + NEAR &&
    ys.high > roof.min.y - NEAR
  );
}

/** Another roof of the cover that stands higher nearby, or meets this one in a valley: its snow is not worked out. */
export function higherRoof(structure: Structure, roof: RoofPlaced): string | undefined {
  const valley = roof.neighbours?.find((n) => n.how === 'valley');
  if (valley) return `the roof meets ${valley.roof} in a valley (ASCE 7 7.6.3)`;
  const other = structure.roofs.find(
    (r) =>
      r.mark !== roof.mark &&
      r.highestPoint > roof.lowestEave + 1 &&
      nearBox(roof, [r.min, r.max]) &&
      !sameLevel(r, roof),
  );
  return other ? `the other new roof ${other.mark} stands higher within 20 ft` : undefined;
}

/** Two roofs of one height and pitch side by side are one step-free field. */
const sameLevel = (a: RoofPlaced, b: RoofPlaced): boolean =>
  Math.abs(a.lowestEave - b.lowestEave) < 1 && Math.abs(a.highestPoint - b.highestPoint) < 1;
