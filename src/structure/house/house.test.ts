import { describe, expect, it } from 'vitest';
import { signedArea } from '../../base/plane.js';
import { flat } from '../../base/vec.js';
import type { HouseRoof, HouseRoofKind } from '../../project/model.js';
import { change, gableProject } from '../testing.js';
import { planeAt, wallTopAt } from './profile.js';
import { placeHouseRoofs } from './registry.js';
import { houseOutline, placeWalls } from './walls.js';

const roof = (kind: HouseRoofKind, more: Partial<HouseRoof> = {}) =>
  placeHouseRoofs(
    change(gableProject, {
      house: {
        roofs: (old) => [
          {
            ...old[0]!,
            kind,
            pitch: Math.atan(6 / 12),
            plate: 100,
            overhang: 12,
            rake: 4,
            min: { x: -200, y: -300 },
            max: { x: 200, y: 0 },
            ...more,
          },
        ],
      },
    }).house,
  );

describe('house roofs', () => {
  it('gable: planes through the plate, meeting over the middle', () => {
    const planes = roof('gable', { ridge: 'y' });
    expect(planes.map((p) => p.id)).toEqual(['HR1-1', 'HR1-2']);
    // Half of 400 at 6/12: 100 up; eave 12 out: 6 down; rake 4 past the gable walls.
    expect(planes[0]!.outline).toEqual([
      { x: -212, y: 4, z: 94 },
      { x: -212, y: -304, z: 94 },
      { x: 0, y: -304, z: 200 },
      { x: 0, y: 4, z: 200 },
    ]);
    expect(planeAt(planes[1]!.outline, { x: 200, y: -100 })).toBeCloseTo(100, 9);
  });

  it('gable along x: eaves front and back', () => {
    const planes = roof('gable', { ridge: 'x' });
    const ys = planes.flatMap((p) => p.outline.map((q) => q.y));
    expect(Math.max(...ys)).toBe(12);
    // Ridge over y = −150: 75 above the plate.
    expect(planeAt(planes[0]!.outline, { x: 0, y: -150 })).toBeCloseTo(175, 9);
  });

  it('hip: four planes of one pitch, ridge along the longer side', () => {
    const planes = roof('hip');
    expect(planes).toHaveLength(4);
    // 424 x 324 with overhangs: ridge 162 from each eave, 94 + 81 = 175, and 100 long.
    const top = planes.flatMap((p) => p.outline).filter((q) => Math.abs(q.z - 175) < 1e-9);
    expect(new Set(top.map((q) => Math.round(q.x)))).toEqual(new Set([-50, 50]));
    for (const p of planes) expect(planeAt(p.outline, p.outline[2]!)).toBeCloseTo(p.outline[2]!.z, 9);
  });

  it('hip over a square comes to a point', () => {
    expect(roof('hip', { min: { x: -150, y: -300 }, max: { x: 150, y: 0 } }).map((p) => p.outline.length)).toEqual([
      3, 3, 3, 3,
    ]);
  });

  it('shed: falls the way it says, its plate on the low side', () => {
    const [plane] = roof('shed', { fall: '-x' });
    // Low wall at x = −200: 100 there, 300 at x = 200.
    expect(planeAt(plane!.outline, { x: -200, y: 0 })).toBeCloseTo(100, 9);
    expect(planeAt(plane!.outline, { x: 200, y: -7 })).toBeCloseTo(300, 9);
  });

  it.each(['gable', 'hip', 'shed'] as const)('%s: outlines run counter-clockwise from above', (kind) => {
    for (const ridge of ['x', 'y'] as const)
      for (const p of roof(kind, { ridge })) expect(signedArea(p.outline.map(flat))).toBeGreaterThan(0);
  });
});

describe('house walls', () => {
  const walls = placeWalls(gableProject.house, -10);
  it('face outward, corners clockwise seen from above', () => {
    expect(walls.map((w) => w.out)).toEqual([
      { x: 0, y: 1 },
      { x: 1, y: 0 },
      { x: 0, y: -1 },
      { x: -1, y: 0 },
    ]);
    expect(signedArea(houseOutline(gableProject.house))).toBeGreaterThan(0);
    expect(walls.map((w) => w.openings.map((o) => o.mark))).toEqual([['D1', 'W1', 'W2'], ['W3'], ['D2'], []]);
  });
  it('rise to the roof at a gable end and to the plate at an eave', () => {
    const planes = placeHouseRoofs(gableProject.house);
    // 97 + 264 · 5/12 = 207 at the ridge; 97 at the corner.
    expect(wallTopAt(planes, { x: 0, y: 0 }, 97)).toBeCloseTo(207, 9);
    expect(wallTopAt(planes, { x: 264, y: 0 }, 97)).toBeCloseTo(97, 9);
    expect(wallTopAt(planes, { x: 264, y: -200 }, 97)).toBeCloseTo(97, 9);
  });
});
