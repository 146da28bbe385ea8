import type { FootingForm } from './contract.js';

export const pierOnPad: FootingForm<'pier-on-pad'> = {
  shape(c, surface) {
    const pier = c.bottom + c.top - c.thickness;
    if (!(c.width > 0 && c.thickness > 0 && c.diameter > 0 && pier > 0 && c.bottom > c.thickness))
      return {
        code: 'footing-shallower-than-pad',
        key: 'bottom',
        message: 'The pad does not fit between the underside of the footing and the surface.',
        found: c.bottom,
        expected: `deeper than the pad, ${c.thickness} in`,
      };
    if (c.diameter > c.width)
      return {
        code: 'pier-wider-than-pad',
        key: 'diameter',
        message: 'The pier is wider than its pad.',
        found: c.diameter,
        expected: `at most ${c.width} in`,
      };
    const area = (Math.PI * c.diameter ** 2) / 4;
    return {
      top: surface + c.top,
      bottom: surface - c.bottom,
      bearingArea: c.width ** 2,
      size: c.width,
      round: false,
      pierDiameter: c.diameter,
      padThickness: c.thickness,
      concrete: c.width ** 2 * c.thickness + area * pier,
      // From the top of the pad to the surface; a slab on top counts as soil here, which is lighter.
      soilOver: (c.width ** 2 - area) * (c.bottom - c.thickness),
    };
  },
};
