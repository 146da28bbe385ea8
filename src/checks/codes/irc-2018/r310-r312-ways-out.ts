/** IRC R310 to R312: ways out beside the cover, landings at doors, guards. Inches. */

/** An escape opening under a porch opens fully and has a path at least this high to the yard (R310.2.4). */
export const ESCAPE_PATH = 36;
/** A landing is as wide as its door and at least this deep (R311.3). */
export const LANDING_DEPTH = 36;
/** A landing falls no more than 1/4 in 12 (R311.3). */
export const LANDING_SLOPE = 0.25 / 12;
/** Most that a landing or floor lies below the threshold of a door that does not swing over it (R311.3.1, R311.3.2). */
export const THRESHOLD_STEP = 7.75;
/** Most risers outside a door that need no landing at their top, where the door does not swing over them (R311.3.2). */
export const RISERS_WITHOUT_LANDING = 2;
/** A floor more than this above the ground within 36 in of its edge has a guard (R312.1.1). */
export const GUARD_DROP = 30;
export const GUARD_REACH = 36;
