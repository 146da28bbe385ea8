/**
 * Gutters and leaders: runoff, vertical conductors (National Standard Plumbing Code 2006 Table 13.6.1), semicircular
 * gutters (engineering handbook table, same figures as an older plumbing code). Areas in in² of horizontal projection,
 * rainfall in inches an hour.
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Square feet of roof that send one gallon a minute at one inch an hour. */
export const FT2_PER_GPM_AT_1_IN_H = 96.15;

/**
 * Runoff in gallons a minute of `area` (in²) at `rain` inches an hour.
 * Arithmetic; the plumbing code gives the rainfall.
 */
export function roofRunoff(area: number, rain: number, rec?: Recorder): number {
  const gpm = ((area / 144) * rain) / FT2_PER_GPM_AT_1_IN_H;
  rec?.step({
    symbol: 'Q',
    meaning: 'roof runoff',
    formula: 'area · rainfall / 96.15',
    substituted: `${say(area / 144)} · ${say(rain)} / 96.15`,
    value: gpm,
    unit: 'gpm',
    clause: 'arithmetic',
  });
  return gpm;
}

/** A wall that drains onto the roof adds half its area (in²). Plumbing code, common rule. */
export const drainedArea = (roof: number, wallAbove: number): number => roof + wallAbove / 2;

export interface Leader {
  /** Inside diameter, inches. */
  readonly diameter: number;
  /** Flow at 7/24 full, gpm. */
  readonly gpm: number;
  /** Projected roof area at 1 in/h, square feet as printed. */
  readonly ft2At1: number;
}

/** NSPC 2006 Table 13.6.1. */
export const LEADERS: readonly Leader[] = [
  { diameter: 2, gpm: 23, ft2At1: 2180 },
  { diameter: 3, gpm: 67, ft2At1: 6426 },
  { diameter: 4, gpm: 144, ft2At1: 13840 },
  { diameter: 5, gpm: 261, ft2At1: 25094 },
  { diameter: 6, gpm: 424, ft2At1: 40805 },
  { diameter: 8, gpm: 913, ft2At1: 87878 },
];

/** Roof area in in² that one leader drains at `rain` inches an hour. NSPC 2006 Table 13.6.1. */
export const leaderCapacity = (leader: Leader, rain: number): number => (leader.ft2At1 * 144) / rain;

/** Smallest leader for `area` (in²) at `rain`; undefined past the table. */
export const leaderFor = (area: number, rain: number): Leader | undefined =>
  LEADERS.find((l) => leaderCapacity(l, rain) >= area);

/** Falls of the gutter table's columns, inches per foot. */
export const GUTTER_FALLS = [1 / 16, 1 / 8, 1 / 4] as const;

export interface Gutter {
  /** Width of a semicircular gutter, inches. */
  readonly diameter: number;
  /** Roof area in square feet at 4 in/h for each fall. */
  readonly ft2At4: readonly [number, number, number];
  /** Leader that goes with it, inches; the table has none for 3 in. */
  readonly leader?: number;
}

export const GUTTERS: readonly Gutter[] = [
  { diameter: 3, ft2At4: [170, 240, 350] },
  { diameter: 4, ft2At4: [360, 510, 720], leader: 3 },
  { diameter: 5, ft2At4: [625, 880, 1250], leader: 4 },
  { diameter: 6, ft2At4: [960, 1360, 1920], leader: 4 },
];

/**
 * Roof area in in² that a gutter drains at `rain` inches an hour and fall `fall` inches per foot. A fall between columns
 * takes the flatter one; under 1/16 in per foot the table gives nothing: 0.
 */
export function gutterCapacity(gutter: Gutter, fall: number, rain: number): number {
  const column = GUTTER_FALLS.findLastIndex((f) => fall >= f - 1e-9);
  return column < 0 ? 0 : (gutter.ft2At4[column]! * 144 * 4) / rain;
}

/** Smallest gutter for `area` (in²); undefined past the table: add a leader and split the run. */
export const gutterFor = (area: number, fall: number, rain: number): Gutter | undefined =>
  GUTTERS.find((g) => gutterCapacity(g, fall, rain) >= area);
