/** What zoning checks share. Distances in inches; the rules are the jurisdiction's, entered in the project file. */
import { SQUARE_INCHES_PER_SQUARE_FOOT } from '../../base/units.js';
import type { CheckContext, Subject } from '../contract.js';

export const ZONING = 'local zoning rule as entered';

export const lineSubjects = (ctx: CheckContext): readonly Subject[] =>
  ctx.lot.distances.map((d) => ({
    id: d.line,
    path: ctx.lot.lines.find((l) => l.name === d.line)?.path ?? '/lot',
  }));

/** Feet and inches to the nearest inch for a sentence: `7' 6"`. */
export function feet(inches: number): string {
  const whole = Math.round(Math.abs(inches));
  const text = `${Math.floor(whole / 12)}' ${whole % 12}"`;
  return inches < 0 ? `-${text}` : text;
}

export const squareFeet = (squareInches: number): number => squareInches / SQUARE_INCHES_PER_SQUARE_FOOT;
