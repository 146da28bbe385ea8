/** The placed structure as one. */
import type { Footing, Incline, SlabPlaced } from './ground.js';
import type { HousePlane, WallPlaced } from './house.js';
import type { Joint } from './joints.js';
import type { Member } from './members.js';
import type { OverlayPlaced } from './overlay.js';
import type { RoofPlaced, Surface } from './surfaces.js';

export interface Structure {
  readonly attachment: 'attached' | 'free-standing';
  readonly roofs: readonly RoofPlaced[];
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly surfaces: readonly Surface[];
  readonly footings: readonly Footing[];
  readonly slabs: readonly SlabPlaced[];
  readonly walls: readonly WallPlaced[];
  readonly housePlanes: readonly HousePlane[];
  /** Roofs that go on over a slope of the house: their own members stand here, for the old roof carries them. */
  readonly overlays?: readonly OverlayPlaced[];
  readonly grade: Incline;
}
// Convex pieces for pictures are made on demand by `piecesOf(structure, project)` in pieces/index.ts: derive does not pay for them.
