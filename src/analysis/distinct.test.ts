import { describe, expect, it } from 'vitest';
import type { Combination } from '../loads/model.js';
import { distinctCombinations, distinctPlaces } from './distinct.js';
import type { JointForces } from './model.js';

const sum = (id: string, label: string, CD: number, ...cases: number[]): Combination => ({
  id,
  label,
  CD,
  terms: cases.map((c) => ({ case: c, factor: 1 })),
  clause: '',
  uplift: false,
});
const up = (z: number) => ({ x: 0, y: 0, z });
/** Cases 1 and 3 are the same to this joint, case 2 is not. */
const joint: JointForces = { joint: 'J1-01', force: [up(5), up(7), up(8), up(7)] };
const list = [
  sum('a', 'D + S', 1.15, 0, 1),
  sum('b', 'D + S', 1.15, 0, 2),
  sum('c', 'D + S', 1.15, 0, 3),
  sum('d', 'D + W', 1.6, 0, 3),
];

describe('combinations that differ for one part', () => {
  it('leaves out a later one of the same family and the same forces, never one of another family', () => {
    expect(distinctPlaces(joint, list)).toEqual([0, 1, 3]);
    expect(distinctCombinations(joint, list).map((c) => c.id)).toEqual(['a', 'b', 'd']);
  });

  it('keeps all where the moment differs', () => {
    const held = { ...joint, moment: [up(0), up(0), up(0), up(1)] };
    expect(distinctPlaces(held, list)).toEqual([0, 1, 2, 3]);
  });
});
