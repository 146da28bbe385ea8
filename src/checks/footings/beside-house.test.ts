import { describe, expect, it } from 'vitest';
import { place } from '../../structure/place.js';
import { gableProject } from '../../structure/testing.js';
import { besideHouse } from './beside-house.js';

const structure = place(gableProject, {}).value!;
const wall = { ...structure.walls[0]!, start: { x: -200, y: 0 }, end: { x: 200, y: 0 } };
const footing = { ...structure.footings[0]!, onSlab: undefined, round: false, size: 36, bottom: -54 };
const at = (y: number) =>
  besideHouse({
    ...structure,
    grade: { z0: 0, gx: 0, gy: 0 },
    walls: [wall],
    footings: [{ ...footing, at: { x: 0, y } }],
  });

describe('a footing beside the house', () => {
  it('by hand: 9 in from the wall and 54 in deep needs a house footing 45 in deep', () => {
    expect(at(27)[0]).toMatchObject({ clear: 9, depth: 54, least: 45 });
  });

  it('as far off as it is deep is left alone', () => {
    expect(at(18 + 53)).toHaveLength(1);
    expect(at(18 + 54)).toHaveLength(0);
  });
});
