/** Room that heads, nuts and washers take up about the middle of a bolt or lag screw. */

/**
 * Across the corners of a hex head or nut, in shank diameters: 1-1/2 of them across the flats. Recalled from ASME B18.2.1
 * (memory); the smallest sizes are a little wider, which rounding up to 1.75 covers down to 3/8 in.
 */
const HEX_CORNERS = 1.75;

/** Outside diameters of narrow plain washers, inches, by shank. Recalled from ASME B18.21.1 (memory). */
const NARROW_WASHERS: readonly (readonly [D: number, across: number])[] = [
  [0.25, 0.625],
  [0.3125, 0.688],
  [0.375, 0.812],
  [0.4375, 0.922],
  [0.5, 1.062],
  [0.625, 1.312],
  [0.75, 1.469],
  [0.875, 1.75],
  [1, 2],
];

/** Across the corners of a hex head on a shank of diameter D, inches. */
export const headAcross = (D: number): number => HEX_CORNERS * D;

/** Outside diameter of the narrowest plain washer for a shank of diameter D, inches; wider ones are common. */
export const leastWasher = (D: number): number => NARROW_WASHERS.find(([d]) => d >= D - 1e-3)?.[1] ?? 2 * D;
