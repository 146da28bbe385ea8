/**
 * IRC Appendix H (AH), patio covers: what counts as one, and when a slab may carry the posts. Appendices apply only where
 * adopted by name. Design loads of the appendix are with the load provisions.
 */
export const PATIO_MAX_HEIGHT = 144;
export const PATIO_OPEN_FRACTION = 0.65;
/** Walls are measured for openness up to 6 ft 8 in above the floor, inches. */
export const PATIO_OPEN_BELOW = 80;
/** Thickest plastic that may enclose, inches. */
export const PATIO_PLASTIC_THICKNESS = 0.125;
/** Thinnest slab, inches, and greatest live plus dead load on a column, lb, for posts without footings (AH105.2). */
export const PATIO_MIN_SLAB = 3.5;
export const PATIO_MAX_SLAB_COLUMN_LOAD = 750;

/** One wall of the cover as seen from the floor to 6 ft 8 in: open, screened or glazed area against the whole, in². */
export interface PatioWall {
  readonly length: number;
  readonly openArea: number;
  readonly area: number;
}

export type PatioUse = 'outdoor-living' | 'carport' | 'garage' | 'storage' | 'habitable';

export interface PatioCoverFacts {
  /** Inches, grade or floor to the highest point as the office measures it. */
  readonly height: number;
  readonly stories: number;
  readonly use: PatioUse;
  /** Walls not shared with the house. A side without wall at all is fully open. */
  readonly walls: readonly PatioWall[];
}

export type PatioDefinitionFault = 'height' | 'stories' | 'use' | 'openness';

/** Share of a wall that is open below 6 ft 8 in; a wall without area counts as open. */
const openness = (wall: PatioWall): number => (wall.area <= 0 ? 1 : wall.openArea / wall.area);

/**
 * What keeps the structure outside the appendix's definition; empty when it fits. The longer wall and one more must each
 * be open over at least 65 percent. With no enclosing walls there is nothing to measure.
 */
export function patioCoverFaults(x: PatioCoverFacts): readonly PatioDefinitionFault[] {
  const faults: PatioDefinitionFault[] = [];
  if (x.height > PATIO_MAX_HEIGHT) faults.push('height');
  if (x.stories !== 1) faults.push('stories');
  if (x.use !== 'outdoor-living') faults.push('use');
  if (x.walls.length > 0) {
    const longest = Math.max(...x.walls.map((w) => w.length));
    const isOpen = (w: PatioWall): boolean => openness(w) >= PATIO_OPEN_FRACTION - 1e-9;
    const openCount = x.walls.filter(isOpen).length;
    const longerIsOpen = x.walls.some((w) => w.length === longest && isOpen(w));
    if (!longerIsOpen || openCount < Math.min(2, x.walls.length)) faults.push('openness');
  }
  return faults;
}

/**
 * Whether posts may stand on the slab without footings (AH105.2): no frost, at least 3.5 in of slab, at most 750 lb of live
 * plus dead load a column. Uplift is not waived by this rule and is checked apart.
 */
export function slabMayCarryColumn(frost: number, slabThickness: number, liveAndDead: number): boolean {
  return frost <= 0 && slabThickness >= PATIO_MIN_SLAB && liveAndDead <= PATIO_MAX_SLAB_COLUMN_LOAD;
}
