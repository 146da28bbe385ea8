/** Uplift resistance of a footing by weight alone (statics; factor from ASCE 7 2.4.1 or 2.3.1). */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Dead load factor against uplift: allowable stress 0.6D + 0.6W, strength 0.9D + 1.0W. No second safety factor is added. */
export const UPLIFT_DEAD_FACTOR = { ASD: 0.6, LRFD: 0.9 } as const;

/** Weight in pounds of `volume` cubic inches at `density` pcf. Statics. */
export const weightOf = (volume: number, density: number): number => (volume / 1728) * density;

/** Volume in in³ of a footing: square of side `B`, or round of diameter `B`, `t` thick. Statics. */
export const footingVolume = (shape: 'square' | 'round', B: number, t: number): number =>
  (shape === 'square' ? 1 : Math.PI / 4) * B * B * t;

/**
 * Factored resistance in pounds: dead load brought down by the post (lb), concrete, and soil standing straight above the
 * footing (lb each). A wedge of soil beyond the footing's edge is engineering judgement and not counted.
 * ASCE 7 2.4.1 (7), 2.3.1 (5).
 */
export function upliftResistance(
  superDead: number,
  concrete: number,
  soilAbove: number,
  factor: number = UPLIFT_DEAD_FACTOR.ASD,
  rec?: Recorder,
): number {
  const value = factor * (superDead + concrete + soilAbove);
  rec?.step({
    symbol: 'R',
    meaning: 'resistance to uplift by weight',
    formula: `${factor}·(D + footing + soil above)`,
    substituted: `${factor} · (${say(superDead)} + ${say(concrete)} + ${say(soilAbove)})`,
    value,
    unit: 'lb',
    clause: factor === UPLIFT_DEAD_FACTOR.LRFD ? 'ASCE 7 2.3.1 (5)' : 'ASCE 7 2.4.1 (7)',
  });
  return value;
}
