import { describe, expect, it } from 'vitest';
import type { GableRoof } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, gableProject } from '../../structure/testing.js';
import { contextFor, runFirst } from '../testing.js';
import { waterAtWall } from './water-at-wall.js';

const turned = change(gableProject, {
  cover: {
    beams: (old) => [
      { ...old[0]!, from: { x: -90, y: 20 }, to: { x: 90, y: 20 } },
      { ...old[1]!, from: { x: -90, y: 170 }, to: { x: 90, y: 170 } },
    ],
    roofs: (old) => old.map((r) => ({ ...(r as GableRoof), ridge: 'x' as const, from: -84, to: 84, eave: 12 })),
  },
  house: { roofs: (old) => old.map((r) => ({ ...r, overhang: 0 })) },
});
const run = (project: typeof gableProject) =>
  runFirst(waterAtWall, contextFor({ project, structure: place(project).value! }));

describe('water at the wall', () => {
  it('says nothing of a ridge that runs to the wall', () => {
    expect(run(gableProject).status).toBe('not-applicable');
  });
  it('is for a professional where a slope falls against it, with the cricket it would take', () => {
    const f = run(turned);
    expect(f.status).toBe('outside-scope');
    // 180 in of wall and slopes of 4 in 12: 30 in high, 90 in long: longer than the slope.
    expect(f.note).toContain('15.0 ft of the rear wall');
  });
});
