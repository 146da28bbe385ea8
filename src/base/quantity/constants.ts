/**
 * Exact conversion constants. The inch and the pound are defined in SI since the international yard and pound
 * agreement of 1959; standard gravity by the 3rd CGPM (1901). All are listed in NIST SP 811, appendix B.
 */
export const MILLIMETRES_PER_INCH = 25.4;
export const METRES_PER_INCH = 0.0254;
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_MILE = 1609.344;
export const KILOGRAMS_PER_POUND = 0.45359237;
export const STANDARD_GRAVITY = 9.80665;
export const NEWTONS_PER_POUND = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;
