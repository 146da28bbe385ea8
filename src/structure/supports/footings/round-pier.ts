import type { FootingForm } from './contract.js';

export const roundPier: FootingForm<'round-pier'> = {
  shape(c, surface) {
    const height = c.bottom + c.top;
    if (!(c.diameter > 0 && height > 0))
      return {
        code: 'footing-without-size',
        key: 'bottom',
        message: 'The pier has no height or diameter.',
        found: c.bottom,
        expected: 'a depth below the surface, e.g. "30 in"',
      };
    const area = (Math.PI * c.diameter ** 2) / 4;
    return {
      top: surface + c.top,
      bottom: surface - c.bottom,
      bearingArea: area,
      size: c.diameter,
      round: true,
      pierDiameter: c.diameter,
      padThickness: 0,
      concrete: area * height,
      soilOver: 0,
    };
  },
};
