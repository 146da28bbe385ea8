/** Lengths as a person would write them into the file. */
import { formatMixed, MILLIMETRES_PER_INCH, roundHalfUp } from '../base/quantity/index.js';

const PARTS = 16;

/** `12 ft 6 1/2 in`, `-9 in`, `0 in`; metric `3810 mm`. Rounded to 1/16 in or 1 mm. */
export function writeLength(inches: number, units: 'us' | 'metric'): string {
  if (units === 'metric') return `${roundHalfUp(inches * MILLIMETRES_PER_INCH) + 0} mm`;
  const steps = Math.round(Math.abs(inches) * PARTS);
  const minus = inches < 0 && steps > 0 ? '-' : '';
  const feet = Math.floor(steps / (12 * PARTS));
  const rest = steps - feet * 12 * PARTS;
  const inchText = `${formatMixed(Math.floor(rest / PARTS), rest % PARTS, PARTS)} in`;
  if (feet === 0) return `${minus}${inchText}`;
  return rest === 0 ? `${minus}${feet} ft` : `${minus}${feet} ft ${inchText}`;
}
