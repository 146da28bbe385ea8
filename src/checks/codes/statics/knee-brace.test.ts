import { describe, expect, it } from 'vitest';
import { kneeBraceForces } from './knee-brace.js';

describe('a post with a knee brace, pinned at both ends', () => {
  it('by hand: 500 lb at the foot of a 10 ft post, brace 30 in down at 45°', () => {
    const f = kneeBraceForces(500, 120, 30, Math.PI / 4);
    expect(f.horizontal).toBeCloseTo(2000, 9);
    expect(f.axial).toBeCloseTo(2828.427, 3);
    expect(f.postMoment).toBeCloseTo(45000, 9);
    expect(f.topReaction).toBeCloseTo(1500, 9);
  });
  it('is in balance: what the brace brings is the shear at the foot and the reaction at the top', () => {
    for (const [V, h, a] of [
      [300, 96, 24],
      [-120, 110, 40],
    ] as const) {
      const f = kneeBraceForces(V, h, a, 0.9);
      expect(f.horizontal).toBeCloseTo(V + f.topReaction, 9);
      expect(f.topReaction * a).toBeCloseTo(f.postMoment, 9);
    }
  });
});
