/**
 * Boards flat against the house wall to which the edge of a roof's sheathing is nailed: they follow the underside of the
 * sheathing, one piece under each slope, so a gable has two that meet under its ridge. Placed from the surfaces, never stated.
 */
import type { Vec3 } from '../base/vec.js';
import type { HouseTie, Project } from '../project/model.js';
import { edgesAtWalls } from './describe.js';
import { findPanel } from './layers.js';
import type { Section, Structure, Surface } from './model.js';
import { makeSection } from './sections.js';
import { planeHeight } from './surfaces.js';

/** Board past its first and last fastener so that the end does not split, inches. Common practice, no source. */
export const NAILER_END = 2;
/** Pieces shorter than this are not cut, inches. Rule of this program, no source. */
const SHORTEST = 3;

export interface NailerPiece {
  /** Ends of its top edge at the face of the wall, along the house x axis. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Rise of the top edge along the wall, radians; positive toward `to`. */
  readonly rise: number;
  /** Slope of the sheathing square to the wall, radians; positive falling away from it: the bevel of the top edge. */
  readonly bevel: number;
  /** Cut length with both ends plumb, long point to long point, inches. */
  readonly length: number;
  readonly surface: Surface;
  readonly section: Section;
}

export interface Nailer {
  readonly mark: string;
  /** In order along the house x axis. */
  readonly pieces: readonly NailerPiece[];
}

/**
 * The nailer of a tie; undefined where none is named, its section cannot be made (told elsewhere), or no edge of the roof
 * ends at the tie's wall over the tie's length.
 */
export function placeNailer(
  t: HouseTie,
  project: Project,
  structure: Pick<Structure, 'surfaces' | 'walls'>,
): Nailer | undefined {
  const wall = structure.walls[t.wall];
  const choice = t.nailer === '' ? undefined : project.choices.sections[t.nailer];
  if (!wall || !choice) return undefined;
  const made = makeSection(choice, { choice: t.nailer, path: `/choices/sections/${t.nailer}` });
  if (!made.ok) return undefined;
  const panel = project.cover.roofs.find((r) => r.mark === t.roof)?.finish.sheathing ?? '';
  const sheet = findPanel(panel)?.thickness ?? 0;
  const y = wall.start.y;
  const mine = structure.surfaces.filter((s) => s.roof === t.roof);
  const pieces = edgesAtWalls(mine, [wall]).flatMap((e): NailerPiece[] => {
    // Ties stand on walls along +x that face the patio (validated), so distance along the wall is x from its start.
    const x0 = Math.max(t.from - NAILER_END, wall.start.x, wall.start.x + e.from.along);
    const x1 = Math.min(t.to + NAILER_END, wall.end.x, wall.start.x + e.to.along);
    if (x1 - x0 < SHORTEST) return [];
    const s = e.surface;
    const end = (x: number): Vec3 => ({ x, y, z: planeHeight(s, { x, y }) - sheet / s.n.z });
    const rise = Math.atan2(-s.n.x, s.n.z);
    // A parallelogram: between its long points it is longer than either edge by what the plumb cuts lean.
    const length = (x1 - x0) / Math.cos(rise) + made.section.depth * Math.abs(Math.tan(rise));
    return [
      {
        from: end(x0),
        to: end(x1),
        rise,
        bevel: Math.atan2(s.n.x * wall.out.x + s.n.y * wall.out.y, s.n.z),
        length,
        surface: s,
        section: made.section,
      },
    ];
  });
  if (pieces.length === 0) return undefined;
  return { mark: t.mark, pieces: pieces.sort((a, b) => a.from.x - b.from.x) };
}

/** Plumb depth of a piece, inches. */
export const plumbDepth = (p: NailerPiece): number => p.section.depth / Math.cos(p.rise);

/** Mean height of the middle of the board over its run, inches above finished floor. */
export function nailerLevel(n: Nailer): number {
  let sum = 0;
  let run = 0;
  for (const p of n.pieces) {
    const w = p.to.x - p.from.x;
    sum += w * ((p.from.z + p.to.z) / 2 - plumbDepth(p) / 2);
    run += w;
  }
  return sum / run;
}

/** Least height of the board's lower edge between two places along x; +∞ where it does not reach them. */
export function nailerUnderside(n: Nailer, x0: number, x1: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const p of n.pieces) {
    const [a, b] = [Math.max(x0, p.from.x), Math.min(x1, p.to.x)];
    if (a >= b) continue;
    const at = (x: number): number => p.from.z + Math.tan(p.rise) * (x - p.from.x) - plumbDepth(p);
    least = Math.min(least, at(a), at(b));
  }
  return least;
}
