/** Lengths and angles inside messages, labels and cut lists. */
import { formatAngle, formatLength } from '../base/quantity/index.js';

/** Sizes and places: `5 1/2"`, never split into feet. */
export const inches = (x: number): string => formatLength(x, { style: 'inches' });
/** Heights and distances: `8'-4"`. */
export const feet = (x: number): string => formatLength(x);
export const degrees = (a: number): string => formatAngle(a);
/** Running number of a repeated part: `07`. */
export const serial = (n: number): string => String(n).padStart(2, '0');
