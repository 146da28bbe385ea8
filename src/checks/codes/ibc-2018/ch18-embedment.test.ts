import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { castRoom, depthTrial, facePressure, freePostDepth, heldPostDepth, nonconstrainedDepthAt } from './index.js';

const size = fc.double({ min: 1, max: 5000, noNaN: true });

describe('embedment under shear and moment', () => {
  it('is Eq. 18-1 and 18-2 where the moment is P·h', () => {
    fc.assert(
      fc.property(
        size,
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 6, max: 48, noNaN: true }),
        (P, h, b) => {
          const post = { P, Mg: P * h, b, lateral: 150 };
          // Each depth put back into its printed equation with P·h asks for itself.
          const d = freePostDepth(post, 36);
          const S1 = 150 * (Math.min(d, 144) / 36);
          expect(nonconstrainedDepthAt(P, h, b, S1) / d).toBeCloseTo(1, 5);
          const held = heldPostDepth(post) / 12;
          const S3 = 150 * Math.min(held, 12);
          expect((4.25 * P * (h / 12)) / (S3 * (b / 12)) / held ** 2).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 200 },
    );
  });
  it('holds a moment without side force', () => {
    // d² = 0.25·4.36·2.34·Mg/(S1·b) with S1 = 150·d/3: d³ = 2.5506·4000/(50·1) → d = 5.887 ft.
    const d = freePostDepth({ P: 0, Mg: 48000, b: 12, lateral: 150 }, 60);
    expect(d / 12).toBeCloseTo(Math.cbrt((0.25 * 4.36 * 2.34 * 4000) / 50), 5);
    expect(freePostDepth({ P: 0, Mg: 0, b: 12, lateral: 150 }, 60)).toBe(0);
    expect(heldPostDepth({ P: 100, Mg: 0, b: 12, lateral: 150 })).toBe(0);
  });
  it('does not depend on the first trial', () => {
    const post = { P: 500, Mg: 48000, b: 12, lateral: 150 };
    expect(freePostDepth(post, 12)).toBe(freePostDepth(post, 120));
    expect(depthTrial(84, post).needs).toBeCloseTo(7.3233, 3);
  });
  it('counts depth to 12 ft only', () => {
    const post = { P: 9000, Mg: 9000 * 240, b: 24, lateral: 100 };
    expect(depthTrial(144, post).S1).toBe(400);
    expect(depthTrial(240, post).S1).toBe(400);
  });
});

describe('soil in front of a face', () => {
  it('grows with the square of the depth', () => {
    expect(facePressure(100, 24, 12, 24)).toBeCloseTo(300, 9);
    expect(facePressure(100, 12, 0, 36)).toBeCloseTo(450, 9);
    expect(facePressure(100, 12, -6, 12)).toBeCloseTo(50, 9);
  });
  it('room for concrete round a post', () => {
    expect(castRoom(16, 7.78)).toBeCloseTo(8.22, 9);
  });
});
