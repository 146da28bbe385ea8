/** What the sheathing of a roof has to hand over under each combination. */
import type { Combination } from '../../loads/model.js';
import type { CheckContext } from '../contract.js';
import { chordsOf } from './chords.js';
import { caseSums, type HouseLine, type RoofSide, under } from './side-loads.js';
import type { Axis } from './system.js';

export interface Demand {
  readonly combination: Combination;
  /** Shear through the field, and line load along and square to the house edge, plf. */
  readonly field: number;
  readonly q: number;
  readonly n: number;
  readonly along: number;
  readonly square: number;
  readonly couple: number;
}

/** Plan width that carries shear along the wall, inches: between the chords, never wider than the roof. */
export const shearWidth = (ctx: CheckContext, side: RoofSide): number => {
  const { min, max } = side.roof;
  return Math.min(chordsOf(ctx, side.roof, 'y')?.apart ?? max.x - min.x, max.x - min.x);
};

/** Distance of the house line, and its length, inches; the roof's own edge where none is named yet. */
export function edgeOf(ctx: CheckContext, side: RoofSide): Omit<HouseLine, 'seats'> {
  const { min, max } = side.roof;
  if (side.line) return side.line;
  const length = shearWidth(ctx, side);
  return {
    y: min.y,
    centre: (min.x + max.x) / 2,
    length,
    second: length ** 3 / 12,
    reach: length / 2,
  };
}

export function atHouse(ctx: CheckContext, side: RoofSide): readonly Demand[] {
  const line = edgeOf(ctx, side);
  const cases = ctx.loads.cases.length;
  const sums = caseSums(side.points, cases, line.centre, line.y);
  const direct = caseSums(side.direct, cases, line.centre, line.y);
  const width = shearWidth(ctx, side);
  return ctx.loads.combinations.map((combination) => {
    // What reaches the ledger directly along the wall still crosses its nails; square to the wall the framing brings it.
    const along = under(combination, sums.along) + under(combination, direct.along);
    const square = under(combination, sums.square);
    const couple = under(combination, sums.couple);
    const q = (12 * Math.abs(along)) / line.length;
    const n = (12 * Math.abs(square)) / line.length + (12 * Math.abs(couple) * line.reach) / line.second;
    const field = (12 * Math.abs(along)) / width;
    return { combination, field, q, n, along, square, couple };
  });
}

/** Shear between lines of posts or braces: the whole load of the direction over the roof's extent that way. */
export function betweenLines(ctx: CheckContext, side: RoofSide, axis: Axis): readonly Demand[] {
  const { min, max } = side.roof;
  const sums = caseSums(side.all, ctx.loads.cases.length, 0, 0);
  const values = axis === 'x' ? sums.along : sums.square;
  const extent = max[axis] - min[axis];
  return ctx.loads.combinations.map((combination) => {
    const total = under(combination, values);
    const field = (12 * Math.abs(total)) / extent;
    return {
      combination,
      field,
      q: field,
      n: 0,
      along: axis === 'x' ? total : 0,
      square: axis === 'y' ? total : 0,
      couple: 0,
    };
  });
}

/** The combination that asks most of the sheathing. */
export interface Worst extends Demand {
  /** The greatest of the shear in the field and the load on the boundary nails, in terms of shear along them, plf. */
  readonly v: number;
  /** How much more a pound square to the house line asks of the nails than one along it: va/na, 1 or more. */
  readonly k: number;
  readonly allowed: number;
  readonly ratio: number;
  readonly axis: Axis | 'house';
}
