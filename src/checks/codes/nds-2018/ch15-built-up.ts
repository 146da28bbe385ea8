import type { Recorder } from '../../../base/trace.js';

/** How the plies of a built-up column are joined, by the rules of 15.3.3 (nails) and 15.3.4 (bolts). */
export type BuiltUpJoint = 'nailed' | 'bolted';

/**
 * Built-up column factor. It lowers CP where buckling about the weak axis of the built-up section governs, so that the
 * plies slip on each other; about the other axis it is 1. Two to five plies of equal depth, each at least 1-1/2 in.
 * thick, joined by 15.3.3 or 15.3.4. NDS 2018 15.3.2.
 */
export function Kf(joint: BuiltUpJoint, acrossPlies: boolean, rec?: Recorder): number {
  const value = acrossPlies ? (joint === 'nailed' ? 0.6 : 0.75) : 1;
  rec?.step({
    symbol: 'Kf',
    meaning: 'built-up column factor',
    formula: acrossPlies ? '0.6 nailed, 0.75 bolted' : '1.0 about the axis normal to the plies',
    substituted: joint,
    value,
    unit: '',
    clause: 'NDS 2018 15.3.2',
  });
  return value;
}

/** Nails of a built-up column, to be met together; inches. NDS 2018 15.3.3.1 (recalled). */
export interface NailSchedule {
  readonly endDistance: readonly [min: number, max: number];
  readonly spacing: readonly [min: number, max: number];
  readonly rowSpacing: readonly [min: number, max: number];
  readonly edgeDistance: readonly [min: number, max: number];
  /** Rows along the column; one staggered row serves plies up to 3 times as deep as thick. */
  readonly rows: 1 | 2;
}

/**
 * Nailing rule of a built-up column with plies `t` thick and `d` deep, nails of diameter D; inches. Adjacent nails are
 * driven from opposite sides, go through all plies and at least 3/4 of the last one. NDS 2018 15.3.3.1 (recalled).
 */
export function builtUpNailing(t: number, d: number, D: number): NailSchedule {
  return {
    endDistance: [15 * D, 18 * D],
    spacing: [20 * D, 6 * t],
    rowSpacing: [10 * D, 20 * D],
    edgeDistance: [5 * D, 20 * D],
    rows: d > 3 * t ? 2 : 1,
  };
}

/** Eccentric loads on columns, 15.4, share their formula with 3.9.2. */
export { eccentricCompression } from './ch3-combined.js';

/** The eccentricity term 6·e/d of 15.4; e and d in inches. */
export const eccentricityTerm = (e: number, d: number): number => (6 * e) / d;
