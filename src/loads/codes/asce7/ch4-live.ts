/** Roof live load of ASCE 7 section 4.8: reduction for tributary area and slope. Same text in 7-16 and 7-22. */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord } from '../support.js';
import { asce, num } from '../support.js';

/** Minimum uniform roof live load of ordinary flat, pitched and curved roofs (Table 4.3-1), psf of horizontal projection. */
export const LO_ORDINARY_ROOF = 20;
/** Reduced roof live load never goes below this, psf (4.8.2). */
export const LR_MIN = 12;

/** R1 for tributary area `At` in square inches (formula in square feet). ASCE 7 4.8.2. */
export function reductionR1(At: number, edition: Asce7Edition, rec?: Recorder): number {
  const ft2 = At / 144;
  const R1 = ft2 <= 200 ? 1 : ft2 >= 600 ? 0.6 : 1.2 - 0.001 * ft2;
  rec?.step({
    symbol: 'R1',
    meaning: 'roof live load reduction for tributary area',
    formula: '1 for At ≤ 200 ft²; 1.2 − 0.001·At; 0.6 for At ≥ 600 ft²',
    substituted: ft2 <= 200 || ft2 >= 600 ? `At = ${num(ft2)} ft²` : `1.2 − 0.001 · ${num(ft2)}`,
    value: R1,
    unit: '',
    clause: asce(edition, '4.8.2'),
  });
  return R1;
}

/** R2 for roof slope `F`, inches of rise per foot. ASCE 7 4.8.2. */
export function reductionR2(F: number, edition: Asce7Edition, rec?: Recorder): number {
  const R2 = F <= 4 ? 1 : F >= 12 ? 0.6 : 1.2 - 0.05 * F;
  rec?.step({
    symbol: 'R2',
    meaning: 'roof live load reduction for slope',
    formula: '1 for F ≤ 4; 1.2 − 0.05·F; 0.6 for F ≥ 12',
    substituted: F <= 4 || F >= 12 ? `F = ${num(F)} in/ft` : `1.2 − 0.05 · ${num(F)}`,
    value: R2,
    unit: '',
    clause: asce(edition, '4.8.2'),
    note: 'bounds of R2 recalled from memory; the middle branch agrees with a published permit sheet',
  });
  return R2;
}

/**
 * Design roof live load Lr in psf of horizontal projection, from the unreduced `Lo` (psf), tributary area `At` (in²) and
 * slope `F` (in/ft). `12 ≤ Lr ≤ Lo`. A jurisdiction's own minimum is the caller's to apply.
 * ASCE 7 Eq. 4.8-1.
 */
export function roofLiveLoad(Lo: number, At: number, F: number, edition: Asce7Edition, rec?: Recorder): number {
  const R1 = reductionR1(At, edition, rec);
  const R2 = reductionR2(F, edition, rec);
  const Lr = Math.max(Lo * R1 * R2, Math.min(LR_MIN, Lo));
  rec?.step({
    symbol: 'Lr',
    meaning: 'reduced roof live load on the horizontal projection',
    formula: 'Lo · R1 · R2, not less than 12 psf',
    substituted: `${num(Lo)} · ${num(R1)} · ${num(R2)}`,
    value: Lr,
    unit: 'psf',
    clause: asce(edition, 'Eq. 4.8-1'),
  });
  return Lr;
}

export const LIVE_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'live.reduction',
    clause: 'ASCE 7-16 and 7-22 4.8.2',
    title: 'Roof live load reduction',
    provenance: 'mixed',
    note: 'R1 bands and the 12 psf floor read; R2 limits from memory, one point confirmed by a permit sheet (F = 5 gives 0.95)',
  },
];
