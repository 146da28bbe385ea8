import { describe, expect, it } from 'vitest';
import {
  drainedArea,
  GUTTERS,
  gutterCapacity,
  gutterFor,
  LEADERS,
  leaderCapacity,
  leaderFor,
  roofRunoff,
} from './index.js';

const FT2 = 144;

describe('roof drainage', () => {
  it('runoff and walls above', () => {
    expect(roofRunoff(961.5 * FT2, 2)).toBeCloseTo(20, 9);
    expect(drainedArea(100, 40)).toBe(120);
  });

  it('printed leader areas follow their flow within half a percent from 3 in up', () => {
    for (const l of LEADERS.slice(1))
      expect(Math.abs((l.gpm * 96.15) / l.ft2At1 - 1), `${l.diameter}`).toBeLessThan(0.005);
  });

  it('chooses the smallest that suffices and says when none does', () => {
    expect(leaderFor(545 * FT2, 4)!.diameter).toBe(2);
    expect(leaderFor(546 * FT2, 4)!.diameter).toBe(3);
    expect(leaderFor(1e9, 4)).toBeUndefined();
    expect(leaderCapacity(LEADERS[1]!, 4) / FT2).toBeCloseTo(1606.5, 9);
    expect(gutterFor(510 * FT2, 1 / 8, 4)!.diameter).toBe(4);
    expect(gutterFor(511 * FT2, 1 / 8, 4)!.diameter).toBe(5);
    expect(gutterFor(2000 * FT2, 1 / 4, 4)).toBeUndefined();
  });

  it('takes the flatter column between two, none below the first, and scales with rainfall', () => {
    const g = GUTTERS[1]!;
    expect(gutterCapacity(g, 0.2, 4)).toBe(510 * FT2);
    expect(gutterCapacity(g, 0.5, 4)).toBe(720 * FT2);
    expect(gutterCapacity(g, 0.05, 4)).toBe(0);
    expect(gutterCapacity(g, 1 / 16, 8)).toBe(180 * FT2);
  });
});

describe('tables', () => {
  it('row by row', () => {
    expect(LEADERS.map((l) => [l.diameter, l.gpm, l.ft2At1])).toEqual([
      [2, 23, 2180],
      [3, 67, 6426],
      [4, 144, 13840],
      [5, 261, 25094],
      [6, 424, 40805],
      [8, 913, 87878],
    ]);
    expect(GUTTERS.map((g) => [g.diameter, ...g.ft2At4, g.leader])).toEqual([
      [3, 170, 240, 350, undefined],
      [4, 360, 510, 720, 3],
      [5, 625, 880, 1250, 4],
      [6, 960, 1360, 1920, 4],
    ]);
    const at = (fall: number) => gutterCapacity(GUTTERS[0]!, fall, 4) / FT2;
    expect([0.062, 0.0625, 0.124, 0.125, 0.249, 0.25].map(at)).toEqual([0, 170, 170, 240, 240, 350]);
  });
});
