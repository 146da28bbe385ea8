import { formatLength } from '../../base/quantity/index.js';

/** Nearest multiple of 1/`denominator` inch; halves go up. */
export const roundTo = (inches: number, denominator = 16): number => Math.round(inches * denominator) / denominator;

/**
 * Length as the trade letters it: `12'-3 1/2"`, `14'-0"`, `7 1/4"`, `0"`. The fraction is in lowest terms.
 * @param inches any finite length
 * @param denominator finest fraction shown, a power of two
 */
export const feetInches = (inches: number, denominator = 16): string => formatLength(inches, { denominator });

/** Decimal feet for site work: `102.35'`. */
export const decimalFeet = (inches: number, places = 2): string => `${(inches / 12).toFixed(places)}'`;
