/** Nearest multiple of 1/`denominator` inch; halves go up. */
export const roundTo = (inches: number, denominator = 16): number => Math.round(inches * denominator) / denominator;

/**
 * Length as the trade letters it: `12'-3 1/2"`, `14'-0"`, `7 1/4"`, `0"`. The fraction is in lowest terms.
 * @param inches any finite length
 * @param denominator finest fraction shown, a power of two
 */
export function feetInches(inches: number, denominator = 16): string {
  const units = Math.round(Math.abs(inches) * denominator);
  const sign = inches < 0 && units > 0 ? '-' : '';
  const feet = Math.floor(units / (12 * denominator));
  const rest = units - feet * 12 * denominator;
  const whole = Math.floor(rest / denominator);
  let top = rest - whole * denominator;
  let bottom = denominator;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top > 0 ? `${top}/${bottom}` : '';
  const inch = fraction === '' ? `${whole}` : whole === 0 && feet === 0 ? fraction : `${whole} ${fraction}`;
  return feet > 0 ? `${sign}${feet}'-${inch}"` : `${sign}${inch}"`;
}

/** Decimal feet for site work: `102.35'`. */
export const decimalFeet = (inches: number, places = 2): string => `${(inches / 12).toFixed(places)}'`;
