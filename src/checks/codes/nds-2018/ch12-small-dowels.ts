/**
 * Least distances for nails and wood screws, in diameters. The standard's text asks only that the wood not split; these
 * are its commentary's recommendations for holes that are not prebored. NDS Commentary Table C12.1.6.6 (recalled).
 */
export interface SmallDowelDistances {
  readonly edge: number;
  /** End distance under load along the grain toward the end, and otherwise. */
  readonly endTension: number;
  readonly end: number;
  readonly spacingParallel: number;
  readonly spacingPerpendicular: number;
  readonly rows: number;
}

export const SMALL_DOWEL_DISTANCES: Readonly<Record<'wood' | 'steel', SmallDowelDistances>> = {
  wood: { edge: 2.5, endTension: 15, end: 10, spacingParallel: 15, spacingPerpendicular: 10, rows: 5 },
  steel: { edge: 2.5, endTension: 10, end: 5, spacingParallel: 10, spacingPerpendicular: 5, rows: 2.5 },
};

/** Length of a pointed tip that holds nothing, in diameters of a nail or wood screw. NDS 2018 12.3.5.3 (recalled). */
export const TIP_DIAMETERS = 2;

/** Least penetration into the main member, in diameters: lag screws without their tip, the others with it. NDS 2018 12.1.4 to 12.1.6 (recalled). */
export const LEAST_PENETRATION: Readonly<Record<'lag-screws' | 'wood-screws' | 'nails', number>> = {
  'lag-screws': 4,
  'wood-screws': 6,
  nails: 6,
};

/** Greatest distance across the grain between outer rows of bolts or lag screws in one piece, in. NDS 2018 12.5.1.3 (recalled). */
export const MOST_ACROSS = 5;
