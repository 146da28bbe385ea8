/** Lengths that decide whether parts meet, and the few trade figures that only shape the picture. Inches. */
export const CUBIC_INCHES_PER_CUBIC_FOOT = 1728;
/** Parts nearer than this are taken to meet; a sixteenth is what a tape reads. */
export const MEETS = 1 / 16;
/** Floating-point slack for lengths. */
export const SLACK = 1e-6;
/** A roof edge at most this far from a wall is at the wall: it needs flashing there and wind cannot pass freely. */
export const AT_WALL = 12;
/** Height of flashing above a roof edge at a wall, and clearance wanted round openings. Common practice, no source. */
export const FLASHING = 4;
/** Plumb thickness assumed for the existing house roof. Common practice, no source. */
export const HOUSE_ROOF_DEPTH = 6;
/** Wall thickness drawn for the existing house. Common practice, no source. */
export const HOUSE_WALL_DEPTH = 6;
/** Shortest post that can be built with a base and a cap. Common practice, no source. */
export const SHORTEST_POST = 12;
/** Least bearing of a rafter on wood (IRC 2018 R802.6, recalled). */
export const LEAST_BEARING = 1.5;
/** Gutter with hangers, empty, pounds per foot. Common practice, no source. */
export const GUTTER_PLF = 1;
/** Side of the gutter drawn. Common practice, no source. */
export const GUTTER_SIZE = 5;
/** How far in front of a door no post should stand. Common practice, no source. */
export const DOOR_PATH = 36;
/** How far a beam fixed to a wall may stop short of it, inches; the connector's own gap. Common practice, no source. */
export const END_GAP = 1 / 4;
/** Sheathing that may lie between the wall line and the studs behind it, inches. */
export const SHEATHING_ALLOWANCE = 1;
/** Plates on top of a wall, inches: two 2-by members. */
export const TOP_PLATES = 3;
