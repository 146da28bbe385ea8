/**
 * Eaves of unequal pitch at one level: plumb height at the bearing, less overhang times slope, must agree at the line of the
 * fascia. Level lengths, inches; heights above one datum; slopes as rise over run.
 */

export interface EaveLine {
  /** Height of the roof plane over the outer face of the bearing: top of plate or beam, and heel. */
  readonly over: number;
  readonly slope: number;
  readonly overhang: number;
}

/** Height of the roof plane at the tail. */
export const eaveHeight = (e: EaveLine): number => e.over - e.overhang * e.slope;

/** Ways to bring a new eave to the level of another one. */
export interface EaveMatch {
  /** New eave over the old one, as it stands; negative below. */
  readonly off: number;
  /** Overhang that would bring it level at the bearing it has; negative where none can. */
  readonly overhang: number;
  /** Move of the bearing (up is plus) that would bring it level at the overhang it has. */
  readonly bearing: number;
}

export function matchEaves(old: EaveLine, now: EaveLine): EaveMatch {
  const level = eaveHeight(old);
  const off = eaveHeight(now) - level;
  return { off, overhang: (now.over - level) / now.slope, bearing: -off };
}

/** Ridge over eaves at `eave`, `half` the level distance from eave to ridge. */
export const ridgeHeight = (eave: number, slope: number, half: number): number => eave + slope * half;

/**
 * Slope that brings a roof of half width `half` and eaves at `eave` to a ridge at `ridge`.
 */
export const slopeFor = (eave: number, ridge: number, half: number): number => (ridge - eave) / half;
