/** IBC 2018 1809: least depth and width of shallow footings, frost. */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';

/** Least depth below undisturbed ground and least width of a footing, inches (1809.4). */
export const IBC_MIN_FOOTING_DEPTH = 12;
export const IBC_MIN_FOOTING_WIDTH = 12;
/** Steepest bottom of a footing, rise over run (1809.3). */
export const IBC_MAX_BOTTOM_SLOPE = 0.1;

export interface FrostExemption {
  readonly freeStanding: boolean;
  readonly riskCategory: 'I' | 'II' | 'III' | 'IV';
  readonly lightFrame: boolean;
  /** Roofed area, in². */
  readonly area: number;
  /** Inches. */
  readonly eaveHeight: number;
}

/** Whether 1809.5 lets a small free-standing structure of Risk Category I stay above the frost line. */
export function ibcFrostExempt(x: FrostExemption): boolean {
  return (
    x.freeStanding && x.riskCategory === 'I' && x.area <= (x.lightFrame ? 600 : 400) * 144 && x.eaveHeight <= 10 * 12
  );
}

/**
 * Least depth of the bottom of a footing below grade in inches, frost line `frost` inches down.
 * IBC 2018 1809.4, 1809.5.
 */
export function ibcFootingDepth(frost: number, exempt: boolean, rec?: Recorder): number {
  const depth = exempt ? IBC_MIN_FOOTING_DEPTH : Math.max(IBC_MIN_FOOTING_DEPTH, frost);
  rec?.step({
    symbol: 'depth',
    meaning: 'least depth of footing below grade',
    formula: exempt ? '12 in (frost exemption)' : 'max(12 in, frost depth)',
    substituted: `frost ${say(frost)} in`,
    value: depth,
    unit: 'in',
    clause: 'IBC 2018 1809.4, 1809.5',
    ...(exempt ? { note: `limits of the exemption: ${MEMORY_NOTE}` } : {}),
  });
  return depth;
}
