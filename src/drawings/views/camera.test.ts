import { describe, expect, it } from 'vitest';
import { CAMERAS, see } from './camera.js';

describe('cameras', () => {
  it('keeps pictures unmirrored: right × up points at the viewer', () => {
    const away = { rear: [0, 1, 0], front: [0, -1, 0], right: [1, 0, 0], left: [-1, 0, 0], plan: [0, 0, 1] };
    for (const [name, d] of Object.entries(away)) {
      const c = CAMERAS[name as keyof typeof CAMERAS];
      expect([c.toward.x, c.toward.y, c.toward.z].map((n) => n + 0)).toEqual(d);
    }
  });

  it('shows x running right to left when the house is seen from the yard', () => {
    const c = CAMERAS.rear;
    expect(see(c, { x: 10, y: 0, z: 0 }).a).toBeLessThan(see(c, { x: -10, y: 0, z: 0 }).a);
    expect(see(c, { x: 0, y: 100, z: 0 }).depth).toBeGreaterThan(see(c, { x: 0, y: 0, z: 0 }).depth);
  });
});
