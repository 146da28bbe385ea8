import { describe, expect, it } from 'vitest';
import type { SlabPlaced } from '../../structure/model.js';
import { gableProject } from '../../structure/testing.js';
import { bar, contextFor, joist, runFirst } from '../testing.js';
import { coveringSlope } from './covering-slope.js';
import { headroom, lowestClear } from './headroom.js';
import { slabFall } from './slab-fall.js';

const slab: SlabPlaced = {
  mark: 'S1',
  state: 'new',
  outline: [
    { x: 0, y: 0 },
    { x: 144, y: 0 },
    { x: 144, y: 96 },
    { x: 0, y: 96 },
  ],
  top: { z0: -5, gx: 0, gy: -1 / 48 },
  thickness: 4,
  path: '/patio/slabs/0',
};

describe('clear height', () => {
  it('is least under the low end of a falling rafter above the slab', () => {
    // Falls from z = 100 at y = 0 to z = 60 at y = 120 (1/3); the slab ends at y = 96: z = 68 there.
    // Plumb half depth 4.625/cos = 4.625·√10/3 = 4.875; underside 63.125; slab −5 − 2 = −7; clear 70.125.
    const rafter = bar({
      role: 'rafter',
      section: joist(),
      start: { x: 70, y: 120, z: 60 },
      end: { x: 70, y: 0, z: 100 },
      up: { x: 0, y: 1 / Math.sqrt(10), z: 3 / Math.sqrt(10) },
    });
    const low = lowestClear(contextFor({ structure: { members: [rafter], slabs: [slab] } }).structure)!;
    expect(low.clear).toBeCloseTo(70.125, 3);
    expect(low.at.y).toBeCloseTo(96, 9);
  });

  it('passes over parts beside the slab', () => {
    const beside = bar({ start: { x: 0, y: 100, z: 20 }, end: { x: 144, y: 100, z: 20 } });
    expect(runFirst(headroom, contextFor({ structure: { members: [beside], slabs: [slab] } })).status).toBe(
      'not-applicable',
    );
    const over = bar({ start: { x: 0, y: 50, z: 20 }, end: { x: 144, y: 50, z: 20 } });
    expect(runFirst(headroom, contextFor({ structure: { members: [over], slabs: [slab] } })).status).toBe('fail');
  });
});

describe('slopes', () => {
  it('asks 2 % of a slab', () => {
    // 1/48 = 2.083 %
    expect(runFirst(slabFall, contextFor({})).ratio).toBeCloseTo(0.96, 9);
    const flat = {
      ...gableProject,
      patio: { ...gableProject.patio, slabs: [{ ...gableProject.patio.slabs[0]!, fall: 1 / 96 }] },
    };
    expect(runFirst(slabFall, contextFor({ project: flat })).status).toBe('fail');
  });
  it('asks each covering’s own least slope', () => {
    // Shingles 2:12 on 4:12.
    expect(runFirst(coveringSlope, contextFor({})).ratio).toBeCloseTo(0.5, 9);
    const roof = { ...gableProject.cover.roofs[0]!, pitch: Math.atan(1.5 / 12) };
    const low = { ...gableProject, cover: { ...gableProject.cover, roofs: [roof] } };
    expect(runFirst(coveringSlope, contextFor({ project: low })).status).toBe('fail');
  });
});
