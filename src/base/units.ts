/**
 * Branded base units. Everything inside the program is inches, pounds, psi, psf and radians; a brand marks the few
 * places where a number crosses a boundary (parse, print, a stage's output). A branded value is still a number, so
 * formulas read plainly; only making one needs a constructor.
 */
declare const unit: unique symbol;
export type Quantity<U extends string> = number & { readonly [unit]?: U };

/** Length in inches. */
export type Inches = Quantity<'in'>;
/** Force in pounds (lbf). */
export type Pounds = Quantity<'lb'>;
/** Moment in pound-inches. */
export type PoundInches = Quantity<'lb·in'>;
/** Line load in pounds per inch. */
export type PoundsPerInch = Quantity<'lb/in'>;
/** Stress in pounds per square inch. */
export type Psi = Quantity<'psi'>;
/** Area load or soil pressure in pounds per square foot. */
export type Psf = Quantity<'psf'>;
/** Density in pounds per cubic foot. */
export type Pcf = Quantity<'pcf'>;
/** Angle in radians. */
export type Radians = Quantity<'rad'>;
/** Area in square inches. */
export type SquareInches = Quantity<'in²'>;
/** Wind speed in miles per hour (3-second gust). */
export type Mph = Quantity<'mph'>;

export const INCHES_PER_FOOT = 12;
export const SQUARE_INCHES_PER_SQUARE_FOOT = 144;
