/**
 * Reading the analysis: sums of cases for a combination and the governing one of many. All loops run over typed arrays
 * and allocate nothing per combination. A part without forces in a case counts as zero there.
 */
import type { Vec3 } from '../base/vec.js';
import type { Combination } from '../loads/model.js';
import { distinctPlaces } from './distinct.js';
import type { Effects, FootingForces, JointForces, MemberEffects } from './model.js';

/** The combination's value at one station of per-case curves (`effects.m`, `.v`, …). */
export function combine(curves: readonly Float64Array[], combination: Combination, station: number): number {
  let sum = 0;
  for (const t of combination.terms) sum += t.factor * curves[t.case]![station]!;
  return sum;
}

/** One component of per-case vectors under a combination. */
export function combineComponent(values: readonly Vec3[], combination: Combination, axis: keyof Vec3): number {
  let sum = 0;
  for (const t of combination.terms) sum += t.factor * values[t.case]![axis];
  return sum;
}

/** A per-case vector under a combination. */
export function combineVector(values: readonly Vec3[], combination: Combination): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  for (const { factor, case: c } of combination.terms) {
    const v = values[c]!;
    x += factor * v.x;
    y += factor * v.y;
    z += factor * v.z;
  }
  return { x, y, z };
}

export type Curve = 'm' | 'v' | 'n' | 'mWeak' | 'vWeak' | 'sag';

/** An extreme value with where and under what it occurs. Indices are −1 when there is nothing to look at. */
export interface Extreme {
  readonly value: number;
  readonly station: number;
  /** Index into the combinations handed in. */
  readonly combination: number;
}

export interface Envelope {
  readonly max: Extreme;
  readonly min: Extreme;
}

/** Greatest and least value of a curve over the stations (of one span, when `span` is given) and the combinations. */
export function envelope(
  effects: MemberEffects,
  combinations: readonly Combination[],
  pick: Curve,
  span?: number,
): Envelope {
  const curves = effects[pick];
  const { spanOf } = effects;
  const count = effects.stations.length;
  let max = Number.NEGATIVE_INFINITY;
  let min = Number.POSITIVE_INFINITY;
  let maxStation = -1;
  let minStation = -1;
  let maxCombination = -1;
  let minCombination = -1;
  for (let k = 0; k < combinations.length; k++) {
    const terms = combinations[k]!.terms;
    for (let i = 0; i < count; i++) {
      if (span !== undefined && spanOf[i] !== span) continue;
      let sum = 0;
      for (let t = 0; t < terms.length; t++) sum += terms[t]!.factor * curves[terms[t]!.case]![i]!;
      if (sum > max) {
        max = sum;
        maxStation = i;
        maxCombination = k;
      }
      if (sum < min) {
        min = sum;
        minStation = i;
        minCombination = k;
      }
    }
  }
  return {
    max: { value: maxStation < 0 ? 0 : max, station: maxStation, combination: maxCombination },
    min: { value: minStation < 0 ? 0 : min, station: minStation, combination: minCombination },
  };
}

/** A governing force; `combination` is an index, −1 when no combination gives any. */
export interface Governing {
  readonly value: number;
  readonly combination: number;
}

/** Greatest forces through a joint, all as positive numbers, lb. */
export interface ForceEnvelope {
  readonly down: Governing;
  readonly up: Governing;
  /** Greatest magnitude along house x and y. */
  readonly x: Governing;
  readonly y: Governing;
}

function forceEnvelope(
  part: JointForces | FootingForces,
  combinations: readonly Combination[],
  downIsPositive: boolean,
): ForceEnvelope {
  let down = 0;
  let up = 0;
  let x = 0;
  let y = 0;
  let kd = -1;
  let ku = -1;
  let kx = -1;
  let ky = -1;
  const values = part.force;
  for (const k of distinctPlaces(part, combinations)) {
    const terms = combinations[k]!.terms;
    let sx = 0;
    let sy = 0;
    let sz = 0;
    for (let t = 0; t < terms.length; t++) {
      const { factor } = terms[t]!;
      const f = values[terms[t]!.case]!;
      sx += factor * f.x;
      sy += factor * f.y;
      sz += factor * f.z;
    }
    const press = downIsPositive ? sz : -sz;
    if (press > down) {
      down = press;
      kd = k;
    }
    if (-press > up) {
      up = -press;
      ku = k;
    }
    if (Math.abs(sx) > x) {
      x = Math.abs(sx);
      kx = k;
    }
    if (Math.abs(sy) > y) {
      y = Math.abs(sy);
      ky = k;
    }
  }
  return {
    down: { value: down, combination: kd },
    up: { value: up, combination: ku },
    x: { value: x, combination: kx },
    y: { value: y, combination: ky },
  };
}

/** Governing forces through a joint: pressing down, lifting, sideways; undefined when the joint was not worked out. */
export function jointEnvelope(
  effects: Effects,
  joint: string,
  combinations: readonly Combination[],
): ForceEnvelope | undefined {
  const found = effects.joints.get(joint);
  return found && forceEnvelope(found, combinations, false);
}

/** The same of forces a caller has put together itself. */
export const envelopeOf = (forces: JointForces, combinations: readonly Combination[]): ForceEnvelope =>
  forceEnvelope(forces, combinations, false);

/** The same for a footing, without its own weight (the checks add it with the dead load's factor). */
export function footingEnvelope(
  effects: Effects,
  footing: string,
  combinations: readonly Combination[],
): ForceEnvelope | undefined {
  const found = effects.footings.get(footing);
  return found && forceEnvelope(found, combinations, true);
}
