/** Roof live loads of the International Residential Code where a jurisdiction takes that path. */
import type { Recorder } from '../../../base/trace.js';
import type { ClauseRecord } from '../support.js';
import { MEMORY_NOTE, num } from '../support.js';

/** Table R301.6, psf, by slope band (rows) and tributary area to 200, 600, over 600 ft² (columns). */
const R301_6: readonly (readonly [number, number, number])[] = [
  [20, 16, 12],
  [16, 14, 12],
  [12, 12, 12],
];

/**
 * Minimum roof live load in psf of horizontal projection for slope `F` (inches per foot) and tributary area `At` (in²).
 * A row begins at its own slope: 4 in 12 exactly belongs to the second row.
 * IRC 2018 Table R301.6.
 */
export function ircRoofLiveLoad(F: number, At: number, rec?: Recorder): number {
  const row = F < 4 ? 0 : F < 12 ? 1 : 2;
  const ft2 = At / 144;
  const column = ft2 <= 200 ? 0 : ft2 <= 600 ? 1 : 2;
  const value = R301_6[row]![column]!;
  rec?.step({
    symbol: 'Lr',
    meaning: 'minimum roof live load on the horizontal projection',
    formula: 'table by slope and tributary area',
    substituted: `F = ${num(F)} in/ft, At = ${num(ft2)} ft²`,
    value,
    unit: 'psf',
    clause: 'IRC 2018 Table R301.6',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Patio cover appendix: design live load where the appendix is adopted and the use fits, psf. Snow governs where larger. */
export const PATIO_COVER_LIVE_LOAD = 10;

/**
 * Vertical design load of a patio cover under the appendix: the larger of 10 psf live and the design snow load, both
 * in psf of horizontal projection. A local amendment can ask for more (`localMinimum`, psf).
 */
export function patioCoverVerticalLoad(snow: number, localMinimum = 0, rec?: Recorder): number {
  const value = Math.max(PATIO_COVER_LIVE_LOAD, localMinimum, snow);
  rec?.step({
    symbol: 'w',
    meaning: 'patio cover vertical design load',
    formula: 'max(10 psf, local minimum, snow)',
    substituted: `max(10, ${num(localMinimum)}, ${num(snow)})`,
    value,
    unit: 'psf',
    clause: 'IRC 2018 Appendix H AH105.1',
  });
  return value;
}

export const IRC_LIVE_RECORDS: readonly ClauseRecord[] = [
  { id: 'live.irc', clause: 'IRC 2018 Table R301.6', title: 'Minimum roof live load', provenance: 'memory' },
  {
    id: 'live.patio',
    clause: 'IRC 2018 Appendix H AH105.1',
    title: 'Patio cover live load',
    provenance: 'read',
    note: 'read in a state residential code that reprints the 2006 text; applies only where the appendix is adopted by name',
  },
];
