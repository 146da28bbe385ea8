/**
 * IBC 2018 section 1806, presumptive soil values in use. The table itself is in the catalogue of soils; these functions
 * take its numbers. Presumptive values go with allowable-stress combinations; the one-third increase belongs to the
 * alternative combinations only and is never taken here.
 */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';

/** Lateral bearing grows with depth to this many times the value per foot (1806.3.3). */
export const LATERAL_DEPTH_CAP = 15;
/** Embedment counted for lateral pressure, at most 12 ft. Of its two readings the smaller pressure is taken: d/3 ≤ 4 ft. Inches. */
export const PRESSURE_DEPTH_CAP = 144;
/** Increase for isolated poles that may move 1/2 in at grade (1806.3.4). A cover tied to a house may not. */
export const ISOLATED_POLE_FACTOR = 2;

/**
 * Allowable lateral bearing in psf at `depth` inches below grade, from `perFoot` (psf per foot of depth). `factor` is 1, or
 * 2 for an isolated pole that tolerates 1/2 in of motion at grade.
 * IBC 2018 1806.3.3, 1806.3.4.
 */
export function lateralBearing(perFoot: number, depth: number, factor = 1, rec?: Recorder): number {
  const S = perFoot * factor * Math.min(depth / 12, LATERAL_DEPTH_CAP);
  rec?.step({
    symbol: 'S',
    meaning: 'allowable lateral soil bearing at depth',
    formula: 'lateral value · factor · depth, at most 15 times the value',
    substituted: `${say(perFoot)} · ${say(factor)} · ${say(depth / 12)} ft`,
    value: S,
    unit: 'psf',
    clause: 'IBC 2018 1806.3.3, 1806.3.4',
    note: `cap: ${MEMORY_NOTE}`,
  });
  return S;
}

/** Sliding resistance in pounds: friction coefficient times dead load (1806.3.2). */
export function slidingFriction(coefficient: number, D: number, rec?: Recorder): number {
  const value = coefficient * D;
  rec?.step({
    symbol: 'Rs',
    meaning: 'sliding resistance by friction',
    formula: 'coefficient · D',
    substituted: `${say(coefficient)} · ${say(D)}`,
    value,
    unit: 'lb',
    clause: 'IBC 2018 Table 1806.2',
  });
  return value;
}

/** Sliding resistance in pounds on clay: cohesion (psf) times contact area (in²), at most half the dead load (1806.3.2). */
export function slidingCohesion(cohesion: number, area: number, D: number, rec?: Recorder): number {
  const value = Math.min((cohesion * area) / 144, 0.5 * D);
  rec?.step({
    symbol: 'Rs',
    meaning: 'sliding resistance by cohesion',
    formula: 'min(cohesion · A, 0.5·D)',
    substituted: `min(${say(cohesion)} · ${say(area / 144)}, 0.5 · ${say(D)})`,
    value,
    unit: 'lb',
    clause: 'IBC 2018 1806.3.2',
    note: `half-dead-load limit: ${MEMORY_NOTE}`,
  });
  return value;
}

/**
 * Footing area in in² that brings `P` pounds to the allowable bearing `qa` psf, not under 12 in by 12 in.
 * IBC 2018 1806.1, 1809.4.
 */
export function requiredBearingArea(P: number, qa: number, rec?: Recorder): number {
  const A = Math.max((P / qa) * 144, 144);
  rec?.step({
    symbol: 'A',
    meaning: 'footing area needed',
    formula: 'P / qa, at least 12 in · 12 in',
    substituted: `${say(P)} / ${say(qa)} · 144`,
    value: A,
    unit: 'in²',
    clause: 'IBC 2018 1806.1, 1809.4',
  });
  return A;
}

/** Skin friction of a cast-in-place pier without a soils report, psf: a sixth of the bearing value, at most 500 (1810.3.3.1.4). */
export const presumptiveSkinFriction = (qa: number): number => Math.min(qa / 6, 500);
