import { expect, it } from 'vitest';
import { twinsOf } from './twins.js';

const twins = (values: readonly (readonly [number, number])[]): readonly number[] =>
  Array.from(
    twinsOf(
      values.length,
      (c) => values[c]![0] + values[c]![1],
      (a, b) => values[a]![0] === values[b]![0] && values[a]![1] === values[b]![1],
    ),
  );

it('gives each case the first one with the same numbers', () => {
  expect(
    twins([
      [1, 2],
      [3, 4],
      [1, 2],
      [5, 6],
      [3, 4],
    ]),
  ).toEqual([0, 1, 0, 3, 1]);
});

it('tells cases apart that share a print', () => {
  // Every pair sums to 3: one row of prints, three different cases in it.
  expect(
    twins([
      [1, 2],
      [2, 1],
      [0, 3],
      [2, 1],
      [0, 3],
      [1, 2],
    ]),
  ).toEqual([0, 1, 2, 1, 2, 0]);
});

it('has an answer for no case at all', () => {
  expect(twins([])).toEqual([]);
});
