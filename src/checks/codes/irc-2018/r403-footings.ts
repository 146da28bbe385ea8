/** IRC R403: least size and depth of concrete footings, frost, anchor bolts, bar cover. */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Inches (R403.1.1, R403.1.4). */
export const IRC_MIN_FOOTING_DEPTH = 12;
export const IRC_MIN_FOOTING_WIDTH = 12;
export const IRC_MIN_FOOTING_THICKNESS = 6;
export const IRC_MIN_FOOTING_PROJECTION = 2;

/** Presumptive bearing where no soil test says otherwise, psf (Table R401.4.1, the clay class). */
export const IRC_DEFAULT_BEARING = 1500;

/** Concrete cover over bars, inches (R403.1.3.5.1). */
export const BAR_COVER = { castAgainstEarth: 3, formedNo5AndSmaller: 1.5, formedNo6AndLarger: 2 } as const;

/** Sill anchor bolts (R403.1.6), inches; the end distance lies between 7 diameters and 12 in. */
export const SILL_ANCHOR = { diameter: 0.5, spacing: 72, embedment: 7, maxEnd: 12, minEndDiameters: 7 } as const;

/** Greatest roofed area (in²) and eave height (in) of the frost exemption (R403.1.4.1). */
export const FROST_EXEMPT_AREA_LIGHT_FRAME = 600 * 144;
export const FROST_EXEMPT_AREA_OTHER = 400 * 144;
export const FROST_EXEMPT_EAVE = 120;

/**
 * Whether a free-standing accessory structure may keep its footings above the frost line. An attached cover never may.
 * IRC 2018 R403.1.4.1.
 */
export function ircFrostExempt(freeStanding: boolean, lightFrame: boolean, area: number, eaveHeight: number): boolean {
  const limit = lightFrame ? FROST_EXEMPT_AREA_LIGHT_FRAME : FROST_EXEMPT_AREA_OTHER;
  return freeStanding && area <= limit && eaveHeight <= FROST_EXEMPT_EAVE;
}

/**
 * Least depth of the bottom of a footing below undisturbed ground, inches, frost line `frost` inches down.
 * IRC 2018 R403.1.4.
 */
export function ircFootingDepth(frost: number, exempt: boolean, rec?: Recorder): number {
  const depth = exempt ? IRC_MIN_FOOTING_DEPTH : Math.max(IRC_MIN_FOOTING_DEPTH, frost);
  rec?.step({
    symbol: 'depth',
    meaning: 'least depth of footing below grade',
    formula: exempt ? '12 in (frost exemption of R403.1.4.1)' : 'max(12 in, frost depth)',
    substituted: `frost ${say(frost)} in`,
    value: depth,
    unit: 'in',
    clause: 'IRC 2018 R403.1.4',
  });
  return depth;
}

/**
 * Least thickness in inches of an unreinforced footing that stands `projection` inches out beyond the post or pier: 6 in,
 * and no less than the projection.
 * IRC 2018 R403.1.1.
 */
export function ircFootingThickness(projection: number, rec?: Recorder): number {
  const thickness = Math.max(IRC_MIN_FOOTING_THICKNESS, projection);
  rec?.step({
    symbol: 't',
    meaning: 'least footing thickness',
    formula: 'max(6 in, projection)',
    substituted: `max(6, ${say(projection)})`,
    value: thickness,
    unit: 'in',
    clause: 'IRC 2018 R403.1.1',
  });
  return thickness;
}
