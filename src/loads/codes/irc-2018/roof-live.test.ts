import { describe, expect, it } from 'vitest';
import { ircRoofLiveLoad, patioCoverVerticalLoad } from './index.js';

describe('residential roof live load', () => {
  it.each([
    [0, 200, 20],
    [3.99, 201, 16],
    [3.99, 601, 12],
    [4, 200, 16],
    [4, 600, 14],
    [11.9, 601, 12],
    [12, 100, 12],
    [12, 400, 12],
    [14, 900, 12],
  ])('slope %f in 12, %f ft² gives %f psf', (F, ft2, psf) => {
    expect(ircRoofLiveLoad(F, ft2 * 144)).toBe(psf);
  });

  it('patio covers carry the largest of live, local minimum and snow', () => {
    expect(patioCoverVerticalLoad(0)).toBe(10);
    expect(patioCoverVerticalLoad(25)).toBe(25);
    expect(patioCoverVerticalLoad(15, 20)).toBe(20);
  });
});
