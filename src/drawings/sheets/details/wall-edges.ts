/** Roof edges at the walls of the house, and the sizes of their flashing. */
import { ROOF_COVERINGS } from '../../../catalog/index.js';
import type { HouseWall } from '../../../project/model.js';
import { type EdgeAtWall, edgesAtWalls } from '../../../structure/describe.js';
import type { RoofPlaced } from '../../../structure/model.js';
import type { SheetContext } from '../contract.js';

/** Cladding ends this far above the roof; water barrier laps the upper leg by this. Common practice, no source. */
export const CLEAR = 2;
export const LAP = 2;
export interface WallEdge extends EdgeAtWall {
  readonly house: HouseWall;
  readonly roof: RoofPlaced;
  /** Runs up the slope beside the wall; else the wall stands at its high or low side. */
  readonly sloping: boolean;
}

export function edgesOf(ctx: SheetContext): WallEdge[] {
  const { structure, project } = ctx.input;
  return edgesAtWalls(structure.surfaces, structure.walls).flatMap((e): WallEdge[] => {
    const house = project.house.walls[structure.walls.indexOf(e.wall)];
    const roof = structure.roofs.find((r) => r.mark === e.surface.roof);
    // Where the wall is lower than the roof there is nothing to flash against.
    // An edge inside the wall is no edge that can be built.
    if (!house || !roof || Math.min(e.from.out, e.to.out) < -1 || Math.min(e.from.z, e.to.z) > e.wall.plate + 24)
      return [];
    return [{ ...e, house, roof, sloping: Math.abs(e.from.z - e.to.z) > 0.5 }];
  });
}

/** Of edges alike, the first; a gable's two slopes are alike. */
export const eachEdge = (edges: readonly WallEdge[]): WallEdge[] =>
  edges.filter(
    (e, i) => edges.findIndex((o) => o.roof === e.roof && o.wall === e.wall && o.sloping === e.sloping) === i,
  );

/** Panels whose maker gives the flashing beside them, in one run instead of by courses. */
export const isMetal = (covering: string): boolean =>
  (ROOF_COVERINGS.find((c) => c.id === covering)?.name ?? '').toLowerCase().includes('metal');
