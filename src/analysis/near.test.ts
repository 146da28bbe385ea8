import { expect, it } from 'vitest';
import type { Member } from '../structure/model.js';
import { nearTo } from './near.js';
import type { Term, Terms } from './terms.js';

const term = (surface: string): Term => ({ surface, kind: 'vertical', region: undefined, v: 0 });
const on = (...surfaces: readonly string[]): Member =>
  ({ strips: surfaces.map((surface) => ({ surface, u0: 0, u1: 24 })) }) as unknown as Member;

/** Dead load on both roofs, snow on each alone, and a case that touches neither. */
const terms: Terms = {
  terms: [term('A'), term('B'), term('A')],
  onSurface: new Map([
    ['A', [0, 2]],
    ['B', [1]],
  ]),
  cases: [
    { term: Int32Array.of(1, 0), factor: Float64Array.of(0.2, 0.1), self: 1 },
    { term: Int32Array.of(2), factor: Float64Array.of(0.3), self: 0 },
    { term: Int32Array.of(1), factor: Float64Array.of(0.4), self: 0 },
    { term: Int32Array.of(), factor: Float64Array.of(), self: 0 },
  ],
};

it('keeps the terms on the member’s own surface and the cases that use them', () => {
  expect(nearTo(on('A'), terms)).toEqual({
    terms: [0, 2],
    cases: [
      { index: 0, self: 1, term: [0], factor: [0.1] },
      { index: 1, self: 0, term: [1], factor: [0.3] },
    ],
  });
});

it('keeps a case for the own weight alone', () => {
  expect(nearTo(on('C'), terms)).toEqual({ terms: [], cases: [{ index: 0, self: 1, term: [], factor: [] }] });
});

it('puts the terms of several surfaces in one order, and leaves each case its own', () => {
  const near = nearTo(on('B', 'A'), terms);
  expect(near.terms).toEqual([0, 1, 2]);
  expect(near.cases[0]).toEqual({ index: 0, self: 1, term: [1, 0], factor: [0.2, 0.1] });
  expect(near.cases).toHaveLength(3);
});

it('answers members on the same surfaces with the same', () => {
  expect(nearTo(on('A'), terms)).toBe(nearTo(on('A', 'A'), terms));
});
