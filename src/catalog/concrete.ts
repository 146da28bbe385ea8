import type { Sourced } from './model.js';

/** Unit weights, pcf (ASCE/SEI 7 commentary Table C3.1-2, recalled). */
export const CONCRETE_PCF = 150;
export const PLAIN_CONCRETE_PCF = 144;
/** Least specified strength f'c in standard footing plans, psi (read in several cities' standard plans). */
export const MIN_CONCRETE_STRENGTH = 2500;
export const CUBIC_FEET_PER_CUBIC_YARD = 27;

export interface ConcreteBag extends Sourced {
  readonly id: string;
  /** Weight of the dry mix, lb. */
  readonly weight: number;
  /** Yield, cubic feet of placed concrete. */
  readonly yield: number;
}

const bag = (weight: number, yields: number): ConcreteBag =>
  Object.freeze({
    id: `bag-${weight}`,
    weight,
    yield: yields,
    source: 'bag labels as quoted by several trade pages',
    edition: '-',
    provenance: 'read' as const,
  });

/** Dry concrete mix by bag. */
export const CONCRETE_BAGS: readonly ConcreteBag[] = [bag(40, 0.3), bag(50, 0.375), bag(60, 0.45), bag(80, 0.6)];

export interface Rebar extends Sourced {
  readonly id: string;
  /** Bar number: eighths of an inch. */
  readonly number: number;
  /** Diameter, in. */
  readonly diameter: number;
  /** Area, in². */
  readonly area: number;
  /** Weight, lb per foot. */
  readonly weight: number;
}

const bar = (number: number, area: number, weight: number): Rebar =>
  Object.freeze({
    id: `bar-${number}`,
    number,
    diameter: number / 8,
    area,
    weight,
    source: 'ASTM A615 bar sizes',
    edition: '-',
    provenance: 'memory' as const,
  });

/** Deformed reinforcing bars used in small footings. */
export const REBAR: readonly Rebar[] = [
  bar(3, 0.11, 0.376),
  bar(4, 0.2, 0.668),
  bar(5, 0.31, 1.043),
  bar(6, 0.44, 1.502),
];
