/**
 * Net pressure coefficients CN of free roofs, ASCE 7 Figs. 27.3-4 to 27.3-7 (numbers equal in 7-16 and 7-22 but for one
 * cell of the troughed roof). Plus acts down on the top face. CNW is the windward half, CNL the leeward half.
 */
import type { Asce7Edition } from '../support.js';

export type FlowCondition = 'clear' | 'obstructed';
export type LoadCaseAB = 'A' | 'B';
export type FreeRoofShape = 'monoslope' | 'pitched' | 'troughed';

export interface CnRow {
  readonly CNW: readonly number[];
  readonly CNL: readonly number[];
}
export type CnTable = Readonly<Record<LoadCaseAB, Readonly<Record<FlowCondition, CnRow>>>>;

/** Slopes of the monoslope columns, degrees. The 0 column serves every slope under 7.5. */
export const MONOSLOPE_THETA = [0, 7.5, 15, 22.5, 30, 37.5, 45];
/** Slopes of the pitched and troughed columns, degrees. Under 7.5 the monoslope 0 column serves. */
export const PITCHED_THETA = [7.5, 15, 22.5, 30, 37.5, 45];

/** Fig. 27.3-4, wind at gamma 0: mostly uplift. */
export const MONOSLOPE_GAMMA_0: CnTable = {
  A: {
    clear: { CNW: [1.2, -0.6, -0.9, -1.5, -1.8, -1.8, -1.6], CNL: [0.3, -1, -1.3, -1.6, -1.8, -1.8, -1.8] },
    obstructed: { CNW: [-0.5, -1, -1.1, -1.5, -1.5, -1.5, -1.3], CNL: [-1.2, -1.5, -1.5, -1.7, -1.8, -1.8, -1.8] },
  },
  B: {
    clear: { CNW: [-1.1, -1.4, -1.9, -2.4, -2.5, -2.4, -2.3], CNL: [-0.1, 0, 0, -0.3, -0.5, -0.6, -0.7] },
    obstructed: { CNW: [-1.1, -1.7, -2.1, -2.3, -2.3, -2.2, -1.9], CNL: [-0.6, -0.8, -0.6, -0.9, -1.1, -1.1, -1.2] },
  },
};
/** Fig. 27.3-4, wind at gamma 180: mostly downward. */
export const MONOSLOPE_GAMMA_180: CnTable = {
  A: {
    clear: { CNW: [1.2, 0.9, 1.3, 1.7, 2.1, 2.1, 2.2], CNL: [0.3, 1.5, 1.6, 1.8, 2.1, 2.2, 2.5] },
    obstructed: { CNW: [-0.5, -0.2, 0.4, 0.5, 0.6, 0.7, 0.8], CNL: [-1.2, -1.2, -1.1, -1, -1, -0.9, -0.9] },
  },
  B: {
    clear: { CNW: [-1.1, 1.6, 1.8, 2.2, 2.6, 2.7, 2.6], CNL: [-0.1, 0.3, 0.6, 0.7, 1, 1.1, 1.4] },
    obstructed: { CNW: [-1.1, 0.8, 1.2, 1.3, 1.6, 1.9, 2.1], CNL: [-0.6, -0.3, -0.3, 0, 0.1, 0.3, 0.4] },
  },
};
/** Fig. 27.3-5. Gamma 0 and 180 mirror each other. */
export const PITCHED: CnTable = {
  A: {
    clear: { CNW: [1.1, 1.1, 1.1, 1.3, 1.3, 1.1], CNL: [-0.3, -0.4, 0.1, 0.3, 0.6, 0.9] },
    obstructed: { CNW: [-1.6, -1.2, -1.2, -0.7, -0.6, -0.5], CNL: [-1, -1, -1.2, -0.7, -0.6, -0.5] },
  },
  B: {
    clear: { CNW: [0.2, 0.1, -0.1, -0.1, -0.2, -0.3], CNL: [-1.2, -1.1, -0.8, -0.9, -0.6, -0.5] },
    obstructed: { CNW: [-0.9, -0.6, -0.8, -0.2, -0.3, -0.3], CNL: [-1.7, -1.6, -1.7, -1.1, -0.9, -0.7] },
  },
};
const TROUGHED_7_16: CnTable = {
  A: {
    clear: { CNW: [-1.1, -1.1, -1.1, -1.3, -1.3, -1.1], CNL: [0.3, 0.4, -0.1, -0.3, -0.6, -0.9] },
    obstructed: { CNW: [-1.6, -1.2, -1.2, -1.4, -1.4, -1.2], CNL: [-0.5, -0.5, -0.6, -0.4, -0.3, -0.3] },
  },
  B: {
    clear: { CNW: [-0.2, 0.1, -0.1, -0.1, 0.2, 0.3], CNL: [1.2, 1.1, 0.8, 0.9, 0.6, 0.5] },
    obstructed: { CNW: [-0.9, -0.6, -0.8, -0.2, -0.3, -0.3], CNL: [-0.8, -0.8, -0.8, -0.5, -0.4, -0.4] },
  },
};
/** 30 degrees, case B, clear: CNW is -0.1 in 7-16 and +0.1 in 7-22. */
const TROUGHED_7_22: CnTable = {
  ...TROUGHED_7_16,
  B: { ...TROUGHED_7_16.B, clear: { CNW: [-0.2, 0.1, -0.1, 0.1, 0.2, 0.3], CNL: TROUGHED_7_16.B.clear.CNL } },
};
/** Fig. 27.3-6. */
export const TROUGHED: Readonly<Record<Asce7Edition, CnTable>> = { '7-16': TROUGHED_7_16, '7-22': TROUGHED_7_22 };

/** Fig. 27.3-7, wind along the ridge: to h, from h to 2h, beyond 2h from the windward edge. */
export const ALONG_RIDGE: Readonly<
  Record<LoadCaseAB, Readonly<Record<FlowCondition, readonly [number, number, number]>>>
> = {
  A: { clear: [-0.8, -0.6, -0.3], obstructed: [-1.2, -0.9, -0.6] },
  B: { clear: [0.8, 0.5, 0.3], obstructed: [0.5, 0.5, 0.3] },
};
