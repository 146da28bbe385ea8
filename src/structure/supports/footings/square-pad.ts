import type { FootingForm } from './contract.js';

export const squarePad: FootingForm<'square-pad'> = {
  shape(c, surface) {
    if (!(c.width > 0 && c.thickness > 0 && c.bottom > 0))
      return {
        code: 'footing-without-size',
        key: 'bottom',
        message: 'The pad has no width, thickness or depth.',
        found: c.bottom,
        expected: 'a depth below the surface, e.g. "12 in"',
      };
    // A post base must stay above the ground: wood below grade is another kind of structure.
    if (c.thickness < c.bottom)
      return {
        code: 'pad-below-grade',
        key: 'thickness',
        message:
          'The top of the pad, where the post base sits, lies below the surface: the post would stand in the ground.',
        found: c.thickness - c.bottom,
        expected: `a pad ${c.bottom} in thick or more, or a pier on the pad`,
      };
    return {
      top: surface - c.bottom + c.thickness,
      bottom: surface - c.bottom,
      bearingArea: c.width ** 2,
      size: c.width,
      round: false,
      pierDiameter: 0,
      padThickness: c.thickness,
      concrete: c.width ** 2 * c.thickness,
      soilOver: 0,
    };
  },
};
